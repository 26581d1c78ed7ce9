import { type Point, pointBetween, pointDirection, pointDistance } from '../geometry/point.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import { type GridLine, papersOf } from '../plan/papers.ts';
import type { DrawingItem, DrawingRef, MarkItem } from './drawing.ts';
import type { PaperSource } from './paper-source.ts';
import { frameLines } from './setting-out-frame.ts';
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
  const named = new Set(linesNamed(stretches, frameLines(source), scale));
  const ends = stretches.flatMap((stretch): GridEnd[] => {
    if (!named.has(stretch)) return [];
    const {
      line: { name },
      drawn,
      ref,
    } = stretch;
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

/** Lines that are drawn without their names, for lack of room: how many. */
export function gridLinesUnnamed(items: readonly DrawingItem[]): number {
  const named = new Set(
    items.flatMap((item) => (item.shape === 'mark' && item.style === 'grid-end' ? [item.ref.id] : [])),
  );
  const drawn = items.flatMap((item) => (item.shape === 'line' && item.style === 'grid-line' ? [item.ref.id] : []));
  return new Set(drawn.filter((id) => !named.has(id))).size;
}

interface GridStretch {
  readonly line: GridLine;
  readonly drawn: readonly [Point, Point];
}

/** So many lines close together are all named, at ends that step aside; of more every so manieth. */
const mostAside = 4;

/** Of lines that lie too close for all of their ends: the first and the last, those that joints are set out from, and between them every so manieth that has
 *  room. */
function linesNamed<Stretch extends GridStretch>(
  stretches: readonly Stretch[],
  always: ReadonlySet<GridLine>,
  scale: number,
): readonly Stretch[] {
  const apartMm = (2 * gridEndMm + endGapMm) * scale;
  return parallels(stretches).flatMap((rows) =>
    closeRows(rows, apartMm).flatMap((row) => {
      if (row.length <= mostAside) return row.map(({ stretch }) => stretch);
      const spanMm = Math.abs((row.at(-1)?.offMm ?? 0) - (row[0]?.offMm ?? 0));
      const every = Math.max(1, Math.ceil((apartMm * (row.length - 1)) / Math.max(spanMm, WELD_MM)));
      return row.flatMap(({ stretch }, i) => {
        const isEnd = i === 0 || i === row.length - 1;
        // none so near to the last that it has no room
        const isTurn = i % every === 0 && row.length - 1 - i >= every;
        return isEnd || isTurn || always.has(stretch.line) ? [stretch] : [];
      });
    }),
  );
}

interface GridRow<Stretch> {
  readonly stretch: Stretch;
  /** Square to the lines. */
  readonly offMm: number;
}

/** Lines of one direction together, each in their order. */
function parallels<Stretch extends GridStretch>(
  stretches: readonly Stretch[],
): readonly (readonly GridRow<Stretch>[])[] {
  const groups: { readonly way: Point; readonly rows: GridRow<Stretch>[] }[] = [];
  for (const stretch of stretches) {
    const [from, to] = stretch.drawn;
    const way = pointDirection(from, to);
    const cross = ([x, y]: Point, [ux, uy]: Point) => ux * y - uy * x;
    let group = groups.find((each) => Math.abs(cross(way, each.way)) <= parallelSine);
    if (group === undefined) {
      group = { way, rows: [] };
      groups.push(group);
    }
    group.rows.push({ stretch, offMm: cross(from, group.way) });
  }
  return groups.map(({ rows }) => {
    // from the side that they are counted from
    const side = (rows[0]?.offMm ?? 0) <= (rows.at(-1)?.offMm ?? 0) ? 1 : -1;
    return [...rows].sort((a, b) => side * (a.offMm - b.offMm));
  });
}

/** Sine of the angle between lines that are read as parallel: one in a hundred. */
const parallelSine = 0.01;

/** Runs of lines each of which is closer to the next than two ends. */
function closeRows<Stretch>(
  rows: readonly GridRow<Stretch>[],
  apartMm: number,
): readonly (readonly GridRow<Stretch>[])[] {
  const runs: GridRow<Stretch>[][] = [];
  rows.forEach((row, i) => {
    const before = rows[i - 1];
    const last = runs.at(-1);
    if (before === undefined || last === undefined || Math.abs(row.offMm - before.offMm) >= apartMm) runs.push([row]);
    else last.push(row);
  });
  return runs;
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
