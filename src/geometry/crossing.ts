import { boxIndexOf } from './box-index.ts';
import { type Point, pointEquals } from './point.ts';
import { boxOf, type Ring } from './ring.ts';
import { GRID_PER_MM } from './tolerance.ts';

/** Where an outline meets itself. Places are taken to 0.1 mm, so that what touches and what does not is told exactly. */

/** A place where the ring crosses itself, touches itself or runs back along itself, mm; null where it does none of these. A corner that is given
 *  twice running is one corner. Example: [0, 0], [4, 0], [0, 4], [4, 4] -> [2, 2]. */
export function ringCrossing(ring: Ring): Point | null {
  const corners = onSteps(ring).filter((p, i, all) => !pointEquals(p, all[(i + 1) % all.length] as Point));
  const count = corners.length;
  const at = (i: number) => corners[i % count] as Point;
  const index = boxIndexOf(corners.map((a, i) => boxOf([a, at(i + 1)])));
  for (let i = 0; i < count; i++) {
    const [a, b] = [at(i), at(i + 1)];
    if (runsBack(a, b, at(i + 2))) return inMm(b);
    for (const j of index.near(boxOf([a, b]))) {
      if (j <= i + 1 || (i === 0 && j === count - 1)) continue;
      const met = runsMeet(a, b, at(j), at(j + 1));
      if (met) return inMm(met);
    }
  }
  return null;
}

/** Where the run from the last corner to `next` crosses, touches or runs back along the earlier runs of an outline that is being drawn, mm;
 *  null where it does none of these. It may come to the first corner, which closes the outline.
 *  Example: corners [0, 0], [4, 0], [4, 4], next [2, -1] -> [2.4, 0]. */
export function runCrosses(corners: readonly Point[], next: Point): Point | null {
  const drawn = onSteps(corners).filter((p, i, all) => i === 0 || !pointEquals(p, all[i - 1] as Point));
  const [to] = onSteps([next]) as [Point];
  const [first, last] = [drawn[0], drawn[drawn.length - 1]];
  if (!first || !last || pointEquals(last, to)) return null;
  const before = drawn[drawn.length - 2];
  if (before && runsBack(before, last, to)) return inMm(last);
  const closes = pointEquals(to, first);
  if (closes && drawn[1] && runsBack(last, first, drawn[1])) return inMm(first);
  for (let i = closes ? 1 : 0; i + 2 < drawn.length; i++) {
    const met = runsMeet(last, to, drawn[i] as Point, drawn[i + 1] as Point);
    if (met) return inMm(met);
  }
  return null;
}

function onSteps(points: readonly Point[]): Point[] {
  return points.map(([x, y]) => [Math.round(x * GRID_PER_MM), Math.round(y * GRID_PER_MM)]);
}

function inMm([x, y]: Point): Point {
  return [x / GRID_PER_MM, y / GRID_PER_MM];
}

/** Twice the area of the corner a, b, c: positive where it turns clockwise on the sheet. */
function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/** Whether the way a, b, c turns back on itself at b. */
function runsBack(a: Point, b: Point, c: Point): boolean {
  return turn(a, b, c) === 0 && (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0;
}

/** A point that two runs have in common. */
function runsMeet(a: Point, b: Point, c: Point, d: Point): Point | null {
  const [toC, toD] = [turn(a, b, c), turn(a, b, d)];
  const [toA, toB] = [turn(c, d, a), turn(c, d, b)];
  if (toC === 0 && isBetween(a, b, c)) return c;
  if (toD === 0 && isBetween(a, b, d)) return d;
  if (toA === 0 && isBetween(c, d, a)) return a;
  if (toB === 0 && isBetween(c, d, b)) return b;
  if (toC > 0 === toD > 0 || toA > 0 === toB > 0 || toC * toD * toA * toB === 0) return null;
  const share = toA / (toA - toB);
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** Whether a point on the line through a and b lies between them. */
function isBetween(a: Point, b: Point, p: Point): boolean {
  return (p[0] - a[0]) * (p[0] - b[0]) <= 0 && (p[1] - a[1]) * (p[1] - b[1]) <= 0;
}
