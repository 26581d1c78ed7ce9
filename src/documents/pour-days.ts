import type { Point } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { boxOf, type Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Analysis, Bay } from '../plan/analysis.ts';
import { namesText } from '../plan/figure-words.ts';
import { type Pour, type PourDay, pourOf } from '../plan/papers.ts';
import { doorwayNames, doorwayWithin } from './doorway-places.ts';
import type { PaperSource } from './paper-source.ts';
import type { FloorExit as Exit, FloorWays } from './pour-order.ts';
import { oneLine } from './words.ts';

/** What is entered for the pour, as far as the floor bears it out. */

export interface FloorExit extends Exit {
  /** Where it is, and whether it was entered. */
  readonly words: string;
}

/** The access that is entered; else a doorway that leads out of the floor; else the bay with the most joints of those at its outside.
 *  Null where there is no bay. */
export function pourExit(source: PaperSource): FloorExit | null {
  const { plan, analysis, file } = source;
  const { access } = pourOf(file);
  const { bays } = analysis;
  if (access !== null)
    return exitAt(access, bays, (id) => `Screed is brought in at the access, over bay ${id}, which is laid last.`);
  const outward = analysis.findings.find(({ code, at }) => code === 'doorway-one-room' && at !== null);
  const door = plan.doorways.find(({ id }) => outward?.refs.includes(id));
  if (outward?.at && door !== undefined) {
    const name = doorwayWithin(doorwayNames(source).get(door.id) ?? '');
    return exitAt(
      outward.at,
      bays,
      (id) => `${notEntered} is taken to be the ${name}, which leads out of the floor, over bay ${id}.`,
    );
  }
  const bay = outerBay(analysis);
  if (bay === undefined) return null;
  return {
    bay: bay.id,
    at: bay.stillPoint,
    words: `${notEntered} is taken to be bay ${bay.id}, at the outside of the floor: enter where it is brought in.`,
  };
}

const notEntered = 'No access is entered. The place by which screed is brought in';

function exitAt(at: Point, bays: readonly Bay[], words: (bay: string) => string): FloorExit | null {
  const on = bays.find((bay) => regionContains(bay, at)) ?? nearestBay(bays, at);
  return on === undefined ? null : { at, bay: on.id, words: words(on.id) };
}

function nearestBay(bays: readonly Bay[], at: Point): Bay | undefined {
  const far = (bay: Bay) => Math.min(...[bay.outline, ...bay.holes].map((ring) => ringDistance(ring, at)));
  return leastBy(bays, far);
}

function ringDistance(ring: Ring, at: Point): number {
  return ring.reduce(
    (least, a, i) => Math.min(least, segmentDistance(a, ring[(i + 1) % ring.length] as Point, at)),
    Infinity,
  );
}

function outerBay({ bays, joints }: Analysis): Bay | undefined {
  const whole = boxOf(bays.flatMap(({ outline }) => outline));
  const isOuter = ({ outline }: Bay) => {
    const own = boxOf(outline);
    return [own.minX - whole.minX, own.minY - whole.minY, whole.maxX - own.maxX, whole.maxY - own.maxY].some(
      (off) => off <= WELD_MM,
    );
  };
  const counts = new Map<string, number>();
  for (const id of joints.flatMap((joint) => joint.bays)) counts.set(id, (counts.get(id) ?? 0) + 1);
  return leastBy(bays.filter(isOuter), ({ id }) => -(counts.get(id) ?? 0));
}

/** The first of the least. */
function leastBy<T>(items: readonly T[], figure: (item: T) => number): T | undefined {
  let best: { readonly item: T; readonly value: number } | undefined;
  for (const item of items) {
    const value = figure(item);
    if (best === undefined || value < best.value) best = { item, value };
  }
  return best?.item;
}

/** Parts of the floor to which no joint leads from the access. */
export function pourApartWords({ ways, starts }: FloorWays): readonly string[] {
  const [, ...apart] = starts;
  if (apart.length === 0) return [];
  const bays = [...ways].filter(([, { start }]) => start !== starts[0]).map(([id]) => id);
  return [
    `No way over joints leads from the access to ${someText(bays)}: it is not known how ${bays.length === 1 ? 'it is' : 'they are'} left.`,
  ];
}

const mostNamed = 12;

/** Ids, and how many more. */
export function someText(ids: readonly string[]): string {
  if (ids.length <= mostNamed) return namesText(ids);
  return `${ids.slice(0, mostNamed).join(', ')} and ${ids.length - mostNamed} more`;
}

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

export function pourDaysGiven({ days }: Pick<Pour, 'days'>, { bays }: Pick<Analysis, 'bays'>): GivenDays {
  const ids = new Map(bays.map(({ key, id }) => [key, id]));
  const dayOf = new Map<string, number>();
  const cautions: PourDayCaution[] = [];
  const kept = days.map(({ date, bays: keys }, index) => {
    const own = keys.flatMap((key) => {
      const id = ids.get(key);
      const words =
        id === undefined
          ? `Entered day ${index + 1} names a bay that the floor does not have any more: ${oneLine(key)}.`
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
