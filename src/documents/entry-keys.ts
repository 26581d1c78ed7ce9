import { boxIndexOf } from '../geometry/box-index.ts';
import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointDirection, pointDistance, vectorLength } from '../geometry/point.ts';
import { regionCentroid, regionContains } from '../geometry/region.ts';
import { boxAround, boxOf } from '../geometry/ring.ts';
import { type Bay, type Joint, type JointKind, jointIsInRoom, jointKinds } from '../plan/analysis.ts';
import { mostMovedMm, type Nearness, nearestPairs } from './compare-match.ts';
import type { PaperSource } from './paper-source.ts';

/** To which joint or bay what is entered under a key belongs.
 *
 *  Accepts: keys under which something is entered, and the floor as it is. Guarantees: no key goes to two things and no thing to two keys, whatever the
 *  order of the keys.
 *
 *  Steps: 1. a key that the floor has holds; 2. any other says the kind, the rooms and, to half a metre, the place of what it stood for: of the things that
 *  no key names, the nearest of that kind and those rooms takes it, as long as a comparison would call it moved; a joint moves square to itself, so that
 *  the place lies beside it and not past its end; 3. what is left is gone. */

export interface EntryKeys {
  /** By the key that is entered: the thing that it is entered for now. */
  readonly now: ReadonlyMap<string, EntryPlace>;
  /** Keys of which nothing is left on the floor. */
  readonly gone: readonly string[];
}

export interface EntryPlace {
  /** Of the thing as it is. */
  readonly key: string;
  /** From the place in the key that is entered, mm; 0 where it is the thing's own; null where the key has no place. */
  readonly awayMm: number | null;
}

/** A key read. */
export interface KeyRead {
  readonly kind: string;
  /** Rooms, or the thing of the plan that it stands for. */
  readonly of: string;
  readonly at: Point | null;
}

export type EntryFloor = Pick<PaperSource, 'plan' | 'analysis'>;

