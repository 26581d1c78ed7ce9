import { lineWithin } from '../geometry/line-clip.ts';
import { type Point, vectorLength } from '../geometry/point.ts';
import { regionIsBoxed } from '../geometry/region.ts';
import { regionInBox } from '../geometry/region-clip.ts';
import { type Box, boxOf, type Region } from '../geometry/ring.ts';
import { CLIP_SLACK_MM, WELD_MM } from '../geometry/tolerance.ts';
import type { TileGrid } from '../plan/plan.ts';
import { type TileRow, tileBox, tileRows, tilesThrough } from './rows.ts';

/** Tiles on one piece of floor. Places in the grid's own axes, mm. */
export interface LaidTiles {
  /** Tiles that lie on it whole. */
  readonly whole: number;
  readonly cut: readonly CutTile[];
  /** Along one row, numbers of whole tiles: runs from a first to a last one. */
  readonly runs: readonly WholeRun[];
}

export interface WholeRun {
  readonly row: TileRow;
  readonly first: number;
  readonly last: number;
}

/** A tile of which only pieces lie on the floor. */
export interface CutTile {
  /** The same for each piece of floor that the tile lies on. */
  readonly key: string;
  readonly row: TileRow;
  readonly i: number;
  readonly pieces: readonly Region[];
}

/** Lays a grid over a piece of floor. A tile that an edge of the floor enters by more than a weld is cut; what is left of it is clipped out. Every
 *  other lies on the floor where its middle does. So only tiles at the edge cost anything, and a hall is as quick as its walls are long. */
export function tilesLay(grid: TileGrid, floor: Region): LaidTiles {
  const edged = edgeTiles(grid, floor);
  const rings = [floor.outline, ...floor.holes];
  const runs: WholeRun[] = [];
  let whole = 0;
  for (const row of tileRows(grid, boxOf(floor.outline))) {
    const marked = edged.get(row.number);
    for (const [first, last] of middlesInside(row, rings)) {
      for (const run of runsWithout(first, last, marked)) {
        runs.push({ row, first: run[0], last: run[1] });
        whole += run[1] - run[0] + 1;
      }
    }
  }
  return { whole, cut: cutTiles(floor, edged), runs };
}

interface EdgedRow {
  readonly row: TileRow;
  readonly numbers: ReadonlySet<number>;
}

/** By row, the tiles that an edge of the floor runs through. */
function edgeTiles(grid: TileGrid, floor: Region): Map<number, EdgedRow> {
  const found = new Map<number, { row: TileRow; numbers: Set<number> }>();
  const depthMm = WELD_MM;
  for (const ring of [floor.outline, ...floor.holes]) {
    ring.forEach((p, k) => {
      const q = ring[(k + 1) % ring.length] as Point;
      for (const { row, i } of tilesThrough(grid, p, q, depthMm)) {
        const own = found.get(row.number) ?? { row, numbers: new Set<number>() };
        found.set(row.number, own);
        own.numbers.add(i);
      }
    });
  }
  return found;
}

/** Runs of tiles of a row whose middles lie on the floor, by number. */
function middlesInside({ at, step, size }: TileRow, rings: readonly (readonly Point[])[]): [number, number][] {
  const pace = vectorLength(step[0], step[1]);
  const middle: Point = [at[0] + size[0] / 2, at[1] + size[1] / 2];
  return lineWithin(middle, [step[0] / pace, step[1] / pace], rings).flatMap(([from, to]): [number, number][] => {
    const [first, last] = [Math.ceil(from / pace), Math.floor(to / pace)];
    return first <= last ? [[first, last]] : [];
  });
}

function runsWithout(first: number, last: number, marked: EdgedRow | undefined): [number, number][] {
  if (!marked) return [[first, last]];
  const stops = [...marked.numbers].filter((i) => i >= first && i <= last).sort((a, b) => a - b);
  const runs: [number, number][] = [];
  let from = first;
  for (const stop of stops) {
    if (stop > from) runs.push([from, stop - 1]);
    from = stop + 1;
  }
  if (from <= last) runs.push([from, last]);
  return runs;
}

function cutTiles(floor: Region, edged: ReadonlyMap<number, EdgedRow>): CutTile[] {
  // Most bays are boxes in the grid: what is left of a tile in one is a box again.
  const boxed = regionIsBoxed(floor, CLIP_SLACK_MM) ? boxOf(floor.outline) : null;
  return [...edged.values()]
    .sort((a, b) => a.row.number - b.row.number)
    .flatMap(({ row, numbers }) => {
      const ordered = [...numbers].sort((a, b) => a - b);
      const strip = boxed === null ? rowFloor(floor, row) : [];
      return ordered.flatMap((i): CutTile[] => {
        const box = tileBox(row, i);
        const pieces = boxed === null ? strip.flatMap((part) => regionInBox(part, box)) : [boxRegion(boxed, box)];
        return pieces.length > 0 ? [{ key: `${row.number},${i}`, row, i, pieces }] : [];
      });
    });
}

/** What two boxes that meet have in common. */
function boxRegion(a: Box, b: Box): Region {
  const [minX, maxX] = [Math.max(a.minX, b.minX), Math.min(a.maxX, b.maxX)];
  const [minY, maxY] = [Math.max(a.minY, b.minY), Math.min(a.maxY, b.maxY)];
  const outline: Region['outline'] = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  return { outline, holes: [] };
}

/** The floor that a course covers, cut out once for all its tiles; all of it where a row runs askew. */
function rowFloor(floor: Region, { at, step, size }: TileRow): Region[] {
  if (step[1] !== 0) return [floor];
  return regionInBox(floor, { minX: -Infinity, maxX: Infinity, minY: at[1], maxY: at[1] + size[1] });
}
