import type { Point } from '../geometry/point.ts';
import { type Box, boxAround, boxOf, type Ring, ringContains } from '../geometry/ring.ts';
import { segmentDistance, segmentsMeet } from '../geometry/segment.ts';
import type { Plan } from '../plan/plan.ts';
import { circle } from './circle.ts';

/** What stands on the floor: no tape runs through it. */
export interface Things {
  /** Whether one stands in the way from a to b. */
  between(a: Point, b: Point): boolean;
  /** Whether a place lies in one, or nearer to it than a tape can be held. */
  at(place: Point): boolean;
}

/** A tape is held no nearer to a thing or a wall than this, mm. */
export const tapeClearMm = 50;

type Standing = Pick<Plan, 'columns' | 'joinery' | 'pipes'>;

export function thingOutlines({ columns, joinery, pipes }: Standing): readonly Ring[] {
  return [...[...columns, ...joinery].map(({ outline }) => outline), ...pipes.map(pipeOutline)];
}

export function pipeOutline({ centre, diameterMm }: Plan['pipes'][number]): Ring {
  return circle(centre, diameterMm / 2);
}

export function thingsOf(plan: Standing): Things {
  const things = thingOutlines(plan).map((outline) => ({ outline, reach: boxAround(boxOf(outline), tapeClearMm) }));
  const near = (box: Box) => things.filter(({ reach }) => boxesMeet(reach, box));
  return {
    between: (a, b) => near(boxOf([a, b])).some(({ outline }) => ringContains(outline, a) || ringMeets(outline, a, b)),
    at: (place) =>
      near(boxOf([place])).some(({ outline }) => ringContains(outline, place) || ringIsNear(outline, place)),
  };
}

function boxesMeet(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY;
}

function ringMeets(ring: Ring, a: Point, b: Point): boolean {
  return ring.some((p, k) => segmentsMeet(a, b, p, ring[(k + 1) % ring.length] as Point));
}

/** Whether a place lies nearer to an outline than a tape can be held. */
export function ringIsNear(ring: Ring, place: Point): boolean {
  return ring.some((p, k) => segmentDistance(p, ring[(k + 1) % ring.length] as Point, place) < tapeClearMm);
}
