import { type Point, pointBetween, pointDirection, pointDistance } from '../../geometry/point.ts';
import { WELD_MM } from '../../geometry/tolerance.ts';
import type { PlanFile } from '../schema.ts';
import { pointSnapped } from '../snap.ts';
import { changedIfNew } from './fields.ts';
import { type ObjectOf, objectsReplaced } from './objects.ts';
import { type DoorwayPlace, doorwayPlace, lineShifted, stretchStart, wallDepthAt } from './wall-places.ts';
import { wallsOf } from './walls.ts';

export { doorwaysFollow } from './doorways-follow.ts';
export { doorwayInWall, doorwayPlace, wallAt } from './wall-places.ts';
export { type DoorwayWall, type WallFace, wallsOf } from './walls.ts';

/** Edits of a doorway in its wall, mm. One that cannot be done, such as widening a doorway beyond its wall, gives the file itself. */

type Doorway = ObjectOf<'doorways'>;

/** Slides a doorway along its wall until its middle is so far from the start of the stretch, or as near to that as its jambs let it.
 *  Example: a wall of 3000 mm, a doorway of 900 mm, to 200 mm -> its middle at 450 mm */
export function doorwaySlid(file: PlanFile, id: string, alongMm: number): PlanFile {
  return doorwayRelined(file, id, (doorway, place) => {
    if (place === null) return doorway.line;
    const { wall, widthMm } = place;
    const start = stretchStart(wall, alongMm, widthMm);
    if (start === null) return doorway.line;
    return lineShifted(wall, doorway.line, { along: start + widthMm / 2 - place.alongMm, into: 0 });
  });
}

/** Makes a doorway wider or narrower about its middle, pushed along its wall where a jamb would leave the stretch.
 *  Example: from 1000 to 1900 mm along the wall, to 1000 mm -> from 950 to 1950 mm */
export function doorwayWidened(file: PlanFile, id: string, widthMm: number): PlanFile {
  return doorwayRelined(file, id, ({ line }, place) => {
    if (widthMm <= 0 || pointDistance(line[0], line[1]) === 0) return line;
    const wider = lineWidened(line, widthMm);
    if (place === null) return wider;
    const start = stretchStart(place.wall, place.alongMm, widthMm);
    if (start === null) return line;
    return lineShifted(place.wall, wider, { along: start + widthMm / 2 - place.alongMm, into: 0 });
  });
}

function lineWidened(line: Doorway['line'], widthMm: number): Doorway['line'] {
  const share = widthMm / pointDistance(line[0], line[1]) / 2;
  const middle = pointBetween(line[0], line[1], 0.5);
  const jamb = (end: Point): Point => pointSnapped(pointBetween(middle, end, share * 2));
  return [jamb(line[0]), jamb(line[1])];
}

/** Moves the line of a doorway across its wall: so far from the first face, kept within the wall.
 *  Example: a wall of 120 mm, to 500 mm -> on the second face */
export function doorwayDepthSet(file: PlanFile, id: string, depthMm: number): PlanFile {
  return doorwayRelined(file, id, ({ line }, place) => {
    if (place === null) return line;
    const depth = Math.min(Math.max(depthMm, 0), wallDepthAt(place.wall, place.alongMm));
    return lineShifted(place.wall, line, { along: 0, into: depth - place.depthMm });
  });
}

function doorwayRelined(
  file: PlanFile,
  id: string,
  line: (doorway: Doorway, place: DoorwayPlace | null) => Doorway['line'],
): PlanFile {
  return objectsReplaced(file, [id], (found) => {
    if (found.list !== 'doorways') return found.object;
    const place = doorwayPlace(wallsOf(file), found.object);
    return changedIfNew(found.object, { line: line(found.object, place) });
  });
}

/** Id of a doorway that an opening would lie over, in the same wall; null where it stands free. Jambs may touch.
 *  @param own the doorway itself, where it is one of the plan. Example: [0, 60] to [900, 60] beside one from [800, 60] -> that one */
export function doorwayOver(
  { doorways }: PlanFile,
  { line: [a, b], wallMm = 0 }: Omit<Doorway, 'id'>,
  own: string | null = null,
): string | null {
  const [ux, uy] = pointDirection(a, b);
  const along = ([x, y]: Point) => (x - a[0]) * ux + (y - a[1]) * uy;
  const beside = ([x, y]: Point) => Math.abs((y - a[1]) * ux - (x - a[0]) * uy);
  const over = doorways?.find(({ id, line }) => {
    if (id === own || Math.max(...line.map(beside)) > Math.max(wallMm, WELD_MM)) return false;
    const [from, to] = line.map(along).sort((p, q) => p - q) as [number, number];
    return Math.min(to, pointDistance(a, b)) - Math.max(from, 0) > WELD_MM;
  });
  return over?.id ?? null;
}
