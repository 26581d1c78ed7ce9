import type { Point } from '../geometry/point.ts';
import { type Ring, ringArea } from '../geometry/ring.ts';
import { ringOutward } from '../geometry/ring-edges.ts';
import { onGrid, SAME_LINE_MM } from '../geometry/tolerance.ts';
import type { Room, TileGrid } from '../plan/plan.ts';
import { type GridFrame, gridFrame, type TiledField, tileModule } from '../plan/tile-grid.ts';
import { type Face, phaseCost } from './phase-cost.ts';

/** Where tiles begin so that the cuts at both ends of a room are equal. By the rooms of the plan alone: no floor is split for it. */

/** How far a room reaches along an axis of the grid, from wall to wall, mm. */
export type Reach = readonly [lowMm: number, highMm: number];

/** Null where no wall stands square to the axis at both ends.  @param ring the room's outline in the grid's own axes */
export function ringReach(ring: Ring, axis: 0 | 1): Reach | null {
  const places = ring.map((point) => point[axis]);
  const ends: Reach = [Math.min(...places), Math.max(...places)];
  const isWall = (atMm: number) =>
    places.some((place, i) => {
      const next = places[(i + 1) % places.length] ?? place;
      return Math.max(Math.abs(place - atMm), Math.abs(next - atMm)) <= SAME_LINE_MM;
    });
  return ends.every(isWall) ? ends : null;
}

/** Where a tile begins, and the cut that it leaves at both ends, mm; a whole tile where none is cut. */
export interface EvenCut {
  readonly atMm: number;
  readonly cutMm: number;
}

/** Equal cuts at both ends of a room: with a tile or a grout line in its middle, whichever leaves the larger first.
 *  Example: 3 m from 0, tiles of 600 with 3 mm -> a tile from 1200 with 594 mm at either end; one from 1501.5 with 292.5 mm */
export function evenCuts(grid: TileGrid, axis: 0 | 1, [low, high]: Reach): readonly [EvenCut, EvenCut] {
  const [sizeMm, moduleMm] = [axis === 0 ? grid.lengthMm : grid.widthMm, tileModule(grid)[axis]];
  const middle = (low + high) / 2;
  const cut = (besideMm: number) => {
    const restMm = besideMm % moduleMm;
    return restMm <= grid.groutMm ? sizeMm : restMm - grid.groutMm;
  };
  const byTile = { atMm: middle - sizeMm / 2, cutMm: cut((high - low - sizeMm) / 2) };
  const byGrout = { atMm: middle + grid.groutMm / 2, cutMm: cut((high - low + grid.groutMm) / 2) };
  return byTile.cutMm >= byGrout.cutMm ? [byTile, byGrout] : [byGrout, byTile];
}

/** The set-out point nearest the present one at which cuts are equal at both ends of a room, on the sheet. Of several rooms that one counts, each
 *  way, whose equal cuts leave the least to pay for at all walls of the field. Null where no room lies square to the grid, and for a herringbone.
 *  Example: a room of 3 x 3 m from [0, 0] in tiles of 600 with 3 mm from there -> [-6, -6] */
export function cutsBalanced({ grid, rooms }: TiledField): Point | null {
  if (grid.bond === 'herringbone') return null;
  const frame = gridFrame(grid);
  const [x, y] = ([0, 1] as const).map((axis) => axisBalanced(grid, rooms, frame, axis));
  if (x == null && y == null) return null;
  const [sheetX, sheetY] = frame.toSheet([x ?? 0, y ?? 0]);
  return [onGrid(sheetX), onGrid(sheetY)];
}

/** Place of a beginning tile along an axis; null where no room has walls square to it at both ends. */
function axisBalanced(grid: TileGrid, rooms: readonly Room[], { toGrid }: GridFrame, axis: 0 | 1): number | null {
  const moduleMm = tileModule(grid)[axis];
  const largestFirst = [...rooms].sort((a, b) => ringArea(b.outline) - ringArea(a.outline));
  const starts = largestFirst.flatMap(({ outline }) => {
    const reach = ringReach(outline.map(toGrid), axis);
    return reach === null ? [] : evenCuts(grid, axis, reach).map(({ atMm }) => atMm);
  });
  const places = [...new Set(starts.map((atMm) => onGrid(atMm - Math.round(atMm / moduleMm) * moduleMm)))];
  const faces = rooms.flatMap(({ outline, holes }) => [
    ...wallFaces(outline.map(toGrid), 1, axis),
    ...holes.flatMap((hole) => wallFaces(hole.map(toGrid), -1, axis)),
  ]);
  let best: { readonly at: number; readonly cost: number } | null = null;
  for (const at of places.slice(0, MOST_STARTS)) {
    const cost = phaseCost(grid, axis, faces, [], at);
    if (best === null || cost < best.cost) best = { at, cost };
  }
  return best?.at ?? null;
}

/** A building of hundreds of rooms offers more than are worth weighing. */
const MOST_STARTS = 400;

/** Walls square to an axis.  @param floor 1: the floor lies inside the ring; -1: outside, as round a hole */
function wallFaces(ring: Ring, floor: 1 | -1, axis: 0 | 1): Face[] {
  const outward = ringOutward(ring);
  return ring.flatMap((p, k): Face[] => {
    const q = ring[(k + 1) % ring.length] ?? p;
    if (Math.abs(p[axis] - q[axis]) > SAME_LINE_MM) return [];
    const other = axis === 0 ? 1 : 0;
    const side = (outward[k]?.[axis] ?? 0) * floor < 0 ? 1 : -1;
    return [{ at: (p[axis] + q[axis]) / 2, side, lengthMm: Math.abs(p[other] - q[other]), isJoint: false }];
  });
}
