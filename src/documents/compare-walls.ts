import { boxIndexOf } from '../geometry/box-index.ts';
import { intervalsChained } from '../geometry/line-clip.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { boxAround, boxOf } from '../geometry/ring.ts';
import type { Interval } from '../geometry/scanline.ts';
import { DIRECTION_DEG, EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { Plan } from '../plan/plan.ts';
import { samePlaceMm } from './compare-match.ts';

/** Where the walls of one version stand beside those of another. */

interface Wall {
  readonly a: Point;
  readonly b: Point;
}

export function wallsOf({ rooms }: Plan): readonly Wall[] {
  return rooms
    .flatMap(({ outline, holes }) => [outline, ...holes])
    .flatMap((ring) => ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length] ?? a })))
    .filter(({ a, b }) => pointDistance(a, b) > 0);
}

/** Share of walls, by length, beside which others run. */
export function wallShareOf(walls: readonly Wall[], others: readonly Wall[]): number {
  const sharedMm = stretchesBeside(walls, others, samePlaceMm)
    .flat()
    .reduce((sum, [from, to]) => sum + to - from, 0);
  return sharedMm / walls.reduce((sum, { a, b }) => sum + pointDistance(a, b), 0);
}

/** Stretches of walls in whose place none is now. */
export function wallsGone(before: Plan, now: Plan): readonly Wall[] {
  const walls = wallsOf(before);
  const stretches = stretchesBeside(walls, wallsOf(now), EQUAL_LENGTH_MM);
  return walls.flatMap(({ a, b }, i) => {
    const lengthMm = pointDistance(a, b);
    const [ux, uy] = pointDirection(a, b);
    const at = (mm: number): Point => [a[0] + ux * mm, a[1] + uy * mm];
    const ends = [0, ...(stretches[i] ?? []).flat(), lengthMm];
    return ends.flatMap((from, k) => {
      const to = ends[k + 1];
      return k % 2 === 0 && to !== undefined && to - from > EQUAL_LENGTH_MM ? [{ a: at(from), b: at(to) }] : [];
    });
  });
}

/** Of each wall the stretches beside which others run, in their order along it, mm from its start. */
function stretchesBeside(
  walls: readonly Wall[],
  others: readonly Wall[],
  withinMm: number,
): readonly (readonly Interval[])[] {
  const index = boxIndexOf(others.map(({ a, b }) => boxOf([a, b])));
  return walls.map((wall) => {
    const near = index.near(boxAround(boxOf([wall.a, wall.b]), withinMm));
    const stretches = near.map((i) => stretchBeside(wall, others[i], withinMm)).filter((stretch) => stretch !== null);
    return intervalsChained(stretches);
  });
}

/** The stretch of a wall beside which another runs the same way or the other way, mm from its start; null: none. */
function stretchBeside({ a, b }: Wall, other: Wall | undefined, withinMm: number): Interval | null {
  if (other === undefined) return null;
  const [ux, uy] = pointDirection(a, b);
  const [vx, vy] = pointDirection(other.a, other.b);
  if (Math.abs(ux * vy - uy * vx) > Math.sin((DIRECTION_DEG * Math.PI) / 180)) return null;
  const ends = [other.a, other.b].map(
    ([x, y]): Point => [(x - a[0]) * ux + (y - a[1]) * uy, (y - a[1]) * ux - (x - a[0]) * uy],
  );
  const alongs = ends.map(([along]) => along);
  const from = Math.max(0, Math.min(...alongs));
  const to = Math.min(pointDistance(a, b), Math.max(...alongs));
  return to > from && ends.every(([, across]) => Math.abs(across) <= withinMm) ? [from, to] : null;
}
