import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import { type Ring, ringArea, ringCentroid } from '../geometry/ring.ts';
import type { CutCounts, TileCounts, TileFieldReport, WallCut } from '../plan/analysis.ts';
import { rules } from '../plan/reference.ts';
import { type CutBounds, type CutPiece, type CutSide, cutPieces, type GridStretch } from './cut-pieces.ts';
import type { FieldFloor } from './field-floor.ts';
import { tilesLay, type WholeRun } from './laid.ts';
import { tileOrder } from './order.ts';
import { tileBox } from './rows.ts';
import type { Stretch } from './stretches.ts';
import { wallCuts } from './wall-cuts.ts';

/** A field laid, bay by bay, and what came of it. */
export interface FieldLaid {
  readonly report: TileFieldReport;
  /** By room: its cut pieces along its walls and things that are laid and narrower than half a tile. */
  readonly narrow: ReadonlyMap<string, NarrowCuts>;
}

export interface NarrowCuts {
  readonly underHalf: number;
  readonly slivers: number;
  readonly smallestMm: number;
  /** Where the smallest lies. */
  readonly at: Point;
}

/** Lays the tiles of a field and counts them.
 *  @param stretchesOf by bay what bounds it  @param jointMm width of the perimeter joint, mm */
export function fieldReport(
  floor: FieldFloor,
  stretchesOf: ReadonlyMap<string, readonly Stretch[]>,
  jointMm: number,
): FieldLaid {
  const { field, frame } = floor;
  const { grid } = field;
  const pieces: CutPiece[] = [];
  const cuts: WallCut[] = [];
  const runs: WholeRun[] = [];
  let whole = 0;
  const byBay = new Map<string, FieldFloor['pieces'][number][]>();
  for (const piece of floor.pieces) byBay.set(piece.bay, [...(byBay.get(piece.bay) ?? []), piece]);
  const own = new Set(field.rooms.map(({ id }) => id));
  for (const [bay, regions] of byBay) {
    const stretches = (stretchesOf.get(bay) ?? [])
      .filter(({ room }) => room === null || own.has(room))
      .map((stretch): GridStretch => ({ stretch, points: stretch.points.map(frame.toGrid) }));
    const bounds: CutBounds = { stretches, jointMm, lengthMm: grid.lengthMm };
    const inBay = { pieces: [] as CutPiece[], runs: [] as WholeRun[] };
    for (const { region } of regions) {
      const laid = tilesLay(grid, region);
      whole += laid.whole;
      for (const run of laid.runs) inBay.runs.push(run);
      for (const tile of laid.cut) for (const piece of cutPieces(tile, bounds)) inBay.pieces.push(piece);
    }
    for (const piece of inBay.pieces) pieces.push(piece);
    for (const run of inBay.runs) runs.push(run);
    for (const cut of wallCuts(stretches, inBay, grid)) cuts.push(cut);
  }
  const tileMm2 = whole * grid.lengthMm * grid.widthMm + pieces.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const sawn = pieces.filter(({ isInJoint }) => !isInJoint);
  const { id, rooms } = field;
  const { origin, angleDeg, lengthMm, widthMm, groutMm, bond, allowance } = grid;
  return {
    report: {
      ...{ full: whole, ...cutCounts(pieces), inJoint: pieces.length - sawn.length, sawn: cutCounts(sawn) },
      ...{ id, rooms: rooms.map((room) => room.id) },
      ...{ origin, angleDeg, lengthMm, widthMm, groutMm, bond, allowance },
      tileM2: tileMm2 / 1e6,
      groutM2: Math.max(0, floor.areaMm2 - tileMm2) / 1e6,
      ...tileOrder(grid, whole, sawn),
      firstTile: firstTile(floor, runs),
      cuts,
    },
    narrow: narrowCuts(sawn),
  };
}

