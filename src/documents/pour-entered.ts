import type { Analysis, Bay } from '../plan/analysis.ts';
import { roundedText } from '../plan/figure-words.ts';
import type { Ordering, Pour, PourDay } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';
import { textCut } from './text-width.ts';
import { oneLine } from './words.ts';

/** The days that are entered for the pour, as far as the floor bears them out, and what is laid on them. Apart from the pour plan, so that the editor tells
 *  it beside each day. */

export interface GivenDays {
  /** Days with at least one bay, by the bays' ids; each bay on the first day that names it. */
  readonly days: readonly PourDay[];
  readonly cautions: readonly PourDayCaution[];
  /** The same in words alone. */
  readonly told: readonly string[];
}

export interface PourDayCaution {
  /** Place of the day among those that are entered. */
  readonly index: number;
  /** One sentence. */
  readonly words: string;
}

/** Widest key of a bay in a text, mm on paper: a file may have any. */
const widestKeyMm = 40;

export function pourDaysGiven({ days }: Pick<Pour, 'days'>, { bays }: Pick<Analysis, 'bays'>): GivenDays {
  const ids = new Map(bays.map(({ key, id }) => [key, id]));
  const dayOf = new Map<string, number>();
  const cautions: PourDayCaution[] = [];
  const kept = days.map(({ date, bays: keys }, index) => {
    const own = keys.flatMap((key) => {
      const id = ids.get(key);
      const words =
        id === undefined
          ? `Entered day ${index + 1} names a bay that the floor does not have any more: ${textCut(oneLine(key), 'sheet-text', widestKeyMm)}.`
          : dayOf.has(id)
            ? `${id} is named more than once: it is laid on the first day that names it.`
            : null;
      if (words !== null) cautions.push({ index, words });
      if (id === undefined || words !== null) return [];
      dayOf.set(id, index);
      return [id];
    });
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
  };
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
  const figures = `${roundedText(orderM3, 1)} m\u00b3, the day allows ${roundedText(most, 1)} m\u00b3`;
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
