import { describe, expect, it } from 'vitest';
import { regionHatch } from '../../src/geometry/hatch.ts';
import type { Point } from '../../src/geometry/point.ts';
import { pointDistance } from '../../src/geometry/point.ts';
import { regionContains } from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/ring.ts';

const plate: Region = {
  outline: [
    [0, 0],
    [60, 0],
    [60, 40],
    [0, 40],
  ],
  holes: [
    [
      [20, 10],
      [40, 10],
      [40, 30],
      [20, 30],
    ],
  ],
};

describe('a hatch', () => {
  it('runs at whole multiples of its spacing', () => {
    const square: Region = {
      outline: [
        [0, 0],
        [4, 0],
        [4, 4],
        [0, 4],
      ],
      holes: [],
    };
    expect(regionHatch(square, 1.5, 0)).toEqual([
      [
        [0, 1.5],
        [4, 1.5],
      ],
      [
        [0, 3],
        [4, 3],
      ],
    ]);
  });

  it.each([0, 30, 45, 90, 115, 135])('covers the region and leaves holes free at %i degrees', (angleDeg) => {
    const pieces = regionHatch(plate, 0.5, angleDeg);
    const length = pieces.reduce((sum, [a, b]) => sum + pointDistance(a, b), 0);
    // length of line times spacing is the area: 60 x 40 less 20 x 20
    expect(length * 0.5).toBeGreaterThan(2000 * 0.97);
    expect(length * 0.5).toBeLessThan(2000 * 1.03);
    for (const [a, b] of pieces) {
      const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      expect(regionContains(plate, middle)).toBe(true);
    }
  });

  it('draws nothing rather than millions of lines', () => {
    expect(regionHatch(plate, 1e-6, 0)).toEqual([]);
  });
});
