import { useEffect, useRef, useState } from 'react';
import { keptOpen } from '../files/kept.ts';
import { type KeptList, keptPutBack, keptRemove, type Removed, useKeptList } from '../files/kept-list.ts';
import { countOf, nameText } from '../parts/format.ts';
import { Icon } from '../parts/Icon.tsx';
import { errorWords } from '../state/boardStore.ts';
import { usePlan } from '../state/hooks.ts';
import type { Kept } from '../state/shelf.ts';

/** The plans that the browser keeps, the newest first. */
export function KeptPlans({ menu }: { readonly menu: string }) {
  const list = useKeptList();
  return (
    <>
      <h2>Kept in this browser</h2>
      <KeptRows list={list} menu={menu} />
    </>
  );
}

function KeptRows({ list, menu }: { readonly list: KeptList | null; readonly menu: string }) {
  if (list === null) return null;
  if (list.why !== null) return <p className="quiet">The kept plans could not be read. {list.why}</p>;
  if (list.plans.length === 0) {
    return <p className="quiet">None yet. A plan that you draw, change or open is kept here by itself.</p>;
  }
  return (
    <ul className="kept" aria-label="Kept plans">
      {list.plans.map((plan) => (
        <KeptRow key={plan.id} plan={plan} menu={menu} />
      ))}
    </ul>
  );
}

/** What was removed stays where it was until the menu is closed, to be put back. */
function KeptRow({ plan, menu }: { readonly plan: Kept; readonly menu: string }) {
  const { id, name } = plan;
  const [removed, setRemoved] = useState<Removed | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const row = useFocusKept(removed !== null);
  const turn = async () => {
    try {
      if (removed === null) setRemoved(await keptRemove(id));
      else {
        await keptPutBack(removed);
        setRemoved(null);
      }
      setWhy(null);
    } catch (error) {
      setWhy(errorWords(error));
    }
  };
  return (
    <li ref={row}>
      {removed === null ? <KeptOpen plan={plan} menu={menu} /> : <KeptGone name={name} />}
      {removed === null ? (
        <button
          type="button"
          className="button bare"
          aria-label={`Remove ${nameText(name)} from this browser`}
          title="Remove from this browser"
          onClick={() => void turn()}
        >
          <Icon name="remove" />
        </button>
      ) : (
        <button
          type="button"
          className="button framed"
          aria-label={`Put back ${nameText(name)}`}
          onClick={() => void turn()}
        >
          Put back
        </button>
      )}
      {why !== null && (
        <p className="wrong-word" role="alert">
          {why}
        </p>
      )}
    </li>
  );
}

function KeptGone({ name }: { readonly name: string }) {
  return (
    <span className="gone">
      <span className="name quiet" dir="auto">
        {nameText(name)}
      </span>
      <span className="small quiet">Removed from this browser</span>
    </span>
  );
}

/** The buttons of a row take each other's place: the focus goes to the one that takes back what was done. */
function useFocusKept(isRemoved: boolean) {
  const row = useRef<HTMLLIElement>(null);
  const before = useRef(isRemoved);
  useEffect(() => {
    if (before.current === isRemoved) return;
    before.current = isRemoved;
    row.current?.querySelector<HTMLButtonElement>('button:last-of-type')?.focus();
  }, [isRemoved]);
  return row;
}

function KeptOpen({ plan: { id, name, rooms, savedAt }, menu }: { readonly plan: Kept; readonly menu: string }) {
  const isOnBoard = usePlan((state) => state.history.present.id === id);
  const facts = [
    rooms === 0 ? 'No room yet' : countOf(rooms, 'room', 'rooms'),
    ...(savedAt === 0 ? [] : [dates.format(savedAt)]),
    ...(isOnBoard ? ['on the board'] : []),
  ];
  return (
    <button
      type="button"
      className="button"
      popoverTarget={menu}
      popoverTargetAction="hide"
      title={name}
      aria-current={isOnBoard}
      onClick={() => isOnBoard || void keptOpen(id, name)}
    >
      <span className="name" dir="auto">
        {nameText(name)}
      </span>
      <span className="small quiet">{facts.join(', ')}</span>
    </button>
  );
}

const dates = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
