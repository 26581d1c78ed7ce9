import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Fold } from '../../parts/Fold.tsx';
import { cardId } from '../../state/thing.ts';
import { itemsKeyed, type KeyedItems, noItems } from './item-keys.ts';

interface ItemFoldsProps {
  /** Objects of the plan file that they are known by. */
  readonly items: readonly object[];
  readonly summary: (index: number) => string;
  /** What is to be known of an item, whether it is open or not. */
  readonly cautions: (index: number) => readonly string[];
  readonly children: (index: number) => ReactNode;
  /** The one that was added last. */
  readonly added?: Added | null;
  /** The one that is chosen on the board. */
  readonly chosen?: number | null;
  /** One is unfolded. */
  readonly onUnfold?: (index: number) => void;
}

export interface Added {
  readonly index: number;
}

/** Items of a list, each folded. One that is added comes open and is typed in at once; from one that is taken away the focus goes to the next, or to the
 *  button that stands below the list. One that is chosen on the board is opened and brought in view, and Enter on the board goes into it; it is folded again
 *  when another is chosen. */
export function ItemFolds({
  items,
  summary,
  cautions,
  children,
  added = null,
  chosen = null,
  onUnfold,
}: ItemFoldsProps) {
  const keys = useItemKeys(items);
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (added !== null) list.current?.children[added.index]?.querySelector('input')?.focus();
  }, [added]);
  useEffect(() => {
    const item = chosen === null ? undefined : list.current?.children[chosen];
    if (item === undefined) return;
    const isFolded = () => item.querySelector('details')?.open === false;
    const unfolds = isFolded();
    if (unfolds) item.querySelector('summary')?.click();
    // Once it is as high as what it holds.
    const frame = requestAnimationFrame(() => item.scrollIntoView({ block: 'nearest' }));
    return () => {
      cancelAnimationFrame(frame);
      // of ten points that are placed one after the other nine would stay open
      if (unfolds && !isFolded() && !item.contains(document.activeElement)) item.querySelector('summary')?.click();
    };
  }, [chosen]);
  return (
    <div ref={list} className="items">
      {items.map((_, i) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: what is pressed is the summary inside it
        // biome-ignore lint/a11y/useKeyWithClickEvents: the browser makes a click of the keys of a summary
        <div
          key={keys[i]}
          ref={itemHeir}
          className="item"
          {...(i === chosen && enteredAs(summary(i)))}
          onClick={({ target, currentTarget }) => {
            const isSummary = target instanceof Element && target.closest('summary') !== null;
            if (isSummary && i !== chosen && currentTarget.querySelector('details')?.open === false) onUnfold?.(i);
          }}
        >
          <Fold summary={summary(i)} unfolded={i === added?.index}>
            {children(i)}
          </Fold>
          {cautions(i).map((words) => (
            <p key={words} className="small tone-caution">
              {words}
            </p>
          ))}
        </div>
      ))}
    </div>
  );
}

/** What Enter on the board goes into, as it goes into the card of any other thing. */
function enteredAs(summary: string) {
  return { id: cardId, tabIndex: -1, role: 'group', 'aria-label': `Chosen: ${summary}` };
}

function useItemKeys(items: readonly object[]): readonly number[] {
  const [keyed, setKeyed] = useState<KeyedItems>(() => itemsKeyed(noItems, items));
  if (keyed.items.length === items.length && items.every((item, i) => item === keyed.items[i])) return keyed.keys;
  const next = itemsKeyed(keyed, items);
  setKeyed(next);
  return next.keys;
}

/** Not into the next item: a second Enter would take that away as well. */
function itemHeir(gone: HTMLElement | null): (() => void) | undefined {
  if (gone === null) return undefined;
  return () => {
    if (!gone.contains(document.activeElement)) return;
    const next = gone.nextElementSibling?.querySelector('summary');
    const adding = gone.parentElement?.parentElement?.querySelector<HTMLElement>(':scope > .deeds > .button');
    queueMicrotask(() => (next?.isConnected ? next : adding)?.focus());
  };
}

/** @param of what goes, within a sentence: "grid line A" */
export function TakeAway({ of, onTake }: { readonly of: string; readonly onTake: () => void }) {
  return (
    <button type="button" className="button framed" aria-label={`Take it away: ${of}`} onClick={onTake}>
      Take it away
    </button>
  );
}
