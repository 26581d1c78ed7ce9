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
export function lotTaken(floor: FloorWays, { left, before, share }: LotWish): readonly string[] {
  const over = new Map<string, number>();
  const throughOf = (id: string) => floor.ways.get(id)?.through ?? null;
  for (const id of left) {
    const through = throughOf(id);
    if (through !== null) over.set(through, (over.get(through) ?? 0) + 1);
  }
  const lot: string[] = [];
  const free = new Set([...left].filter((id) => (over.get(id) ?? 0) === 0));
  for (;;) {
    const isOpen = (id: string) => free.has(id) && (lot.length === 0 || share([...lot, id]) <= 1);
    const from = lot.length === 0 ? before : lot;
    const next =
      lot.length === 0 || share(lot) < leastShare
        ? (nearestOpen(floor, { from, isOpen, steps: Infinity }) ?? nextApart(floor, { from, isOpen, among: free }))
        : nearestOpen(floor, { from, isOpen, steps: mostSteps });
    if (next === null) return lot;
    lot.push(next);
    free.delete(next);
    const through = throughOf(next);
    if (through === null || !left.has(through)) continue;
    const count = (over.get(through) ?? 0) - 1;
    over.set(through, count);
    if (count === 0) free.add(through);
  }
}

interface Search {
  readonly from: readonly string[];
  readonly isOpen: (id: string) => boolean;
}

/** Of the open bays that the fewest joints lie before, the farthest from the access. @param steps joints at most */
function nearestOpen(
  { ways, neighbours }: FloorWays,
  { from, isOpen, steps }: Search & { readonly steps: number },
): string | null {
  const seen = new Set(from);
  let ring: readonly string[] = from;
  for (let step = 0; step < steps && ring.length > 0; step++) {
    ring = [...new Set(ring.flatMap((id) => neighbours.get(id) ?? []))].filter((id) => !seen.has(id));
    for (const id of ring) seen.add(id);
    const found = leastOf(ring, isOpen, (id) => -(ways.get(id)?.lengthMm ?? 0));
    if (found !== null) return found;
  }
  return null;
}

/** Where no joint leads on: the bay nearest to where the work is, or the farthest from the access where it has not begun. */
function nextApart(
  { ways }: FloorWays,
  { from, isOpen, among }: Search & { readonly among: Iterable<string> },
): string | null {
  const at = ways.get(from[0] ?? '')?.middle;
  return leastOf(among, isOpen, (id) => {
    const way = ways.get(id);
    if (way === undefined) return 0;
    return at === undefined ? -way.lengthMm : pointDistance(at, way.middle);
  });
}

/** The first open one of the least figure. Whether it is open is asked last, as it takes longer. */
function leastOf(ids: Iterable<string>, isOpen: Search['isOpen'], figure: (id: string) => number): string | null {
  let least: { readonly id: string; readonly value: number } | null = null;
  for (const id of ids) {
    const value = figure(id);
    if ((least === null || value < least.value) && isOpen(id)) least = { id, value };
  }
  return least?.id ?? null;
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
