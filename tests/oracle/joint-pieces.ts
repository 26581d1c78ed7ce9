import type { TileGrid } from '../../src/plan/plan.ts';
import {
  at,
  between,
  boundsApart,
  boundsOf,
  centroid,
  circle,
  distanceToSegments,
  lineSegments,
  type Segment,
  type Shape,
  segments,
  shapeMeet,
} from './planar.ts';
import type { Scene, SceneBay } from './scene.ts';
import { areaInBounds, boundsArea, shapeInPlane, tilePlane, tilesOver, tileVerdict } from './tile-plane.ts';

/** How many pieces of tiles fall into the perimeter joint: every place of the piece is as near as that to a wall or a thing. Round a corner the joint
 *  reaches as far as the corner of a square; a piece that lies in it only so far may count or not.
 *  @param floors of the field, bay by bay */
export function piecesInJoint(
  scene: Scene,
  grid: TileGrid,
  floors: readonly { readonly bay: SceneBay; readonly shape: Shape }[],
): readonly [least: number, most: number] {
  const jointMm = scene.plan.edgeStrip.thicknessMm;
  const plane = tilePlane(grid);
  let [least, most] = [0, 0];
  for (const { bay, shape: floor } of floors) {
    const shape = shapeInPlane(floor, plane);
    const walls = wallsOf(scene, bay).map(([a, b]): Segment => [plane.to(a), plane.to(b)]);
    for (const { bounds } of tilesOver(grid, boundsOf(shape.flatMap(({ outline }) => outline)))) {
      const areaMm2 = areaInBounds(shape, bounds);
      if (areaMm2 < 1e-3 || areaMm2 > boundsArea(bounds) - 1e-3) continue;
      const { x0, y0, x1, y1 } = bounds;
      const box = {
        outline: [
          [x0, y0],
          [x1, y0],
          [x1, y1],
          [x0, y1],
        ] as const,
        holes: [],
      };
      const near = walls.filter((wall) => !boundsApart(boundsOf(wall), bounds, 2 * jointMm));
      const pieces = near.length === 0 ? [] : shapeMeet(shape, [box]);
      const isSure = pieces.length === 1 && tileVerdict(shape, bounds).cut === 'yes';
      for (const { outline, holes } of pieces) {
        const middle = centroid([{ outline, holes }]);
        const places = outline.flatMap((p, i) => [p, between(p, at(outline, i + 1), 0.5), between(p, middle, 0.5)]);
        const farthest = Math.max(...places.map((p) => distanceToSegments(p, near)));
        if (isSure && farthest <= jointMm - 0.1) least++;
        if (farthest <= jointMm * Math.SQRT2 + 0.1) most++;
      }
    }
  }
  return [least, most];
}

/** Sides of a bay that stand at walls, columns and joinery. */
function wallsOf({ plan, analysis }: Scene, { sides }: SceneBay): Segment[] {
  const others = [
    ...analysis.joints.flatMap(({ line }) => lineSegments(line)),
    ...plan.pipes.flatMap(({ centre, diameterMm }) => segments(circle(centre, diameterMm))),
  ];
  if (others.length === 0) return [...sides];
  return sides.filter((side) => [0, 0.5, 1].some((share) => distanceToSegments(between(...side, share), others) > 0.5));
}
