import type { Point } from '../../geometry/point.ts';
import { boxOf, type Ring, ringArea } from '../../geometry/ring.ts';
import type { PlanFile } from '../schema.ts';
import { objectFind } from './objects.ts';
import { CORNERS_MEET_MM, type Edited, type RingCorner, refused, ringFind, ringsSet } from './rings.ts';

export { edgeLengthSet, edgeMoved } from './edges.ts';
export type { Edited, RingCorner } from './rings.ts';

/** Corners of outlines, holes and lines, mm. An outline that would cross itself, lose its third corner or have two corners in one place is refused
 *  with the place. Doorways follow their walls. */

/** Example: corner 2 of a room of 4000 x 3000 to [4000, 3500] -> its right wall is 3500 long */
export function cornerMoved(file: PlanFile, ref: RingCorner, to: Point): Edited {
  return pointsSet(file, ref, (points) => points.map((point, i) => (i === ref.corner ? to : point)));
}

/** Adds a corner on the edge that runs from this corner. Example: corner 3 of a room of 4000 x 3000, at [0, 1500] -> a corner 4 there */
export function cornerAdded(file: PlanFile, ref: RingCorner, at: Point): Edited {
  const found = ringFind(file, ref);
  if (found && !found.isClosed && ref.corner === found.points.length - 1) return refused('no-such-corner');
  return pointsSet(file, ref, (points) => points.toSpliced(ref.corner + 1, 0, at));
}

/** Example: a corner of a rectangle -> a triangle; a corner of that is refused, 'too-few-corners'. */
export function cornerRemoved(file: PlanFile, ref: RingCorner): Edited {
  return pointsSet(file, ref, (points) => points.toSpliced(ref.corner, 1));
}

function pointsSet(file: PlanFile, ref: RingCorner, change: (points: readonly Point[]) => readonly Point[]): Edited {
  const points = ringFind(file, ref)?.points;
  if (points?.[ref.corner] === undefined) return refused('no-such-corner');
  return ringsSet(file, [{ id: ref.id, ring: ref.ring, points: change(points) }]);
}

/** Sets all corners of an outline, a hole or a line, as from a table of them.
 *  @param ring as in RingCorner. Example: 'r1', 0, [[0, 0], [3000, 0], [0, 3000]] -> the room is that triangle */
export function ringSet(file: PlanFile, id: string, ring: number, points: readonly Point[]): Edited {
  return ringsSet(file, [{ id, ring, points }]);
}

/** Makes an upright rectangle wider or higher; its top left corner stays. Holes stay as they are.
 *  Example: a room from [0, 0] to [4000, 3000], { widthMm: 4500 } -> to [4500, 3000] */
export function rectangleSizeSet(
  file: PlanFile,
  id: string,
  size: { readonly widthMm?: number; readonly heightMm?: number },
): Edited {
  const found = objectFind(file, id);
  if (found === null) return refused('no-such-corner');
  if (!('outline' in found.object) || !isUprightRectangle(found.object.outline)) return refused('not-a-rectangle');
  const { outline } = found.object;
  const { minX, minY, maxX, maxY } = boxOf(outline);
  const { widthMm = maxX - minX, heightMm = maxY - minY } = size;
  if (widthMm < CORNERS_MEET_MM || heightMm < CORNERS_MEET_MM) return refused('corners-meet', [minX, minY]);
  const points = outline.map(
    ([x, y]): Point => [minX + ((x - minX) / (maxX - minX)) * widthMm, minY + ((y - minY) / (maxY - minY)) * heightMm],
  );
  return ringsSet(file, [{ id, ring: 0, points }]);
}

/** Whether the ring goes once round its upright box; corners in the middle of a side do not matter. */
function isUprightRectangle(ring: Ring): boolean {
  const { minX, minY, maxX, maxY } = boxOf(ring);
  const onSides = ring.every(([x, y]) => x === minX || x === maxX || y === minY || y === maxY);
  const boxMm2 = (maxX - minX) * (maxY - minY);
  return onSides && boxMm2 > 0 && Math.round(ringArea(ring)) === Math.round(boxMm2);
}
