import type { Point } from '../../src/geometry/point.ts';
import type { TileGrid } from '../../src/plan/plan.ts';
import { between, distance, lineSegments } from './planar.ts';
import { tilePlane } from './tile-plane.ts';

/** How far a joint lies off the grout that runs its way: the least and the greatest that the words allow. */
export interface GroutPlace {
  readonly least: number;
  readonly most: number;
}

/** By the words alone: upright grout lines in the grid stand half a grout before a tile, every length and grout; level ones every width and grout.
 *  A stretch within half a right angle of level is measured to the level ones, else to the upright ones; at 45 degrees either is right.
 *  Null in a herringbone, where no grout runs through. */
export function groutPlace(line: readonly Point[], grid: TileGrid): GroutPlace | null {
  if (grid.bond === 'herringbone') return null;
  const plane = tilePlane(grid);
  let [least, most] = [0, 0];
  for (const [a, b] of stretches(line)) {
    const [p, q] = [plane.to(a), plane.to(b)];
    const [dx, dy] = [Math.abs(q[0] - p[0]), Math.abs(q[1] - p[1])];
    const unsure = Math.abs(dx - dy) < 0.02 * (dx + dy);
    const level = offLevel(p[1], q[1], grid);
    const upright = offUpright(p, q, grid);
    const own = unsure
      ? [Math.min(level, upright), Math.max(level, upright)]
      : dx > dy
        ? [level, level]
        : [upright, upright];
    least = Math.max(least, own[0] ?? 0);
    most = Math.max(most, own[1] ?? 0);
  }
  return { least, most };
}

/** Stretches of no more than a weld have no direction: the line is read from point to point beyond that. */
function stretches(line: readonly Point[]): (readonly [Point, Point])[] {
  const kept: Point[] = [];
  for (const p of line) {
    const last = kept.at(-1);
    if (last === undefined || distance(last, p) > 1) kept.push(p);
  }
  return lineSegments(kept).map(([a, b]) => [a, b]);
}

export function isLongEnough(line: readonly Point[]): boolean {
  return stretches(line).length > 0;
}

/** The largest distance from lines at `first + k * module` on the way from one place to another. */
function offLines(from: number, to: number, first: number, module: number): number {
  const [low, high] = [Math.min(from, to) - first, Math.max(from, to) - first];
  const off = (v: number) => Math.abs(v - Math.round(v / module) * module);
  const half = (Math.ceil(low / module - 0.5) + 0.5) * module;
  return half <= high ? module / 2 : Math.max(off(low), off(high));
}

function offLevel(from: number, to: number, { widthMm, groutMm }: TileGrid): number {
  return offLines(from, to, -groutMm / 2, widthMm + groutMm);
}

/** Upright lines stand in their course alone, from the middle of the grout below it to that above. */
function offUpright(p: Point, q: Point, { lengthMm, widthMm, groutMm, shiftMm }: TileGrid): number {
  const [along, across] = [lengthMm + groutMm, widthMm + groutMm];
  if (shiftMm === 0) return offLines(p[0], q[0], -groutMm / 2, along);
  const [top, bottom] = p[1] < q[1] ? [p, q] : [q, p];
  const reach = bottom[1] - top[1];
  let most = 0;
  const courseOf = (y: number) => Math.floor((y + groutMm / 2) / across);
  for (let j = courseOf(top[1] + 1e-6); j <= courseOf(bottom[1] - 1e-6); j++) {
    const share = (y: number) => Math.min(1, Math.max(0, (y - top[1]) / reach));
    const from = between(top, bottom, share(j * across - groutMm / 2));
    const to = between(top, bottom, share((j + 1) * across - groutMm / 2));
    most = Math.max(most, offLines(from[0], to[0], j * shiftMm - groutMm / 2, along));
  }
  return most;
}
