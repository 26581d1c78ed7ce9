import type { Point } from '../geometry/point.ts';
import { rules } from '../plan/reference.ts';

/** A turn into the bay is a notch where it passes so much, gathered within such a length; a smooth curved wall is none. */
export const NOTCH_DEG = rules.reentrantTurnDeg.value;
export const NOTCH_WITHIN_MM = rules.reentrantGatherMm.value;
export const NOTCH_RAD = (NOTCH_DEG * Math.PI) / 180;

/** Turn at b on the way a-b-c, radians; negative where a ring that runs clockwise on the sheet turns into its inside. */
export function cornerTurn(a: Point, b: Point, c: Point): number {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const vx = c[0] - b[0];
  const vy = c[1] - b[1];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}
