import type { Point } from './point.ts';
import { boxOf, type Region, ringArea, ringCentroid, ringContains, ringPerimeter } from './ring.ts';

/** Area net of holes, in the square of the corners' unit. */
export function regionArea(region: Region): number {
  return region.holes.reduce((area, hole) => area - ringArea(hole), ringArea(region.outline));
}

/** Outer ring and holes. */
export function regionPerimeter(region: Region): number {
  return region.holes.reduce((sum, hole) => sum + ringPerimeter(hole), ringPerimeter(region.outline));
}

/** Area centroid net of holes. */
export function regionCentroid(region: Region): Point {
  const outer = ringArea(region.outline);
  const [cx, cy] = ringCentroid(region.outline);
  let area = outer;
  let x = cx * outer;
  let y = cy * outer;
  for (const hole of region.holes) {
    const a = ringArea(hole);
    const [hx, hy] = ringCentroid(hole);
    area -= a;
    x -= hx * a;
    y -= hy * a;
  }
  return area <= 0 ? [cx, cy] : [x / area, y / area];
}

export function regionContains(region: Region, point: Point): boolean {
  return ringContains(region.outline, point) && !region.holes.some((hole) => ringContains(hole, point));
}

/** Whether a region is an upright box but for a strip of so much along its sides.
 *  Example: a square of 1000 with a notch of 1 by 100 is boxed within 0.1 */
export function regionIsBoxed({ outline, holes }: Region, slack: number): boolean {
  if (holes.length > 0) return false;
  const { minX, maxX, minY, maxY } = boxOf(outline);
  const [width, height] = [maxX - minX, maxY - minY];
  return width * height - ringArea(outline) <= slack * (width + height);
}
