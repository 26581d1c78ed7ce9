import { intervalsChained, lineWithin } from '../geometry/line-clip.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { type Box, boxOf, type Ring } from '../geometry/ring.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import { papersOf } from '../plan/papers.ts';
import { boxesMeet } from './ink-clip.ts';
import type { PaperSource } from './paper-source.ts';
import { sideOf } from './set-out-walls.ts';
import { isInWall, type JointSetting, originIsOnSheet, wholeMm } from './setting-out.ts';
import { basePair, frameFigures, pointName, roomName, type SetOutFrame } from './setting-out-frame.ts';
import { placeIsDrawn } from './setting-out-sheet.ts';

/** What is checked once lines are snapped: lengths between places that are marked. A corner of a rectangle that nobody has marked, or that lies outside the
 *  building, is no place to hold a tape to. */

export interface SetOutCheck {
  /** Such as "base point 1 to the upper end of J4". */
  readonly words: string;
  readonly lengthMm: number;
  /** On the sheet. */
  readonly between: readonly [Point, Point];
}

/** Lengths between base points, and of each frame its diagonals: from both base points to far ends of joints, else between the ends of joints that lie farthest
 *  apart, and the origin where it is on the sheet. They run over open floor where that can be. */
export function setOutChecks(source: PaperSource, settings: readonly JointSetting[]): readonly SetOutCheck[] {
  const byFrame = new Map<SetOutFrame, JointSetting[]>();
  for (const setting of settings) {
    if (setting.frame === null || isInWall(setting)) continue;
    const own = byFrame.get(setting.frame) ?? [];
    byFrame.set(setting.frame, own);
    own.push(setting);
  }
  const floors = floorsOf(source);
  return [...pointChecks(source), ...[...byFrame].flatMap(([frame, own]) => frameChecks(source, frame, own, floors))];
}

/** A place that is marked on site. */
interface Marked {
  readonly words: string;
  readonly at: Point;
  /** In its frame. */
  readonly figures: Point;
  /** Of the joint whose end it is. */
  readonly run: string | null;
}

function frameChecks(
  source: PaperSource,
  frame: SetOutFrame,
  settings: readonly JointSetting[],
  floors: readonly Floor[],
): readonly SetOutCheck[] {
  const { room } = frame;
  const ends = settings.flatMap((setting) => jointEnds(setting, frame));
  const bases = frame.by === 'base-points' ? basesOf(source, frame) : [];
  if (bases.length > 0) return bases.flatMap((base) => farCheck(base, ends, floors));
  const isMarked = frame.by !== 'base-points' && originIsOnSheet(source, frame);
  const origin: Marked = { words: 'origin', at: frame.origin, figures: [0, 0], run: null };
  const marked = isMarked ? [origin, ...ends] : ends;
  if (room === null) return [1, -1].flatMap((rise) => diagonalCheck(marked, rise, [floors, null]));
  const outlines = source.plan.rooms.filter(({ id }) => id === room).map(({ outline }) => floorOf([outline], [room]));
  const sights = [floors.filter(({ rooms }) => rooms.includes(room)), outlines];
  return [1, -1]
    .flatMap((rise) => diagonalCheck(marked, rise, sights))
    .map((check) => ({ ...check, words: `${check.words} (${roomName(source, room)})` }));
}

interface Base extends Marked {
  /** Whether the other base point lies at greater or at lesser x. */
  readonly way: 1 | -1;
}

/** The base points that a frame is laid through, as far as they are drawn. */
function basesOf({ file, plan }: PaperSource, frame: SetOutFrame): readonly Base[] {
  return (basePair(papersOf(file).basePoints) ?? []).flatMap((point, i): readonly Base[] => {
    if (!placeIsDrawn(plan, point.at)) return [];
    const words = `base point ${pointName(point)}`;
    return [{ words, at: point.at, figures: frameFigures(frame, point.at), run: null, way: i === 0 ? 1 : -1 }];
  });
}

/** Both ends of a joint, each by its side as the sheet is read. */
function jointEnds({ joint, places }: JointSetting, frame: SetOutFrame): readonly Marked[] {
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined || pointDistance(first, last) < WELD_MM) return [];
  return [
    [first, last],
    [last, first],
  ].map(([at, other]) => ({
    words: `the ${sideOf(pointDirection(other as Point, at as Point))} end of ${joint.id}`,
    at: at as Point,
    figures: frameFigures(frame, at as Point),
    run: joint.run,
  }));
}

