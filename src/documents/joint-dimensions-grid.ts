import { type Point, pointBetween, pointDirection, pointDistance } from '../geometry/point.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import { type GridLine, papersOf } from '../plan/papers.ts';
import type { DrawingItem, DrawingRef, MarkItem } from './drawing.ts';
import type { PaperSource } from './paper-source.ts';
import { gridLineIsDrawn } from './setting-out-sheet.ts';
import { gridEndMm } from './symbols.ts';
import { textCut } from './text-width.ts';
import { oneLine } from './words.ts';

/** Grid lines of the building on a drawing, with their lettered ends. */

/** A grid line is drawn so far beyond the floor, mm on paper: however far it runs, its ends stay on the sheet. */
const beyondMm = 15;
/** Widest name in the end of a grid line, mm on paper. */
const widestMm = 5.4;
/** Free space between one end and the next, mm on paper. */
const endGapMm = 0.6;

interface GridEnd {
  readonly at: Point;
  /** Unit vector off the line. */
  readonly out: Point;
  readonly text: string;
  readonly ref: DrawingRef;
  /** The stretch that is drawn of its line. */
  readonly drawn: readonly [Point, Point];
}

/** Grid lines, each with its name at both ends: whichever end of the sheet is folded away, the other is lettered. Ends of lines close together stand
 *  aside or further out, so that none covers another. @param scale 50 for 1 : 50 */
export function gridLineItems(source: PaperSource, scale: number): readonly DrawingItem[] {
  const { gridLines } = papersOf(source.file);
  const stretches = gridLines.flatMap((line, i) => {
    const drawn = gridStretch(source, line, scale);
    const ref: DrawingRef = { kind: 'object', id: `grid-line-${i + 1}` };
    return drawn === null ? [] : [{ line, drawn, ref }];
  });
  const lines = stretches.map(
    ({ drawn, ref }): DrawingItem => ({ shape: 'line', layer: 'areas', style: 'grid-line', points: drawn, ref }),
  );
  const ends = stretches.flatMap(({ line: { name }, drawn, ref }): GridEnd[] => {
    const [from, to] = drawn;
    const [ux, uy] = pointDirection(from, to);
    const text = textCut(oneLine(name), 'grid-name-long', widestMm);
    return [
      { at: from, out: [-ux, -uy], text, ref, drawn },
      { at: to, out: [ux, uy], text, ref, drawn },
    ];
  });
  return [...lines, ...endItems(ends, scale)];
}

/** What is drawn of a grid line: no more than lies beside the floor; null where it passes the floor too far off. */
function gridStretch({ plan }: PaperSource, line: GridLine, scale: number): readonly [Point, Point] | null {
  const { from, to } = line;
  const lengthMm = pointDistance(from, to);
  if (lengthMm <= WELD_MM || !gridLineIsDrawn(plan, line)) return null;
  const [ux, uy] = pointDirection(from, to);
  const along = plan.rooms.flatMap(({ outline }) => outline.map(([x, y]) => (x - from[0]) * ux + (y - from[1]) * uy));
  if (along.length === 0) return [from, to];
  const [least, most] = [Math.min(...along) - beyondMm * scale, Math.max(...along) + beyondMm * scale];
  const [start, end] = [Math.max(0, least), Math.min(lengthMm, most)];
  if (end - start <= WELD_MM) return null;
  return [
    start === 0 ? from : pointBetween(from, to, start / lengthMm),
    end === lengthMm ? to : pointBetween(from, to, end / lengthMm),
  ];
}

function endItems(ends: readonly GridEnd[], scale: number): readonly DrawingItem[] {
  const placed: Point[] = [];
  const stubs: (readonly [Point, Point])[] = [];
  return ends.flatMap((end): DrawingItem[] => {
    const others = ends.flatMap(({ drawn }) => (drawn === end.drawn ? [] : [drawn]));
    const at = endPlace(end, placed, [...others, ...stubs], scale);
    placed.push(at);
    const mark: MarkItem = { shape: 'mark', layer: 'marks', style: 'grid-end', at, text: end.text, ref: end.ref };
    if (pointDistance(end.at, at) <= gridEndMm * scale + WELD_MM) return [mark];
    stubs.push([end.at, at]);
    return [{ shape: 'line', layer: 'areas', style: 'grid-line', points: [end.at, at], ref: end.ref }, mark];
  });
}

/** Sideways an end is tried at so many steps each way, half an end each, before it is moved further out. */
const stepsAside = 8;

/** The middle of the circle of an end: straight on where that is free, else aside and further out, clear of the other lines too where it can be. */
function endPlace(
  { at: [x, y], out: [ux, uy] }: GridEnd,
  placed: readonly Point[],
  lines: readonly (readonly [Point, Point])[],
  scale: number,
): Point {
  const apartMm = (2 * gridEndMm + endGapMm) * scale;
  const radiusMm = (gridEndMm + endGapMm / 2) * scale;
  const isApart = (place: Point) => placed.every((other) => pointDistance(other, place) >= apartMm - WELD_MM);
  const isClear = (place: Point) =>
    lines.every(([a, b]) => segmentDistance(a, b, place) >= gridEndMm * scale - WELD_MM) &&
    placed.every((other) => segmentDistance([x, y], place, other) >= gridEndMm * scale - WELD_MM);
  const asides = Array.from({ length: stepsAside + 1 }, (_, i) => i).flatMap((i) => (i === 0 ? [0] : [i, -i]));
  let apart: Point | null = null;
  // each end that stands already is passed by two rows
  for (let row = 0; row <= 2 * placed.length; row += 1) {
    for (const aside of asides) {
      const [outMm, asideMm] = [gridEndMm * scale + (row * apartMm) / 2, aside * radiusMm];
      const place: Point = [x + ux * outMm - uy * asideMm, y + uy * outMm + ux * asideMm];
      if (!isApart(place)) continue;
      if (isClear(place)) return place;
      if (aside === 0) apart ??= place;
    }
    if (apart !== null && row >= rowsTried) break;
  }
  return apart ?? [x + ux * gridEndMm * scale, y + uy * gridEndMm * scale];
}

/** So many rows out a place that is clear of all lines is looked for. */
const rowsTried = 6;
