import { boxIndexOf } from '../../geometry/box-index.ts';
import { type Point, pointDirection, pointDistance } from '../../geometry/point.ts';
import { boxOf, type Ring, ringSignedArea } from '../../geometry/ring.ts';
import { DIRECTION_DEG, WELD_MM } from '../../geometry/tolerance.ts';
import { rules } from '../reference.ts';
import type { PlanFile } from '../schema.ts';
import { objectRings } from './objects.ts';

/** The walls that a plan leaves between its rooms: where two edges of rooms look at each other across a gap with no floor in it. */

/** The part of a room's edge that is the face of a wall, mm. */
export interface WallFace {
  readonly roomId: string;
  /** 0: the outline; 1 and on: the holes. */
  readonly ring: number;
  /** Number of the corner that the edge runs from. */
  readonly edge: number;
  readonly from: Point;
  readonly to: Point;
}

/** A stretch of wall over which its two faces lie over against each other; both run from the same end to the other. */
export interface DoorwayWall {
  readonly faces: readonly [WallFace, WallFace];
  /** Length of the stretch along the first face. */
  readonly lengthMm: number;
  /** From face to face, in the middle of the stretch. */
  readonly depthMm: number;
}

/** An edge of a room's ring, with the unit vectors along it and square to it, away from the room's floor. */
export interface RoomEdge {
  readonly roomId: string;
  readonly ring: number;
  readonly edge: number;
  readonly a: Point;
  readonly b: Point;
  readonly along: Point;
  readonly away: Point;
  readonly lengthMm: number;
}

/** Rooms that are further apart have no wall between them that a doorway goes through. */
export const WALL_MOST_MM = rules.wallDepthMostMm.value;

/** Faces look at each other over at least so much. */
const FACE_LEAST_MM = rules.wallFaceLeastMm.value;

/** Rooms that are this near share an edge, with no wall between. */
export const WALL_LEAST_MM = WELD_MM;

const FACING = -Math.cos((DIRECTION_DEG * Math.PI) / 180);

/** Whether edges of rooms look at each other. */
export function edgesFace(one: RoomEdge, other: RoomEdge): boolean {
  return one.away[0] * other.away[0] + one.away[1] * other.away[1] <= FACING;
}

/** Where a point lies beside an edge: mm along it from its start, and mm away from the room's floor. */
export function edgePlace({ a, along, away }: RoomEdge, p: Point): { readonly along: number; readonly away: number } {
  const [dx, dy] = [p[0] - a[0], p[1] - a[1]];
  return { along: dx * along[0] + dy * along[1], away: dx * away[0] + dy * away[1] };
}

/** How far another edge's line is away at a place along this one, mm. */
export function edgeDepthAt(edge: RoomEdge, other: RoomEdge, alongMm: number): number {
  const [p, q] = [edgePlace(edge, other.a), edgePlace(edge, other.b)];
  return p.along === q.along ? p.away : p.away + ((q.away - p.away) * (alongMm - p.along)) / (q.along - p.along);
}

/** The edges of a room's outline and holes. */
export function roomEdges(room: PlanFile['rooms'][number]): RoomEdge[] {
  return objectRings({ list: 'rooms', object: room }).flatMap((ring, number) => ringEdges(room.id, ring, number));
}

function ringEdges(roomId: string, ring: Ring, number: number): RoomEdge[] {
  // The floor lies on the right of the way round an outline that runs clockwise, on the left of a hole that does.
  const side = (Math.sign(ringSignedArea(ring)) || 1) * (number === 0 ? 1 : -1);
  return ring.map((a, edge) => {
    const b = ring[(edge + 1) % ring.length] as Point;
    const along = pointDirection(a, b);
    const away: Point = [along[1] * side, -along[0] * side];
    return { roomId, ring: number, edge, a, b, along, away, lengthMm: pointDistance(a, b) };
  });
}

type Interval = readonly [from: number, to: number];

