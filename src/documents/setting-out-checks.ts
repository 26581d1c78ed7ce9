import { intervalsChained, lineWithin } from '../geometry/line-clip.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { type Box, boxOf, type Ring } from '../geometry/ring.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import { papersOf } from '../plan/papers.ts';
import { boxesMeet } from './ink-clip.ts';
import { type PaperSource, perSource } from './paper-source.ts';
import { sideOf } from './set-out-walls.ts';
import { isInWall, type JointSetting, jointSettings, originIsOnSheet, wholeMm } from './setting-out.ts';
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
 *  apart, and the origin where it is on the sheet. Of long ones those through the fewest walls are taken. */
export const setOutChecks = perSource((source: PaperSource): readonly SetOutCheck[] => {
  const byFrame = new Map<SetOutFrame, JointSetting[]>();
  for (const setting of jointSettings(source)) {
    if (setting.frame === null || isInWall(setting)) continue;
    const own = byFrame.get(setting.frame) ?? [];
    byFrame.set(setting.frame, own);
    own.push(setting);
  }
  const floors = floorsOf(source);
  return [...pointChecks(source), ...[...byFrame].flatMap(([frame, own]) => frameChecks(source, frame, own, floors))];
});

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
  if (room === null) return [1, -1].flatMap((rise) => diagonalCheck(marked, rise, { floors, within: null }));
  const within = source.plan.rooms.filter(({ id }) => id === room).map(({ outline }) => floorOf([outline], [room]));
  const own = floors.filter(({ rooms }) => rooms.includes(room));
  return [1, -1]
    .flatMap((rise) => diagonalCheck(marked, rise, { floors: own, within }))
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
/** So many ends are looked at, the farthest first. */
const endsTried = 40;

/** From a base point to a far end on the side of the other one, so that both lengths cross. */
function farCheck({ way, ...base }: Base, ends: readonly Marked[], floors: readonly Floor[]): readonly SetOutCheck[] {
  const far = ends
    .map((end) => ({ end, along: end.figures[0] - base.figures[0], aside: Math.abs(end.figures[1] - base.figures[1]) }))
    .filter(({ along, aside }) => Math.min(Math.abs(along), aside) >= leastSideMm)
    .map(({ end, along, aside }) => ({ from: base, to: end, mm: wholeMm(way * along + aside) }))
    .sort((a, b) => b.mm - a.mm);
  return fewestWalls(far.slice(0, endsTried), floors);
}

/** So many places at each end of a diagonal are looked at. */
const placesTried = 6;

/** A long length that runs to greater x and, by `rise`, to greater or to lesser y.
 *  @param within that it does not leave; null where it may go anywhere */
function diagonalCheck(
  marked: readonly Marked[],
  rise: number,
  { floors, within }: { readonly floors: readonly Floor[]; readonly within: readonly Floor[] | null },
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
    .filter(({ from, to }) => within === null || gapsBetween(within, from.at, to.at) === 0)
    .map(({ from, to, mm }) => (to.run === null ? { from: to, to: from, mm } : { from, to, mm }))
    .sort((a, b) => b.mm - a.mm);
  return fewestWalls(pairs, floors);
}

interface Pair {
  readonly from: Marked;
  readonly to: Marked;
}

/** A tape is held over open floor, and an instrument looks through openings: of long lengths the one that meets the fewest walls and columns, the first of
 *  those that meet as many. */
function fewestWalls(pairs: readonly Pair[], floors: readonly Floor[]): readonly SetOutCheck[] {
  let best: (Pair & { readonly gaps: number }) | null = null;
  for (const { from, to } of pairs) {
    const gaps = gapsBetween(floors, from.at, to.at);
    if (best === null || gaps < best.gaps) best = { from, to, gaps };
    if (gaps === 0) break;
  }
  return best === null ? [] : [checkOf(best)];
}

function checkOf({ from, to, gaps }: Pair & { readonly gaps: number }): SetOutCheck {
  return {
    words: `${from.words} to ${to.words}${gaps === 0 ? '' : ' (a wall, a column or open ground lies between)'}`,
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

/** How often a length leaves the floor: 0 where it runs over bays that follow each other. */
function gapsBetween(floors: readonly Floor[], from: Point, to: Point): number {
  const box = boxOf([from, to]);
  const way = pointDirection(from, to);
  const stretches = floors.flatMap((floor) => (boxesMeet(floor.box, box) ? lineWithin(from, way, floor.rings) : []));
  const toMm = pointDistance(from, to);
  let [gaps, atMm] = [0, 0];
  for (const [begin, end] of intervalsChained(stretches)) {
    if (end <= WELD_MM || begin >= toMm - WELD_MM) continue;
    if (begin - atMm > WELD_MM) gaps += 1;
    atMm = end;
  }
  return toMm - atMm > WELD_MM ? gaps + 1 : gaps;
}

/** Lengths between so many base points are all told; of more, those from the first. */
const mostCrossed = 4;

function pointChecks({ file, plan }: PaperSource): readonly SetOutCheck[] {
  const basePoints = papersOf(file).basePoints.filter(({ at }) => placeIsDrawn(plan, at));
  return basePoints.flatMap((one, i) =>
    basePoints.slice(i + 1).flatMap((other): SetOutCheck[] =>
      // two at one place are told as such, and are no length
      (i > 0 && basePoints.length > mostCrossed) || wholeMm(pointDistance(one.at, other.at)) === 0
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
