import { intervalsChained, lineWithin } from '../../../geometry/line-clip.ts';
import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';
import { GRAZE_MM, onGrid } from '../../../geometry/tolerance.ts';
import type { Bay } from '../../../plan/analysis.ts';

/** A joint's line, brought to the walls and joints that it meets: its ends go to the edges of the bays that it runs
 *  through. Null where it runs through none.
 *  @param line where the hand has it, two points, mm */
export function joiningLine(
  [a, b]: readonly [Point, Point],
  bays: readonly Pick<Bay, 'outline' | 'holes'>[],
): readonly [Point, Point] | null {
  const way = pointDirection(a, b);
  const lengthMm = pointDistance(a, b);
  const under = bays
    .flatMap((bay) => lineWithin(a, way, [bay.outline, ...bay.holes]))
    .filter(([from, to]) => Math.min(to, lengthMm) - Math.max(from, 0) >= Math.min(GRAZE_MM, to - from));
  // One line: what lies beyond a wall or a column is another joint.
  const [first, ...others] = intervalsChained(under);
  if (first === undefined) return null;
  const [from, to] = others.reduce((best, next) => (next[1] - next[0] > best[1] - best[0] ? next : best), first);
  const at = (mm: number): Point => [a[0] + way[0] * onGrid(mm), a[1] + way[1] * onGrid(mm)];
  return [at(from), at(to)];
}
