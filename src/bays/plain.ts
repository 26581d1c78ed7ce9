import type { Point } from '../geometry/point.ts';
import type { Region } from '../geometry/ring.ts';
import type { Part } from './part.ts';

/** Whether every wall follows an axis and is so long, and every core so large, that a bay can only be a full rectangle: then nothing needs
 *  to be clipped. A step whose legs are both longer than root 2 times a depth makes a pocket deeper than that. */
export function isPlain(region: Region, layout: Part['layout']): boolean {
  const least = layout.reentrantMm * 1.002 * Math.SQRT2;
  return [region.outline, ...region.holes].every((ring, r) =>
    ring.every((p, i) => {
      const q = ring[(i + 1) % ring.length] as Point;
      const [dx, dy] = [Math.abs(q[0] - p[0]), Math.abs(q[1] - p[1])];
      return (dx === 0 || dy === 0) && dx + dy > least && (r === 0 || dx + dy > layout.columnMm * 1.002);
    }),
  );
}
