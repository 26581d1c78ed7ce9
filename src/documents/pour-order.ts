import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import { regionCentroid } from '../geometry/region.ts';
import type { Analysis } from '../plan/analysis.ts';

/** In what order bays are laid, so that nobody walks over fresh screed.
 *
 *  Accepts: bays, the joints between them, and the place by which the floor is left. Guarantees: as long as no other order is asked for, the way from
 *  each bay to the access lies over bays that are not laid yet.
 *
 *  Steps: 1. from the access the ways over joints are found, each bay reached through one other; 2. a bay is free to be laid once every bay whose way
 *  leads over it is laid; 3. a day begins with the free bay farthest off, and takes in free bays near by while they fit. */

/** Where the floor is left, on it or off it, and the bay that is left last. */
export interface FloorExit {
  readonly at: Point;
  readonly bay: string;
}

/** The floor as one walks over it. */
export interface FloorWays {
  readonly ways: ReadonlyMap<string, FloorWay>;
  readonly neighbours: ReadonlyMap<string, readonly string[]>;
  /** The bay that is left last of each part of the floor that hangs together; that of the access comes first. */
  readonly starts: readonly string[];
}

export interface FloorWay {
  /** The bay that the way to the access leads over next; null: the floor is left from here. */
  readonly through: string | null;
  /** Which of `starts` it leads to. */
  readonly start: string;
  readonly middle: Point;
  /** From the middle of the bay to the access, from joint to joint. */
  readonly lengthMm: number;
}

interface Door {
  readonly to: string;
  readonly at: Point;
}

export function floorWays({ bays, joints }: Pick<Analysis, 'bays' | 'joints'>, exit: FloorExit): FloorWays {
  const doors = new Map<string, Door[]>(bays.map(({ id }) => [id, []]));
  for (const { bays: sides, line } of joints) {
    const [one, other] = sides;
    if (one === other) continue;
    const at = lineMiddle(line);
    doors.get(one)?.push({ to: other, at });
    doors.get(other)?.push({ to: one, at });
  }
  const middles = new Map(bays.map((bay) => [bay.id, regionCentroid(bay)]));
  const middle = (id: string) => middles.get(id) ?? exit.at;
  const nearest = bays.map(({ id }) => id).sort((a, b) => far(middle(a), exit) - far(middle(b), exit));
  const ways = new Map<string, FloorWay>();
  const starts: string[] = [];
  for (const start of [exit.bay, ...nearest]) {
    if (ways.has(start) || !doors.has(start)) continue;
    starts.push(start);
    for (const [id, { through, entry, lengthMm }] of spread(start, exit.at, doors))
      ways.set(id, {
        through,
        start,
        middle: middle(id),
        lengthMm: lengthMm + pointDistance(entry, middle(id)),
      });
  }
  const neighbours = new Map([...doors].map(([id, list]) => [id, list.map(({ to }) => to)]));
  return { ways, neighbours, starts };
}

function far(point: Point, { at }: FloorExit): number {
  return pointDistance(point, at);
}

interface Entry {
  readonly through: string | null;
  readonly entry: Point;
  readonly lengthMm: number;
}

/** The part of the floor that hangs together with a bay, nearest first, each bay entered by the joint that is reached first. */
function spread(start: string, at: Point, doors: ReadonlyMap<string, readonly Door[]>): ReadonlyMap<string, Entry> {
  const reached = new Map<string, Entry>();
  const waiting = new Map<string, Entry>([[start, { through: null, entry: at, lengthMm: 0 }]]);
  for (;;) {
    let next: readonly [string, Entry] | null = null;
    for (const each of waiting) if (next === null || each[1].lengthMm < next[1].lengthMm) next = each;
    if (next === null) return reached;
    const [id, entered] = next;
    waiting.delete(id);
    reached.set(id, entered);
    for (const { to, at: door } of doors.get(id) ?? []) {
      const lengthMm = entered.lengthMm + pointDistance(entered.entry, door);
      if (!reached.has(to) && lengthMm < (waiting.get(to)?.lengthMm ?? Infinity))
        waiting.set(to, { through: id, entry: door, lengthMm });
    }
  }
}