/** A length that runs less than this along x or along y, mm, shows no error of the angle between them. */
const leastSideMm = 1000;
/** So many ends are looked at for one that is seen, the farthest first. */
const endsTried = 40;

/** From a base point to the farthest end on the side of the other one, so that both lengths cross; where none is seen over open floor, to the farthest of all:
 *  instruments look through openings. */
function farCheck({ way, ...base }: Base, ends: readonly Marked[], floors: readonly Floor[]): readonly SetOutCheck[] {
  const far = ends
    .map((end) => ({ end, along: end.figures[0] - base.figures[0], aside: Math.abs(end.figures[1] - base.figures[1]) }))
    .filter(({ along, aside }) => Math.min(Math.abs(along), aside) >= leastSideMm)
    .map(({ end, along, aside }) => ({ end, mm: wholeMm(way * along + aside) }))
    .sort((a, b) => b.mm - a.mm)
    .slice(0, endsTried)
    .map(({ end }) => end);
  const found = far.find((end) => isOverFloor(floors, base.at, end.at)) ?? far[0];
  return found === undefined ? [] : [checkOf(base, found)];
}

/** So many places at each end of a diagonal are looked at. */
const placesTried = 6;

/** The longest length that runs to greater x and, by `rise`, to greater or to lesser y.
 *  @param sights that it may run over, the best first; null for anything */
function diagonalCheck(
  marked: readonly Marked[],
  rise: number,
  sights: readonly (readonly Floor[] | null)[],
): readonly SetOutCheck[] {
  const score = ({ figures: [x, y] }: Marked) => wholeMm(x + rise * y);
  const sorted = [...marked].sort((a, b) => score(a) - score(b));
  const pairs = sorted
    .slice(0, placesTried)
    .flatMap((from) => sorted.slice(-placesTried).map((to) => ({ from, to, mm: score(to) - score(from) })))
    .filter(({ from, to }) => {
      const [alongMm, asideMm] = [to.figures[0] - from.figures[0], rise * (to.figures[1] - from.figures[1])];
      return Math.min(alongMm, asideMm) >= leastSideMm && (from.run === null || from.run !== to.run);
    })
    .sort((a, b) => b.mm - a.mm);
  for (const sight of sights) {
    const found = pairs.find(({ from, to }) => sight === null || isOverFloor(sight, from.at, to.at));
    if (found === undefined) continue;
    const { from, to } = found;
    return [to.run === null ? checkOf(to, from) : checkOf(from, to)];
  }
  return [];
}

function checkOf(from: Marked, to: Marked): SetOutCheck {
  return {
    words: `${from.words} to ${to.words}`,
    lengthMm: wholeMm(pointDistance(from.at, to.at)),
    between: [from.at, to.at],
  };
}

interface Floor {
  readonly rings: readonly Ring[];
  readonly box: Box;
  readonly rooms: readonly string[];
}

function floorsOf({ analysis }: PaperSource): readonly Floor[] {
  return analysis.bays.map(({ outline, holes, rooms }) => floorOf([outline, ...holes], rooms));
}

function floorOf(rings: readonly Ring[], rooms: readonly string[]): Floor {
  return { rings, box: boxOf(rings.flat()), rooms };
}

/** Whether a tape can be held from one place to the other: over bays that follow each other, and through no wall and no column. */
function isOverFloor(floors: readonly Floor[], from: Point, to: Point): boolean {
  const box = boxOf([from, to]);
  const way = pointDirection(from, to);
  const stretches = floors.flatMap((floor) => (boxesMeet(floor.box, box) ? lineWithin(from, way, floor.rings) : []));
  const toMm = pointDistance(from, to);
  return intervalsChained(stretches).some(([begin, end]) => begin <= WELD_MM && end >= toMm - WELD_MM);
}

/** Lengths between so many base points are all told; of more, those from the first. */
const mostCrossed = 4;

function pointChecks({ file, plan }: PaperSource): readonly SetOutCheck[] {
  const basePoints = papersOf(file).basePoints.filter(({ at }) => placeIsDrawn(plan, at));
  return basePoints.flatMap((one, i) =>
    basePoints.slice(i + 1).flatMap((other): SetOutCheck[] =>
      i > 0 && basePoints.length > mostCrossed
        ? []
        : [
            {
              words: `base point ${pointName(one)} to ${pointName(other)}`,
              lengthMm: wholeMm(pointDistance(one.at, other.at)),
              between: [one.at, other.at],
            },
          ],
    ),
  );
}
