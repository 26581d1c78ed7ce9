import { type BoxIndex, boxIndexOf } from '../../geometry/box-index.ts';
import { type Point, pointDistance } from '../../geometry/point.ts';
import { type Box, boxAround, boxOf } from '../../geometry/ring.ts';
import { SAME_LINE_MM } from '../../geometry/tolerance.ts';
import { rules } from '../reference.ts';
import type { PlanFile } from '../schema.ts';
import { coordinateSnapped, pointSnapped } from '../snap.ts';
import { changedIfNew } from './fields.ts';
import { type ObjectOf, objectFits } from './objects.ts';
import { type DoorwayPlace, doorwayPlace, wallDepthAt } from './wall-places.ts';
import {
  type DoorwayWall,
  edgeDepthAt,
  edgePlace,
  edgesFace,
  type RoomEdge,
  roomEdges,
  WALL_LEAST_MM,
  WALL_MOST_MM,
  type WallFace,
  wallsOf,
} from './walls.ts';

type Room = ObjectOf<'rooms'>;
type Doorway = ObjectOf<'doorways'>;

/** No wall of a doorway has a face further from its line than this, mm. */
const NEAR_MM = WALL_MOST_MM + rules.doorwayReachMm.value;

/** Lets the doorways follow the walls that an edit of rooms has moved. Where both faces of its wall moved alike a doorway goes with them, turned and
 *  mirrored too. Where they moved apart it keeps its place along the face that stayed, or midway between what both ask for, and its share of the
 *  depth, which is the wall's new one. A doorway that the edit itself changed, that had no wall before, or whose faces are no wall of its width
 *  any more stays as it is.
 *  Example: a doorway in the middle of a wall of 120 mm, one room drawn back by 80 mm -> still in the middle, wallMm 200 */
export function doorwaysFollow(before: PlanFile, after: PlanFile): PlanFile {
  if (before.rooms === after.rooms || !after.doorways || !before.doorways) return after;
  const roomsAfter = new Map(after.rooms.map((room) => [room.id, room]));
  const moved = before.rooms.filter((room) => isReshaped(room, roomsAfter.get(room.id)));
  const reach = boxIndexOf(moved.map((room) => boxAround(boxOf(room.outline), NEAR_MM)));
  const unchanged = new Set(before.doorways);
  const following = after.doorways.filter((doorway) => unchanged.has(doorway) && isNear(reach, boxOf(doorway.line)));
  if (following.length === 0) return after;
  const places = boxIndexOf(following.map((doorway) => boxAround(boxOf(doorway.line), NEAR_MM)));
  const near = before.rooms.filter((room) => isNear(places, boxOf(room.outline)));
  const walls = wallsOf({ ...before, rooms: near });
  const index = boxIndexOf(walls.map(({ faces }) => boxOf(faces.flatMap(({ from, to }) => [from, to]))));
  const roomsBefore = new Map(near.map((room) => [room.id, room]));
  const wanted = new Set(following);
  const doorways = after.doorways.map((doorway) => {
    if (!wanted.has(doorway)) return doorway;
    const beside = index.near(boxAround(boxOf(doorway.line), NEAR_MM)).map((i) => walls[i] as DoorwayWall);
    const place = doorwayPlace(beside, doorway);
    const faces = place?.wall.faces.map((face) => faceMoved(face, roomsBefore, roomsAfter, doorway));
    const [one, other] = faces ?? [];
    if (!place || !one || !other) return doorway;
    const object = doorwayMoved(doorway, place, one, other);
    return objectFits({ list: 'doorways', object }) ? object : doorway;
  });
  return doorways.every((doorway, i) => doorway === after.doorways?.[i]) ? after : { ...after, doorways };
}

function isReshaped(before: Room, after: Room | undefined): boolean {
  return after !== undefined && (after.outline !== before.outline || after.holes !== before.holes);
}

function isNear(index: BoxIndex, box: Box): boolean {
  return index.near(box).length > 0;
}

/** A face of a wall before and after an edit. */
interface FaceMoved {
  readonly before: RoomEdge;
  readonly after: RoomEdge;
  /** Where the doorway's middle stands on the face after. */
  readonly foot: Point;
  readonly stayed: boolean;
}