export interface LotWish {
  /** Bays that are not laid yet. */
  readonly left: ReadonlySet<string>;
  /** The bays of the day before: the work goes on from there. */
  readonly before: readonly string[];
  /** How much of what may be laid in one day some bays take. */
  readonly share: (bays: readonly string[]) => number;
}

/** A day's bays are next to each other, or next but one as rooms on a corridor are: a crew does not change to another end of the floor ... */
const mostSteps = 2;
/** ... but where the day would be less than so full. */
const leastShare = 0.5;

/** The bays of one day: at least one, if any are left. */
export function lotTaken({ ways, neighbours }: FloorWays, { left, before, share }: LotWish): readonly string[] {
  const over = new Map<string, number>();
  for (const id of left) {
    const through = ways.get(id)?.through ?? null;
    if (through !== null) over.set(through, (over.get(through) ?? 0) + 1);
  }
  const lot: string[] = [];
  const free = new Set([...left].filter((id) => (over.get(id) ?? 0) === 0));
  for (;;) {
    const rank = ranksFrom(lot.length === 0 ? before : lot, { ways, neighbours });
    const mayGoFar = share(lot) < leastShare;
    const open = [...free].filter(
      (id) => lot.length === 0 || ((mayGoFar || isNear(rank(id))) && share([...lot, id]) <= 1),
    );
    const next = leastOf(open, rank);
    if (next === null) return lot;
    lot.push(next);
    free.delete(next);
    const through = ways.get(next)?.through ?? null;
    if (through === null || !left.has(through)) continue;
    const count = (over.get(through) ?? 0) - 1;
    over.set(through, count);
    if (count === 0) free.add(through);
  }
}

type Rank = readonly number[];

/** Bays by the fewest joints from the lot, those that no joint leads to by their distance from it; then the farthest from the access. */
function ranksFrom(lot: readonly string[], { ways, neighbours }: Pick<FloorWays, 'ways' | 'neighbours'>) {
  const steps = new Map(lot.map((id) => [id, 0]));
  for (const [id, count] of steps)
    for (const to of neighbours.get(id) ?? []) if (!steps.has(to)) steps.set(to, count + 1);
  const first = ways.get(lot[0] ?? '')?.middle;
  return (id: string): Rank => {
    const way = ways.get(id);
    if (way === undefined) return [0, 0, 0];
    if (first === undefined) return [0, 0, -way.lengthMm];
    const count = steps.get(id);
    return count === undefined
      ? [Infinity, pointDistance(first, way.middle), -way.lengthMm]
      : [count, 0, -way.lengthMm];
  };
}

function isNear([steps = 0]: Rank): boolean {
  return steps <= mostSteps;
}

/** The first in reading order of those of the least rank. */
function leastOf(ids: readonly string[], rank: (id: string) => Rank): string | null {
  let least: { readonly id: string; readonly rank: Rank } | null = null;
  for (const id of ids) {
    const own = rank(id);
    if (least === null || ranksCompare(own, least.rank) < 0) least = { id, rank: own };
  }
  return least?.id ?? null;
}

function ranksCompare(a: Rank, b: Rank): number {
  const i = a.findIndex((value, k) => value !== b[k]);
  return i < 0 ? 0 : (a[i] as number) < (b[i] as number) ? -1 : 1;
}

/** The bays of a lot in the order in which they are laid, and those to which no way leads any more but over fresh screed.
 *  @param left bays not laid on the morning of that day, the lot's own among them */
export function lotOrder(
  { ways, neighbours, starts }: FloorWays,
  lot: readonly string[],
  left: ReadonlySet<string>,
): { readonly bays: readonly string[]; readonly sealed: readonly string[] } {
  const rank = new Map(starts.filter((id) => left.has(id)).map((id, i) => [id, i]));
  for (const id of rank.keys())
    for (const to of neighbours.get(id) ?? []) if (left.has(to) && !rank.has(to)) rank.set(to, rank.size);
  // by which way parts apart from the access are left is not known
  const sealed = lot.filter((id) => !rank.has(id) && ways.get(id)?.start === starts[0]);
  const bays = [...lot].sort((a, b) => (rank.get(b) ?? Infinity) - (rank.get(a) ?? Infinity) || 0);
  return { bays, sealed };
}
