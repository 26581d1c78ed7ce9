import { expect, it } from 'vitest';
import { lineMiddle } from '../../src/geometry/line.ts';

it('the middle of a bent line is halfway along it, not between its ends', () => {
  expect(
    lineMiddle([
      [0, 0],
      [4, 0],
      [4, 2],
    ]),
  ).toEqual([3, 0]);
});

it('the middle of a line whose first points fall together is found all the same', () => {
  expect(
    lineMiddle([
      [1, 1],
      [1, 1],
      [1, 5],
    ]),
  ).toEqual([1, 3]);
});

it('the middle of a line without length is where it lies', () => {
  expect(
    lineMiddle([
      [7, 8],
      [7, 8],
    ]),
  ).toEqual([7, 8]);
});
