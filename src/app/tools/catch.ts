import { type Point, pointDirection, pointDistance } from '../../geometry/point.ts';
import { rayMeets, segmentNearest } from '../../geometry/segment.ts';
import { SAME_LINE_MM, TIE_SHARE, UNIT_SLACK, WELD_MM } from '../../geometry/tolerance.ts';
import type {
  CatchCoordinate,
  CatchCorner,
  Catches,
  CatchGrout,
  CatchSide,
  CatchSkew,
  GroutCaught,
  Lead,
} from './catch-lines.ts';
import { type SketchMark, sketchLine } from './sketch.ts';
import type { Hand } from './stance.ts';

/** Where the hand is caught, and by what. */
export interface Caught {
  readonly at: Point;
  /** Guides that say what caught it. */
  readonly marks: readonly SketchMark[];
  /** Whether it lies on a side of something (a wall, a joint). */
  readonly onSide: boolean;
}

export interface Hold {
  /** The last corner: the run to the hand starts there. */
  readonly from: Point | null;
  /** Direction of the run before, as a unit vector; null where there is none. */
  readonly before: Point | null;
  /** Corners drawn so far: the hand lines up with them as well. */
  readonly own: readonly Point[];
  /** The run keeps to right angles. */
  readonly square: boolean;
  /** From where steps are counted: what is moved straight stays straight. */
  readonly base?: Point;
}

export const freeHold: Hold = { from: null, before: null, own: [], square: false };

/** An upright or level line that catches one coordinate. */
interface Line extends CatchCoordinate {
  /** Where the line comes from, for its guide. */
  readonly source: Point;
  readonly words: string;
  /** By so much it counts as nearer. */
  readonly weight: number;
}

const groutWords = 'Grout line';

/** Sides and wall depths are meant sooner than lines of far corners. */
export const sideWeight = 0.5;
/** The depth of a wall catches beside its side, and by this much beyond, mm: round a corner. */
const beyondMm = 200;
/** Steps that a free hand falls on, mm. */
const steps = [1, 5, 10, 50, 100, 500] as const;

/** Brings the hand to what it most likely means: a corner, a side, a wall's depth beside a neighbour, a line with a corner
 *  elsewhere, a right angle; else to a round step. */
export function handCatch(catches: Catches, hand: Hand, hold: Hold): Caught {
  if (hand.loose) return { at: rounded(hand.at, 1), marks: [], onSide: false };
  const own = hold.own.map((at) => ({ at, of: '', offMm: 0 }));
  const corner = nearest([...own, ...catches.corners], hand.at, hand.reachMm);
  if (corner !== null && (hold.from === null || !hold.square || corner.of === '')) {
    return { at: corner.at, marks: cornerMarks(corner), onSide: corner.of !== '' && corner.offMm === 0 };
  }
  const lines = linesNear(catches, hand, hold);
  return hold.from !== null && hold.square
    ? caughtOnRay(catches, hand, hold, hold.from, lines)
    : caughtFree(catches, hand, [...lines, ...groutNear(catches, hand, lines)], hold.base ?? [0, 0]);
}

/** Upright and level grout lines, where no wall or joint is as near: what ends on a wall ends on the wall, not in the grout beside it. */
function groutNear({ grout }: Catches, { at, reachMm }: Hand, walls: readonly Line[]): readonly Line[] {
  const near = grout?.near(at) ?? [];
  return near.flatMap(({ at: source, way }): readonly Line[] => {
    const axis = Math.abs(way[0]) < UNIT_SLACK ? 0 : Math.abs(way[1]) < UNIT_SLACK ? 1 : null;
    if (axis === null || Math.abs(source[axis] - at[axis]) > reachMm) return [];
    if (walls.some((line) => line.axis === axis && line.onSide)) return [];
    return [{ axis, at: source[axis], source, words: groutWords, onSide: false, weight: sideWeight }];
  });
}

function cornerMarks({ at, of, offMm }: CatchCorner): readonly SketchMark[] {
  const words = of === '' ? 'First corner' : offMm > 0 ? `${offMm} mm from ${of}` : `Corner of ${of}`;
  return [
    { mark: 'dot', at, tone: 'guide' },
    { mark: 'words', at, text: of.startsWith('the middle') ? of : words, tone: 'guide' },
  ];
}

