import { type Point, vectorLength } from './point.ts';

/** A closed outline as the list of its corners; the last is joined to the first and not repeated. */
export type Ring = readonly Point[];

/** A piece of plane: one outer ring and its holes. */
export interface Region {
  readonly outline: Ring;
  readonly holes: readonly Ring[];
}

/** Signed area, summed relative to the first corner so that a plan far from the origin loses nothing.
 *  Positive where the ring runs clockwise on the sheet (y down). */
export function ringSignedArea(ring: Ring): number {
  const origin = ring[0];
  if (origin === undefined) return 0;
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const a = ring[i] as Point;
    const b = ring[i + 1] as Point;
    twice += (a[0] - origin[0]) * (b[1] - origin[1]) - (b[0] - origin[0]) * (a[1] - origin[1]);
  }
  return twice / 2;
}

export function ringArea(ring: Ring): number {
  return Math.abs(ringSignedArea(ring));
}

export function ringPerimeter(ring: Ring): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    sum += vectorLength(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}

/** Area centroid; the mean of the corners where the ring has no area. */
export function ringCentroid(ring: Ring): Point {
  const origin = ring[0];
  if (origin === undefined) return [0, 0];
  let twice = 0;
  let sx = 0;
  let sy = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const p = ring[i] as Point;
    const q = ring[i + 1] as Point;
    const ax = p[0] - origin[0];
    const ay = p[1] - origin[1];
    const bx = q[0] - origin[0];
    const by = q[1] - origin[1];
    const cross = ax * by - bx * ay;
    twice += cross;
    sx += (ax + bx) * cross;
    sy += (ay + by) * cross;
  }
  if (twice === 0) {
    const mean = ring.reduce<[number, number]>((m, p) => [m[0] + p[0], m[1] + p[1]], [0, 0]);
    return [mean[0] / ring.length, mean[1] / ring.length];
  }
  return [origin[0] + sx / (3 * twice), origin[1] + sy / (3 * twice)];
}

/** Whether the ring turns one way only, and once round: it then crosses nowhere. Points along a side and repeated points do not matter; one that
 *  goes back along its own side is taken as not convex. */
export function ringIsConvex(ring: Ring): boolean {
  const sides = ring
    .map((p, i): Point => {
      const q = ring[(i + 1) % ring.length] as Point;
      return [q[0] - p[0], q[1] - p[1]];
    })
    .filter(([dx, dy]) => dx !== 0 || dy !== 0);
  let left = false;
  let right = false;
  const halfTurns = [0, 0];
  sides.forEach(([dx, dy], i) => {
    const [ex, ey] = sides[(i + 1) % sides.length] as Point;
    const turn = dx * ey - dy * ex;
    if (turn > 0) right = true;
    if (turn < 0) left = true;
    if (turn === 0 && dx * ex + dy * ey < 0) left = right = true;
  });
  for (const axis of [0, 1] as const) {
    const ways = sides.map((side) => Math.sign(side[axis])).filter((way) => way !== 0);
    halfTurns[axis] = ways.filter((way, i) => way !== ways[(i + 1) % ways.length]).length;
  }
  return !(left && right) && halfTurns.every((count) => count <= 2);
}

/** Whether the point lies inside by the even-odd rule; a point on the outline may fall on either side. */
export function ringContains(ring: Ring, point: Point): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[i] as Point;
    const b = ring[j] as Point;
    if (a[1] > point[1] !== b[1] > point[1]) {
      const x = a[0] + ((point[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
      if (point[0] < x) inside = !inside;
    }
  }
  return inside;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A box with so much more on every side. */
export function boxAround({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

/** Example: from [0, 0] to [4, 2] -> [2, 1]. */
export function boxMiddle({ minX, maxX, minY, maxY }: Box): Point {
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/** The upright box round all points; infinite and inverted where there are none. */
export function boxOf(points: readonly Point[]): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < points.length; i++) {
    const [x, y] = points[i] as Point;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}
