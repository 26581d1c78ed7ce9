import type { PlanFile } from '../schema.ts';
import { changedIfNew } from './fields.ts';
import { planSectionChanged } from './settings.ts';

/** Days of the pour, in the order in which they come. A bay is laid on one of them. */

type PourDay = NonNullable<NonNullable<PlanFile['pour']>['days']>[number];

export function pourDaysOf(file: PlanFile): readonly PourDay[] {
  return file.pour?.days ?? [];
}

function daysSet(file: PlanFile, days: readonly PourDay[]): PlanFile {
  return planSectionChanged(file, 'pour', { days: days.length === 0 ? undefined : days });
}

/** Adds a day after the others. */
export function pourDayAdded(file: PlanFile): PlanFile {
  return daysSet(file, [...pourDaysOf(file), { bays: [] }]);
}

/** Dates a day; undefined: its date is not known. */
export function pourDayDated(file: PlanFile, index: number, date: string | undefined): PlanFile {
  return dayPut(file, index, (day) => changedIfNew<PourDay>(day, { date }));
}

export function pourDayRemoved(file: PlanFile, index: number): PlanFile {
  const days = pourDaysOf(file);
  const left = days.filter((_, i) => i !== index);
  return left.length === days.length ? file : daysSet(file, left);
}

/** Lets a day change places with the one before or after it. */
export function pourDayMoved(file: PlanFile, index: number, way: 'earlier' | 'later'): PlanFile {
  const days = pourDaysOf(file);
  const other = way === 'earlier' ? index - 1 : index + 1;
  const [day, neighbour] = [days[index], days[other]];
  if (day === undefined || neighbour === undefined) return file;
  return daysSet(
    file,
    days.map((each, i) => (i === index ? neighbour : i === other ? day : each)),
  );
}

/** Puts bays into a day, and takes them out of the others. @param keys of bays */
export function pourBaysPut(file: PlanFile, index: number, keys: readonly string[]): PlanFile {
  const days = pourDaysOf(file);
  const put = new Set(keys);
  const next = days.map((day, i) => {
    if (i !== index) return without(day, put);
    const own = [...new Set([...day.bays, ...keys])];
    return own.length === day.bays.length ? day : { ...day, bays: own };
  });
  return next.every((day, i) => day === days[i]) ? file : daysSet(file, next);
}

/** Takes bays out of a day. @param keys of bays, be they on the floor or not any more */
export function pourBaysTakenOut(file: PlanFile, index: number, keys: readonly string[]): PlanFile {
  const gone = new Set(keys);
  return dayPut(file, index, (day) => without(day, gone));
}

/** Lets the days name bays by the keys that those have now. @param keys by what is entered */
export function pourBaysFollowed(file: PlanFile, keys: ReadonlyMap<string, string>): PlanFile {
  const days = pourDaysOf(file);
  const next = days.map((day) => {
    if (day.bays.every((key) => (keys.get(key) ?? key) === key)) return day;
    return { ...day, bays: [...new Set(day.bays.map((key) => keys.get(key) ?? key))] };
  });
  return next.every((day, i) => day === days[i]) ? file : daysSet(file, next);
}

/** The days as they were proposed, with the dates that there are. @param lots keys of the bays of each day */
export function pourDaysProposed(
  file: PlanFile,
  lots: readonly { readonly date: string | null; readonly bays: readonly string[] }[],
): PlanFile {
  return daysSet(
    file,
    lots.map(({ date, bays }) => (date === null ? { bays: [...bays] } : { date, bays: [...bays] })),
  );
}

function dayPut(file: PlanFile, index: number, change: (day: PourDay) => PourDay): PlanFile {
  const days = pourDaysOf(file);
  const next = days.map((day, i) => (i === index ? change(day) : day));
  return next.every((day, i) => day === days[i]) ? file : daysSet(file, next);
}

function without(day: PourDay, keys: ReadonlySet<string>): PourDay {
  return day.bays.some((key) => keys.has(key)) ? { ...day, bays: day.bays.filter((key) => !keys.has(key)) } : day;
}
