import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { type Box, boxOf } from '../geometry/ring.ts';
import { rayMeets } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import { gridLineIsUp } from '../plan/edits/grid-lines.ts';
import { type NamedPoint, papersOf, pourOf, recordsOf } from '../plan/papers.ts';
import type { PlanFile } from '../plan/schema.ts';
import type { DrawingItem, DrawingRef, LabelItem, LabelPlace, LabelSeat } from './drawing.ts';
import type { PaperSource } from './paper-source.ts';
import { placeIsDrawn } from './setting-out-sheet.ts';
import type { MarkStyleName } from './styles.ts';
import { marks } from './symbols.ts';
import { formSize } from './text-width.ts';
import { textsCut } from './texts-cut.ts';
import { oneLine } from './words.ts';

/** What papers mark on the floor by name: base points, test points, the access, and on the board lines of the grid. */

/** Names of places are lettered before all else: figures are read from them. */
export const namePriority = 7e6;
/** Widest name beside a mark, mm on paper. */
const widestMm = 30;
/** Free space between a mark and its name, mm on paper. */
const nameGapMm = 1;
/** The same above and below, where its leading is free already: boxes that touch are in each other's way. */
const stackGapMm = 0.1;
/** The first where right beside the mark there is no room, as in a column, and nothing leads to a name. */
const fartherGapsMm = [3, 6, 10];

/** Those that lie near enough to the floor; the others are told in words. @param scale 50 for 1 : 50 */
export function basePointItems({ file, plan }: PaperSource, scale: number): readonly DrawingItem[] {
  return baseMarks(file)
    .filter(({ at }) => placeIsDrawn(plan, at))
    .flatMap((each) => pointMark(each, scale));
}

/** Places where dryness is tested, for the sheet of the records. @param scale 50 for 1 : 50 */
export function testPointItems({ file, plan }: PaperSource, scale: number): readonly DrawingItem[] {
  return testMarks(file)
    .filter(({ at }) => placeIsDrawn(plan, at))
    .flatMap((each) => pointMark(each, scale));
}

interface BoardPoints {
  /** 50 for 1 : 50 */
  readonly scale: number;
  /** Reach of the floor across, mm: the name of what lies beside it stands towards it, where the board is seen. */
  readonly floor: { readonly minX: number; readonly maxX: number };
  /** Faces of walls: beyond one a name would be read as that of something there. */
  readonly walls: readonly WallFace[];
  /** What a point stands on that can be written on: its name may stand there as that thing's own does. */
  readonly under: (at: Point) => DrawingRef | null;
}

interface WallFace {
  readonly points: readonly Point[];
  readonly box: Box;
}

/** All of them for the board, which has no leaders and shows far ones too. */
export function boardPointItems(file: PlanFile, { scale, floor, walls, under }: BoardPoints): readonly DrawingItem[] {
  const { access } = pourOf(file);
  const entrance: readonly Marked[] =
    access === null ? [] : [{ style: 'access', name: 'Access', at: access, ref: { kind: 'object', id: 'access' } }];
  return [...baseMarks(file), ...testMarks(file), ...entrance].flatMap((each) => {
    const sides = each.at[0] > floor.maxX ? ([-1, 1] as const) : ([1, -1] as const);
    const name = nameOf(each, scale, { sides, farther: fartherGapsMm });
    const ref = under(each.at) ?? each.ref;
    return [markOf(each), { ...name, ref, seat: seatThisSide(name.seat, each.at, walls) }];
  });
}

function seatThisSide(seat: LabelSeat, from: Point, walls: readonly WallFace[]): LabelSeat {
  if (seat.kind !== 'beside' || seat.places === undefined) return seat;
  const { minX, maxX, minY, maxY } = boxOf([from, ...seat.places.map(({ at }) => at)]);
  const near = walls.filter(({ box }) => box.minX <= maxX && box.maxX >= minX && box.minY <= maxY && box.maxY >= minY);
  const isThisSide = ({ at }: LabelPlace) => !near.some(({ points }) => wallBetween(points, from, at));
  return { ...seat, places: seat.places.filter(isThisSide) };
}

/** Whether a wall runs between two places; one that the first lies on does not. */
function wallBetween(points: readonly Point[], from: Point, to: Point): boolean {
  const [way, awayMm] = [pointDirection(from, to), pointDistance(from, to)];
  return points.some((b, i) => {
    const a = points[i - 1];
    const met = a === undefined ? null : rayMeets(from, way, a, b);
    return met !== null && met > WELD_MM && met < awayMm;
  });
}

interface Marked extends NamedPoint {
  readonly style: Extract<MarkStyleName, 'base-point' | 'test-point' | 'access' | 'running-origin'>;
  readonly ref: DrawingRef;
}

/** As they stand beside the marks. */
function namesShown(named: readonly { readonly name: string }[]): readonly string[] {
  return textsCut(
    named.map(({ name }) => oneLine(name)),
    'sheet-head',
    widestMm,
  );
}

