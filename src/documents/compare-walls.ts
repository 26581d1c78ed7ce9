import { boxIndexOf } from '../geometry/box-index.ts';
import { intervalsChained } from '../geometry/line-clip.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { boxAround, boxOf, type Ring } from '../geometry/ring.ts';
import type { Interval } from '../geometry/scanline.ts';
import { DIRECTION_DEG, EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { Plan } from '../plan/plan.ts';
import { samePlaceMm } from './compare-match.ts';

/** Where the walls of one version, and the sides of what stands on its floor, stand beside those of another. */

interface Side {
  readonly a: Point;
  readonly b: Point;
}

export function wallsOf({ rooms }: Plan): readonly Side[] {
  return sidesOf(rooms.flatMap(({ outline, holes }) => [outline, ...holes]));
}

export function sidesOf(rings: readonly Ring[]): readonly Side[] {
  return rings
    .flatMap((ring) => ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length] ?? a })))
    .filter(({ a, b }) => pointDistance(a, b) > 0);
}

/** Share of walls, by length, beside which others run. */
export function wallShareOf(walls: readonly Side[], others: readonly Side[]): number {
  const sharedMm = stretchesBeside(walls, others, samePlaceMm)
    .flat()
    .reduce((sum, [from, to]) => sum + to - from, 0);
  return sharedMm / walls.reduce((sum, { a, b }) => sum + pointDistance(a, b), 0);
}

/** Stretches of sides in whose place none is now. */
export function sidesGone(before: readonly Side[], now: readonly Side[]): readonly Side[] {
  const stretches = stretchesBeside(before, now, EQUAL_LENGTH_MM);
  return before.flatMap(({ a, b }, i) => {
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

/** Lines of sides that go on from each other, so that dashes run round their corners. */
export function sidesChained(sides: readonly Side[]): readonly (readonly Point[])[] {
  const lines: Point[][] = [];
  for (const { a, b } of sides) {
    const line = lines.at(-1);
    const end = line?.at(-1);
    if (line !== undefined && end !== undefined && pointDistance(end, a) < EQUAL_LENGTH_MM) line.push(b);
    else lines.push([a, b]);
  }
  return lines;
}

/** Of each side the stretches beside which others run, in their order along it, mm from its start. */
function stretchesBeside(
  sides: readonly Side[],
  others: readonly Side[],
  withinMm: number,
): readonly (readonly Interval[])[] {
  const index = boxIndexOf(others.map(({ a, b }) => boxOf([a, b])));
  return sides.map((side) => {
    const near = index.near(boxAround(boxOf([side.a, side.b]), withinMm));
    const stretches = near.map((i) => stretchBeside(side, others[i], withinMm)).filter((stretch) => stretch !== null);
    return intervalsChained(stretches);
  });
}

/** The stretch of a side beside which another runs the same way or the other way, mm from its start; null: none. */
function stretchBeside({ a, b }: Side, other: Side | undefined, withinMm: number): Interval | null {
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
