import { type Point, pointDirection } from './point.ts';
import { type Ring, ringSignedArea } from './ring.ts';
import { DIRECTION_DEG } from './tolerance.ts';

/** Edges of outlines and lines moved parallel to themselves. Edge i runs from corner i to the next. Lengths in the unit of the points. */

/** Unit vector square to each edge, to the outside of the ring; [0, 0] where an edge has no length.
 *  Example: [0, 0], [4, 0], [4, 4], [0, 4] -> edge 0 has [0, -1]. */
export function ringOutward(ring: Ring): Point[] {
  const side = Math.sign(ringSignedArea(ring)) || 1;
  return ring.map((a, i) => squareTo(a, ring[(i + 1) % ring.length] as Point, side));
}

/** The ring with edges moved to its outside by the lengths given. Their neighbours keep their directions and grow or shrink; where a neighbour
 *  runs on in the line of the edge, a step is made between the two, which adds a corner.
 *  @param offsets by number of the edge. Example: [0, 0], [4, 0], [4, 4], [0, 4], edge 0 by 1 -> [0, -1], [4, -1], [4, 4], [0, 4] */
export function ringEdgesMoved(ring: Ring, offsets: ReadonlyMap<number, number>): Ring {
  const outward = ringOutward(ring);
  const count = ring.length;
  return ring.flatMap((corner, i) => {
    const before = (i + count - 1) % count;
    return cornerBetween(corner, sideOf(outward, offsets, before), sideOf(outward, offsets, i));
  });
}

/** The same for an open line. Lengths are to the left of the way along the line. */
export function lineEdgesMoved(line: readonly Point[], offsets: ReadonlyMap<number, number>): readonly Point[] {
  const left = line.slice(1).map((b, i) => edgeLeft(line[i] as Point, b));
  return line.flatMap((corner, i) => {
    const [before, after] = [sideOf(left, offsets, i - 1), sideOf(left, offsets, i)];
    if (i === 0) return [shifted(corner, after)];
    if (i === line.length - 1) return [shifted(corner, before)];
    return cornerBetween(corner, before, after);
  });
}

/** Unit vector square to the way from a to b, to its left on the sheet. Example: [0, 0], [4, 0] -> [0, -1]. */
export function edgeLeft(a: Point, b: Point): Point {
  return squareTo(a, b, 1);
}

interface Side {
  readonly normal: Point;
  readonly by: number;
}

function sideOf(normals: readonly Point[], offsets: ReadonlyMap<number, number>, edge: number): Side {
  return { normal: normals[edge] ?? [0, 0], by: offsets.get(edge) ?? 0 };
}

function squareTo(a: Point, b: Point, side: number): Point {
  const [ux, uy] = pointDirection(a, b);
  return [uy * side, -ux * side];
}

function shifted(corner: Point, { normal, by }: Side): Point {
  return [corner[0] + normal[0] * by, corner[1] + normal[1] * by];
}

const LEAST_SINE = Math.sin((DIRECTION_DEG * Math.PI) / 180);

/** Where the lines of two edges meet after each has moved. */
function cornerBetween(corner: Point, before: Side, after: Side): readonly Point[] {
  if (before.by === 0 && after.by === 0) return [corner];
  const [px, py] = before.normal;
  const [qx, qy] = after.normal;
  const sine = px * qy - py * qx;
  if (Math.abs(sine) > LEAST_SINE) {
    const x = (before.by * qy - after.by * py) / sine;
    const y = (px * after.by - qx * before.by) / sine;
    return [[corner[0] + x, corner[1] + y]];
  }
  return before.by === after.by ? [shifted(corner, after)] : [shifted(corner, before), shifted(corner, after)];
}
