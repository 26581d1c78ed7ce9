import { regionDeepestPoint } from '../geometry/deepest-point.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { boxMiddle } from '../geometry/ring.ts';
import type { Room, TileGrid } from '../plan/plan.ts';
import { gridFrame, tileModule } from '../plan/tile-grid.ts';
import { tileBox, tileRows } from '../tiling/rows.ts';
import { ringIsNear, type Things } from './set-out-things.ts';
import { type Face, faceDistance, faceMet, type Side, sideOf } from './set-out-walls.ts';

/** A tiled room with what is measured from and round. */
export interface RoomFloor {
  readonly room: Room;
  readonly grid: TileGrid;
  /** Walls of the room. */
  readonly faces: readonly Face[];
  readonly things: Things;
}

/** Corners of tiles in a room, each with its distances from the same two walls, measured square to them. */
export interface CornerPlaces {
  /** Which corner of the tile, as the sheet is read. */
  readonly corner: Side;
  readonly walls: readonly [Face, Face];
  /** Distances from both walls, mm: of one corner, or of the same corner of two tiles of one row. */
  readonly fromMm: readonly (readonly [number, number])[];
}

export interface GridCorner {
  readonly at: Point;
  readonly corner: Side;
  /** To the same corner of the next tile of its row. */
  readonly step: Point;
}

/** Corners of tiles near a place in a room, the nearest first; none that a wall or a thing is too near to. In a herringbone those of tiles that
 *  lie along the courses. */
export function gridCorners({ room, grid, things }: RoomFloor, place: Point): readonly GridCorner[] {
  const frame = gridFrame(grid);
  const turn = gridFrame({ origin: [0, 0], angleDeg: grid.angleDeg });
  const reach = Math.max(...tileModule(grid));
  const [x, y] = frame.toGrid(place);
  const rows = tileRows(grid, { minX: x - reach, maxX: x + reach, minY: y - reach, maxY: y + reach });
  const corners = rows
    .filter(({ size }) => size[0] === grid.lengthMm)
    .flatMap((row) => {
      const [dx, dy] = [x - row.at[0] - row.size[0] / 2, y - row.at[1] - row.size[1] / 2];
      const near = Math.round((dx * row.step[0] + dy * row.step[1]) / (row.step[0] ** 2 + row.step[1] ** 2));
      return [near - 1, near, near + 1].flatMap((i) => {
        const box = tileBox(row, i);
        const middle = frame.toSheet(boxMiddle(box));
        return [box.minX, box.maxX].flatMap((cornerX) =>
          [box.minY, box.maxY].map((cornerY): GridCorner => {
            const at = frame.toSheet([cornerX, cornerY]);
            return { at, corner: sideOf([at[0] - middle[0], at[1] - middle[1]]), step: turn.toSheet(row.step) };
          }),
        );
      });
    });
  // equally near ones differ by rounding: the upper left one is taken
  const away = ({ at }: GridCorner) => Math.round(pointDistance(at, place));
  return corners
    .filter(({ at }) => isFree({ room, things }, at))
    .sort((a, b) => away(a) - away(b) || a.at[1] - b.at[1] || a.at[0] - b.at[0]);
}

function isFree({ room, things }: Pick<RoomFloor, 'room' | 'things'>, at: Point): boolean {
  if (!regionContains(room, at) || things.at(at)) return false;
  return ![room.outline, ...room.holes].some((ring) => ringIsNear(ring, at));
}

/** From a corner near the middle of the room, as far along its row as the floor is free.
 *  @param wanted two where no wall gives the direction of the tiles
 *  @returns null where there are no two walls to measure from */
export function cornerPlaces(floor: RoomFloor, wanted: 1 | 2): CornerPlaces | null {
  const [start] = gridCorners(floor, regionDeepestPoint(floor.room).point);
  if (start === undefined) return null;
  const step = (k: number): Point => [start.at[0] + k * start.step[0], start.at[1] + k * start.step[1]];
  const far = (sign: 1 | -1) => {
    let k = 0;
    while (k < mostSteps && isFree(floor, step(sign * (k + 1)))) k++;
    return sign * k;
  };
  const [least, most] = [far(-1), far(1)];
  for (const ends of [...(wanted === 2 ? pairsFar(least, most) : []), [0]]) {
    const corners = ends.map(step);
    const walls = wallsOf(floor, corners);
    if (walls === null) continue;
    return {
      corner: start.corner,
      walls,
      fromMm: corners.map((at) => [faceDistance(walls[0], at), faceDistance(walls[1], at)]),
    };
  }
  return null;
}

/** Pairs of numbers from a first to a last one, the furthest apart first; of many, evenly spread ones. */
function pairsFar(first: number, last: number): readonly (readonly [number, number])[] {
  const count = Math.min(last - first, mostSpread) + 1;
  const spread = Array.from({ length: count }, (_, i) =>
    Math.round(first + ((last - first) * i) / Math.max(1, count - 1)),
  );
  return spread
    .flatMap((from, i) => spread.slice(i + 1).map((to) => [from, to] as const))
    .sort((a, b) => b[1] - b[0] - (a[1] - a[0]));
}

const mostSpread = 12;
/** No further than a tape reaches over the smallest tiles. */
const mostSteps = 200;
/** Two walls give a place where they meet at no less than a third of a right angle, as a cosine. */
const leastAcross = Math.cos(Math.PI / 6);

/** The two longest walls across each other that are the first that is met from every corner. */
function wallsOf({ faces, things }: RoomFloor, corners: readonly Point[]): readonly [Face, Face] | null {
  const isMet = (face: Face, at: Point) => {
    const met = faceMet(faces, at, [-face.into[0], -face.into[1]]);
    if (met?.face !== face) return false;
    const foot: Point = [at[0] - face.into[0] * met.distanceMm, at[1] - face.into[1] * met.distanceMm];
    return !things.between(at, foot);
  };
  const length = ({ line }: Face) => pointDistance(...line);
  const met = faces
    .filter((face) => !face.isCurve && corners.every((at) => isMet(face, at)))
    .sort((a, b) => Math.round(length(b)) - Math.round(length(a)));
  const [first] = met;
  if (first === undefined) return null;
  const second = met.find(({ into }) => Math.abs(into[0] * first.into[0] + into[1] * first.into[1]) < leastAcross);
  return second === undefined ? null : [first, second];
}
