import { type Point, vectorLength } from './point.ts';

/** The place on the stretch from a to b nearest to p, as the share of the way from a. */
export function segmentNearest(
  a: Point,
  b: Point,
  p: Point,
): { readonly at: Point; readonly share: number; readonly distance: number } {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const lengthSquared = dx * dx + dy * dy;
  const raw = lengthSquared === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / lengthSquared;
  const share = Math.min(1, Math.max(0, raw));
  const at: Point = [a[0] + dx * share, a[1] + dy * share];
  return { at, share, distance: vectorLength(p[0] - at[0], p[1] - at[1]) };
}

/** Distance from a point to the stretch from a to b, in the unit of the points.
 *  Example: point [3, 4], a [0, 0], b [0, 10] -> 3. */
export function segmentDistance(a: Point, b: Point, point: Point): number {
  return segmentNearest(a, b, point).distance;
}

/** Where the ray from `from` along the unit vector meets the stretch from a to b: its distance from `from`, or null. */
export function rayMeets(from: Point, direction: Point, a: Point, b: Point): number | null {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const denominator = direction[0] * uy - direction[1] * ux;
  if (denominator === 0) return null;
  const wx = a[0] - from[0];
  const wy = a[1] - from[1];
  const distance = (wx * uy - wy * ux) / denominator;
  const share = (wx * direction[1] - wy * direction[0]) / denominator;
  return share >= 0 && share <= 1 && distance >= 0 ? distance : null;
}

/** Whether two stretches have a point in common. */
export function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const length = vectorLength(b[0] - a[0], b[1] - a[1]);
  if (length === 0) return segmentDistance(c, d, a) === 0;
  const met = rayMeets(a, [(b[0] - a[0]) / length, (b[1] - a[1]) / length], c, d);
  return met !== null && met <= length;
}
