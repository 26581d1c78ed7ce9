import type { PaperSource } from '../../../documents/paper-source.ts';
import { pourDaysGiven, pourM3, pourVolumeCautions } from '../../../documents/pour-entered.ts';
import type { Bay } from '../../../plan/analysis.ts';
import { pourBaysFollowed } from '../../../plan/edits/pour-days.ts';
import { orderingOf, type PourDay, pourOf } from '../../../plan/papers.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { countOf, figure } from '../../parts/format.ts';

/** The days of the pour in words. */

/** A day as it is entered, with the bays of the floor that it names. */
export interface DayShown {
  readonly date: string | null;
  readonly bays: readonly Bay[];
  /** Keys of bays that the floor does not have any more. */
  readonly gone: readonly string[];
  /** With the allowance. */
  readonly orderM3: number;
  readonly cautions: readonly string[];
}

export function daysShown(floor: PaperSource): readonly DayShown[] {
  const { file, plan, analysis } = floor;
  const pour = pourOf(file);
  const order = orderingOf(file);
  const byKey = new Map(analysis.bays.map((bay) => [bay.key, bay]));
  const { cautions, keys: present } = pourDaysGiven(floor);
  return pour.days.map(({ date, bays: keys }: PourDay, i) => {
    const bays = [...new Set(keys)].flatMap((key) => byKey.get(present.get(key) ?? key) ?? []);
    const orderM3 = pourM3(bays, { plan, order });
    const told = cautions.filter(({ index }) => index === i).map(({ words }) => words);
    return {
      date,
      bays,
      gone: keys.filter((key) => !present.has(key)),
      orderM3,
      cautions: [...new Set([...told, ...pourVolumeCautions(bays, orderM3, pour)])],
    };
  });
}

/** An edit of the days, which from then on name their bays by the keys that these have now. */
export function daysEdit(floor: PaperSource, edit: (file: PlanFile) => PlanFile): (file: PlanFile) => PlanFile {
  const { keys } = pourDaysGiven(floor);
  return (file) => edit(pourBaysFollowed(file, keys));
}

/** Example: "Day 2, 2027-03-01: 3 bays, 4.2 m³" */
export function daySummary({ date, bays, orderM3 }: DayShown, index: number): string {
  const when = date === null ? '' : `, ${date}`;
  return `Day ${index + 1}${when}: ${countOf(bays.length, 'bay', 'bays')}, ${figure(orderM3, 1)} m³`;
}

/** How undo tells of a day. */
export function dayInSentence(index: number): string {
  return `day ${index + 1} of the pour`;
}
