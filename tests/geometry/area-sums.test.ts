import { describe, expect, it } from 'vitest';
import { areaSums } from '../../src/geometry/area-sums.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';

/** Clockwise on the sheet, as outlines run. */
const box = (minX: number, minY: number, maxX: number, maxY: number): Ring => [
  [minX, minY],
  [maxX, minY],
  [maxX, maxY],
  [minX, maxY],
];
const lines = [1000, 2000, 4000];

/** Area in the rectangle from one crossing of lines to another. */
function within(sums: Float64Array, [i1, j1]: Point, [i2, j2]: Point): number {
  const at = (i: number, j: number) => sums[i * lines.length + j] as number;
  return at(i2, j2) - at(i1, j2) - at(i2, j1) + at(i1, j1);
}

/** Expected by hand: width times height of what lies in the rectangle. */
describe('areas by grid rectangles', () => {
  it('counts what lies in each rectangle', () => {
    const sums = areaSums([box(1500, 1200, 3000, 3700)], lines, lines);
    // 0.5 by 0.8 m, 1.0 by 0.8 m, 0.5 by 1.7 m, 1.0 by 1.7 m
    expect(within(sums, [0, 0], [1, 1])).toBe(400_000);
    expect(within(sums, [1, 0], [2, 1])).toBe(800_000);
    expect(within(sums, [0, 1], [1, 2])).toBe(850_000);
    expect(within(sums, [1, 1], [2, 2])).toBe(1_700_000);
  });

  it.each([
    { side: 'above the first level line', ring: box(1500, 700, 1800, 1300), mm2: 90_000 },
    { side: 'below the last level line', ring: box(1500, 3800, 1800, 4300), mm2: 60_000 },
    { side: 'left of the first upright line', ring: box(600, 1500, 1200, 1800), mm2: 60_000 },
    { side: 'right of the last upright line', ring: box(3800, 1500, 4300, 1800), mm2: 60_000 },
    { side: 'wholly above', ring: box(1500, 300, 1800, 900), mm2: 0 },
  ])('leaves out what lies $side', ({ ring, mm2 }) => {
    expect(within(areaSums([ring], lines, lines), [0, 0], [2, 2])).toBe(mm2);
  });

  it('cuts a slope off at the first level line', () => {
    // A triangle with its tip 500 mm above the line at 1,000 and its base of 1,000 mm 500 mm below it: what lies below is
    // 1,000,000 x 1.0 / 2 less a quarter of it, the smaller triangle above.
    const triangle: Ring = [
      [2000, 500],
      [2500, 1500],
      [1500, 1500],
    ];
    expect(within(areaSums([triangle], lines, lines), [0, 0], [2, 2])).toBeCloseTo(375_000, 6);
  });
});
