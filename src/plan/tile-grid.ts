import type { Point } from '../geometry/point.ts';
import type { Plan, Room, TileGrid } from './plan.ts';

/** The grid that tiles lie in, in mm along its own axes: x along a course from `origin`, y across the courses. A tile covers 0 to its length and 0
 *  to its width; the middle of a grout line lies half a grout before a tile. */

/** Turns between the sheet and the grid's own axes. */
export interface GridFrame {
  toGrid(p: Point): Point;
  toSheet(p: Point): Point;
}

export function gridFrame({ origin: [ox, oy], angleDeg }: Pick<TileGrid, 'origin' | 'angleDeg'>): GridFrame {
  const [c, s] = quarterTurn(angleDeg) ?? turnOf(angleDeg);
  return {
    toGrid: ([x, y]) => [(x - ox) * c + (y - oy) * s, (y - oy) * c - (x - ox) * s],
    toSheet: ([x, y]) => [ox + x * c - y * s, oy + x * s + y * c],
  };
}

function turnOf(angleDeg: number): Point {
  const radians = (angleDeg * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}

/** Cosine and sine of whole quarter turns, without rounding; null for any other. */
function quarterTurn(angleDeg: number): Point | null {
  const quarters = angleDeg / 90;
  if (!Number.isInteger(quarters)) return null;
  const turns: readonly Point[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ];
  return turns[((quarters % 4) + 4) % 4] as Point;
}

/** What tiles repeat at along their length and across it: tile and grout, mm. Example: 600 x 300 with 3 -> [603, 303] */
export function tileModule({ lengthMm, widthMm, groutMm }: TileGrid): Point {
  return [lengthMm + groutMm, widthMm + groutMm];
}

/** Grout lines that run straight through the whole field, all of one direction: `firstMm + k * spacingMm` along an axis of the grid. */
export interface GroutLines {
  /** 0: upright in the grid, across the courses; 1: level, along them. */
  readonly axis: 0 | 1;
  readonly firstMm: number;
  readonly spacingMm: number;
}

/** The lines that a straight joint can follow from wall to wall: both ways in a straight bond, along the courses where those are shifted, none in a
 *  herringbone. */
export function groutLines(grid: TileGrid): readonly GroutLines[] {
  if (grid.bond === 'herringbone') return [];
  const [along, across] = tileModule(grid);
  const firstMm = -grid.groutMm / 2;
  const level: GroutLines = { axis: 1, firstMm, spacingMm: across };
  return grid.shiftMm === 0 ? [{ axis: 0, firstMm, spacingMm: along }, level] : [level];
}

/** Rooms laid with one grid of tiles. */
export interface TiledField {
  /** Of the plan's tile field; null for the tiles of the whole floor. */
  readonly id: string | null;
  readonly grid: TileGrid;
  readonly rooms: readonly Room[];
}

/** The tile fields of a plan that have rooms: those of its own, in their order, then what is left of the floor. A room that two fields name belongs
 *  to the first; rooms with another covering than stone or ceramic have no tiles. */
export function tiledFields({ rooms, tiles, tileFields }: Plan): readonly TiledField[] {
  const left = new Set(rooms.filter(({ covering }) => covering === 'stone-or-ceramic'));
  const take = (wanted: (room: Room) => boolean) => {
    const taken = [...left].filter(wanted);
    for (const room of taken) left.delete(room);
    return taken;
  };
  const own = tileFields.map(
    (grid): TiledField => ({ id: grid.id, grid, rooms: take(({ id }) => grid.rooms.includes(id)) }),
  );
  const rest: TiledField[] = tiles === null ? [] : [{ id: null, grid: tiles, rooms: take(() => true) }];
  return [...own, ...rest].filter((field) => field.rooms.length > 0);
}
