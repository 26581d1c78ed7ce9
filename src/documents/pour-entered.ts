import type { Bay } from '../plan/analysis.ts';
import { namesText, overText, roundedText } from '../plan/figure-words.ts';
import { type Ordering, type Pour, type PourDay, pourOf } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';
import { bayEntryKeys, type EntryFloor } from './entry-keys.ts';
import { keyWords } from './entry-words.ts';
import type { PaperSource } from './paper-source.ts';

/** The days that are entered for the pour, as far as the floor bears them out, and what is laid on them. Apart from the pour plan, so that the editor tells
 *  it beside each day. */

export interface GivenDays {
  /** Days with at least one bay, by the bays' ids; each bay on the first day that names it. */
  readonly days: readonly PourDay[];
  readonly cautions: readonly PourDayCaution[];
  /** The same in words alone. */
  readonly told: readonly string[];
  /** By the keys that are entered: the keys of the bays that they stand for now. */
  readonly keys: ReadonlyMap<string, string>;
}

export interface PourDayCaution {
  /** Place of the day among those that are entered. */
  readonly index: number;
  /** One sentence. */
  readonly words: string;
}

/** Bays that have changed their places since are followed, and told. */
export function pourDaysGiven(source: EntryFloor & Pick<PaperSource, 'file'>): GivenDays {
  const { days } = pourOf(source.file);
  const ids = new Map(source.analysis.bays.map(({ key, id }) => [key, id]));
  const places = bayEntryKeys(
    days.flatMap(({ bays }) => bays),
    source,
  ).now;
  const dayOf = new Map<string, number>();
  const cautions: PourDayCaution[] = [];
  const kept = days.map(({ date, bays: keys }, index) => {
    const changed: string[] = [];
    const own = keys.flatMap((key) => {
      const place = places.get(key);
      const id = ids.get(place?.key ?? key);
      const tell = (words: string) => cautions.push({ index, words });
      if (place === undefined || id === undefined) {
        tell(`Entered day ${index + 1} names ${keyWords('bay', key, source)}, which the floor does not have any more.`);
        return [];
      }
      if (dayOf.has(id)) {
        tell(`${id} is named more than once: it is laid on the first day that names it.`);
        return [];
      }
      if (place.key !== key) changed.push(id);
      dayOf.set(id, index);
      return [id];
    });
    if (changed.length > 0) cautions.push({ index, words: changedWords(index, changed) });
    if (own.length === 0) cautions.push({ index, words: `Entered day ${index + 1} has no bay and is left out.` });
    return { index, date, bays: own };
  });
  const whole = kept.filter((day) => day.bays.length > 0);
  const dated = whole.flatMap(({ index, date }) => (date === null ? [] : [{ index, date }]));
  const early = dated.find(({ date }, i) => i > 0 && date <= (dated[i - 1]?.date ?? ''));
  if (early !== undefined)
    cautions.push({
      index: early.index,
      words: 'The dates of the entered days do not follow each other: the order of the days holds.',
    });
  return {
    days: whole.map(({ date, bays: own }) => ({ date, bays: own })),
    cautions,
    told: [...new Set(cautions.map(({ words }) => words))],
    keys: new Map([...places].map(([key, place]) => [key, place.key])),
  };
}

/** Example: "Entered day 1 names a bay that has changed since: B12 is laid in its place." */
function changedWords(index: number, ids: readonly string[]): string {
  return ids.length === 1
    ? `Entered day ${index + 1} names a bay that has changed since: ${ids[0]} is laid in its place.`
    : `Entered day ${index + 1} names bays that have changed since: ${namesText(ids)} are laid in their places.`;
}

interface Volume {
  readonly plan: Plan;
  readonly order: Ordering;
}

/** Where the bays of a day take more than is laid in one. */
export function pourVolumeCautions(
  bays: readonly Pick<Bay, 'id'>[],
  orderM3: number,
  { mostM3PerDay: most }: Pick<Pour, 'mostM3PerDay'>,
): readonly string[] {
  if (orderM3 <= most) return [];
  const figures = `${overText(orderM3, most, 1)} m\u00b3, the day allows ${roundedText(most, 1)} m\u00b3`;
  return [
    bays.length === 1
      ? `${bays[0]?.id} alone takes ${figures}: more hands, or another joint. The work does not stop inside a bay.`
      : `The bays entered for this day take ${figures}.`,
  ];
}

/** What is laid for some bays, with the allowance, m3. Example: 20 m2 at 65 mm and 5 % -> 1.365 m3 */
export function pourM3(bays: readonly Pick<Bay, 'areaM2'>[], { plan, order }: Volume): number {
  const areaM2 = bays.reduce((sum, bay) => sum + bay.areaM2, 0);
  return pourHeldM3(pourNetM3(areaM2, plan) * (1 + order.screedAllowance));
}

/** At its nominal thickness everywhere, as in the quantities. Example: 20 m2 at 65 mm -> 1.3 m3 */
export function pourNetM3(areaM2: number, { screed }: Plan): number {
  return (areaM2 * screed.thicknessMm) / 1000;
}

/** To a millionth, so that what rounding leaves of a sum breaks no limit and orders no load. */
export function pourHeldM3(value: number): number {
  return Number(value.toFixed(6));
}
