import { type Point, pointDistance, vectorLength } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { onGrid, SAME_LINE_MM } from '../geometry/tolerance.ts';
import { groutFrom, groutTo } from './grout.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';
import type { GroutRows, Part } from './part.ts';
import type { ReachLine } from './reaches.ts';

/** Candidate lines where joints are to lie in grout: the grout lines just beside those that would be candidates. */

/** The grout lines to either side of places, in their order; a place between two hard lines with no grout between them stays itself.
 *  @param hard rising, the ends of the floor first and last */
export function linesInGrout(rows: GroutRows, hard: readonly number[], places: readonly number[]): number[] {
  return placesInGrout(rows, hard, places, (at) => [
    groutTo(rows, at + SAME_LINE_MM),
    groutFrom(rows, at - SAME_LINE_MM),
  ]);
}

/** The same for places that a bay reaches: the last grout line that keeps within them. */
export function reachesInGrout(rows: GroutRows, hard: readonly number[], reaches: readonly ReachLine[]): number[] {
  return reaches.flatMap(({ at, side }) =>
    placesInGrout(rows, hard, [at], () => [
      side === 1 ? groutTo(rows, at + SAME_LINE_MM) : groutFrom(rows, at - SAME_LINE_MM),
    ]),
  );
}

function placesInGrout(
  rows: GroutRows,
  hard: readonly number[],
  places: readonly number[],
  beside: (at: number) => readonly number[],
): number[] {
  const [from, to] = [hard[0] as number, hard[hard.length - 1] as number];
  return places.flatMap((at) => {
    const next = hard.findIndex((line) => line >= at);
    const [low, high] = [hard[next - 1] ?? from, hard[next] ?? to];
    const lines = beside(at).filter((line) => line > from + SAME_LINE_MM && line < to - SAME_LINE_MM);
    return groutFrom(rows, low + SAME_LINE_MM) < high - SAME_LINE_MM ? lines.map(onGrid) : [...lines.map(onGrid), at];
  });
}

/** For each corner that turns in the grout lines that a joint may end in beside it. */
export function cornersInGrout(rows: GroutRows, region: Region, { layout }: Part, axis: 0 | 1): number[] {
  return [region.outline, ...region.holes].flatMap((ring) =>
    ring.flatMap((p, i) => {
      const a = ring[(i + ring.length - 1) % ring.length] as Point;
      const b = ring[(i + 1) % ring.length] as Point;
      return cornerTurn(a, p, b) < -NOTCH_RAD ? (lineBesideCorner(rows, ring, i, axis, layout.reentrantMm) ?? []) : [];
    }),
  );
}

/** The grout line just beside a corner that turns in, along the wall across which a joint from the corner would go on; null where a joint in it
 *  leaves a pocket that is too deep. */
export function lineBesideCorner(
  rows: GroutRows,
  ring: Ring,
  corner: number,
  axis: 0 | 1,
  reentrantMm: number,
): number | null {
  const p = ring[corner] as Point;
  const a = ring[(corner + ring.length - 1) % ring.length] as Point;
  const b = ring[(corner + 1) % ring.length] as Point;
  const [along, back] = Math.abs(a[axis] - p[axis]) > Math.abs(b[axis] - p[axis]) ? [a, b] : [b, a];
  const run = along[axis] - p[axis];
  const line = run > 0 ? groutFrom(rows, p[axis]) : groutTo(rows, p[axis]);
  const off = Math.abs(line - p[axis]);
  const wall = pointDistance(p, back);
  return off < Math.abs(run) && (off * wall) / vectorLength(off, wall) <= reentrantMm ? onGrid(line) : null;
}

/** For each column that needs a joint the grout lines through it; its faces where there are none. */
export function columnsInGrout(rows: GroutRows, { columns }: Part, axis: 0 | 1): number[] {
  return columns
    .filter((column) => column.needsJoint)
    .flatMap(({ box }) => {
      const [low, high] = axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY];
      const lines: number[] = [];
      for (let line = groutFrom(rows, low); line <= high; line += rows.spacingMm) lines.push(onGrid(line));
      return lines.length > 0 ? lines : [onGrid(low), onGrid(high)];
    });
}
