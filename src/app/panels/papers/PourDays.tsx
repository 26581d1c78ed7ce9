import { useRef, useState } from 'react';
import type { PaperSource } from '../../../documents/paper-source.ts';
import {
  pourBaysPut,
  pourBaysTakenOut,
  pourDayAdded,
  pourDayDated,
  pourDayMoved,
  pourDayRemoved,
  pourDaysOf,
  pourDaysProposed,
} from '../../../plan/edits/pour-days.ts';
import { DateField } from '../../parts/DateField.tsx';
import { countOf } from '../../parts/format.ts';
import { useBoard } from '../../state/hooks.ts';
import { papersPour } from '../../state/papersRun.ts';
import { commit, planStore } from '../../state/planStore.ts';
import { BayTicks } from './BayTicks.tsx';
import { type Added, ItemFolds, TakeAway } from './ItemFolds.tsx';
import { type DayShown, dayInSentence, daySummary, daysEdit, daysShown } from './pour-day-words.ts';

/** The days of the pour: dated, moved, and filled with bays one by one, from the board, or as the pour plan proposes. */
export function PourDayList({ floor }: { readonly floor: PaperSource }) {
  const days = daysShown(floor);
  const [added, setAdded] = useState<Added | null>(null);
  const list = useRef<HTMLDivElement>(null);
  const named = new Set(days.flatMap(({ bays }) => bays));
  const left = floor.analysis.bays.length - named.size;
  const add = () => {
    commit(`Add ${dayInSentence(days.length)}`, pourDayAdded);
    setAdded({ index: days.length });
  };
  const take = async () => {
    await proposedTake();
    // the button is gone with it: the first of the new days takes the keys, once it is drawn
    setTimeout(() => list.current?.querySelectorAll('summary')[days.length]?.focus());
  };
  return (
    <div ref={list} className="point-list">
      <p className="small quiet">
        Days with a date stand in the calendar. Bays that no day names follow in the order that the pour plan proposes.
      </p>
      <ItemFolds
        items={pourDaysOf(floor.file)}
        summary={(i) => (days[i] === undefined ? '' : daySummary(days[i], i))}
        cautions={(i) => days[i]?.cautions ?? []}
        added={added}
      >
        {(i) => days[i] !== undefined && <DayFields floor={floor} days={days} day={days[i]} index={i} />}
      </ItemFolds>
      <div className="deeds">
        <button type="button" className="button framed" onClick={add}>
          Add a day
        </button>
        {left > 0 && (
          <button type="button" className="button framed" onClick={() => void take()}>
            {days.length === 0
              ? 'Take the proposed days over'
              : `Take over the days proposed for ${countOf(left, 'bay', 'bays')} more`}
          </button>
        )}
      </div>
    </div>
  );
}

/** Worked out apart from the screen: anew where something is entered meanwhile, so that nothing of it is lost. */
async function proposedTake(): Promise<void> {
  const { history } = planStore.getState();
  const days = await papersPour();
  if (days === null) return;
  if (planStore.getState().history === history)
    commit('Take the proposed days of the pour over', (file) => pourDaysProposed(file, days));
  else await proposedTake();
}

interface DayProps {
  readonly floor: PaperSource;
  readonly days: readonly DayShown[];
  readonly day: DayShown;
  readonly index: number;
}

function DayFields({ floor, days, day, index }: DayProps) {
  const of = dayInSentence(index);
  return (
    <>
      <DateField
        label="Date"
        value={day.date}
        onChange={(date) => commit(`Date of ${of}`, (file) => pourDayDated(file, index, date))}
      />
      <BayTicks floor={floor} days={days} index={index} />
      {day.gone.length > 0 && (
        <div className="deeds">
          <button
            type="button"
            className="button framed"
            aria-label={`Take out what the floor does not have any more: ${of}`}
            onClick={() => commit(`Bays that are gone out of ${of}`, (file) => pourBaysTakenOut(file, index, day.gone))}
          >
            Take out what the floor does not have any more
          </button>
        </div>
      )}
      <ChosenBays floor={floor} index={index} />
      <div className="deeds">
        <MoveButton index={index} count={days.length} way="earlier" />
        <MoveButton index={index} count={days.length} way="later" />
        <TakeAway of={of} onTake={() => commit(`Take ${of} away`, (file) => pourDayRemoved(file, index))} />
      </div>
    </>
  );
}

interface MoveProps {
  readonly index: number;
  readonly count: number;
  readonly way: 'earlier' | 'later';
}

/** Not disabled at the ends: with that a button loses the keys while it is used. */
function MoveButton({ index, count, way }: MoveProps) {
  const isEnd = way === 'earlier' ? index === 0 : index === count - 1;
  const of = dayInSentence(index);
  return (
    <button
      type="button"
      className="button framed"
      aria-disabled={isEnd}
      aria-label={`${way === 'earlier' ? 'Earlier' : 'Later'}: ${of}`}
      onClick={() => commit(`Move ${of} ${way}`, (file) => pourDayMoved(file, index, way))}
    >
      {way === 'earlier' ? 'Earlier' : 'Later'}
    </button>
  );
}

function ChosenBays({ floor, index }: Pick<DayProps, 'floor' | 'index'>) {
  const chosen = useBoard((state) => state.chosen);
  const known = new Set(floor.analysis.bays.map(({ key }) => key));
  const keys = chosen.flatMap(({ kind, key }) => (kind === 'bay' && known.has(key) ? [key] : []));
  const of = dayInSentence(index);
  if (keys.length === 0) return <p className="small quiet">Bays that are chosen on the board can be put in at once.</p>;
  return (
    <div className="deeds">
      <button
        type="button"
        className="button framed"
        aria-label={`Put in what is chosen on the board: ${of}`}
        onClick={() =>
          commit(
            `${countOf(keys.length, 'bay', 'bays')} into ${of}`,
            daysEdit(floor, (file) => pourBaysPut(file, index, keys)),
          )
        }
      >
        Put in the {countOf(keys.length, 'bay', 'bays')} chosen on the board
      </button>
    </div>
  );
}
