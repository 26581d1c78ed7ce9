import type { Point } from './point.ts';
import { type Region, ringArea, ringCentroid, ringContains, ringPerimeter } from './ring.ts';

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
