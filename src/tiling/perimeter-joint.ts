import { regionsSubtract } from '../geometry/clip.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { regionArea, regionPerimeter } from '../geometry/region.ts';
import type { Region } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { CLIP_SLACK_MM } from '../geometry/tolerance.ts';

/** A side of a piece of a tile that stands at a wall or a thing, the piece on its right. */
export type Side = readonly [Point, Point];

/** Whether all of a piece of a tile falls into the perimeter joint: it lies within the width of the joint of the walls and things beside it.
 *  @param sides those that stand at a wall or a thing  @param jointMm width of the perimeter joint, mm
 *  Example: 7 x 600 mm at a wall with a joint of 10 mm -> true; 7 mm of a notched tile beside a column, 400 mm before it -> false */
export function isInJoint(piece: Region, sides: readonly Side[], jointMm: number): boolean {
  const most = jointMm + CLIP_SLACK_MM;
  // Nearly all pieces are larger than the joint can be beside sides so long, corners included.
  const lengthMm = sides.reduce((sum, [p, q]) => sum + pointDistance(p, q), 0);
  if (regionArea(piece) > 3 * most * (lengthMm + 3 * most)) return false;
  if (sides.some((side) => piece.outline.every((point) => isInBand(side, point, most)))) return true;
  if (sides.length < 2) return false;
  // The bands reach no further than from corner to corner of their ends.
  const isFar = (point: Point) => sides.every(([p, q]) => segmentDistance(p, q, point) > Math.SQRT2 * most);
  if (piece.outline.some(isFar)) return false;
  // Round a corner, and along a curve, no one side tells.
  const left = regionsSubtract(
    [piece],
    sides.map((side) => sideBand(side, most)),
  );
  return left.reduce((sum, region) => sum + regionArea(region), 0) <= CLIP_SLACK_MM * regionPerimeter(piece);
}

/** Whether a place lies no further than this from the line of a side, on the side of the piece. */
function isInBand([p, q]: Side, [x, y]: Point, most: number): boolean {
  const [ux, uy] = pointDirection(p, q);
  const depth = (y - p[1]) * ux - (x - p[0]) * uy;
  return depth >= -CLIP_SLACK_MM && depth <= most;
}

/** The joint along a side, and round its ends as far as it is wide. */
function sideBand([p, q]: Side, widthMm: number): Region {
  const [ux, uy] = pointDirection(p, q);
  const at = ([x, y]: Point, along: number, depth: number): Point => [
    x + (ux * along - uy * depth) * widthMm,
    y + (uy * along + ux * depth) * widthMm,
  ];
  return { outline: [at(p, -1, 0), at(q, 1, 0), at(q, 1, 1), at(p, -1, 1)], holes: [] };
}