const placed = /^([a-z]+):(.*)@(-?\d{1,6}(?:\.\d)?),(-?\d{1,6}(?:\.\d)?)(?:#\d+)?$/su;
const unplaced = /^([a-z]+):(.*?)(?:#\d+)?$/su;

/** Null: no key that the program makes. Example: "field:living@5.5,9" -> a found joint of the living room, at [5500, 9000] */
export function keyRead(key: string): KeyRead | null {
  const [, kind = '', of = '', x, y] = placed.exec(key) ?? unplaced.exec(key) ?? [];
  if (kind !== 'bay' && !jointKinds.some((each) => each === kind)) return null;
  return { kind, of, at: x === undefined || y === undefined ? null : [Number(x) * 1000, Number(y) * 1000] };
}

/** Ids of the rooms that a key names. */
export function keyRooms({ of }: KeyRead): readonly string[] {
  return of.split('+');
}

/** Keys have places to half metres: what they name lies within half of that to each side, mm. */
const roundedMm = 250;

/** How far a place surely lies from what a key names, mm. */
function surelyAwayMm([x, y]: Point, [keyX, keyY]: Point): number {
  return vectorLength(Math.max(0, Math.abs(x - keyX) - roundedMm), Math.max(0, Math.abs(y - keyY) - roundedMm));
}

/** Rooms that the place of a key may lie in. */
export function keyPlaceRooms({ plan }: Pick<EntryFloor, 'plan'>, [x, y]: Point): readonly string[] {
  const ways = [0, -roundedMm, roundedMm];
  const places = ways.flatMap((dx) => ways.map((dy): Point => [x + dx, y + dy]));
  return plan.rooms.filter((room) => places.some((place) => regionContains(room, place))).map(({ id }) => id);
}

export function jointEntryKeys(keys: Iterable<string>, floor: EntryFloor): EntryKeys {
  const { joints, bays } = floor.analysis;
  const rooms = new Map(bays.map((bay) => [bay.id, bay.rooms]));
  return entryKeys(keys, joints, (read) => {
    const isDoorway = read.kind === 'doorway';
    // a key that stands for a thing of the plan does not say the rooms
    const own = read.at !== null && hasSource(read) ? keyPlaceRooms(floor, read.at) : keyRooms(read);
    return (joint) => {
      const isThing = joint.kind === read.kind && joint.sources.length > 0 && joint.sources.join('+') === read.of;
      if (isDoorway) return isThing ? nearness(0, null, lineMiddle(joint.line)) : null;
      const sharesRoom = joint.bays.some((id) => rooms.get(id)?.some((room) => own.includes(room)));
      if (read.at === null || !sharesRoom) return null;
      const at = nearestOn(joint.line, read.at);
      if (isThing) return nearness(0, read.at, at);
      const isKind =
        joint.kind === read.kind || (jointIsInRoom(joint) && jointIsInRoom({ kind: read.kind as JointKind }));
      const isBeside = pastEndMm(joint.line, read.at) <= vectorLength(roundedMm, roundedMm);
      return isKind && isBeside && surelyAwayMm(at, read.at) <= mostMovedMm ? nearness(1, read.at, at) : null;
    };
  });
}

/** The place on a joint, which is straight, nearest to another. */
function nearestOn(line: readonly Point[], at: Point): Point {
  const [[x, y], [ux, uy], lengthMm] = straightOf(line, at);
  const alongMm = Math.min(lengthMm, Math.max(0, (at[0] - x) * ux + (at[1] - y) * uy));
  return [x + ux * alongMm, y + uy * alongMm];
}

/** How far a place lies past the nearer end of a joint, along it, mm. */
function pastEndMm(line: readonly Point[], at: Point): number {
  const [[x, y], [ux, uy], lengthMm] = straightOf(line, at);
  const alongMm = (at[0] - x) * ux + (at[1] - y) * uy;
  return Math.max(0, -alongMm, alongMm - lengthMm);
}

function straightOf(line: readonly Point[], at: Point): readonly [from: Point, way: Point, lengthMm: number] {
  const [from, to] = [line[0] ?? at, line[line.length - 1] ?? at];
  return [from, pointDirection(from, to), pointDistance(from, to)];
}

function hasSource({ kind }: KeyRead): boolean {
  return kind === 'drawn' || kind === 'structural';
}

export function bayEntryKeys(keys: Iterable<string>, { plan, analysis }: EntryFloor): EntryKeys {
  return entryKeys(keys, analysis.bays, (read) => {
    const own = keyRooms(read);
    // a key without a place stands for the whole of a room
    const room = plan.rooms.find(({ id }) => id === read.of);
    const at = read.at ?? (room && regionCentroid(room));
    return (bay) => {
      if (at === undefined || !bay.rooms.some((id) => own.includes(id))) return null;
      const middle = regionCentroid(bay);
      if (regionContains(bay, at)) return nearness(0, at, middle);
      return read.at === null || surelyAwayMm(middle, at) <= mostMovedMm ? nearness(1, at, middle) : null;
    };
  });
}

function entryOf(key: string, near: Nearness | null): readonly (readonly [string, Nearness])[] {
  return near === null ? [] : [[key, near]];
}

function nearness(rank: number, from: Point | null, to: Point): Nearness {
  return { rank, awayMm: from === null ? 0 : pointDistance(from, to), at: [from ?? to, to] };
}

function entryKeys<Thing extends Bay | Joint>(
  keys: Iterable<string>,
  things: readonly Thing[],
  nearnessOf: (read: KeyRead) => (thing: Thing) => Nearness | null,
): EntryKeys {
  const entered = [...new Set(keys)];
  const byKey = new Map(things.map((thing) => [thing.key, thing]));
  const now = new Map(entered.filter((key) => byKey.has(key)).map((key) => [key, { key, awayMm: 0 }] as const));
  const left = entered.filter((key) => !byKey.has(key));
  if (left.length === 0) return { now, gone: [] };
  const reads = new Map(left.map((key) => [key, keyRead(key)]));
  // neither of the order in which keys were entered nor of the numbers of things
  const free = [...byKey.values()].filter(({ key }) => !now.has(key)).sort((a, b) => (a.key < b.key ? -1 : 1));
  const index = boxIndexOf(free.map((thing) => boxOf('outline' in thing ? thing.outline : thing.line)));
  const wishes = new Map(
    [...reads].map(([key, read]): [string, ReadonlyMap<string, Nearness>] => {
      if (read === null) return [key, new Map()];
      const nearness = nearnessOf(read);
      const box = read.at === null || hasSource(read) ? null : boxAround(boxOf([read.at]), mostMovedMm + roundedMm);
      const able = box === null ? free : index.near(box).flatMap((i) => free[i] ?? []);
      return [key, new Map(able.flatMap((thing) => entryOf(thing.key, nearness(thing))))];
    }),
  );
  const near = (key: string, other: string) => wishes.get(key)?.get(other) ?? null;
  const found = new Map<string, EntryPlace>(now);
  for (const { before, now: key } of nearestPairs(
    [...left].sort(),
    free.map(({ key }) => key),
    near,
  )) {
    if (before === null || key === null) continue;
    found.set(before, { key, awayMm: reads.get(before)?.at ? (near(before, key)?.awayMm ?? null) : null });
  }
  return { now: found, gone: left.filter((key) => !found.has(key)) };
}
