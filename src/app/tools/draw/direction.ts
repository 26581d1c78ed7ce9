import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';

/** Degrees from the right, against the clock as on a protractor: up the sheet is 90. Null where the points coincide.
 *  Example: from [0, 0] to [0, -500] -> 90. */
export function directionOf(from: Point, to: Point): number | null {
  if (pointDistance(from, to) === 0) return null;
  const degrees = (Math.atan2(from[1] - to[1], to[0] - from[0]) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

/** The unit vector of a direction; right angles are exact. Example: 270 -> [0, 1], down the sheet. */
export function wayOf(directionDeg: number): Point {
  const quarter = (((directionDeg / 90) % 4) + 4) % 4;
  const exact: readonly Point[] = [
    [1, 0],
    [0, -1],
    [-1, 0],
    [0, 1],
  ];
  const way = exact[quarter];
  if (way !== undefined) return way;
  const turn = (directionDeg * Math.PI) / 180;
  return pointDirection([0, 0], [Math.cos(turn), -Math.sin(turn)]);
}