function nearest<Item extends { readonly at: Point }>(items: readonly Item[], to: Point, reach: number): Item | null {
  let best: Item | null = null;
  let least = reach;
  for (const item of items) {
    const away = pointDistance(item.at, to);
    if (away <= least) [best, least] = [item, away];
  }
  return best;
}

/** Step that a hand without a catch falls on, mm: the finest that it can meet at this zoom, a quarter of what it may miss. */
export function handStep(reachMm: number): number {
  return steps.find((step) => step >= reachMm / 4) ?? 1000;
}

function rounded([x, y]: Point, step: number): Point {
  return [Math.round(x / step) * step, Math.round(y / step) * step];
}

function linesNear(catches: Catches, { at, reachMm }: Hand, { own }: Hold): readonly Line[] {
  const lines: Line[] = [];
  const take = (source: Point, axis: 0 | 1, words: string, weight: number, onSide: boolean) => {
    lines.push({ axis, at: source[axis], source, words, weight, onSide });
  };
  const align = (source: Point, of: string) => {
    const words = of === '' ? 'In line with this outline' : `In line with ${of}`;
    for (const axis of [0, 1] as const) {
      if (Math.abs(source[axis] - at[axis]) <= reachMm) take(source, axis, words, 1, false);
    }
  };
  for (const point of own) align(point, '');
  for (const { at: point, of, offMm } of catches.corners) if (offMm === 0) align(point, of);
  for (const side of catches.sides) {
    const axis = uprightAxis(side);
    if (axis === null || Math.abs(side.a[axis] - at[axis]) > reachMm) continue;
    if (!besides(side, at, axis === 0 ? 1 : 0)) continue;
    take(side.a, axis, sideWords(side), sideWeight, side.offMm === 0);
  }
  return lines;
}

function sideWords({ of, offMm }: CatchSide): string {
  return offMm > 0 ? `${offMm} mm from ${of}` : `On ${of}`;
}

/** Which coordinate a side catches on its own: one that is upright or level over its whole length. */
function uprightAxis({ a, b }: CatchSide): 0 | 1 | null {
  if (Math.abs(a[0] - b[0]) <= SAME_LINE_MM) return 0;
  return Math.abs(a[1] - b[1]) <= SAME_LINE_MM ? 1 : null;
}

function besides({ a, b, offMm }: CatchSide, at: Point, along: 0 | 1): boolean {
  const beyond = offMm > 0 ? beyondMm : 0;
  return at[along] >= Math.min(a[along], b[along]) - beyond && at[along] <= Math.max(a[along], b[along]) + beyond;
}

function bestLine(lines: readonly Line[], axis: 0 | 1, to: Point): Line | null {
  const score = (line: Line) => Math.abs(line.at - to[axis]) * line.weight + pointDistance(line.source, to) * TIE_SHARE;
  let best: Line | null = null;
  for (const line of lines) if (line.axis === axis && (best === null || score(line) < score(best))) best = line;
  return best;
}

function caughtFree(catches: Catches, { at, reachMm }: Hand, lines: readonly Line[], base: Point): Caught {
  const x = bestLine(lines, 0, at);
  const y = bestLine(lines, 1, at);
  const upright = [x, y].filter((line) => line !== null);
  const skew = upright.length === 0 ? skewNear(catches, at, reachMm) : null;
  const onGrout = catches.grout?.askew({ at, reachMm }, upright, skew) ?? null;
  if (onGrout !== null) return groutCaught(onGrout, upright.some(({ onSide }) => onSide) || skew !== null);
  if (skew !== null) return skewCaught(skew);
  const step = handStep(reachMm);
  const [baseX, baseY] = base;
  const [byX, byY] = rounded([at[0] - baseX, at[1] - baseY], step);
  const [freeX, freeY] = [baseX + byX, baseY + byY];
  const to: Point = [x?.at ?? freeX, y?.at ?? freeY];
  return {
    at: to,
    marks: upright.flatMap((line) => lineMarks(line, to)),
    onSide: upright.some(({ onSide }) => onSide),
  };
}

function groutCaught({ at, lines }: GroutCaught, onSide: boolean): Caught {
  const words: SketchMark = { mark: 'words', at, text: groutWords, tone: 'guide' };
  return { at, marks: [...lines.map((line) => sketchLine([line.at, at], 'guide')), words], onSide };
}

