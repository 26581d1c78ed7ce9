import { type Point, pointBetween, pointDirection, pointDistance } from '../../../geometry/point.ts';
import { type Box, boxAround, boxOf } from '../../../geometry/ring.ts';
import { edgeLeft } from '../../../geometry/ring-edges.ts';
import { EQUAL_LENGTH_MM } from '../../../geometry/tolerance.ts';
import { doorwayPlace, doorwaySlid, doorwayWidened, type WallFace, wallsOf } from '../../../plan/edits/doorways.ts';
import type { ObjectOf } from '../../../plan/edits/objects.ts';
import { ringFind } from '../../../plan/edits/rings.ts';
import type { DoorwayPlace } from '../../../plan/edits/wall-places.ts';
import { WALL_MOST_MM } from '../../../plan/edits/walls.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { type Dimension, type Dimensioned, tooLong, wayWords } from './dimension.ts';

type Doorway = ObjectOf<'doorways'>;

/** From both jambs of a doorway to the ends of its wall, and its width between them, along the wall's first face. A doorway in no wall has its width
 *  alone. Example: a wall of 3000 mm, a doorway of 900 mm, 200 mm from its start -> 200, 900 and 1900 */
export function doorwayDimensions(file: PlanFile, id: string): readonly Dimension[] {
  const doorway = file.doorways?.find((each) => each.id === id);
  if (doorway === undefined || pointDistance(...doorway.line) === 0) return [];
  const place = doorwayPlace(wallsOf({ ...file, rooms: roomsNear(file, doorway) }), doorway);
  return place === null ? [looseWidth(file, doorway)] : placedDimensions(file, doorway, place);
}

/** The rooms beside the doorway and those beside them: one of these may end the wall. */
function roomsNear({ rooms }: PlanFile, { line }: Doorway): PlanFile['rooms'] {
  const boxed = rooms.map((room) => ({ room, box: boxOf(room.outline) }));
  const near = (boxes: readonly Box[]) =>
    boxed.filter(({ box }) => boxes.some((each) => boxesMeet(boxAround(each, WALL_MOST_MM), box)));
  const beside = near([boxOf(line)]);
  return near(beside.map(({ box }) => box)).map(({ room }) => room);
}

function boxesMeet(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY;
}

function looseWidth(file: PlanFile, { id, line: [from, to] }: Doorway): Dimension {
  const lengthMm = pointDistance(from, to);
  const edit = (mm: number) => widened(file, id, mm, Infinity);
  const aside = edgeLeft(from, to);
  return {
    key: 'width',
    name: `Width of doorway ${id}`,
    from,
    to,
    lengthMm,
    aside,
    stems: [true, true],
    depthMm: Infinity,
    edit,
  };
}

function placedDimensions(file: PlanFile, { id }: Doorway, place: DoorwayPlace): readonly Dimension[] {
  const { wall, startMm, widthMm, endMm } = place;
  const { lengthMm: wallMm } = wall;
  const [face, other] = wall.faces;
  const aside = pointDirection(pointBetween(other.from, other.to, 0.5), pointBetween(face.from, face.to, 0.5));
  const along = pointDirection(face.from, face.to);
  const at = (mm: number): Point => pointBetween(face.from, face.to, mm / wallMm);
  const spareMm = wallMm - widthMm;
  const slid = (toMm: number, mm: number): Dimensioned =>
    mm > spareMm
      ? tooLong('The wall ends there', Math.max(0, spareMm))
      : { kind: 'done', step: { name: `Move doorway ${id}`, file: doorwaySlid(file, id, toMm) } };
  const end = (way: Point) => `From doorway ${id} ${wayWords(way)} to the end of its wall`;
  const dimensions: readonly Omit<Dimension, 'aside' | 'stems' | 'depthMm'>[] = [
    {
      key: 'start',
      name: end([-along[0], -along[1]]),
      from: at(0),
      to: at(startMm),
      lengthMm: startMm,
      edit: (mm) => slid(mm + widthMm / 2, mm),
    },
    {
      key: 'width',
      name: `Width of doorway ${id}`,
      from: at(startMm),
      to: at(startMm + widthMm),
      lengthMm: widthMm,
      edit: (mm) => widened(file, id, mm, wallMm),
    },
    {
      key: 'end',
      name: end(along),
      from: at(wallMm - endMm),
      to: at(wallMm),
      lengthMm: endMm,
      edit: (mm) => slid(wallMm - mm - widthMm / 2, mm),
    },
  ];
  return dimensions
    .filter(({ lengthMm }) => lengthMm >= EQUAL_LENGTH_MM)
    .map((dimension): Dimension => {
      const stems = [!isCorner(file, face, dimension.from), !isCorner(file, face, dimension.to)] as const;
      return { ...dimension, aside, stems, depthMm: Infinity };
    });
}

/** Whether the wall's face ends there in a corner of its room. */
function isCorner(file: PlanFile, { roomId, ring }: WallFace, at: Point): boolean {
  const points = ringFind(file, { id: roomId, ring })?.points ?? [];
  return points.some((point) => pointDistance(point, at) < EQUAL_LENGTH_MM);
}

function widened(file: PlanFile, id: string, mm: number, mostMm: number): Dimensioned {
  if (mm < EQUAL_LENGTH_MM) return { kind: 'refused', words: 'A doorway needs a width' };
  if (mm > mostMm) return tooLong('The wall ends there', mostMm);
  return { kind: 'done', step: { name: `Width of doorway ${id}`, file: doorwayWidened(file, id, mm) } };
}
