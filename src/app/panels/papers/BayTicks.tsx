import { type KeyboardEvent, useState } from 'react';
import type { PaperSource } from '../../../documents/paper-source.ts';
import { pourM3 } from '../../../documents/pour-entered.ts';
import { namesOf } from '../../../documents/words.ts';
import { pourBaysPut, pourBaysTakenOut } from '../../../plan/edits/pour-days.ts';
import { orderingOf } from '../../../plan/papers.ts';
import { figure, nameText } from '../../parts/format.ts';
import { Stretches } from '../../parts/Stretches.tsx';
import { boardHover } from '../../state/boardStore.ts';
import { commit } from '../../state/planStore.ts';
import { bayThing } from '../../state/thing.ts';
import { type DayShown, dayInSentence, daysEdit } from './pour-day-words.ts';

interface BayTicksProps {
  readonly floor: PaperSource;
  readonly days: readonly DayShown[];
  /** Of the day that they are ticked for. */
  readonly index: number;
}

/** About the height of a row, px. */
const rowPx = 32;

/** All bays of the floor, ticked where the day has them. One stop for the Tab key: arrow keys, Home and End go from bay to bay, which the board shows. */
export function BayTicks({ floor, days, index }: BayTicksProps) {
  const { plan, analysis, file } = floor;
  const { bays } = analysis;
  const [at, setAt] = useState(0);
  const names = namesOf(plan, analysis);
  const order = orderingOf(file);
  const dayOf = new Map(days.flatMap((day, i) => day.bays.map(({ key }) => [key, i] as const)).reverse());
  const own = new Set(days[index]?.bays);
  const of = dayInSentence(index);
  const stop = Math.min(at, bays.length - 1);
  return (
    <fieldset className="bay-ticks" data-scrolls aria-label={`Bays of ${of}`} onKeyDown={tickKey}>
      <Stretches count={bays.length} rowPx={rowPx} wanted={stop}>
        {(i) => {
          const bay = bays[i];
          if (bay === undefined) return null;
          const other = dayOf.get(bay.key);
          const rooms = nameText(bay.rooms.map(names.room).join(', '));
          return (
            <label key={bay.key} className="field tick" onPointerEnter={() => boardHover(bayThing(bay))}>
              <input
                type="checkbox"
                checked={own.has(bay)}
                tabIndex={i === stop ? 0 : -1}
                onFocus={() => {
                  setAt(i);
                  boardHover(bayThing(bay));
                }}
                onBlur={() => boardHover(null)}
                onChange={({ target: { checked } }) =>
                  commit(
                    `${bay.id} ${checked ? 'into' : 'out of'} ${of}`,
                    daysEdit(floor, (present) => (checked ? pourBaysPut : pourBaysTakenOut)(present, index, [bay.key])),
                  )
                }
              />
              <span>
                {bay.id}, {rooms}
              </span>
              <span className="quiet">
                {figure(pourM3([bay], { plan, order }), 2)} m³
                {other !== undefined && other !== index && `, day ${other + 1}`}
              </span>
            </label>
          );
        }}
      </Stretches>
    </fieldset>
  );
}

function tickKey(event: KeyboardEvent<HTMLElement>): void {
  const ticks = [...event.currentTarget.querySelectorAll('input')];
  const at = ticks.indexOf(event.target as HTMLInputElement);
  const to: Readonly<Record<string, number>> = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: ticks.length - 1 };
  const tick = ticks[to[event.key] ?? -1];
  if (event.key in to) event.preventDefault();
  tick?.focus();
}
