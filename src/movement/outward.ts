import { type Point, pointDirection, pointEquals } from '../geometry/point.ts';
import { segmentDistance } from '../geometry/segment.ts';
import type { BayBody } from './bay-body.ts';

/** Unit vector square to the stretch from a to b, pointing out of the bay on whose outline or hole it lies; [0, 0] where a and b
 *  coincide. Neighbours share their corners, so the side is nearly always found whole; else the nearest side tells.
 *  Example: the upper side of a room, from (0, 0) to (4000, 0), y down -> (0, -1). */
export function bayOutward(bay: BayBody, a: Point, b: Point): Point {
  const [dx, dy] = pointDirection(a, b);
  const [ex, ey] = baySideOutward(bay, a, b);
  // the stretch's own direction, turned to the side that the bay's outline says
  return dy * ex - dx * ey < 0 ? [-dy, dx] : [dy, -dx];
}

function baySideOutward(bay: BayBody, a: Point, b: Point): Point {
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  let outward: Point = [0, 0];
  let nearestMm = Infinity;
  for (const { ring, side } of bay.rings) {
    for (let i = 0; i < ring.length; i++) {
      const p = ring[i] as Point;
      const q = ring[(i + 1) % ring.length] as Point;
      const whole = (pointEquals(p, a) && pointEquals(q, b)) || (pointEquals(p, b) && pointEquals(q, a));
      const distanceMm = whole ? 0 : segmentDistance(p, q, middle);
      if (distanceMm >= nearestMm) continue;
      nearestMm = distanceMm;
      const [ux, uy] = pointDirection(p, q);
      outward = [uy * side, -ux * side];
      if (whole) return outward;
    }
  }
  return outward;
}
