import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { rayMeets } from '../geometry/segment.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { Analysis, Joint } from '../plan/analysis.ts';
import type { Doorway, Plan } from '../plan/plan.ts';
import { lineLength } from './label-seats.ts';
import {
  type Face,
  type FaceMet,
  type FaceRooms,
  faceDistance,
  faceIsAlong,
  faceMet,
  faceRooms,
  faceSide,
  facesAlong,
  type Side,
  sideOf,
} from './set-out-walls.ts';

/** How far a joint lies from a wall on one side of it, square to the joint. */
export interface JointDistance {
  readonly room: string;
  /** On which side of the room the wall stands. */
  readonly side: Side;
  /** At the middle of the joint. */
  readonly distanceMm: number;
  /** At its two ends, where the wall does not run along with it; each end by the side of the joint that it is. */
  readonly ends: readonly { readonly side: Side; readonly distanceMm: number }[];
  /** Whether it is the face of the wall that the doorway stands in. */
  readonly ownWall: boolean;
}

/** Of each joint the walls on both of its sides: of a doorway the faces of its own wall, of any other the first wall that is met from its middle. */
export function jointDistances(
  plan: Plan,
  analysis: Pick<Analysis, 'joints'>,
  faces: readonly Face[],
): ReadonlyMap<string, readonly JointDistance[]> {
  const doorways = new Map(plan.doorways.map((doorway) => [doorway.id, doorway]));
  const rooms = faceRooms(faces);
  return new Map(
    analysis.joints.map((joint) => {
      const doorway = joint.kind === 'doorway' ? doorways.get(joint.sources[0] ?? '') : undefined;
      return [joint.id, squareWays(joint).flatMap((way) => jointDistance(joint, way, rooms, doorway) ?? [])];
    }),
  );
}

/** The faces of the wall that a doorway stands in, on both sides of its line; null where none is found. */
export function doorwayFaces(
  doorway: Doorway,
  faces: readonly Face[],
): readonly { readonly way: Point; readonly met: FaceMet | null }[] {
  return squareWays(doorway).map((way) => ({ way, met: ownFace(doorway.line, way, faces, doorway) }));
}

/** Both ways square to a line. */
function squareWays({ line }: Pick<Joint, 'line'>): readonly Point[] {
  const [a, b] = [line[0], line[line.length - 1]];
  if (a === undefined || b === undefined || pointDistance(a, b) === 0) return [];
  const [ux, uy] = pointDirection(a, b);
  return [
    [uy, -ux],
    [-uy, ux],
  ];
}

function jointDistance(
  { line }: Joint,
  way: Point,
  rooms: FaceRooms,
  doorway: Doorway | undefined,
): JointDistance | null {
  const middle = lineMiddle(line);
  const faces = facesAlong(rooms, middle, way, lineLength(line) / 2 + beyondWallMm);
  const own = doorway && ownFace(line, way, faces, doorway);
  const found = own ?? faceMet(faces, middle, way);
  if (found === null) return null;
  const { face, distanceMm } = found;
  const ends = [line[0] as Point, line[line.length - 1] as Point].map((end) => ({
    side: sideOf([end[0] - middle[0], end[1] - middle[1]]),
    distanceMm: own === null || own === undefined ? rayMeets(end, way, ...face.line) : distanceMm,
  }));
  const met = ends.flatMap((end) => (end.distanceMm === null ? [] : [{ ...end, distanceMm: end.distanceMm }]));
  // a wall that ends beside the joint says nothing of its ends
  const isOneLength =
    met.length < ends.length || met.every((end) => Math.abs(end.distanceMm - distanceMm) <= EQUAL_LENGTH_MM);
  return {
    room: face.room,
    side: faceSide(face),
    distanceMm,
    ends: isOneLength ? [] : met,
    ownWall: own !== null && own !== undefined,
  };
}

/** Beyond the depth of its wall a face is that of another, mm. */
const beyondWallMm = 100;

/** The face of the doorway's own wall on one side of the joint: it is turned away from the joint and stands beside a jamb. */
function ownFace(line: readonly Point[], way: Point, faces: readonly Face[], { wallMm }: Doorway): FaceMet | null {
  const [a, b] = [line[0] as Point, line[line.length - 1] as Point];
  const along = pointDirection(a, b);
  const length = pointDistance(a, b);
  const place = ([x, y]: Point) => (x - a[0]) * along[0] + (y - a[1]) * along[1];
  let best: FaceMet | null = null;
  for (const face of faces) {
    const distanceMm = -faceDistance(face, a);
    if (!faceIsAlong(face, along) || face.into[0] * way[0] + face.into[1] * way[1] <= 0) continue;
    if (distanceMm < 0 || distanceMm > wallMm + beyondWallMm) continue;
    const [from, to] = face.line.map(place).sort((p, q) => p - q) as [number, number];
    if (from > length + beyondWallMm || to < -beyondWallMm) continue;
    if (best === null || distanceMm < best.distanceMm) best = { face, distanceMm };
  }
  return best;
}
