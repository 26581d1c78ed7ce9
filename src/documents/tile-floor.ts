import { regionsIntersect, regionsSubtract, regionsUnion } from '../geometry/clip.ts';
import type { Point } from '../geometry/point.ts';
import type { Region } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import type { Analysis, Bay, TileFieldReport } from '../plan/analysis.ts';
import type { Plan, Room, TileGrid } from '../plan/plan.ts';
import { tiledFields } from '../plan/tile-grid.ts';

/** One tile field with the floor that it covers, bay by bay. */
export interface TileFloor {
  readonly report: TileFieldReport;
  readonly grid: TileGrid;
  readonly pieces: readonly TilePiece[];
}

export interface TilePiece {
  readonly bay: string;
  readonly region: Region;
}

/** The fields that the analysis has laid, on their floor. A bay wholly in a field is one piece, reveals and open sides between its rooms included; of
 *  a bay that it shares, its own rooms and the reveals beside them. */
export function tileFloors(plan: Plan, { tiles, bays }: Pick<Analysis, 'tiles' | 'bays'>): readonly TileFloor[] {
  if (tiles === null) return [];
  const fields = new Map(tiledFields(plan).map((field) => [field.id, field]));
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  return tiles.fields.flatMap((report) => {
    const field = fields.get(report.id);
    if (field === undefined) return [];
    const own = new Set(field.rooms.map(({ id }) => id));
    const pieces = bays.flatMap((bay) =>
      bayFloor(bay, own, rooms).map((region): TilePiece => ({ bay: bay.id, region })),
    );
    return [{ report, grid: field.grid, pieces }];
  });
}

function bayFloor(bay: Bay, own: ReadonlySet<string>, rooms: ReadonlyMap<string, Room>): readonly Region[] {
  const whole: Region = { outline: bay.outline, holes: bay.holes };
  if (bay.rooms.every((id) => own.has(id))) return [whole];
  const shared = bay.rooms.flatMap((id) => rooms.get(id) ?? []);
  const inOwn = shared.filter(({ id }) => own.has(id));
  if (inOwn.length === 0) return [];
  const reveals = regionsSubtract([whole], shared).filter((reveal) => own.has(roomBeside(reveal, shared)));
  return regionsUnion(regionsIntersect([whole], inOwn), reveals);
}

/** The room that the floor of a doorway belongs to: the one that it lies against. */
function roomBeside({ outline }: Region, rooms: readonly Room[]): string {
  const distance = (room: Room) => outline.reduce((sum, corner) => sum + ringDistance(room.outline, corner), 0);
  const [nearest] = [...rooms].sort((a, b) => distance(a) - distance(b));
  return nearest?.id ?? '';
}

function ringDistance(ring: readonly Point[], p: Point): number {
  return Math.min(...ring.map((a, k) => segmentDistance(a, ring[(k + 1) % ring.length] as Point, p)));
}
