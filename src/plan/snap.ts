import type { Point } from '../geometry/point.ts';
import type { Ring } from '../geometry/ring.ts';
import { GRID_PER_MM, WELD_GRID } from '../geometry/tolerance.ts';

/** No length or place of a plan is beyond this, mm: 10 km. */
export const FARTHEST_MM = 1e7;

/** Coordinates are snapped once, when they enter the plan: to 0.1 mm, never -0. */
export function coordinateSnapped(mm: number): number {
  return Math.round(mm * GRID_PER_MM) / GRID_PER_MM + 0;
}

export function pointSnapped(point: Point): Point {
  return [coordinateSnapped(point[0]), coordinateSnapped(point[1])];
}

/** Whether two snapped points are one corner: closer than 1 mm. */
function pointsWeld(a: Point, b: Point): boolean {
  const dx = Math.round((a[0] - b[0]) * GRID_PER_MM);
  const dy = Math.round((a[1] - b[1]) * GRID_PER_MM);
  return dx * dx + dy * dy < WELD_GRID * WELD_GRID;
}

/** Whether a list has at least `count` points that are not one corner; stops at the first that suffice. */
export function ringHasDistinct(points: readonly Point[], count: number): boolean {
  const found: Point[] = [];
  for (const point of points) {
    const snapped = pointSnapped(point);
    if (!found.some((other) => pointsWeld(other, snapped))) found.push(snapped);
    if (found.length >= count) return true;
  }
  return false;
}

/** A ring of snapped points without corners that follow each other closer than 1 mm, the repeat that closes some rings among them. */
export function ringWelded(ring: Ring): Ring {
  const kept: Point[] = [];
  for (const point of ring) {
    const last = kept.at(-1);
    if (last === undefined || !pointsWeld(last, point)) kept.push(point);
  }
  while (kept.length > 1 && pointsWeld(kept[0] as Point, kept.at(-1) as Point)) kept.pop();
  return kept;
}
