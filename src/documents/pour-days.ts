import type { Point } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { boxOf, type Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Analysis, Bay } from '../plan/analysis.ts';
import { namesText } from '../plan/figure-words.ts';
import { pourOf } from '../plan/papers.ts';
import { doorwayNames, doorwayWithin } from './doorway-places.ts';
import type { PaperSource } from './paper-source.ts';
import type { FloorExit as Exit, FloorWays } from './pour-order.ts';

/** By which way the screed comes onto the floor. */

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
