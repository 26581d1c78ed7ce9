import type { Point } from './point.ts';
import type { Region } from './ring.ts';
import { lineInside } from './scanline.ts';

/** A bound on the lines of one hatch, so that a wrong scale cannot fill the memory. */
const mostLines = 5000;

/** Parallel lines over a region, clear of its holes. They lie at whole multiples of the spacing from the origin, so that
 *  the hatches of neighbours run through.
 *  @param spacing distance of the lines, in the unit of the corners   @param angleDeg clockwise on the sheet from the x axis
 *  @returns pieces of line, in order; none where the region would take more than 5000 lines.
 *  Example: a square of 4 at the origin, spacing 1.5, 0 degrees -> the lines y = 1.5 and y = 3. */
export function regionHatch(region: Region, spacing: number, angleDeg: number): readonly (readonly [Point, Point])[] {
  const cos = Math.cos((angleDeg * Math.PI) / 180);
  const sin = Math.sin((angleDeg * Math.PI) / 180);
  const rings = [region.outline, ...region.holes].map((ring) =>
    ring.map(([x, y]): Point => [x * cos + y * sin, y * cos - x * sin]),
  );
  let low = Infinity;
  let high = -Infinity;
  for (const [, v] of rings.flat()) {
    low = Math.min(low, v);
    high = Math.max(high, v);
  }
  const first = Math.ceil(low / spacing);
  const last = Math.floor(high / spacing);
  if (!(spacing > 0) || !(last - first < mostLines)) return [];

  const pieces: (readonly [Point, Point])[] = [];
  for (let row = first; row <= last; row++) {
    const v = row * spacing;
    for (const [from, to] of lineInside(rings, 1, v)) {
      pieces.push([
        [from * cos - v * sin, from * sin + v * cos],
        [to * cos - v * sin, to * sin + v * cos],
      ]);
    }
  }
  return pieces;
}
