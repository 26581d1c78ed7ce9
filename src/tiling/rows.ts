import { type Point, pointBetween, vectorLength } from '../geometry/point.ts';
import { type Box, boxOf } from '../geometry/ring.ts';
import { UNIT_SLACK } from '../geometry/tolerance.ts';
import type { TileGrid } from '../plan/plan.ts';
import { tileModule } from '../plan/tile-grid.ts';

/** Tiles in a row, one after the other: number i covers the box from `at + i * step`, `size` wide and high. In the grid's own axes, mm.
 *  Every bond is rows: courses, each shifted against the one before; in a herringbone, level tiles and upright ones in turn, up the diagonal. */
export interface TileRow {
  /** Which row of the grid it is. */
  readonly number: number;
  readonly at: Point;
  readonly step: Point;
  readonly size: Point;
}

/** The rows of which a tile may reach into a box. */
export function tileRows(grid: TileGrid, box: Box): readonly TileRow[] {
  return grid.bond === 'herringbone' ? herringboneRows(grid, box) : courses(grid, box);
}

function courses(grid: TileGrid, { minY, maxY }: Box): TileRow[] {
  const [along, across] = tileModule(grid);
  const first = Math.floor((minY - grid.widthMm) / across);
  const last = Math.ceil(maxY / across);
  return numbers(first, last).map((j) => ({
    number: j,
    at: [shiftAt(grid, j), j * across],
    step: [along, 0],
    size: [grid.lengthMm, grid.widthMm],
  }));
}

/** How far course number j is shifted against course 0, within one tile and its grout, mm. */
function shiftAt(grid: TileGrid, j: number): number {
  const [along] = tileModule(grid);
  // Whole thirds and halves come round to nothing, whatever rounding makes of their sum.
  const turns = (j * grid.shiftMm) / along;
  const rest = turns - Math.round(turns);
  return (Math.abs(rest) < UNIT_SLACK ? 0 : rest < 0 ? rest + 1 : rest) * along;
}

/** Level tiles at p (b, b) + q (a, -a), upright ones above them, with a and b the sides of a tile and its grout: this fills the plane whatever
 *  the proportion of the tile. Row 2q holds the level ones, row 2q + 1 the upright ones. */
function herringboneRows(grid: TileGrid, { minX, maxX, minY, maxY }: Box): TileRow[] {
  const [a, b] = tileModule(grid);
  const { lengthMm, widthMm } = grid;
  // Along a row x - y stays the same: 2qa, less a tile's own extent.
  const first = Math.floor((minX - maxY - 2 * a) / (2 * a));
  const last = Math.ceil((maxX - minY + 2 * a) / (2 * a));
  return numbers(first, last).flatMap((q): TileRow[] => [
    { number: 2 * q, at: [q * a, -q * a], step: [b, b], size: [lengthMm, widthMm] },
    { number: 2 * q + 1, at: [q * a, b - q * a], step: [b, b], size: [widthMm, lengthMm] },
  ]);
}

function numbers(first: number, last: number): number[] {
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
}

export function tileBox({ at, step, size }: TileRow, i: number): Box {
  const [x, y] = [at[0] + i * step[0], at[1] + i * step[1]];
  return { minX: x, maxX: x + size[0], minY: y, maxY: y + size[1] };
}

/** The part of the stretch from p to q beside a row, which is a band along its step; null where it passes the row by. Without it a long stretch askew
 *  to the grid would be held against every tile of every row. */
function stretchBeside(
  { at, step, size }: TileRow,
  p: Point,
  q: Point,
  reachMm: number,
): readonly [Point, Point] | null {
  const pace = vectorLength(step[0], step[1]);
  const [ux, uy] = [step[0] / pace, step[1] / pace];
  const across = ([x, y]: Point) => (y - at[1]) * ux - (x - at[0]) * uy;
  const reach = reachMm * (Math.abs(ux) + Math.abs(uy));
  const [low, high] = [-size[0] * Math.abs(uy) - reach, size[1] * Math.abs(ux) + reach];
  const [from, to] = [across(p), across(q)];
  if (Math.max(from, to) < low || Math.min(from, to) > high) return null;
  if (from === to) return [p, q];
  const shares = [(low - from) / (to - from), (high - from) / (to - from)];
  return [pointBetween(p, q, Math.max(0, Math.min(...shares))), pointBetween(p, q, Math.min(1, Math.max(...shares)))];
}

/** Numbers of the tiles of a row that come as near as `reachMm` to the stretch from p to q, by their boxes; a negative reach: that it reaches so deep. */
function tilesBeside({ at, step, size }: TileRow, box: Box, reachMm: number): readonly [first: number, last: number] {
  let [first, last] = [-Infinity, Infinity];
  for (const axis of [0, 1] as const) {
    const low = (axis === 0 ? box.minX : box.minY) - at[axis] - size[axis] - reachMm;
    const high = (axis === 0 ? box.maxX : box.maxY) - at[axis] + reachMm;
    const pace = step[axis];
    if (pace === 0) {
      if (low >= 0 || high <= 0) return [0, -1];
      continue;
    }
    first = Math.max(first, Math.floor(low / pace));
    last = Math.min(last, Math.ceil(high / pace));
  }
  return [first, last];
}

/** The tiles that the stretch from p to q runs through, deeper than `depthMm` from their sides; a negative depth reaches beyond the sides, into the
 *  grout. Along a side, or up to it, is not through. */
export function* tilesThrough(
  grid: TileGrid,
  p: Point,
  q: Point,
  depthMm: number,
): Generator<{ readonly row: TileRow; readonly i: number; readonly from: Point; readonly to: Point }> {
  const box: Box = {
    minX: Math.min(p[0], q[0]),
    maxX: Math.max(p[0], q[0]),
    minY: Math.min(p[1], q[1]),
    maxY: Math.max(p[1], q[1]),
  };
  const reach = Math.max(0, -depthMm);
  for (const row of tileRows(grid, { ...box, minY: box.minY - reach, maxY: box.maxY + reach })) {
    const part = stretchBeside(row, p, q, reach);
    if (part === null) continue;
    const [first, last] = tilesBeside(row, boxOf(part), -depthMm);
    for (let i = first; i <= last; i++) {
      const inside = stretchInside(p, q, tileBox(row, i), depthMm);
      if (inside) yield { row, i, from: inside[0], to: inside[1] };
    }
  }
}

/** The part of a stretch strictly inside a box, so far from its sides; null where there is none. */
function stretchInside(p: Point, q: Point, { minX, maxX, minY, maxY }: Box, depthMm: number): [Point, Point] | null {
  let [from, to] = [0, 1];
  for (const axis of [0, 1] as const) {
    const [low, high] = axis === 0 ? [minX + depthMm, maxX - depthMm] : [minY + depthMm, maxY - depthMm];
    const run = q[axis] - p[axis];
    if (run === 0) {
      if (p[axis] <= low || p[axis] >= high) return null;
      continue;
    }
    const [a, b] = [(low - p[axis]) / run, (high - p[axis]) / run];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
    if (from >= to) return null;
  }
  const at = (share: number): Point => [p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share];
  return [at(from), at(to)];
}
