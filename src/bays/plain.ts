import type { Point } from '../geometry/point.ts';
import type { Region } from '../geometry/ring.ts';
import type { Part } from './part.ts';

/** Whether every wall follows an axis and is so long, and every core so large, that a bay can only be a full rectangle: then nothing needs
 *  to be clipped. A step whose legs are both longer than root 2 times a depth makes a pocket deeper than that. */
export function isPlain(region: Region, layout: Part['layout']): boolean {
  const least = layout.reentrantMm * 1.002 * Math.SQRT2;
  return wallsEvery(
    region,
    (dx, dy, r) => (dx === 0 || dy === 0) && dx + dy > least && (r === 0 || dx + dy > layout.columnMm * 1.002),
  );
}

/** Whether every wall follows an axis. */
export function isSquare(region: Region): boolean {
  return wallsEvery(region, (dx, dy) => dx === 0 || dy === 0);
}

function wallsEvery(region: Region, holds: (dx: number, dy: number, ring: number) => boolean): boolean {
  return [region.outline, ...region.holes].every((ring, r) =>
    ring.every((p, i) => {
      const q = ring[(i + 1) % ring.length] as Point;
      return holds(Math.abs(q[0] - p[0]), Math.abs(q[1] - p[1]), r);
    }),
  );
}
