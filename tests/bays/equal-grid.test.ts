import { describe, expect, it } from 'vitest';
import { equalGrids } from '../../src/bays/equal-grid.ts';

const limits = { areaM2: 40, lengthM: 8, aspect: 2, aspectFromM: 5 };

/** Expected by hand: joint of a grid of n by m bays is (n - 1) times one side and (m - 1) times the other. */
describe('the best grids of equal bays', () => {
  it('lays a strip as wide as one bay in bays as long as the side allows', () => {
    expect(equalGrids(24000, 5000, limits)[0]).toEqual({ along: 3, across: 1, jointMm: 10000 });
  });

  it('takes 9 by 10 bays of 6.67 x 6 m over 60 x 60 m, 1,020 m of joint, rather than 8 by 12 with 1,080 m', () => {
    expect(equalGrids(60000, 60000, limits).map(({ along, across, jointMm }) => [along, across, jointMm])).toEqual([
      [9, 10, 1020000],
      [10, 9, 1020000],
    ]);
  });

  it('keeps bays longer than the allowance within their proportion', () => {
    // 6 x 2.9 m is 2.07 : 1; two bays of 3 x 2.9 m
    expect(equalGrids(6000, 2900, limits)[0]).toEqual({ along: 2, across: 1, jointMm: 2900 });
  });

  it('finds one bay where nothing is limited', () => {
    const none = { areaM2: Infinity, lengthM: Infinity, aspect: Infinity, aspectFromM: 5 };
    expect(equalGrids(90000, 40000, none)[0]).toEqual({ along: 1, across: 1, jointMm: 0 });
  });
});
