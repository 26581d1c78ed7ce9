import { describe, expect, it } from 'vitest';
import { intervalsChained, lineWithin } from '../../src/geometry/line-clip.ts';
import { type Point, pointDirection } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import { WELD_MM } from '../../src/geometry/tolerance.ts';

const rectangle = (x: number, y: number, width: number, height: number): Ring => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

describe('a line through rings', () => {
  it('runs from side to side, also behind the place that it is counted from', () => {
    const ring = rectangle(2000, 0, 3000, 3000);
    expect(lineWithin([0, 1000], [1, 0], [ring])).toEqual([[2000, 5000]]);
    expect(lineWithin([3000, 1000], [1, 0], [ring])).toEqual([[-1000, 2000]]);
    expect(lineWithin([3000, 1000], [-1, 0], [[...ring].reverse()])).toEqual([[-2000, 1000]]);
  });

  it('stops at a hole and goes on beyond it', () => {
    const rings = [rectangle(0, 0, 6000, 4000), rectangle(2000, 1000, 300, 300)];
    expect(lineWithin([0, 1100], [1, 0], rings)).toEqual([
      [0, 2000],
      [2300, 6000],
    ]);
    expect(lineWithin([0, 3000], [1, 0], rings)).toEqual([[0, 6000]]);
  });

  it('runs askew as far as it is long inside', () => {
    // Through a square of 3 m from corner to corner: 3 m times the root of two; half as far in, half as long.
    const askew = pointDirection([0, 0], [1, 1]);
    const lengths = (from: Point) =>
      lineWithin(from, askew, [rectangle(0, 0, 3000, 3000)]).map(([start, end]) => end - start);
    expect(lengths([0, 0])[0]).toBeCloseTo(3000 * Math.SQRT2, 6);
    expect(lengths([1500, 0])[0]).toBeCloseTo(1500 * Math.SQRT2, 6);
  });

  it('beside all rings, or across no more than a corner, runs nowhere', () => {
    expect(lineWithin([0, 5000], [1, 0], [rectangle(0, 0, 3000, 3000)])).toEqual([]);
    expect(lineWithin([0, 0], [1, 0], [])).toEqual([]);
    const corner: Ring = [
      [0, 0],
      [WELD_MM / 4, WELD_MM / 4],
      [-WELD_MM / 4, WELD_MM / 4],
    ];
    expect(lineWithin([-100, WELD_MM / 8], [1, 0], [corner])).toEqual([]);
  });
});

describe('stretches of one line', () => {
  it('that follow each other are one, in whatever order they come', () => {
    expect(
      intervalsChained([
        [5300, 6000],
        [2000, 5000],
        [0, 2000],
      ]),
    ).toEqual([
      [0, 5000],
      [5300, 6000],
    ]);
  });

  it('that rounding has parted or laid over each other are one still', () => {
    expect(
      intervalsChained([
        [0, 2000],
        [2000 + WELD_MM, 3000],
        [1000, 1500],
      ]),
    ).toEqual([[0, 3000]]);
    expect(intervalsChained([])).toEqual([]);
  });
});
