import type { Point } from '../../../geometry/point.ts';
import { regionContains } from '../../../geometry/region.ts';
import { type Box, boxAround, boxMiddle, boxOf } from '../../../geometry/ring.ts';
import { segmentDistance } from '../../../geometry/segment.ts';
import type { TilesOf } from '../../../plan/edits/tiles.ts';
import type { Room } from '../../../plan/plan.ts';
import { planResolve } from '../../../plan/resolve.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { gridFrame, type TiledField, tiledFields, tileModule } from '../../../plan/tile-grid.ts';

/** The tiles of a plan as the hand meets them: found once for a plan, asked at each move. */

interface RoomPlaced {
  readonly room: Room;
  readonly box: Box;
  readonly field: TiledField;
}

interface Known {
  readonly file: PlanFile;
  readonly fields: readonly TiledField[];
  readonly rooms: readonly RoomPlaced[];
}
let known: Known | null = null;

function knownOf(file: PlanFile): Known {
  if (known?.file !== file) {
    const fields = tiledFields(planResolve(file));
    const rooms = fields.flatMap((field) =>
      field.rooms.map((room): RoomPlaced => ({ room, box: boxOf(room.outline), field })),
    );
    known = { file, fields, rooms };
  }
  return known;
}

/** The tile fields that have rooms: those of the plan's own, then the rest of the floor. */
export function fieldsOf(file: PlanFile): readonly TiledField[] {
  return knownOf(file).fields;
}

export function fieldFind(file: PlanFile, of: TilesOf): TiledField | null {
  return fieldsOf(file).find(({ id }) => id === of) ?? null;
}

const handles = new WeakMap<TiledField, Point>();

/** Where the set-out point of a field is taken by: the point itself, and where that lies off the floor the corner of the same tiles that is nearest to
 *  the middle of the floor. A herringbone keeps its point. */
export function fieldHandle(field: TiledField): Point {
  const at = handles.get(field) ?? handleFind(field);
  handles.set(field, at);
  return at;
}

function handleFind({ grid, rooms }: TiledField): Point {
  const { origin, bond, shiftMm } = grid;
  const floor = boxOf(rooms.flatMap(({ outline }) => outline));
  const isFar = origin[0] < floor.minX || origin[0] > floor.maxX || origin[1] < floor.minY || origin[1] > floor.maxY;
  if (!isFar || bond === 'herringbone') return origin;
  const { toGrid, toSheet } = gridFrame(grid);
  const [along, across] = tileModule(grid);
  const [x, y] = toGrid(boxMiddle(floor));
  const courses = Math.round(y / across);
  const shiftedMm = courses * shiftMm;
  return toSheet([shiftedMm + Math.round((x - shiftedMm) / along) * along, courses * across]);
}

/** What an outline may be missed by, mm: joints in doorways and ends on a wall lie on no room's floor. */
const besideMm = 150;

/** The tiled room at a place, with its field; else the nearest one beside which the place lies. */
export function roomUnder(file: PlanFile, at: Point): { readonly room: Room; readonly field: TiledField } | null {
  let best: RoomPlaced | null = null;
  let least = besideMm;
  for (const placed of knownOf(file).rooms) {
    const { minX, maxX, minY, maxY } = boxAround(placed.box, besideMm);
    if (at[0] < minX || at[0] > maxX || at[1] < minY || at[1] > maxY) continue;
    if (regionContains(placed.room, at)) return placed;
    const { outline } = placed.room;
    const away = Math.min(...outline.map((a, i) => segmentDistance(a, outline[(i + 1) % outline.length] ?? a, at)));
    if (away <= least) [best, least] = [placed, away];
  }
  return best;
}