/** All walls between rooms, by the first face in the order of the plan; a wall that another room interrupts is several.
 *  Steps: for each edge those within reach on its wall's side; of these the ones that look back at it; less what lies between.
 *  Example: rooms [0, 0] to [4000, 3000] and [4120, 0] to [8000, 3000] -> one wall, 120 mm deep and 3000 mm long */
export function wallsOf(file: PlanFile): readonly DoorwayWall[] {
  const edges = file.rooms.flatMap(roomEdges);
  const index = boxIndexOf(edges.map(({ a, b }) => boxOf([a, b])));
  return edges.flatMap((edge, i) => {
    if (edge.lengthMm < FACE_LEAST_MM) return [];
    const near = index.near(boxOf([edge.a, edge.b, ...[edge.a, edge.b].map((p) => awayFrom(edge, p))]));
    return near.flatMap((j) => (j > i ? wallsBetween(edges, i, j, near) : []));
  });
}

function awayFrom({ away }: RoomEdge, [x, y]: Point): Point {
  return [x + away[0] * WALL_MOST_MM, y + away[1] * WALL_MOST_MM];
}

function wallsBetween(edges: readonly RoomEdge[], i: number, j: number, near: readonly number[]): DoorwayWall[] {
  const [edge, other] = [edges[i] as RoomEdge, edges[j] as RoomEdge];
  if (!edgesFace(edge, other)) return [];
  const [p, q] = [edgePlace(edge, other.a).along, edgePlace(edge, other.b).along];
  const overlap: Interval = [Math.max(0, Math.min(p, q)), Math.min(edge.lengthMm, Math.max(p, q))];
  const depths = overlap.map((at) => edgeDepthAt(edge, other, at));
  if (depths.some((depth) => depth <= WALL_LEAST_MM || depth > WALL_MOST_MM)) return [];
  let clear: Interval[] = [overlap];
  for (const k of near) {
    if (k === i || k === j) continue;
    const between = stretchBetween(edge, edges[k] as RoomEdge, Math.min(...depths));
    if (between) clear = clear.flatMap((stretch) => without(stretch, between));
  }
  return clear.filter(([from, to]) => to - from >= FACE_LEAST_MM).map((stretch) => wallOver(edge, other, stretch));
}

/** Over which stretch of the edge another one lies between it and the depth. */
function stretchBetween(edge: RoomEdge, other: RoomEdge, depth: number): Interval | null {
  const [p, q] = [edgePlace(edge, other.a), edgePlace(edge, other.b)];
  const [low, high] = p.away <= q.away ? [p, q] : [q, p];
  if (high.away < -WALL_LEAST_MM || low.away > depth + WALL_LEAST_MM) return null;
  const at = (away: number) =>
    high.away === low.away
      ? low.along
      : low.along + ((high.along - low.along) * (away - low.away)) / (high.away - low.away);
  const from = low.away < -WALL_LEAST_MM ? at(-WALL_LEAST_MM) : low.along;
  const to = high.away > depth + WALL_LEAST_MM ? at(depth + WALL_LEAST_MM) : high.along;
  return [Math.min(from, to), Math.max(from, to)];
}

function without([from, to]: Interval, [start, end]: Interval): Interval[] {
  if (end <= from || start >= to) return [[from, to]];
  const parts: Interval[] = [
    [from, start],
    [end, to],
  ];
  return parts.filter(([a, b]) => b > a);
}

function wallOver(edge: RoomEdge, other: RoomEdge, [from, to]: Interval): DoorwayWall {
  const at = (along: number, away: number): Point => [
    edge.a[0] + edge.along[0] * along + edge.away[0] * away,
    edge.a[1] + edge.along[1] * along + edge.away[1] * away,
  ];
  const face = ({ roomId, ring, edge: number }: RoomEdge, ends: readonly [Point, Point]): WallFace => ({
    roomId,
    ring,
    edge: number,
    from: ends[0],
    to: ends[1],
  });
  const over = (along: number) => at(along, edgeDepthAt(edge, other, along));
  return {
    faces: [face(edge, [at(from, 0), at(to, 0)]), face(other, [over(from), over(to)])],
    lengthMm: to - from,
    depthMm: edgeDepthAt(edge, other, (from + to) / 2),
  };
}
