import type { Point } from '../geometry/point.ts';
import type { BayBody } from './bay-body.ts';
import type { BayStrain } from './bay-strain.ts';
import { bayOutward } from './outward.ts';
import { strainMovement } from './strain.ts';

/** A bay that moves: its strains and the point about which it does. */
export interface MovingBay {
  readonly body: BayBody;
  readonly strain: BayStrain;
  readonly stillPoint: Point;
}

/** What the two bays at a joint do to it, mm, each >= 0. */
export interface JointDisplacement {
  readonly closingMm: number;
  readonly openingMm: number;
  readonly slidingMm: number;
  readonly worstClosingMm: number;
}

/** Movement at a joint between two bays: each moves by strain times the distance from its still point, so that the joint's corners
 *  suffice. Closing comes from warming and swelling, opening from cooling and shrinkage, sliding from whichever is more.
 *
 *  In the worst case each bay is stopped at its far side: all of its growth from there to the joint arrives here.
 *  @param line the joint, mm   @param first, second the bays on its two sides
 *  Example: two bays of 8 x 5 m side by side, 12e-6 1/K and 25 K, joint 5 m long between them, both free
 *  -> closing 2.4 mm (1.2 from each), sliding 0, worst closing 4.8 mm. */
export function jointDisplacement(line: readonly Point[], first: MovingBay, second: MovingBay): JointDisplacement {
  let closingMm = 0;
  let openingMm = 0;
  let slidingMm = 0;
  let worstClosingMm = 0;
  for (let i = 0; i + 1 < line.length; i++) {
    const ends = [line[i] as Point, line[i + 1] as Point];
    const normal = bayOutward(first.body, ends[0] as Point, ends[1] as Point);
    const along: Point = [-normal[1], normal[0]];
    for (const end of ends) {
      const grown = relative(end, first, second, 'growing');
      const shortened = relative(end, first, second, 'shortening');
      closingMm = Math.max(closingMm, dot(grown, normal));
      openingMm = Math.max(openingMm, dot(shortened, normal));
      slidingMm = Math.max(slidingMm, Math.abs(dot(grown, along)), Math.abs(dot(shortened, along)));
      const worst =
        strainMovement(first.strain.growing, bayReach(first.body, end, normal)) +
        strainMovement(second.strain.growing, bayReach(second.body, end, [-normal[0], -normal[1]]));
      worstClosingMm = Math.max(worstClosingMm, worst);
    }
  }
  return { closingMm, openingMm, slidingMm, worstClosingMm };
}

/** Way of the first bay towards the second at a place, mm; for shortening with the sign turned, as both draw back. */
function relative(at: Point, first: MovingBay, second: MovingBay, way: keyof BayStrain): Point {
  const part = (axis: 0 | 1) =>
    strainMovement(first.strain[way], at[axis] - first.stillPoint[axis]) -
    strainMovement(second.strain[way], at[axis] - second.stillPoint[axis]);
  return [part(0), part(1)];
}

/** How far a bay reaches back from a place, against a direction, mm. Example: a bay of 8 x 5 m, from its right end to the left -> 8000. */
function bayReach(bay: BayBody, from: Point, direction: Point): number {
  let least = Infinity;
  for (const corner of bay.region.outline) least = Math.min(least, dot(corner, direction));
  return dot(from, direction) - least;
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1];
}