function faceMoved(
  face: WallFace,
  roomsBefore: ReadonlyMap<string, Room>,
  roomsAfter: ReadonlyMap<string, Room>,
  { line }: Doorway,
): FaceMoved | null {
  const isFace = ({ ring, edge }: RoomEdge) => ring === face.ring && edge === face.edge;
  const rooms = [roomsBefore.get(face.roomId), roomsAfter.get(face.roomId)];
  const [edges, edgesAfter] = rooms.map((room) =>
    room ? roomEdges(room).filter(({ ring }) => ring === face.ring) : [],
  ) as [RoomEdge[], RoomEdge[]];
  const before = edges.find(isFace);
  if (!before) return null;
  const { along } = edgePlace(before, middleOf(line));
  const foot = pointAlong(before, along);
  const after = edgesAfter.length === edges.length ? edgesAfter.find(isFace) : edgeNearest(before, edgesAfter, foot);
  if (!after) return null;
  // An edge of another length has moved because its neighbours did: the doorway stays beside what it stood beside.
  const isRigid = Math.abs(after.lengthMm - before.lengthMm) <= SAME_LINE_MM;
  const footAfter = pointAlong(after, isRigid ? along : edgePlace(after, foot).along);
  return { before, after, foot: footAfter, stayed: pointDistance(foot, footAfter) <= SAME_LINE_MM };
}

/** Where corners came or went: the edge in the old direction that lies nearest to the foot of the doorway. */
function edgeNearest(before: RoomEdge, edges: readonly RoomEdge[], foot: Point): RoomEdge | undefined {
  const turnedAway: RoomEdge = { ...before, away: [-before.away[0], -before.away[1]] };
  const off = (edge: RoomEdge) => Math.abs(edgePlace(edge, foot).away);
  return edges
    .filter((edge) => {
      const { along } = edgePlace(edge, foot);
      return edgesFace(turnedAway, edge) && along >= 0 && along <= edge.lengthMm;
    })
    .sort((a, b) => off(a) - off(b))[0];
}

function middleOf([a, b]: Doorway['line']): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

function pointAlong({ a, along }: RoomEdge, alongMm: number): Point {
  return [a[0] + along[0] * alongMm, a[1] + along[1] * alongMm];
}

function doorwayMoved(doorway: Doorway, place: DoorwayPlace, one: FaceMoved, other: FaceMoved): Doorway {
  const shift = sharedShift(one, other);
  if (shift) {
    const shifted = ([x, y]: Point) => pointSnapped([x + shift[0], y + shift[1]]);
    return changedIfNew(doorway, { line: doorway.line.map(shifted) });
  }
  const alongMm = alongAfter(place, one, other);
  if (alongMm === null) return doorway;
  const depthBefore = wallDepthAt(place.wall, place.alongMm);
  const depthAfter = edgeDepthAt(one.after, other.after, alongMm);
  if (depthAfter <= WALL_LEAST_MM || depthAfter > WALL_MOST_MM) return doorway;
  const depthMm = (place.depthMm / depthBefore) * depthAfter;
  const middle = edgePlace(one.before, middleOf(doorway.line));
  const { a, along, away } = one.after;
  const line = doorway.line.map((jamb) => {
    const { along: at, away: off } = edgePlace(one.before, jamb);
    const [t, s] = [alongMm + at - middle.along, depthMm + off - middle.away];
    return pointSnapped([a[0] + along[0] * t + away[0] * s, a[1] + along[1] * t + away[1] * s]);
  });
  const hasNewDepth = Math.abs(depthAfter - depthBefore) > SAME_LINE_MM;
  return changedIfNew(doorway, { line, ...(hasNewDepth ? { wallMm: coordinateSnapped(depthAfter) } : {}) });
}

/** The one vector by which both faces moved, mm; null where they moved in any other way. */
function sharedShift(one: FaceMoved, other: FaceMoved): Point | null {
  const shifts = [one, other].flatMap(({ before, after }): Point[] => [
    pointSnapped([after.a[0] - before.a[0], after.a[1] - before.a[1]]),
    pointSnapped([after.b[0] - before.b[0], after.b[1] - before.b[1]]),
  ]);
  const [shift] = shifts as [Point, ...Point[]];
  return shifts.every(([x, y]) => x === shift[0] && y === shift[1]) ? shift : null;
}

/** Where along the first face the doorway's middle stands after the edit, mm; null where the faces are no wall of its width any more. */
function alongAfter(place: DoorwayPlace, one: FaceMoved, other: FaceMoved): number | null {
  if (!edgesFace(one.after, other.after)) return null;
  const [p, q] = [edgePlace(one.after, other.after.a).along, edgePlace(one.after, other.after.b).along];
  const from = Math.max(0, Math.min(p, q));
  const to = Math.min(one.after.lengthMm, Math.max(p, q));
  if (to - from < place.widthMm) return null;
  const wishes = [one, other].map(({ foot }) => edgePlace(one.after, foot).along) as [number, number];
  const mean = (wishes[0] + wishes[1]) / 2;
  const wish = one.stayed ? wishes[0] : other.stayed ? wishes[1] : mean;
  const stoodInside = place.startMm >= -SAME_LINE_MM && place.endMm >= -SAME_LINE_MM;
  if (!stoodInside) return wish;
  return Math.min(Math.max(wish, from + place.widthMm / 2), to - place.widthMm / 2);
}
