import type { Point } from '../geometry/point.ts';
import { regionCentroid } from '../geometry/region.ts';
import type { BayBody } from './bay-body.ts';
import { type HeldGround, regionsCentre } from './held-place.ts';

/** The point of a bay that does not move: the area centroid, net of holes, of a bay that lies free on its insulation; the centroid of
 *  the held place where it has one; the area-weighted mean where it has several. mm.
 *  Example: a free bay from (0, 0) to (8000, 5000) -> (4000, 2500). */
export function bayStillPoint(bay: BayBody, grounds: readonly HeldGround[]): Point {
  return grounds.length === 0
    ? regionCentroid(bay.region)
    : regionsCentre(grounds.flatMap((ground) => ground.regions)).centre;
}
