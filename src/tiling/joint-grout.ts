import { type Point, pointDistance } from '../geometry/point.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { DIRECTION_DEG, WELD_MM } from '../geometry/tolerance.ts';
import { type JointGrout, type JointLine, type Split, untiledJoint } from '../plan/analysis.ts';
import type { Plan, TileGrid } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import { gridFrame, groutLines, type TiledField } from '../plan/tile-grid.ts';
import { tileBox, tilesThrough } from './rows.ts';
import { whyOff } from './why-off.ts';

/** How a joint lies in the grid of the tiles over it. The field of each side is that of the room that the joint runs along there. */
export function jointGrouts(plan: Plan, fields: readonly TiledField[], split: Split): ReadonlyMap<string, JointGrout> {
  if (fields.length === 0) return new Map(split.joints.map(({ id }) => [id, untiledJoint]));
  const fieldOf = new Map(fields.flatMap((field) => field.rooms.map(({ id }) => [id, field] as const)));
  const piecesOf = new Map<string, Split['pieces'][number][]>(split.bays.map(({ id }) => [id, []]));
  for (const piece of split.pieces) piecesOf.get(piece.bay)?.push(piece);
  return new Map(
    split.joints.map((joint) => [joint.id, jointGrout(plan, joint, sideFields(joint, piecesOf, fieldOf))]),
  );
}

function jointGrout(plan: Plan, joint: JointLine, sides: readonly (TiledField | null)[]): JointGrout {
  const { line } = joint;
  const fields = [...new Set(sides)].filter((field) => field !== null);
  const places = fields.map(({ grid }) => ({ grid, ...lineInGrid(line, grid) })).sort((a, b) => a.offMm - b.offMm);
  const [nearest] = places;
  if (nearest === undefined) return untiledJoint;
  const tilesAt = fields.length > 1 ? 'restart' : sides.includes(null) ? 'one-side' : nearest.isOn ? 'on-line' : 'cut';
  const ways = fields.map(({ grid }) => groutRuns(line, grid));
  const runs = (['straight', 'bond', 'askew'] as const).find((way) => ways.includes(way)) ?? 'askew';
  return {
    onGroutLine: nearest.isOn,
    offGroutMm: nearest.offMm,
    // Of two fields one may have its grout there and the other not.
    cutsTiles: places.reduce((sum, { grid, isOn }) => sum + (isOn ? 0 : tilesCut(line, grid)), 0),
    tilesAt,
    bondLets: runs === 'straight',
    whyOff: nearest.isOn ? null : whyOff(plan, joint, runs),
  };
}

/** The field on either side of a joint; null where that side has no tiles. */
function sideFields(
  { line, bays }: JointLine,
  piecesOf: ReadonlyMap<string, Split['pieces']>,
  fieldOf: ReadonlyMap<string, TiledField>,
): (TiledField | null)[] {
  const middle = pointHalfway(line);
  return bays.map((bay) => {
    const own = piecesOf.get(bay) ?? [];
    const distance = ({ regions }: (typeof own)[number]) =>
      Math.min(
        ...regions.flatMap(({ outline, holes }) => [outline, ...holes].map((ring) => ringDistance(ring, middle))),
      );
    const [nearest] = own.length > 1 ? [...own].sort((a, b) => distance(a) - distance(b)) : own;
    return (nearest && fieldOf.get(nearest.room)) ?? null;
  });
}

function pointHalfway(line: readonly Point[]): Point {
  const k = Math.floor((line.length - 1) / 2);
  const [a, b] = [line[k] as Point, line[Math.min(k + 1, line.length - 1)] as Point];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

function ringDistance(ring: readonly Point[], p: Point): number {
  return Math.min(...ring.map((a, k) => segmentDistance(a, ring[(k + 1) % ring.length] as Point, p)));
}

interface LineInGrid {
  readonly offMm: number;
  readonly isOn: boolean;
}

/** How far a line lies off the grout that runs its way, in the middle of grout lines as everywhere: tile and the half of its grout all round fill the
 *  plane, and off the sides that run the line's way is how far it is off the grout, whatever the bond. A line that bends runs another way beyond the
 *  bend. The largest along the line counts.
 *  Example: 600 x 600 with 3, a level line 200 mm below a tile's upper side -> 201.5 mm */
export function lineInGrid(line: readonly Point[], grid: TileGrid): LineInGrid {
  let offMm = 0;
  for (const { p, q, axis } of stretchesInGrid(line, grid)) {
    for (const { row, i, from, to } of tilesThrough(grid, p, q, -grid.groutMm / 2)) {
      const box = tileBox(row, i);
      const [low, high] = axis === 1 ? [box.minY, box.maxY] : [box.minX, box.maxX];
      offMm = Math.max(offMm, offSides(from[axis], to[axis], low - grid.groutMm / 2, high + grid.groutMm / 2));
    }
  }
  return { offMm, isOn: offMm <= grid.groutMm / 2 + rules.groutLineSlackMm.value };
}

/** A straight stretch of a line in the grid's own axes, and which way it runs there: 1 level, along the courses; 0 upright, across them. */
interface GridWay {
  readonly p: Point;
  readonly q: Point;
  readonly axis: 0 | 1;
}

function stretchesInGrid(line: readonly Point[], grid: TileGrid): GridWay[] {
  const points = line.map(gridFrame(grid).toGrid);
  // What rounding put between two corners has no way of its own.
  const kept = points.slice(0, 1);
  for (const point of points) if (pointDistance(kept[kept.length - 1] as Point, point) > WELD_MM) kept.push(point);
  return kept.slice(1).map((q, k): GridWay => {
    const p = kept[k] as Point;
    return { p, q, axis: Math.abs(q[0] - p[0]) >= Math.abs(q[1] - p[1]) ? 1 : 0 };
  });
}

/** The largest distance from the nearer of two sides, on the way from one place between them to another. */
function offSides(from: number, to: number, low: number, high: number): number {
  const middle = (low + high) / 2;
  const off = (v: number) => Math.min(v - low, high - v);
  if (Math.min(from, to) <= middle && Math.max(from, to) >= middle) return off(middle);
  return Math.max(off(from), off(to));
}

function tilesCut(line: readonly Point[], grid: TileGrid): number {
  const points = line.map(gridFrame(grid).toGrid);
  const depthMm = WELD_MM;
  const cut = new Set<string>();
  for (let k = 1; k < points.length; k++) {
    for (const { row, i } of tilesThrough(grid, points[k - 1] as Point, points[k] as Point, depthMm)) {
      cut.add(`${row.number},${i}`);
    }
  }
  return cut.size;
}

/** How grout runs along a line, where that bends by its worst stretch: straight its way, so that it could lie in it; not in this bond, whose courses
 *  are shifted there; or the line is askew to the grid. */
function groutRuns(line: readonly Point[], grid: TileGrid): 'straight' | 'bond' | 'askew' {
  const lines = groutLines(grid);
  const stretches = stretchesInGrid(line, grid);
  const isAskew = ({ p, q }: GridWay) => {
    const run: Point = [Math.abs(q[0] - p[0]), Math.abs(q[1] - p[1])];
    const [off, along] = [Math.min(...run), Math.max(...run)];
    return off > WELD_MM && (Math.atan2(off, along) * 180) / Math.PI > DIRECTION_DEG;
  };
  if (stretches.some(isAskew)) return 'askew';
  return stretches.every(({ axis }) => lines.some((own) => own.axis === axis)) ? 'straight' : 'bond';
}
