import { expect, it } from 'vitest';
import { lineMiddle, lineStraight } from '../../src/geometry/line.ts';
import type { Point } from '../../src/geometry/point.ts';
import { distanceToSegments, lineSegments } from '../oracle/planar.ts';

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

it('a line keeps within 0.15 mm of the points that are left out of it, however many there are', () => {
  for (const count of [100, 1000, 20_000]) {
    const arc = Array.from({ length: count + 1 }, (_, i): Point => {
      const angle = (Math.PI * i) / count;
      return [3400 * Math.cos(angle), 3400 * Math.sin(angle)];
    });
    const kept = lineSegments(lineStraight(arc));
    expect(kept.length).toBeLessThan(250);
    const off = arc.filter((_, i) => i % 7 === 0).map((p) => distanceToSegments(p, kept));
    expect(Math.max(...off)).toBeLessThanOrEqual(0.15);
  }
});

it('a line goes straight through points on its way and turns at all others', () => {
  const line: Point[] = [
    [0, 0],
    [10, 0],
    [20, 0.1],
    [30, 0],
    [30, 40],
  ];
  expect(lineStraight(line)).toEqual([
    [0, 0],
    [30, 0],
    [30, 40],
  ]);
});