function skewNear({ sides }: Catches, at: Point, reachMm: number): CatchSkew | null {
  let best: CatchSkew | null = null;
  let least = reachMm;
  for (const side of sides) {
    if (uprightAxis(side) !== null) continue;
    const near = segmentNearest(side.a, side.b, at);
    if (near.distance <= least) {
      least = near.distance;
      best = { side, at: near.at };
    }
  }
  return best;
}

function skewCaught({ side, at }: CatchSkew): Caught {
  const words: SketchMark = { mark: 'words', at, text: sideWords(side), tone: 'guide' };
  return { at, marks: [sketchLine([side.a, side.b], 'guide'), words], onSide: side.offMm === 0 };
}

/** The hand held to a right angle, and caught along the run. */
function caughtOnRay(catches: Catches, hand: Hand, hold: Hold, from: Point, lines: readonly Line[]): Caught {
  const way = squareWay(from, hand.at, hold.before, catches.grout?.near(from));
  return caughtAlong(catches, hand, { from, way, least: 0 }, lines);
}

/** The hand led along a line, and caught on the way: what moves a side square to itself. */
export function handCatchAlong(catches: Catches, hand: Hand, from: Point, way: Point): Caught {
  const lines = hand.loose ? [] : linesNear(catches, hand, freeHold);
  return caughtAlong(hand.loose ? noCatches : catches, hand, { from, way, least: Number.NEGATIVE_INFINITY }, lines);
}

const noCatches: Catches = { corners: [], sides: [] };

/** What is met on the way. */
interface Met {
  readonly run: number;
  readonly marks: (to: Point) => readonly SketchMark[];
  readonly side: boolean;
}

function caughtAlong(catches: Catches, hand: Hand, { from, way, least }: Lead, lines: readonly Line[]): Caught {
  const along = (hand.at[0] - from[0]) * way[0] + (hand.at[1] - from[1]) * way[1];
  let best: Met | null = null;
  let nearestMm = hand.reachMm;
  for (const line of lines) {
    if (Math.abs(way[line.axis]) < UNIT_SLACK) continue;
    const run = (line.at - from[line.axis]) / way[line.axis];
    const off = Math.abs(run - along) * line.weight;
    if (run > least && off <= nearestMm) {
      nearestMm = off;
      best = { run, marks: (to) => lineMarks(line, to), side: line.onSide };
    }
  }
  for (const side of catches.sides) {
    if (uprightAxis(side) !== null) continue;
    const run = rayMeets(from, way, side.a, side.b);
    if (run === null || run < WELD_MM || Math.abs(run - along) * sideWeight > nearestMm) continue;
    nearestMm = Math.abs(run - along) * sideWeight;
    best = { run, marks: () => [sketchLine([side.a, side.b], 'guide')], side: side.offMm === 0 };
  }
  const grout = best?.side === true ? null : catches.grout?.across(hand.at, { from, way, least }, along, nearestMm);
  if (grout != null) {
    best = { run: grout.run, marks: (to) => groutCaught({ at: to, lines: [grout.line] }, false).marks, side: false };
  }
  const step = handStep(hand.reachMm);
  const run = best?.run ?? Math.max(least, Math.round(along / step) * step);
  const to: Point = [from[0] + way[0] * run, from[1] + way[1] * run];
  return { at: to, marks: best?.marks(to) ?? [], onSide: best?.side ?? false };
}

const axes: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
];

/** The way from a corner that keeps to right angles with the sheet, with the run before or with grout lines, nearest to the hand. */
export function squareWay(
  from: Point,
  to: Point,
  before: Point | null,
  grout: readonly Pick<CatchGrout, 'way'>[] = [],
): Point {
  const [ux, uy] = pointDirection(from, to);
  const runs = [...(before === null ? [] : [before]), ...grout.map(({ way }) => way)];
  const ways = [
    ...axes,
    ...runs.flatMap(([x, y]): readonly Point[] => [
      [x, y],
      [-x, -y],
      [-y, x],
      [y, -x],
    ]),
  ];
  let best = ways[0] as Point;
  for (const way of ways) if (way[0] * ux + way[1] * uy > best[0] * ux + best[1] * uy + UNIT_SLACK) best = way;
  return best;
}

function lineMarks(line: Line, to: Point): readonly SketchMark[] {
  const end: Point = line.axis === 0 ? [line.at, to[1]] : [to[0], line.at];
  return [sketchLine([line.source, end], 'guide'), { mark: 'words', at: end, text: line.words, tone: 'guide' }];
}
