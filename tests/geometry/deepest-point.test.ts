import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { regionDeepestPoint } from '../../src/geometry/deepest-point.ts';
import type { Point } from '../../src/geometry/point.ts';
import { regionContains } from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/ring.ts';
import { segmentDistance } from '../../src/geometry/segment.ts';

function square(x: number, y: number, side: number): Point[] {
  return [
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
  ];
}

function depthAt({ outline, holes }: Region, point: Point): number {
  const sides = [outline, ...holes].flatMap((ring) =>
    ring.map((a, i) => [a, ring[(i + 1) % ring.length] as Point] as const),
  );
  return Math.min(...sides.map(([a, b]) => segmentDistance(a, b, point)));
}

describe('the deepest point', () => {
  it('is the middle of a square', () => {
    expect(regionDeepestPoint({ outline: square(0, 0, 4), holes: [] })).toEqual({ point: [2, 2], depth: 2 });
  });

  it('lies in the thick of an L and not at its centroid', () => {
    // a block of 4 x 4 with two arms 1 wide: the largest circle is the block's own, of radius 2 about (2, 2)
    const outline: Point[] = [
      [0, 0],
      [13, 0],
      [13, 1],
      [4, 1],
      [4, 4],
      [1, 4],
      [1, 13],
      [0, 13],
    ];
    const { point, depth } = regionDeepestPoint({ outline, holes: [] });
    expect(depth).toBeGreaterThanOrEqual(2 * 0.95);
    expect(point[0]).toBeGreaterThan(1);
    expect(point[0]).toBeLessThan(3);
  });

  it('stays in the middle where a little less depth will do', () => {
    // a room of 10 x 4 with the reveal of a door in its upper wall near the right end: beside the reveal it is a little deeper
    const outline: Point[] = [
      [0, 0],
      [7, 0],
      [7, -0.3],
      [9, -0.3],
      [9, 0],
      [10, 0],
      [10, 4],
      [0, 4],
    ];
    const region = { outline, holes: [] };
    const middle = regionDeepestPoint(region, 0.15).point;
    // centroid: 40 m2 about (5, 2) and the reveal's 0.6 m2 about (8, -0.15)
    expect(middle[0]).toBeCloseTo((40 * 5 + 0.6 * 8) / 40.6, 9);
    expect(middle[1]).toBeCloseTo((40 * 2 - 0.6 * 0.15) / 40.6, 9);
    expect(regionDeepestPoint(region).depth).toBeGreaterThanOrEqual(depthAt(region, middle));
  });

  it('keeps away from holes', () => {
    const region = { outline: square(0, 0, 10), holes: [square(4, 4, 2)] };
    const { point, depth } = regionDeepestPoint(region);
    expect(regionContains(region, point)).toBe(true);
    // a circle on the diagonal that touches two sides and the near corner (4, 4) of the hole: r sqrt 2 + r = 4 sqrt 2, so
    // r = 2.3431; the precision is 1 % of 10
    expect(depth).toBeGreaterThan(2.343 - 0.1);
    expect(depth).toBeLessThanOrEqual(2.3432);
  });

  it('lies inside and no sampled point is deeper by more than the stated precision', () => {
    const corner = fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }));
    fc.assert(
      fc.property(corner, corner, ([w, h], [cutW, cutH]) => {
        const [width, height] = [w + cutW, h + cutH];
        const region: Region = {
          outline: [
            [0, 0],
            [width, 0],
            [width, h],
            [w, h],
            [w, height],
            [0, height],
          ],
          holes: [],
        };
        const { point, depth } = regionDeepestPoint(region);
        expect(regionContains(region, point)).toBe(true);
        expect(depthAt(region, point)).toBeCloseTo(depth, 9);
        const slack = Math.min(width, height) * 0.011;
        for (let i = 1; i < 12; i++) {
          for (let j = 1; j < 12; j++) {
            const sample: Point = [(i / 12) * width, (j / 12) * height];
            if (regionContains(region, sample)) expect(depthAt(region, sample)).toBeLessThanOrEqual(depth + slack);
          }
        }
      }),
      { seed: 3, numRuns: 60 },
    );
  });
});
