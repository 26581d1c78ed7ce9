import { type Point, pointBetween, pointDirection, pointDistance } from '../../geometry/point.ts';
import { ringSignedArea } from '../../geometry/ring.ts';
import { edgeLeft, lineEdgesMoved, ringEdgesMoved, ringOutward } from '../../geometry/ring-edges.ts';
import { DIRECTION_DEG } from '../../geometry/tolerance.ts';
import type { PlanFile } from '../schema.ts';
import {
  CORNERS_MEET_MM,
  type Edited,
  type FoundRing,
  type RingChange,
  type RingCorner,
  refused,
  ringFind,
  ringsSet,
} from './rings.ts';
import { type WallFace, wallsOf } from './walls.ts';

/** Edges of outlines, holes and lines moved parallel to themselves or made longer, mm. An edge is known by the corner that it runs from. */

/** Moves an edge parallel to itself, its neighbours keeping their directions, so that a rectangle stays one. Where a neighbour runs on in the same
 *  line a step is made, and the corners after it are numbered on.
 *  @param byMm to the outside of the ring; for a line, to the left of the way along it
 *  @param options wholeWall: all faces of the wall that this edge is a face of move alike, on both sides and along all rooms beside it.
 *  Example: the right wall of a room of 4000 x 3000 by 250 -> 4250 x 3000 */
export function edgeMoved(
  file: PlanFile,
  ref: RingCorner,
  byMm: number,
  { wholeWall }: { readonly wholeWall: boolean },
): Edited {
  const found = ringFind(file, ref);
  const ends = found && edgeEnds(found, ref.corner);
  if (!found || !ends) return refused('no-such-corner');
  if (!wholeWall || found.list !== 'rooms') return edgesShifted(file, [{ ...ref, byMm }]);
  const [nx, ny] = ringOutward(found.points)[ref.corner] as Point;
  const shifts = wallFaces(file, ref).map((face) => {
    const points = ringFind(file, face)?.points ?? [];
    const [mx, my] = ringOutward(points)[face.corner] ?? [0, 0];
    return { ...face, byMm: byMm * (nx * mx + ny * my) };
  });
  return edgesShifted(file, shifts);
}

/** All edges that the wall of an edge has for faces: those that look at it, those that look at these, and so on. */
function wallFaces(file: PlanFile, ref: RingCorner): readonly RingCorner[] {
  const refOf = ({ roomId, ring, edge }: WallFace): RingCorner => ({ id: roomId, ring, corner: edge });
  const keyOf = ({ id, ring, corner }: RingCorner) => JSON.stringify([id, ring, corner]);
  const facing = new Map<string, RingCorner[]>();
  for (const { faces } of wallsOf(file)) {
    const [one, other] = [refOf(faces[0]), refOf(faces[1])];
    facing.set(keyOf(one), [...(facing.get(keyOf(one)) ?? []), other]);
    facing.set(keyOf(other), [...(facing.get(keyOf(other)) ?? []), one]);
  }
  const found = new Map([[keyOf(ref), ref]]);
  for (const face of found.values()) {
    for (const other of facing.get(keyOf(face)) ?? []) {
      if (!found.has(keyOf(other))) found.set(keyOf(other), other);
    }
  }
  return [...found.values()];
}

/** Makes an edge so long: its far corner moves along the edge, and the edge that begins there moves with it, parallel to itself, so that right
 *  angles stay. Example: the top wall of a room of 4000 x 3000 to 4500 -> 4500 x 3000 */
export function edgeLengthSet(file: PlanFile, ref: RingCorner, lengthMm: number): Edited {
  const found = ringFind(file, ref);
  const ends = found && edgeEnds(found, ref.corner);
  if (!found || !ends) return refused('no-such-corner');
  const [a, b] = ends;
  if (lengthMm < CORNERS_MEET_MM || pointDistance(a, b) === 0) return refused('corners-meet', a);
  const [ux, uy] = pointDirection(a, b);
  const longerMm = lengthMm - pointDistance(a, b);
  const far = (ref.corner + 1) % found.points.length;
  const next = edgeEnds(found, far);
  const [nx, ny] = next ? edgeNormal(found, far) : [0, 0];
  const sine = ux * nx + uy * ny;
  if (Math.abs(sine) > LEAST_SINE) return edgesShifted(file, [{ ...ref, corner: far, byMm: longerMm * sine }]);
  const to: Point = [b[0] + ux * longerMm, b[1] + uy * longerMm];
  const points = found.points.map((point, i) => (i === far ? to : point));
  return ringsSet(file, [{ id: ref.id, ring: ref.ring, points }]);
}

const LEAST_SINE = Math.sin((DIRECTION_DEG * Math.PI) / 180);

/** The way in which a positive length moves an edge. */
function edgeNormal({ points, isClosed }: FoundRing, edge: number): Point {
  if (isClosed) return ringOutward(points)[edge] as Point;
  return edgeLeft(points[edge] as Point, points[edge + 1] as Point);
}

/** The ends of the edge from a corner; null where none begins there. */
function edgeEnds({ points, isClosed }: FoundRing, corner: number): readonly [Point, Point] | null {
  const [a, b] = [points[corner], points[corner + 1] ?? (isClosed ? points[0] : undefined)];
  return a && b ? [a, b] : null;
}

interface EdgeShift extends RingCorner {
  readonly byMm: number;
}

function edgesShifted(file: PlanFile, shifts: readonly EdgeShift[]): Edited {
  const changes = new Map<string, RingChange>();
  for (const shift of shifts) {
    const key = JSON.stringify([shift.id, shift.ring]);
    if (changes.has(key)) continue;
    const found = ringFind(file, shift);
    if (!found) return refused('no-such-corner');
    const own = shifts.filter(({ id, ring }) => id === shift.id && ring === shift.ring);
    const offsets = new Map(own.map(({ corner, byMm }) => [corner, byMm]));
    const points = found.isClosed ? ringEdgesMoved(found.points, offsets) : lineEdgesMoved(found.points, offsets);
    if (found.isClosed && ringSignedArea(points) * ringSignedArea(found.points) < 0) {
      // Drawn through the opposite edge the outline is whole again, but inside out.
      const [a, b] = edgeEnds(found, shift.corner) as readonly [Point, Point];
      return refused('crosses', pointBetween(a, b, 1 / 2));
    }
    changes.set(key, { id: shift.id, ring: shift.ring, points });
  }
  return ringsSet(file, [...changes.values()]);
}
