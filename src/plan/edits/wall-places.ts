import { type Point, pointBetween, pointDirection, pointDistance, vectorLength } from '../../geometry/point.ts';
import { DIRECTION_DEG } from '../../geometry/tolerance.ts';
import { rules } from '../reference.ts';
import { coordinateSnapped, pointSnapped } from '../snap.ts';
import type { ObjectOf } from './objects.ts';
import type { DoorwayWall } from './walls.ts';

/** Places in a wall: mm along it from the start of the stretch, and mm into it from its first face. */

type Doorway = ObjectOf<'doorways'>;

/** Unit vectors along the first face, and square to it towards the second. */
interface Frame {
  readonly origin: Point;
  readonly along: Point;
  readonly into: Point;
}

function frameOf({ faces: [first, second] }: DoorwayWall): Frame {
  const along = pointDirection(first.from, first.to);
  const [dx, dy] = [second.from[0] - first.from[0], second.from[1] - first.from[1]];
  const side = Math.sign(dy * along[0] - dx * along[1]);
  return { origin: first.from, along, into: [-along[1] * side, along[0] * side] };
}

function placeIn({ origin, along, into }: Frame, p: Point): { readonly along: number; readonly depth: number } {
  const [dx, dy] = [p[0] - origin[0], p[1] - origin[1]];
  return { along: dx * along[0] + dy * along[1], depth: dx * into[0] + dy * into[1] };
}

function pointAt({ origin, along, into }: Frame, alongMm: number, depthMm: number): Point {
  return [origin[0] + along[0] * alongMm + into[0] * depthMm, origin[1] + along[1] * alongMm + into[1] * depthMm];
}

/** From face to face at a place along the wall, mm. */
export function wallDepthAt(wall: DoorwayWall, alongMm: number): number {
  const [start, end] = wall.faces.map(({ from, to }) => pointBetween(from, to, alongMm / wall.lengthMm)) as [
    Point,
    Point,
  ];
  return pointDistance(start, end);
}

/** The wall whose strip of floor plan is nearest to the point, and where along it the point lies, kept within the stretch; a wall that the point
 *  lies in goes before all others. Null where none is within reach.
 *  Example: a wall from x 4000 to 4120, point [4060, 900] -> that wall, 900 mm from its start at y 0 */
export function wallAt(
  walls: readonly DoorwayWall[],
  at: Point,
  reachMm: number,
): { readonly wall: DoorwayWall; readonly alongMm: number } | null {
  let best: { wall: DoorwayWall; alongMm: number } | null = null;
  let nearest = Infinity;
  for (const wall of walls) {
    const place = placeIn(frameOf(wall), at);
    const alongMm = Math.min(Math.max(place.along, 0), wall.lengthMm);
    const off = beyond(place.depth, wallDepthAt(wall, alongMm));
    const distance = vectorLength(place.along - alongMm, off);
    if (distance > reachMm || distance >= nearest) continue;
    best = { wall, alongMm };
    nearest = distance;
  }
  return best;
}

/** How far a depth lies outside 0 to the whole depth. */
function beyond(depthMm: number, wholeMm: number): number {
  return Math.max(0, -depthMm, depthMm - wholeMm);
}

/** What a doorway in a wall is made with, all mm but the share. */
export interface DoorwayWish {
  /** Of the middle of the doorway. */
  readonly alongMm: number;
  readonly widthMm: number;
  /** Where the line under the leaf lies: 0 at the first face, 1 at the second. */
  readonly depthShare: number;
  readonly leaf?: boolean;
}

/** The line and depth of a doorway in a wall, pushed along it until both jambs stand in the stretch; null where the doorway is wider than that.
 *  Example: a wall from x 4000 to 4120 and y 0 to 3000, { alongMm: 300, widthMm: 900, depthShare: 0.5 } -> [4060, 0] to [4060, 900], 120 mm */
