import type { Point } from '../geometry/point.ts';

/** A turn into the bay is a notch where it passes 20 degrees gathered within 300 mm; a smooth curved wall is none (contract, design section 3). */
export const NOTCH_DEG = 20;
export const NOTCH_WITHIN_MM = 300;
export const NOTCH_RAD = (NOTCH_DEG * Math.PI) / 180;

/** Turn at b on the way a-b-c, radians; negative where a ring that runs clockwise on the sheet turns into its inside. */
export function cornerTurn(a: Point, b: Point, c: Point): number {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const vx = c[0] - b[0];
  const vy = c[1] - b[1];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}