function cutCounts(pieces: readonly CutPiece[]): CutCounts {
  const least = pieces.reduce((min, { leastMm }) => Math.min(min, leastMm), Infinity);
  return {
    cut: new Set(pieces.map(({ key }) => key)).size,
    underHalf: pieces.filter(({ leastShare }) => isUnder(leastShare, rules.cutLeastShare.value)).length,
    slivers: pieces.filter(({ leastShare }) => isUnder(leastShare, rules.sliverShare.value)).length,
    smallestCutMm: least === Infinity ? null : least,
  };
}

/** Counts of several fields together. */
export function countsSum(fields: readonly TileCounts[]): TileCounts {
  return {
    full: fields.reduce((sum, { full }) => sum + full, 0),
    ...cutsSum(fields),
    inJoint: fields.reduce((sum, { inJoint }) => sum + inJoint, 0),
    sawn: cutsSum(fields.map(({ sawn }) => sawn)),
  };
}

function cutsSum(fields: readonly CutCounts[]): CutCounts {
  const sum = (figure: 'cut' | 'underHalf' | 'slivers') => fields.reduce((all, field) => all + field[figure], 0);
  const least = fields.flatMap(({ smallestCutMm }) => smallestCutMm ?? []);
  return {
    cut: sum('cut'),
    underHalf: sum('underHalf'),
    slivers: sum('slivers'),
    smallestCutMm: least.length === 0 ? null : Math.min(...least),
  };
}

/** A cut of just half a tile is not under half, whatever rounding makes of it. */
function isUnder(share: number, least: number): boolean {
  return share < least - SHARE_SLACK;
}

const SHARE_SLACK = 1e-3;

function narrowCuts(pieces: readonly CutPiece[]): Map<string, NarrowCuts> {
  const byRoom = new Map<string, NarrowCuts>();
  for (const { sides } of pieces) {
    const narrow = sides.filter(
      ({ stretch: { along }, sizeMm, wholeMm }) =>
        along !== 'pipe' && isUnder(sizeMm / wholeMm, rules.cutLeastShare.value),
    );
    // A piece in a corner may be narrow both ways, and is one.
    for (const room of new Set(narrow.flatMap(({ stretch }) => stretch.room ?? []))) {
      const own = narrow.filter(({ stretch }) => stretch.room === room).sort((a, b) => a.sizeMm - b.sizeMm);
      const { stretch, sizeMm } = own[0] as CutSide;
      const isSliver = own.some((side) => isUnder(side.sizeMm / side.wholeMm, rules.sliverShare.value));
      const before = byRoom.get(room);
      const isLeast = before === undefined || sizeMm < before.smallestMm;
      byRoom.set(room, {
        underHalf: (before?.underHalf ?? 0) + 1,
        slivers: (before?.slivers ?? 0) + (isSliver ? 1 : 0),
        smallestMm: isLeast ? sizeMm : before.smallestMm,
        at: isLeast ? lineMiddle(stretch.points) : before.at,
      });
    }
  }
  return byRoom;
}

/** The whole tile nearest the middle of the field's largest room, on the sheet. */
function firstTile({ field, frame }: FieldFloor, runs: readonly WholeRun[]): Ring | null {
  const [largest] = [...field.rooms].sort((a, b) => ringArea(b.outline) - ringArea(a.outline));
  if (largest === undefined) return null;
  const middle = frame.toGrid(ringCentroid(largest.outline));
  let best: { box: ReturnType<typeof tileBox>; distance: number } | null = null;
  for (const { row, first, last } of runs) {
    const box = tileBox(row, nearestIn(row, first, last, middle));
    const distance = pointDistance(middle, [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]);
    if (best === null || distance < best.distance) best = { box, distance };
  }
  if (best === null) return null;
  const { minX, minY, maxX, maxY } = best.box;
  const corners: Ring = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  return corners.map(frame.toSheet);
}

function nearestIn({ at, step, size }: WholeRun['row'], first: number, last: number, [x, y]: Point): number {
  const [dx, dy] = [x - at[0] - size[0] / 2, y - at[1] - size[1] / 2];
  const i = Math.round((dx * step[0] + dy * step[1]) / (step[0] ** 2 + step[1] ** 2));
  return Math.min(last, Math.max(first, i));
}
