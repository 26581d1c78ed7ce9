import { boxIndexOf } from '../geometry/box-index.ts';
import { regionDeepestPoint } from '../geometry/deepest-point.ts';
import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointDirection, pointDistance, vectorLength } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { boxAround, boxOf, type Region } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import { type Analysis, type Joint, jointIsInRoom } from '../plan/analysis.ts';
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

/** What in the other version those come from or became that have no partner there. */
export type Kin<T> = ReadonlyMap<T, readonly T[]>;

interface JointMatch {
  readonly pairs: readonly Pair<Joint>[];
  /** Of joints that have no partner: those of the other version on whose line they stand for more than half of the shorter of the two, such as both parts
   *  of a joint that a new wall has parted. */
  readonly kin: Kin<Joint>;
}

/** Joints that stand where they stood first, whatever they are called and why ever they stand there; then by key, by what they stand for, and by place.
 *  @param nowRoom the id that a room of the earlier version has now */
export function jointMatch(before: Analysis, now: Analysis, nowRoom: (id: string) => string): JointMatch {
  const stayed = jointsStayed(before.joints, now.joints);
  const found = new Set<Joint | null>(stayed.flatMap((pair) => [pair.before, pair.now]));
  const left = (joints: readonly Joint[]) => joints.filter((joint) => !found.has(joint));
  const rooms = [roomsBeside(before, nowRoom), roomsBeside(now, (id) => id)] as const;
  const shareRoom = (a: Joint, b: Joint) => rooms[0](a).some((room) => rooms[1](b).includes(room));
  const pairs = [...stayed, ...pairsByName(left(before.joints), left(now.joints), shareRoom)];
  return { pairs, kin: kinOf(pairs, before.joints, now.joints) };
}

/** Joints both ends of which are where they were. */
function jointsStayed(before: readonly Joint[], now: readonly Joint[]): readonly Pair<Joint>[] {
  const index = boxIndexOf(now.map(({ line }) => boxOf(line)));
  return before.flatMap((joint) => {
    const other = index
      .near(boxAround(boxOf(joint.line), EQUAL_LENGTH_MM))
      .flatMap((i) => now[i] ?? [])
      .find(
        (each) => placesDistance(joint, each) < EQUAL_LENGTH_MM && jointShift(joint, each).acrossMm < EQUAL_LENGTH_MM,
      );
    return other === undefined ? [] : [{ before: joint, now: other }];
  });
}

function pairsByName(
  before: readonly Joint[],
  now: readonly Joint[],
  shareRoom: (a: Joint, b: Joint) => boolean,
): readonly Pair<Joint>[] {
  // an id that was given up is given anew: drawn in another room it is another joint
  const isOwn = (a: Joint, b: Joint) => a.sources.length > 0 && (a.kind !== 'drawn' || shareRoom(a, b));
  const isNear = (a: Joint, b: Joint) => turnDeg(a, b) <= mostTurnDeg && jointShift(a, b).acrossMm <= mostMovedMm;
  // of several joints of one doorway each is known by its place
  const several = new Set([...before, ...now].flatMap(({ key }) => (keyBase(key) === key ? [] : [keyBase(key)])));
  const byKey = pairsBy(
    before,
    now,
    ({ key }) => (several.has(keyBase(key)) ? '' : key),
    (a, b) => isOwn(a, b) || isNear(a, b),
  );
  const near = nearestPairs(byKey.before, byKey.now, (a, b) => {
    const isPlace = placesDistance(a, b) <= samePlaceMm;
    const isKnown = a.kind === b.kind && isOwn(a, b) && a.sources.join('\n') === b.sources.join('\n');
    if (isKnown) return { rank: 0, awayMm: placesDistance(a, b), at: [middleOf(a), middleOf(b)] };
    if (turnDeg(a, b) > mostTurnDeg || placesDistance(a, b) > 2 * mostMovedMm) return null;
    const shift = jointShift(a, b);
    if (shift.acrossMm > mostMovedMm || shift.overlapMm <= 0 || !(isPlace || shareRoom(a, b))) return null;
    const isKind = a.kind === b.kind;
    if (!isKind && !(jointIsInRoom(a) && jointIsInRoom(b)) && !isPlace) return null;
    return { rank: isKind ? 1 : 2, awayMm: placesDistance(a, b), at: [middleOf(a), middleOf(b)] };
  });
  return [...byKey.pairs, ...near];
}

function kinOf(pairs: readonly Pair<Joint>[], before: readonly Joint[], now: readonly Joint[]): Kin<Joint> {
  const lies = (joint: Joint, others: readonly Joint[]) =>
    others.filter((other) => {
      if (turnDeg(joint, other) > mostTurnDeg) return false;
      const { acrossMm, overlapMm } = jointShift(joint, other);
      return acrossMm < EQUAL_LENGTH_MM && overlapMm * 2 > 1000 * Math.min(joint.lengthM, other.lengthM);
    });
  return new Map(
    pairs.flatMap((pair): [Joint, readonly Joint[]][] => {
      if (pair.before === null) return pair.now === null ? [] : [[pair.now, lies(pair.now, before)]];
      return pair.now === null ? [[pair.before, lies(pair.before, now)]] : [];
    }),
  );
}

/** A key without the number of those that share it. Example: "doorway:d1#2" -> "doorway:d1" */
function keyBase(key: string): string {
  return key.replace(/#\d+$/u, '');
}

/** How far a joint has moved, mm: square to itself; one that stands in an opening also along it, since it goes where the opening goes. */
export function jointMovedMm(before: Joint, now: Joint): number {
  const { acrossMm, alongMm } = jointShift(before, now);
  const isInOpening = now.kind === 'doorway' || now.kind === 'neck';
  const movedMm = isInOpening ? vectorLength(acrossMm, alongMm) : acrossMm;
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
