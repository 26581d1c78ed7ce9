import { SAME_LINE_MM } from '../geometry/tolerance.ts';
import type { BayLimits } from '../plan/plan.ts';
import { type EqualGrid, gridsShortest, heightMost, isTooWide } from './equal-grid.ts';
import { groutFrom, groutNear, groutTo, OFF_RATE } from './grout.ts';
import type { GroutRows } from './part.ts';

/** A side of a rectangle, mm, and the grout lines square to it; null where none run there, and bays may be of any length. */
export interface GroutSide {
  readonly from: number;
  readonly to: number;
  readonly rows: GroutRows | null;
}

/** A grid of bays parted in grout lines. */
export interface GroutGrid extends EqualGrid {
  /** Its lines across the side, rising, without the ends of the side, mm. */
  readonly lines: readonly number[];
}

/** The grids of bays as equal as the tiles let them be that take least joint, and those that take next to nothing more, as `equalGrids`.
 *  A joint where no grout line runs counts for as much as it does in the search.
 *  @param along the side whose lines are wanted
 *  Example: 24 m by 5 m at 8 m, tiles every 605 mm from its start -> joints at 10, 20 and 30 tiles, no bay over 13 */
export function groutGrids(along: GroutSide, across: GroutSide, limits: BayLimits): GroutGrid[] {
  const [alongMm, acrossMm] = [along.to - along.from, across.to - across.from];
  const [rateAlong, rateAcross] = [rateOf(along), rateOf(across)];
  const sideMm = limits.lengthM * 1000;
  return gridsShortest(baysFewest(along, sideMm), acrossMm * rateAlong, (count) => {
    const lines = linesEven(along, count, sideMm);
    if (lines === null) return null;
    const [narrowest, widest] = gapsOf(along, lines);
    const most = heightMost(narrowest, widest, limits);
    const rows = linesEven(across, baysFewest(across, most), most);
    if (rows === null || isTooWide(widest, gapsOf(across, rows)[0], limits)) return null;
    return {
      along: count,
      across: rows.length + 1,
      jointMm: lines.length * acrossMm * rateAlong + rows.length * alongMm * rateAcross,
      lines,
    };
  });
}

/** The fewest lines, as even as can be, that part a side into bays between given lines across it.
 *  @param acrossLines rising, the ends of the floor first and last, mm
 *  @returns none where no grid keeps the limits */
export function groutLinesBetween(side: GroutSide, acrossLines: readonly number[], limits: BayLimits): number[] {
  const [narrowest, widest] = gapsIn(acrossLines);
  const most = heightMost(narrowest, widest, limits);
  const lines = linesEven(side, baysFewest(side, most), most) ?? [];
  return isTooWide(widest, gapsOf(side, lines)[0], limits) ? [] : lines;
}

function rateOf({ rows }: GroutSide): number {
  return rows === null ? OFF_RATE : 1;
}

/** The shortest and the longest bay of a side, mm. */
function gapsOf({ from, to }: GroutSide, lines: readonly number[]): [number, number] {
  return gapsIn([from, ...lines, to]);
}

function gapsIn(lines: readonly number[]): [number, number] {
  const gaps = lines.slice(1).map((line, i) => line - (lines[i] as number));
  return [Math.min(...gaps), Math.max(...gaps)];
}

/** The last line that a bay from a place on reaches, and the first that one up to a place does. */
function reachUp({ rows }: GroutSide, at: number, mostMm: number): number {
  return rows === null ? at + mostMm : groutTo(rows, at + mostMm + SAME_LINE_MM);
}

function reachDown({ rows }: GroutSide, at: number, mostMm: number): number {
  return rows === null ? at - mostMm : groutFrom(rows, at - mostMm - SAME_LINE_MM);
}

/** The fewest bays of at most a length that make up a side; infinite where not even a tile fits. */
function baysFewest(side: GroutSide, mostMm: number): number {
  if (side.rows === null) return Math.max(1, Math.ceil((side.to - side.from - SAME_LINE_MM) / mostMm));
  let count = 1;
  for (let at = side.from; side.to - at > mostMm + SAME_LINE_MM; count++) {
    const next = reachUp(side, at, mostMm);
    if (next <= at + SAME_LINE_MM) return Infinity;
    at = next;
  }
  return count;
}

/** The lines that part a side into so many bays, each as near to equal parts as bays of at most a length let it be; null where none do. */
function linesEven(side: GroutSide, count: number, mostMm: number): number[] | null {
  if (!Number.isFinite(count)) return null;
  const { from, to, rows } = side;
  // From the end back: the first place where each line leaves bays that are not too long behind it.
  const least = [to];
  for (let k = 1; k < count; k++) least.unshift(reachDown(side, least[0] as number, mostMm));
  const lines: number[] = [];
  for (let k = 1; k < count; k++) {
    const before = lines[k - 2] ?? from;
    const equal = from + ((to - from) * k) / count;
    const wanted = Math.max(rows === null ? equal : groutNear(rows, equal), least[k - 1] as number);
    const line = Math.min(wanted, reachUp(side, before, mostMm));
    if (line < (least[k - 1] as number) || line <= before + SAME_LINE_MM || line >= to - SAME_LINE_MM) return null;
    lines.push(line);
  }
  return count > 1 || to - from <= mostMm + SAME_LINE_MM ? lines : null;
}
