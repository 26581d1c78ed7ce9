import type { Point } from '../../geometry/point.ts';
import type { PlanFile } from '../schema.ts';
import { coordinateSnapped, pointSnapped } from '../snap.ts';
import { doorwaysFollow } from './doorways-follow.ts';
import { objectFits, objectPlaced, objectsFound, objectsReplaced, type PlanObject } from './objects.ts';

/** Objects moved, turned and mirrored, mm. Doorways that are not among them follow their walls. What would take an object off the sheet, or turn
 *  an outline into fewer than three corners, changes nothing. */

/** Example: ['r1'], [500, 0] -> the room half a metre to the right. */
export function objectsMoved(file: PlanFile, ids: readonly string[], by: Point): PlanFile {
  return objectsPlaced(file, ids, () => pointMoved(by));
}

/** Turns objects about a point, clockwise on the sheet.
 *  @param angleDeg degrees. Example: about [0, 0] by 90 -> what was to the right of it is below it */
export function objectsTurned(file: PlanFile, ids: readonly string[], about: Point, angleDeg: number): PlanFile {
  const [cx, cy] = pointSnapped(about);
  const [cos, sin] = directionOf(angleDeg);
  return objectsPlaced(file, ids, () => ([x, y]) => [
    cx + (x - cx) * cos - (y - cy) * sin,
    cy + (x - cx) * sin + (y - cy) * cos,
  ]);
}

/** Cosine and sine, exact at quarter turns, so that four of them lead back. */
function directionOf(angleDeg: number): Point {
  const quarter = angleDeg / 90;
  if (!Number.isInteger(quarter)) return [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)];
  const turns: readonly Point[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ];
  return turns[((quarter % 4) + 4) % 4] as Point;
}

/** Mirrors objects about the upright ('left-right') or level ('top-bottom') line through a point.
 *  Example: about [2000, 0], 'left-right' -> what was at x 500 is at x 3500 */
export function objectsMirrored(
  file: PlanFile,
  ids: readonly string[],
  about: Point,
  axis: 'left-right' | 'top-bottom',
): PlanFile {
  const twice = pointSnapped([about[0] * 2, about[1] * 2]);
  return objectsPlaced(
    file,
    ids,
    () =>
      ([x, y]) =>
        axis === 'left-right' ? [twice[0] - x, y] : [x, twice[1] - y],
  );
}

/** A move, taken to 0.1 mm once, so that the same move back leads back. */
export function pointMoved(by: Point): (point: Point) => Point {
  const [dx, dy] = pointSnapped(by);
  return ([x, y]) => [coordinateSnapped(x + dx), coordinateSnapped(y + dy)];
}

/** Places the points of each object anew; the doorways that are left follow. */
export function objectsPlaced(
  file: PlanFile,
  ids: readonly string[],
  placing: (found: PlanObject) => (point: Point) => Point,
): PlanFile {
  const placed = objectsReplaced(file, ids, (found) => {
    const place = placing(found);
    return objectPlaced(found.object, (point) => pointSnapped(place(point)));
  });
  if (placed === file || !objectsFound(placed, ids).every(objectFits)) return file;
  return doorwaysFollow(file, placed);
}
