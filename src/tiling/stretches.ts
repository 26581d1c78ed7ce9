import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { EdgeLine, JointLine, Split, WallCut } from '../plan/analysis.ts';
import type { Doorway } from '../plan/plan.ts';

/** A straight stretch (or a curve taken as one) of what bounds a bay: wall, jamb, thing or joint. Places on the sheet, mm. */
export interface Stretch extends Pick<WallCut, 'bay' | 'room' | 'along' | 'object'> {
  readonly points: readonly Point[];
}

/** By bay all that bounds it. */
export function stretchesByBay(split: Split, doorways: readonly Doorway[]): ReadonlyMap<string, readonly Stretch[]> {
  const byBay = new Map<string, Stretch[]>(split.bays.map(({ id }) => [id, []]));
  for (const edge of split.edges) byBay.get(edge.bay)?.push(...edgeStretches(edge, doorways));
  for (const joint of split.joints) {
    for (const bay of joint.bays) byBay.get(bay)?.push(...jointStretches(joint, bay));
  }
  return byBay;
}

function edgeStretches({ bay, room, along, object, line }: EdgeLine, doorways: readonly Doorway[]): Stretch[] {
  return lineStretches(line).map((points): Stretch => {
    const isJamb = along === 'wall' && doorways.some((doorway) => standsAt(points, doorway));
    return { bay, room, along: isJamb ? 'jamb' : along, object, points };
  });
}

function jointStretches({ id, line }: JointLine, bay: string): Stretch[] {
  return lineStretches(line).map((points) => ({ bay, room: null, along: 'joint', object: id, points }));
}

/** Pieces of a curve are shorter than this and turn by less than that from one to the next, mm and as a cosine. */
const CURVE_PIECE_MM = 300;
const CURVE_TURN_COS = Math.cos((30 * Math.PI) / 180);

/** Straight stretches of a line one by one, and each curve as one. */
function lineStretches(line: readonly Point[]): Point[][] {
  const found: Point[][] = [];
  for (let k = 1; k < line.length; k++) {
    const [a, b] = [line[k - 1] as Point, line[k] as Point];
    const last = found.at(-1);
    if (last !== undefined && isCurveOn(last, a, b)) last.push(b);
    else found.push([a, b]);
  }
  return found;
}

function isCurveOn(last: readonly Point[], a: Point, b: Point): boolean {
  const before = last[last.length - 2] as Point;
  if (pointDistance(before, a) > CURVE_PIECE_MM || pointDistance(a, b) > CURVE_PIECE_MM) return false;
  const [u, v] = [pointDirection(before, a), pointDirection(a, b)];
  return u[0] * v[0] + u[1] * v[1] > CURVE_TURN_COS;
}

/** A wall that stands so nearly square to the line of a doorway that it is a jamb, as a cosine. */
const JAMB_COS = 0.3;

/** Whether a stretch of wall is a jamb of a doorway: it passes an end of its line, square to it. */
function standsAt(points: readonly Point[], { line }: Doorway): boolean {
  const [a, b] = [points[0] as Point, points[points.length - 1] as Point];
  const [u, v] = [pointDirection(a, b), pointDirection(line[0], line[1])];
  if (Math.abs(u[0] * v[0] + u[1] * v[1]) > JAMB_COS) return false;
  return line.some((end) => segmentDistance(a, b, end) <= WELD_MM);
}
