import type { Point } from '../geometry/point.ts';
import type { Ring } from '../geometry/ring.ts';

/** Sides of the polygon that stands for a round pipe. */
const circleSides = 24;

export function circle([x, y]: Point, radius: number): Ring {
  return Array.from({ length: circleSides }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / circleSides;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
}
