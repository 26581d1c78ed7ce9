import { type Point, pointDistance, vectorLength } from '../geometry/point.ts';
import type { Box, Region } from '../geometry/ring.ts';
import { CRUMB_MM2 } from '../geometry/tolerance.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';

/** A corner of the floor that turns in, with both its walls. */
export interface Notch {
  readonly at: Point;
  /** Where its walls begin and end, on the way round the ring. */
  readonly walls: readonly [Point, Point];
  readonly most: number;
}

export function notchesOf(region: Region, reentrantMm: number): Notch[] {
  return [region.outline, ...region.holes].flatMap((ring) =>
    ring.flatMap((p, i): Notch[] => {
      const a = ring[(i + ring.length - 1) % ring.length] as Point;
      const b = ring[(i + 1) % ring.length] as Point;
      return cornerTurn(a, p, b) < -NOTCH_RAD ? [{ at: p, walls: [a, b], most: reentrantMm * 1.002 }] : [];
    }),
  );
}

/** How corners of the floor that turn in notch a grid rectangle that is not floor all over: some of them too deeply; where all walls follow the axes,
 *  so shallowly that it is a bay as long and as wide as the rectangle, with notches at its own corners or one in a side; or in another way. */
export function boxNotched(
  notches: readonly Notch[],
  box: Box,
  grossMm2: number,
): 'deeply' | 'shallowly' | 'otherwise' {
  let count = 0;
  let cornersMm2 = 0;
  let before: Notch | null = null;
  let bite: { readonly areaMm2: number; readonly depth: number; readonly most: number } | null = null;
  for (const notch of notches) {
    const { at } = notch;
    if (at[0] <= box.minX || at[0] >= box.maxX || at[1] <= box.minY || at[1] >= box.maxY) continue;
    const { legsMm2, depth } = notchTriangle(notch, box);
    if (depth > notch.most) return 'deeply';
    count++;
    cornersMm2 += legsMm2;
    if (before !== null && (before.walls[1] === at || before.walls[0] === at))
      bite = { areaMm2: legsMm2, depth: legsMm2 / pointDistance(before.at, at), most: notch.most };
    before = notch;
  }
  const goneMm2 = (box.maxX - box.minX) * (box.maxY - box.minY) - grossMm2;
  if (count > 0 && Math.abs(cornersMm2 - goneMm2) < CRUMB_MM2) return 'shallowly';
  // Both corners of what juts in from a side span the same: it is gone once.
  if (count !== 2 || bite === null || Math.abs(bite.areaMm2 - goneMm2) >= CRUMB_MM2) return 'otherwise';
  return bite.depth > bite.most ? 'deeply' : 'shallowly';
}

/** The triangle that the walls of a notch span in the box: the pocket there is as deep as its height at the least.
 *  @returns its height, mm, and the product of its legs, mm2: where they are square to each other, the corner of the box that is gone */
function notchTriangle({ at, walls: [p, q] }: Notch, box: Box): { readonly depth: number; readonly legsMm2: number } {
  const a = shareIn(at, p, box);
  const b = shareIn(at, q, box);
  const [ax, ay, bx, by] = [(p[0] - at[0]) * a, (p[1] - at[1]) * a, (q[0] - at[0]) * b, (q[1] - at[1]) * b];
  const base = vectorLength(bx - ax, by - ay);
  const legsMm2 = Math.abs(ax * by - ay * bx);
  return { depth: base === 0 ? 0 : legsMm2 / base, legsMm2 };
}

/** Share of the way from a place in a box to another that stays in it. */
function shareIn(at: Point, end: Point, box: Box): number {
  return Math.min(1, shareInside(at[0], end[0], box.minX, box.maxX), shareInside(at[1], end[1], box.minY, box.maxY));
}

/** Share of the way from a place between the bounds to another that stays between them. */
function shareInside(from: number, to: number, low: number, high: number): number {
  if (to > high) return (high - from) / (to - from);
  if (to < low) return (low - from) / (to - from);
  return 1;
}
