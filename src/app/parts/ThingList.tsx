import { type KeyboardEvent, memo, type ReactNode, useEffect, useId } from 'react';
import { boardHover } from '../state/boardStore.ts';
import { cardEnter } from '../state/cardEnter.ts';
import { useBoard } from '../state/hooks.ts';
import { type Thing, thingEquals } from '../state/thing.ts';
import { hintOf } from './format.ts';
import { Stretches } from './Stretches.tsx';

export interface ThingRow {
  readonly thing: Thing;
  readonly lead: ReactNode;
  readonly name: string;
  readonly value: ReactNode;
  readonly more: ReactNode;
}

interface ThingListProps {
  readonly label: string;
  readonly rows: readonly ThingRow[];
  readonly onChoose: (thing: Thing) => void;
  /** Its rows are sentences, which are shown to their end. */
  readonly told?: boolean;
}

/** About the height of a row, px. */
const rowPx = 46;

/** A list whose rows stand for things on the drawing: choosing or hovering a row lights the thing, and the other way
 *  round. One stop for the Tab key; arrow keys, Home and End choose within it, Enter on what is chosen goes into its card. */
export function ThingList({ label, rows, onChoose, told = false }: ThingListProps) {
  const id = useId();
  const chosen = useBoard((state) => state.chosen);
  const hovered = useBoard((state) => state.hovered);
  const isChosen = ({ thing }: ThingRow) => chosen.some((each) => thingEquals(each, thing));
  const at = rows.findIndex(isChosen);

  useEffect(() => {
    if (at >= 0) return rowReveal(`${id}-${at}`);
  }, [id, at]);

  const onKeyDown = (event: KeyboardEvent) => {
    const last = rows.length - 1;
    const to: Readonly<Record<string, number>> = {
      ArrowDown: Math.min(last, at + 1),
      ArrowUp: Math.max(0, at - 1),
      Home: 0,
      End: last,
      Enter: Math.max(0, at),
      ' ': Math.max(0, at),
    };
    const row = rows[to[event.key] ?? -1];
    if (row === undefined) return;
    event.preventDefault();
    if (event.key === 'Enter' && isChosen(row)) cardEnter();
    else onChoose(row.thing);
  };
  if (rows.length === 0) return null;
  return (
    <div
      className={told ? 'list told' : 'list'}
      role="listbox"
      aria-label={label}
      tabIndex={0}
      aria-activedescendant={at >= 0 ? `${id}-${at}` : undefined}
      onKeyDown={onKeyDown}
      onPointerLeave={() => boardHover(null)}
    >
      <Stretches count={rows.length} rowPx={rowPx} wanted={at}>
        {(i) => {
          const row = rows[i];
          return row === undefined ? null : (
            <Row
              key={row.thing.key}
              id={`${id}-${i}`}
              row={row}
              place={i + 1}
              of={rows.length}
              chosen={isChosen(row)}
              lit={thingEquals(row.thing, hovered)}
              told={told}
              onChoose={onChoose}
            />
          );
        }}
      </Stretches>
    </div>
  );
}

/** Rows that come near the view take up their own height in place of a reckoned one for so many frames. */
const settleFrames = 8;

/** Brings a row into view and keeps it there while the rows above it find their heights.  @returns ends it */
function rowReveal(id: string): () => void {
  let left = settleFrames;
  let frame = 0;
  const reveal = () => {
    document.getElementById(id)?.scrollIntoView({ block: 'nearest' });
    left -= 1;
    if (left > 0) frame = requestAnimationFrame(reveal);
  };
  reveal();
  return () => cancelAnimationFrame(frame);
}

interface RowProps {
  readonly id: string;
  readonly row: ThingRow;
  /** From 1, and how many rows there are: not all of them are in the page. */
  readonly place: number;
  readonly of: number;
  readonly chosen: boolean;
  readonly lit: boolean;
  readonly told: boolean;
  readonly onChoose: (thing: Thing) => void;
}

const Row = memo(function Row({ id, row, place, of, chosen, lit, told, onChoose }: RowProps) {
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are the list's, which has the focus
    // biome-ignore lint/a11y/useFocusableInteractive: the list has the focus and names the row as active
    <div
      id={id}
      className={`row${lit ? ' lit' : ''}${row.lead === null ? ' unled' : ''}`}
      role="option"
      aria-selected={chosen}
      aria-posinset={place}
      aria-setsize={of}
      onClick={() => onChoose(row.thing)}
      onPointerEnter={() => boardHover(row.thing)}
    >
      {row.lead !== null && <span className="lead">{row.lead}</span>}
      <span className="name" title={told ? undefined : hintOf(row.name)}>
        {row.name}
      </span>
      <span className="value">{row.value}</span>
      {row.more !== null && <span className="more">{row.more}</span>}
    </div>
  );
});
