import type { Point } from '../../../geometry/point.ts';
import { pointDirection } from '../../../geometry/point.ts';
import { WELD_MM } from '../../../geometry/tolerance.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { type GroutLines, gridFrame, groutLines, type TiledField } from '../../../plan/tile-grid.ts';
import type { CatchGrout } from '../catch-lines.ts';
import { roomUnder } from './fields.ts';

/** The guide of a grout line comes from so far along it, mm. */
const guideMm = 1000;

/** The straight grout lines next to a place, one of each direction: found by arithmetic, however many there are.
 *  @param line only those that run the way of this line, end to end
 *  Example: tiles of 600 x 600 with 3 mm from [0, 0], a place at x 1200 -> the upright line at x 1204.5, and a level one */
export function groutCatch(
  file: PlanFile,
  line?: readonly Point[],
): (near: Point, under?: Point) => readonly CatchGrout[] {
  return (near, under = near) => {
    const field = roomUnder(file, under)?.field;
    if (field === undefined) return [];
    return groutLines(field.grid)
      .filter(({ axis }) => line === undefined || runsAlong(field, line, axis))
      .map((lines) => groutNearest(field, lines, near));
  };
}

function runsAlong({ grid }: TiledField, line: readonly Point[], axis: 0 | 1): boolean {
  const { toGrid } = gridFrame(grid);
  const places = line.map((point) => toGrid(point)[axis]);
  return Math.max(...places) - Math.min(...places) <= WELD_MM;
}

function groutNearest({ grid }: TiledField, { axis, firstMm, spacingMm }: GroutLines, near: Point): CatchGrout {
  const { toGrid, toSheet } = gridFrame(grid);
  const place = toGrid(near);
  const atMm = firstMm + Math.round((place[axis] - firstMm) / spacingMm) * spacingMm;
  const on = (alongMm: number): Point => toSheet(axis === 0 ? [atMm, alongMm] : [alongMm, atMm]);
  const alongMm = place[1 - axis] as number;
  return { at: on(alongMm - guideMm), way: pointDirection(on(0), on(guideMm)) };
}
