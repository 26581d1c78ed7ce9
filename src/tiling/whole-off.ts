import type { Point } from '../geometry/point.ts';
import type { Box } from '../geometry/ring.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { WholeRun } from './laid.ts';
import { tileBox } from './rows.ts';

/** What a run of whole tiles covers, in the grid's own axes, mm. */
export function runBox({ row, first, last }: WholeRun): Box {
  const { minX, minY, maxY } = tileBox(row, first);
  return { minX, minY, maxX: tileBox(row, last).maxX, maxY };
}

/** How far whole tiles end before a stretch that runs with the grid or square to it, within the grout, mm; null where none does.
 *  @param runs of whole tiles along courses  @param groutMm grout between them
 *  Example: a wall at 1506, tiles to 1504.5 and grout of 3 -> 1.5 */
export function wholeOff(a: Point, b: Point, runs: readonly Box[], groutMm: number): number | null {
  const isUpright = Math.abs(a[0] - b[0]) <= WELD_MM;
  if (!isUpright && Math.abs(a[1] - b[1]) > WELD_MM) return null;
  const [across, along] = isUpright ? ([0, 1] as const) : ([1, 0] as const);
  const at = (a[across] + b[across]) / 2;
  const [low, high] = [Math.min(a[along], b[along]) + WELD_MM, Math.max(a[along], b[along]) - WELD_MM];
  let least = Infinity;
  for (const { minX, maxX, minY, maxY } of runs) {
    const [from, to] = isUpright ? [minY, maxY] : [minX, maxX];
    if (to <= low || from >= high) continue;
    for (const off of isUpright ? [minX - at, at - maxX] : [minY - at, at - maxY]) {
      if (off > -WELD_MM && off <= groutMm + WELD_MM) least = Math.min(least, Math.max(0, off));
    }
  }
  return least === Infinity ? null : least;
}
