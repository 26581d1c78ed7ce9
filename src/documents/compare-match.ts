import { regionDeepestPoint } from '../geometry/deepest-point.ts';
import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import type { Region } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import { type Analysis, type Bay, type Joint, jointIsInRoom } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';

/** What of one version of a plan is what of the other. Swapping the two gives the same pairs. */

export interface Pair<T> {
  readonly before: T | null;
  readonly now: T | null;
}

/** Farther from its place than this a joint is another one, mm. */
export const mostMovedMm = 1500;
/** Nearer than this it is the same one whatever rooms lie beside it, mm. */
export const samePlaceMm = 100;
/** Joints that turn by more than this are different ones, degrees. */
const mostTurnDeg = 15;

/** Rooms by their ids; one whose id was changed by the floor that it is. */
export function roomPairs(before: Plan, now: Plan): readonly Pair<Plan['rooms'][number]>[] {
  const byId = pairsBy(before.rooms, now.rooms, ({ id }) => id);
  return [...byId.pairs, ...regionPairs(byId.before, byId.now)];
}

/** @param nowRoom the id that a room of the earlier version has now */
export function bayPairs(
  before: Analysis,
  now: Analysis,
  nowRoom: (id: string) => string,
): readonly Pair<Analysis['bays'][number]>[] {
  const byKey = pairsBy(before.bays, now.bays, ({ key }) => key, sharesFloor);
  const roomsOf = (rooms: readonly string[]) => [...rooms].sort().join('\n');
  const same = nearestPairs(byKey.before, byKey.now, (a, b) => {
    if (roomsOf(a.rooms.map(nowRoom)) !== roomsOf(b.rooms) || !sharesFloor(a, b)) return null;
    return { rank: 0, awayMm: pointDistance(a.stillPoint, b.stillPoint), at: [a.stillPoint, b.stillPoint] };
  });
  return [...byKey.pairs, ...same];
}

export function jointPairs(before: Analysis, now: Analysis, nowRoom: (id: string) => string): readonly Pair<Joint>[] {
  const roomsBefore = roomsBeside(before, nowRoom);
  const roomsNow = roomsBeside(now, (id) => id);
  const isSame = (a: Joint, b: Joint) => a.sources.length > 0 || turnDeg(a, b) <= mostTurnDeg;
  // of several joints of one doorway each is known by its place
  const several = new Set(
    [...before.joints, ...now.joints].flatMap(({ key }) => (keyBase(key) === key ? [] : [keyBase(key)])),
  );
  const byKey = pairsBy(before.joints, now.joints, ({ key }) => (several.has(keyBase(key)) ? '' : key), isSame);
  const near = nearestPairs(byKey.before, byKey.now, (a, b) => {
    const isPlace = placesDistance(a, b) <= samePlaceMm;
    const isKnown = a.kind === b.kind && a.sources.length > 0 && a.sources.join('\n') === b.sources.join('\n');
    if (isKnown) return { rank: 0, awayMm: placesDistance(a, b), at: [middleOf(a), middleOf(b)] };
    if (turnDeg(a, b) > mostTurnDeg || placesDistance(a, b) > 2 * mostMovedMm) return null;
    const shift = jointShift(a, b);
    const isBeside = roomsBefore(a).some((room) => roomsNow(b).includes(room));
    if (shift.acrossMm > mostMovedMm || shift.overlapMm <= 0 || !(isPlace || isBeside)) return null;
    const isKind = a.kind === b.kind;
    if (!isKind && !(jointIsInRoom(a) && jointIsInRoom(b)) && !isPlace) return null;
    return { rank: isKind ? 1 : 2, awayMm: placesDistance(a, b), at: [middleOf(a), middleOf(b)] };
  });
  return [...byKey.pairs, ...near];
}

