import { type Point, pointBetween, pointDirection, pointDistance } from '../geometry/point.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import { type GridLine, papersOf } from '../plan/papers.ts';
import type { DrawingItem, DrawingRef } from './drawing.ts';
import { endsApartMm, type GridEnd, gridEndItems } from './joint-dimensions-grid-ends.ts';
import type { PaperSource } from './paper-source.ts';
import { floorFrame, frameLines } from './setting-out-frame.ts';
import { gridLineIsDrawn } from './setting-out-sheet.ts';
import { textsCut } from './texts-cut.ts';
import { oneLine } from './words.ts';

/** Grid lines of the building on a drawing, with their lettered ends. */

/** A grid line is drawn so far beyond the floor, mm on paper: however far it runs, its ends stay on the sheet. */
const beyondMm = 15;
/** Widest name in the end of a grid line, mm on paper. */
const widestMm = 5.4;

/** Grid lines, each with its name at both ends: whichever end of the sheet is folded away, the other is lettered. Ends of lines close together stand
 *  aside or further out, so that none covers another. Of many that are closer than their names only those at both sides and those that joints are set out
 *  from run across the floor, where they would crowd out what is written: the others are ticks at the edge. @param scale 50 for 1 : 50 */
export function gridLineItems(source: PaperSource, scale: number): readonly DrawingItem[] {
  const shown = gridShown(source, scale);
  const lines = shown.flatMap(({ drawn, ref, how }): readonly DrawingItem[] => {
    const courses = how === 'across' ? [drawn] : how === 'left-out' ? [] : ticksOf(drawn, scale);
    return courses.map((points) => ({ shape: 'line', layer: 'areas', style: 'grid-line', points, ref }));
  });
  const names = textsCut(
    shown.map(({ line }) => oneLine(line.name)),
    'grid-name-long',
    widestMm,
  );
  const ends = shown.flatMap(({ drawn, ref, how, isNamed }, i): readonly GridEnd[] => {
    if (!isNamed) return [];
    const [from, to] = drawn;
    const [ux, uy] = pointDirection(from, to);
    const text = names[i] ?? '';
    const [begin, end] = how === 'across' ? [drawn, drawn] : ticksOf(drawn, scale);
    return [
      { at: from, out: [-ux, -uy], text, ref, drawn: begin },
      { at: to, out: [ux, uy], text, ref, drawn: end },
    ];
  });
  const origin = floorFrame(source)?.origin;
  const marked = papersOf(source.file).basePoints.map(({ at }) => at);
  return [...lines, ...gridEndItems(ends, origin === undefined ? marked : [origin, ...marked], scale)];
}

/** What a sheet says of grid lines that do not run across it; null where all do.
 *  Example: "88 grid lines are too close together to run across the floor: they are ticks at its edge, 70 of them without a name." */
export function gridLinesShort(source: PaperSource, scale: number): string | null {
  const short = gridShown(source, scale).filter(({ how }) => how !== 'across');
  if (short.length === 0) return null;
  const drawn = short.filter(({ how }) => how === 'tick');
  const unnamed = drawn.filter(({ isNamed }) => !isNamed).length;
  const left = short.length - drawn.length;
  const ticks = [
    ...(drawn.length === 0
      ? []
      : [`${drawn.length === short.length ? 'they are' : `${drawn.length} are`} ticks at its edge`]),
    ...(unnamed === 0 ? [] : [`${unnamed} of them without a name`]),
    ...(left === 0 ? [] : [`${left} are left out`]),
  ];
  return `${short.length} grid lines are too close together to run across the floor: ${ticks.join(', ')}.`;
}

interface GridStretch {
  readonly line: GridLine;
  readonly drawn: readonly [Point, Point];
}

interface GridShown extends GridStretch {
  readonly ref: DrawingRef;
  readonly how: 'across' | 'tick' | 'left-out';
  readonly isNamed: boolean;
}

/** A line that does not run across the floor is so much of each of its ends, mm on paper. */
const tickMm = 3;
/** Ticks stand no closer than this, mm on paper: closer ones run into a grey edge, and only those with a name are drawn. */
const ticksApartMm = 1;

function ticksOf(
  [from, to]: GridStretch['drawn'],
  scale: number,
): readonly [GridStretch['drawn'], GridStretch['drawn']] {
  const share = Math.min(0.5, (tickMm * scale) / pointDistance(from, to));
  return [
    [from, pointBetween(from, to, share)],
    [to, pointBetween(to, from, share)],
  ];
}

function gridShown(source: PaperSource, scale: number): readonly GridShown[] {
  const { gridLines } = papersOf(source.file);
  const stretches = gridLines.flatMap((line, i) => {
    const drawn = gridStretch(source, line, scale);
    const ref: DrawingRef = { kind: 'object', id: `grid-line-${i + 1}` };
    return drawn === null ? [] : [{ line, drawn, ref }];
  });
  const always = frameLines(source);
  const apartMm = endsApartMm * scale;
  return parallels(stretches).flatMap((rows) =>
    closeRows(rows, apartMm).flatMap((row) => rowShown(row, always, scale)),
  );
}

/** So many lines close together run across the floor, named at ends that step aside; of more every so manieth has a name at the edge. */
const mostAside = 4;

/** Of lines that lie too close for all of their ends the first and the last and those that joints are set out from are always named, and between them every
 *  so manieth that has room. */
function rowShown(
  row: readonly GridRow<GridStretch & Pick<GridShown, 'ref'>>[],
  always: ReadonlySet<GridLine>,
  scale: number,
): readonly GridShown[] {
  if (row.length <= mostAside) return row.map(({ stretch }) => ({ ...stretch, how: 'across', isNamed: true }));
  const spanMm = Math.abs((row.at(-1)?.offMm ?? 0) - (row[0]?.offMm ?? 0));
  const eachMm = Math.max(spanMm / (row.length - 1), WELD_MM);
  const every = Math.ceil((endsApartMm * scale) / eachMm);
  const isDrawn = eachMm >= ticksApartMm * scale - WELD_MM;
  return row.map(({ stretch }, i) => {
    if (i === 0 || i === row.length - 1 || always.has(stretch.line))
      return { ...stretch, how: 'across', isNamed: true };
    // none so near to the last that it has no room
    const isNamed = i % every === 0 && row.length - 1 - i >= every;
    return { ...stretch, how: isNamed || isDrawn ? 'tick' : 'left-out', isNamed };
  });
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
