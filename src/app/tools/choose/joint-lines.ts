import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';
import { GRAZE_MM, onGrid, WELD_MM } from '../../../geometry/tolerance.ts';
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
    .flatMap((bay) => stretches(a, way, [bay.outline, ...bay.holes]))
    .filter(([from, to]) => Math.min(to, lengthMm) - Math.max(from, 0) >= Math.min(GRAZE_MM, to - from))
    .sort((p, q) => p[0] - q[0]);
  const [first] = under;
  if (first === undefined) return null;
  // One line: what lies beyond a wall or a column is another joint.
  let [from, to] = longestChain(under) ?? first;
  from = onGrid(from);
  to = onGrid(to);
  return [
    [a[0] + way[0] * from, a[1] + way[1] * from],
    [a[0] + way[0] * to, a[1] + way[1] * to],
  ];
}

type Stretch = readonly [from: number, to: number];

/** Stretches that follow each other without a gap, as one; the longest such. */
function longestChain(sorted: readonly Stretch[]): Stretch | null {
  let best: Stretch | null = null;
  let run: Stretch | null = null;
  for (const [from, to] of sorted) {
    run = run !== null && from - run[1] <= WELD_MM ? [run[0], Math.max(run[1], to)] : [from, to];
    if (best === null || run[1] - run[0] > best[1] - best[0]) best = run;
  }
  return best;
}

/** Where the endless line through `a` lies within the rings, as runs along `way`, by the even-odd rule. */
function stretches(a: Point, way: Point, rings: readonly (readonly Point[])[]): readonly Stretch[] {
  const side = ([x, y]: Point) => (x - a[0]) * way[1] - (y - a[1]) * way[0];
  const along = ([x, y]: Point) => (x - a[0]) * way[0] + (y - a[1]) * way[1];
  const cuts: number[] = [];
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length] as Point;
      const [sp, sq] = [side(p), side(q)];
      if (sp > 0 === sq > 0) return;
      cuts.push(along(p) + ((along(q) - along(p)) * sp) / (sp - sq));
    });
  }
  cuts.sort((p, q) => p - q);
  return cuts.flatMap((from, i): readonly Stretch[] => {
    const to = cuts[i + 1];
    return i % 2 === 1 || to === undefined || to - from < WELD_MM ? [] : [[from, to]];
  });
}