/** A key without the number of those that share it. Example: "doorway:d1#2" -> "doorway:d1" */
function keyBase(key: string): string {
  return key.replace(/#\d+$/u, '');
}

/** How far a joint has moved, mm: square to itself; one that stands in an opening also along it, since it goes where the opening goes. */
export function jointMovedMm(before: Joint, now: Joint): number {
  const { acrossMm, alongMm } = jointShift(before, now);
  const isInOpening = now.kind === 'doorway' || now.kind === 'neck';
  const movedMm = isInOpening ? Math.hypot(acrossMm, alongMm) : acrossMm;
  return movedMm < EQUAL_LENGTH_MM ? 0 : movedMm;
}

export interface Shift {
  /** The farthest that any of it has gone square to the two lines. */
  readonly acrossMm: number;
  /** By how much both ends have gone the same way along them. */
  readonly alongMm: number;
  /** Length along which the two stand beside each other; less than 0: a gap. */
  readonly overlapMm: number;
}

export function jointShift({ line: one }: Joint, { line: other }: Joint): Shift {
  const [a, b] = endsOf(one);
  const [c, d] = endsAlong(endsOf(other), pointDirection(a, b));
  const [ux, uy] = pointDirection([0, 0], sum(pointDirection(a, b), pointDirection(c, d)));
  const along = ([x, y]: Point) => x * ux + y * uy;
  const across = ([x, y]: Point) => y * ux - x * uy;
  const [atStart, atEnd] = [along(c) - along(a), along(d) - along(b)];
  const bends = [...bendsOff(one, other), ...bendsOff(other, one)];
  return {
    acrossMm: Math.max(Math.abs(across(c) - across(a)), Math.abs(across(d) - across(b)), ...bends),
    alongMm: atStart * atEnd > 0 ? Math.min(Math.abs(atStart), Math.abs(atEnd)) : 0,
    overlapMm: Math.min(along(b), along(d)) - Math.max(along(a), along(c)),
  };
}

/** How far the bends of a line stand off another. */
function bendsOff(line: readonly Point[], other: readonly Point[]): readonly number[] {
  return line
    .slice(1, -1)
    .map((bend) => Math.min(...other.slice(1).map((b, i) => segmentDistance(other[i] as Point, b, bend))));
}

function endsOf(line: readonly Point[]): readonly [Point, Point] {
  return [line[0] ?? [0, 0], line[line.length - 1] ?? [0, 0]];
}

function endsAlong([c, d]: readonly [Point, Point], [ux, uy]: Point): readonly [Point, Point] {
  return (d[0] - c[0]) * ux + (d[1] - c[1]) * uy < 0 ? [d, c] : [c, d];
}

function sum(a: Point, b: Point): Point {
  return [a[0] + b[0], a[1] + b[1]];
}

function middleOf({ line }: Joint): Point {
  return lineMiddle(line);
}

/** Mean distance of the ends of two lines. */
function placesDistance({ line: one }: Joint, { line: other }: Joint): number {
  const [a, b] = endsOf(one);
  const [c, d] = endsAlong(endsOf(other), pointDirection(a, b));
  return (pointDistance(a, c) + pointDistance(b, d)) / 2;
}

/** Angle between two lines, 0 to 90. */
function turnDeg({ line: one }: Joint, { line: other }: Joint): number {
  const [[ax, ay], [bx, by]] = [pointDirection(...endsOf(one)), pointDirection(...endsOf(other))];
  return (Math.atan2(Math.abs(ax * by - ay * bx), Math.abs(ax * bx + ay * by)) * 180) / Math.PI;
}

function roomsBeside({ bays }: Analysis, nowRoom: (id: string) => string): (joint: Joint) => readonly string[] {
  const rooms = new Map(bays.map((bay) => [bay.id, bay.rooms.map(nowRoom)]));
  return (joint) => joint.bays.flatMap((id) => rooms.get(id) ?? []);
}

interface Sorted<T> {
  readonly pairs: readonly Pair<T>[];
  /** Those that have found none. */
  readonly before: readonly T[];
  readonly now: readonly T[];
}

/** @param keyOf empty: known by no key */
function pairsBy<T>(
  before: readonly T[],
  now: readonly T[],
  keyOf: (each: T) => string,
  isSame: (a: T, b: T) => boolean = () => true,
): Sorted<T> {
  const byKey = new Map(now.map((each) => [keyOf(each), each]));
  byKey.delete('');
  const pairs = before.flatMap((each) => {
    const other = byKey.get(keyOf(each));
    return other !== undefined && isSame(each, other) ? [{ before: each, now: other }] : [];
  });
  const found = new Set<T | null>(pairs.flatMap((pair) => [pair.before, pair.now]));
  return { pairs, before: before.filter((each) => !found.has(each)), now: now.filter((each) => !found.has(each)) };
}

export interface Nearness {
  /** The least goes first. */
  readonly rank: number;
  readonly awayMm: number;
  /** Where the two stand: of those that are as near the first on the sheet goes first. */
  readonly at: readonly [Point, Point];
}

/** The nearest of all first, each once; then those that have found none.
 *  @param nearness null: not the same thing */
export function nearestPairs<T>(
  before: readonly T[],
  now: readonly T[],
  nearness: (a: T, b: T) => Nearness | null,
): readonly Pair<T>[] {
  const wishes = before
    .flatMap((one) =>
      now.flatMap((other) => {
        const near = nearness(one, other);
        return near === null ? [] : [{ one, other, ...near }];
      }),
    )
    .sort((a, b) => a.rank - b.rank || a.awayMm - b.awayMm || placeRank(a.at) - placeRank(b.at));
  const taken = new Set<T>();
  const pairs: Pair<T>[] = [];
  for (const { one, other } of wishes) {
    if (taken.has(one) || taken.has(other)) continue;
    taken.add(one).add(other);
    pairs.push({ before: one, now: other });
  }
  return [
    ...pairs,
    ...before.filter((each) => !taken.has(each)).map((each) => ({ before: each, now: null })),
    ...now.filter((each) => !taken.has(each)).map((each) => ({ before: null, now: each })),
  ];
}

function placeRank([[ax, ay], [bx, by]]: readonly [Point, Point]): number {
  return ax + bx + 2 * (ay + by);
}

function regionPairs<T extends Region>(before: readonly T[], now: readonly T[]): readonly Pair<T>[] {
  const deepest = new Map([...before, ...now].map((each) => [each, regionDeepestPoint(each).point]));
  return nearestPairs(before, now, (a, b) => {
    const at = [deepest.get(a) ?? [0, 0], deepest.get(b) ?? [0, 0]] as const;
    const isSame = regionContains(b, at[0]) && regionContains(a, at[1]);
    return isSame ? { rank: 0, awayMm: pointDistance(...at), at } : null;
  });
}

/** Whether the still point of one of them lies in the other. */
function sharesFloor(a: Bay, b: Bay): boolean {
  return regionContains(b, a.stillPoint) || regionContains(a, b.stillPoint);
}
