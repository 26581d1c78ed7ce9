import type { Point } from '../geometry/point.ts';
import type { MovingBay } from './joint-movement.ts';
import { bayOutward } from './outward.ts';
import { strainMovement } from './strain.ts';

/** The largest movement of a bay out over its edge when it warms and swells, mm, >= 0: what the edge strip has to give.
 *  @param line the edge, mm
 *  Example: the short side of a free bay of 8 x 5 m, 12e-6 1/K and 25 K -> 1.2 mm; held at its far side -> 2.4 mm. */
export function edgeMovement(line: readonly Point[], bay: MovingBay): number {
  let movementMm = 0;
  for (let i = 0; i + 1 < line.length; i++) {
    const a = line[i] as Point;
    const b = line[i + 1] as Point;
    const [nx, ny] = bayOutward(bay.body, a, b);
    for (const [x, y] of [a, b]) {
      const runMm = (x - bay.stillPoint[0]) * nx + (y - bay.stillPoint[1]) * ny;
      movementMm = Math.max(movementMm, strainMovement(bay.strain.growing, runMm));
    }
  }
  return movementMm;
}
