import type { Point } from './point.ts';
import type { Ring } from './ring.ts';
import type { Interval } from './scanline.ts';
import { WELD_MM } from './tolerance.ts';

/** Where a line of any direction runs through rings, in mm along it. Upright and level lines: `scanline.ts`, which is exact at corners. */

/** The stretches of the endless line that lie within the rings, by the even-odd rule, as distances from `from` along the unit vector. Stretches too
 *  short to be told from a corner are left out.
 *  Example: from [0, 1000] to the right, a ring from [2000, 0] to [5000, 3000] -> [[2000, 5000]] */
export function lineWithin(from: Point, way: Point, rings: readonly Ring[]): readonly Interval[] {
  const side = ([x, y]: Point) => (x - from[0]) * way[1] - (y - from[1]) * way[0];
  const along = ([x, y]: Point) => (x - from[0]) * way[0] + (y - from[1]) * way[1];
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
  return cuts.flatMap((start, i): readonly Interval[] => {
    const end = cuts[i + 1];
    return i % 2 === 1 || end === undefined || end - start < WELD_MM ? [] : [[start, end]];
  });
}

/** Stretches in their order, those that follow each other without a gap as one. Example: [0, 2000], [2000, 5000], [5300, 6000] -> [0, 5000], [5300, 6000] */
export function intervalsChained(intervals: readonly Interval[]): readonly Interval[] {
  const chains: Interval[] = [];
  for (const [from, to] of [...intervals].sort((p, q) => p[0] - q[0])) {
    const last = chains.at(-1);
    if (last !== undefined && from - last[1] <= WELD_MM) chains[chains.length - 1] = [last[0], Math.max(last[1], to)];
    else chains.push([from, to]);
  }
  return chains;
}