function baseMarks(file: PlanFile): readonly Marked[] {
  const { basePoints } = papersOf(file);
  const names = namesShown(basePoints);
  return basePoints.map(({ at }, i) => ({
    name: names[i] ?? '',
    at,
    style: 'base-point',
    ref: { kind: 'object', id: `base-point-${i + 1}` },
  }));
}

function testMarks(file: PlanFile): readonly Marked[] {
  const { testPoints } = recordsOf(file);
  const names = namesShown(testPoints);
  return testPoints.map(({ at }, i) => ({
    name: names[i] ?? '',
    at,
    style: 'test-point',
    ref: { kind: 'object', id: `test-point-${i + 1}` },
  }));
}

/** A mark with its name beside it. @param scale 50 for 1 : 50 */
export function namedMark(marked: Marked, scale: number): readonly DrawingItem[] {
  return [markOf(marked), nameOf(marked, scale)];
}

/** The same with the name at the end of a leader where there is no room beside it: what is measured or tested there is told by it. */
function pointMark(marked: Marked, scale: number): readonly DrawingItem[] {
  const name = nameOf(marked, scale);
  return [markOf(marked), { ...name, led: { from: [marked.at], forms: name.forms } }];
}

function markOf({ style, at, ref }: Marked): DrawingItem {
  return { shape: 'mark', layer: 'marks', style, at, text: null, ref };
}

interface NamePlaces {
  /** The side of the mark that is tried first: 1 on its right. */
  readonly sides: readonly [number, number];
  /** Gaps that are tried where none right beside the mark is free, mm on paper. */
  readonly farther: readonly number[];
}

function nameOf(
  { style, name, at, ref }: Marked,
  scale: number,
  { sides, farther }: NamePlaces = { sides: [1, -1], farther: [] },
): LabelItem {
  const form = [{ text: name, style: 'sheet-head' }] as const;
  const { widthMm, heightMm } = formSize(form);
  const { left, right, up, down } = marks[style].reachMm;
  const middle = (down - up) / 2;
  const across = (side: number, gapMm: number) => side * ((side > 0 ? right : left) + gapMm + widthMm / 2);
  const stacked = (gapMm: number) => gapMm - nameGapMm + stackGapMm + heightMm / 2;
  const round = (gapMm: number): readonly Point[] => [
    ...sides.map((side): Point => [across(side, gapMm), middle]),
    [0, -up - stacked(gapMm)],
    [0, down + stacked(gapMm)],
    ...[-1, 1].flatMap((dy) => sides.map((side): Point => [across(side, gapMm), middle + dy * heightMm])),
  ];
  const places = [nameGapMm, ...farther]
    .flatMap(round)
    .map(([dx, dy]): LabelPlace => ({ at: [at[0] + dx * scale, at[1] + dy * scale], direction: [1, 0] }));
  return {
    shape: 'label',
    layer: 'labels',
    ref,
    seat: { kind: 'beside', line: [at, at], inOpening: true, places },
    forms: [form],
    priority: namePriority,
  };
}

/** From the end of a grid line back to where its name stands beside it, mm on paper. */
const besideEndMm = [6, 14, 24];

/** Grid lines for the board, as they are entered: names at the left or upper ends, off the lines. @param scale 50 for 1 : 50 */
export function boardGridItems(file: PlanFile, scale: number): readonly DrawingItem[] {
  const { gridLines } = papersOf(file);
  const names = namesShown(gridLines);
  return gridLines.flatMap(({ from, to }, i): readonly DrawingItem[] => {
    const axis = gridLineIsUp({ from, to }) ? 1 : 0;
    const [first, last] = from[axis] <= to[axis] ? [from, to] : [to, from];
    const ref: DrawingRef = { kind: 'object', id: `grid-line-${i + 1}` };
    const form = [{ text: names[i] ?? '', style: 'sheet-head' }] as const;
    const { widthMm, heightMm } = formSize(form);
    const [ux, uy] = pointDirection(first, last);
    const offMm = (Math.abs(ux) * widthMm + Math.abs(uy) * heightMm) / 2 + nameGapMm;
    const asideMm = (Math.abs(uy) * widthMm + Math.abs(ux) * heightMm) / 2 + nameGapMm;
    const places = [
      [-offMm, 0] as const,
      ...besideEndMm.flatMap((mm) => [asideMm, -asideMm].map((aside) => [mm, aside] as const)),
    ].map(
      ([along, aside]): LabelPlace => ({
        at: [first[0] + (ux * along - uy * aside) * scale, first[1] + (uy * along + ux * aside) * scale],
        direction: [1, 0],
      }),
    );
    return [
      { shape: 'line', layer: 'areas', style: 'grid-line', points: [first, last], ref },
      {
        shape: 'label',
        layer: 'labels',
        ref,
        seat: { kind: 'beside', line: [first, last], inOpening: true, places },
        forms: [form],
        priority: namePriority,
      },
    ];
  });
}