export function doorwayInWall(
  wall: DoorwayWall,
  { alongMm, widthMm, depthShare, leaf }: DoorwayWish,
): Omit<Doorway, 'id'> | null {
  const start = stretchStart(wall, alongMm, widthMm);
  if (start === null) return null;
  const frame = frameOf(wall);
  const jamb = (at: number) => pointSnapped(pointAt(frame, at, wallDepthAt(wall, at) * depthShare));
  const wallMm = coordinateSnapped(wallDepthAt(wall, start + widthMm / 2));
  return { line: [jamb(start), jamb(start + widthMm)], wallMm, ...(leaf === undefined ? {} : { leaf }) };
}

/** Where an opening of this width about a middle begins once it is pushed inside the stretch; null where it does not fit. */
export function stretchStart({ lengthMm }: DoorwayWall, middleMm: number, widthMm: number): number | null {
  if (widthMm > lengthMm) return null;
  return Math.min(Math.max(middleMm - widthMm / 2, 0), lengthMm - widthMm);
}

/** Where a doorway stands in its wall, mm. */
export interface DoorwayPlace {
  readonly wall: DoorwayWall;
  /** Of its middle. */
  readonly alongMm: number;
  readonly widthMm: number;
  /** Of its middle, from the first face. */
  readonly depthMm: number;
  /** From the start of the stretch to the first jamb; below nought where the doorway reaches out of the stretch. */
  readonly startMm: number;
  /** From the other jamb to the end of the stretch. */
  readonly endMm: number;
}

/** A doorway's line as far off its wall as this is still taken to be in it, as the floor takes it, mm. */
const REACH_MM = rules.doorwayReachMm.value;

const MOST_SLANT = Math.tan((DIRECTION_DEG * Math.PI) / 180);

/** The wall that a doorway's line runs along, and where in it; null where its middle is in none. Of several the one that its line lies in, then
 *  the one that holds most of its width. */
export function doorwayPlace(walls: readonly DoorwayWall[], { line }: Doorway): DoorwayPlace | null {
  let best: DoorwayPlace | null = null;
  let leastOff = Infinity;
  let mostHeld = 0;
  for (const wall of walls) {
    const frame = frameOf(wall);
    const [a, b] = [placeIn(frame, line[0]), placeIn(frame, line[1])];
    const [alongMm, depthMm] = [(a.along + b.along) / 2, (a.depth + b.depth) / 2];
    if (alongMm < 0 || alongMm > wall.lengthMm || !runsAlong(wall, b.along - a.along, b.depth - a.depth)) continue;
    const off = beyond(depthMm, wallDepthAt(wall, alongMm));
    const [from, to] = a.along < b.along ? [a.along, b.along] : [b.along, a.along];
    const held = Math.min(to, wall.lengthMm) - Math.max(from, 0);
    if (off > REACH_MM || off > leastOff || (off === leastOff && held <= mostHeld)) continue;
    const widthMm = pointDistance(line[0], line[1]);
    best = { wall, alongMm, widthMm, depthMm, startMm: from, endMm: wall.lengthMm - to };
    leastOff = off;
    mostHeld = held;
  }
  return best;
}

/** Whether a line that goes so far along and into a wall follows one of its faces. */
function runsAlong(wall: DoorwayWall, along: number, into: number): boolean {
  const slant = (wallDepthAt(wall, wall.lengthMm) - wallDepthAt(wall, 0)) / wall.lengthMm;
  const most = MOST_SLANT * Math.abs(along);
  return along !== 0 && (Math.abs(into) <= most || Math.abs(into - slant * along) <= most);
}

/** The doorway's line moved along its wall and into it, mm. */
export function lineShifted(
  wall: DoorwayWall,
  line: Doorway['line'],
  byMm: { along: number; into: number },
): Doorway['line'] {
  const { along, into } = frameOf(wall);
  const shift = ([x, y]: Point): Point =>
    pointSnapped([x + along[0] * byMm.along + into[0] * byMm.into, y + along[1] * byMm.along + into[1] * byMm.into]);
  return [shift(line[0]), shift(line[1])];
}
