import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { type Interval, intervalsMeet, lineInside } from '../../src/geometry/scanline.ts';
import { moved, rectangle, rectangles, stars, steps, ways } from './shapes.ts';
import { turfContains, turfMeetings } from './turf.ts';

const floors = fc.oneof(rectangles, stars, steps);
const placed = (axis: 0 | 1, at: number, along: number): Point => (axis === 0 ? [at, along] : [along, at]);

/** Total of the stretches that run inside, by an outside library: the line is parted where it meets the outlines, and each part judged at
 *  its middle. */
function insideLength(rings: readonly (readonly Point[])[], axis: 0 | 1, at: number): number {
  const far = 400_000;
  const line = [placed(axis, at, -far), placed(axis, at, far)];
  const stops = rings
    .flatMap((ring) => turfMeetings(line, [...ring, ...ring.slice(0, 1)]))
    .map((p) => (axis === 0 ? p[1] : p[0]))
    .sort((a, b) => a - b);
  return stops.slice(1).reduce((sum, to, i) => {
    const from = stops[i] ?? to;
    const middle = placed(axis, at, (from + to) / 2);
    return rings.filter((ring) => turfContains(ring, middle)).length % 2 === 1 ? sum + to - from : sum;
  }, 0);
}

describe.each(ways)('a line across a floor, %s', (_, move) => {
  it('runs inside for as long as an outside library finds', () => {
    // off the walls: where it follows one there is nothing to compare with
    const lines = fc.tuple(fc.constantFrom<0 | 1>(0, 1), fc.integer({ min: -60, max: 60 }));
    fc.assert(
      fc.property(floors, lines, (floor, [axis, k]) => {
        const { outline, holes } = moved(floor, move);
        const rings = [outline, ...holes];
        const at = k * 250 + 0.05 + (rings[0]?.[0]?.[axis] ?? 0);
        const found = lineInside(rings, axis, at).reduce((sum, [from, to]) => sum + to - from, 0);
        expect(found).toBeCloseTo(insideLength(rings, axis, at), 4);
      }),
      { numRuns: 80 },
    );
  });
});

describe('a line through the corners of a U-shaped floor', () => {
  const floor: Point[] = [
    [0, 0],
    [6000, 0],
    [6000, 4000],
    [4000, 4000],
    [4000, 1000],
    [2000, 1000],
    [2000, 4000],
    [0, 4000],
  ];

  it('is not inside where it follows a wall, and is beyond it', () => {
    expect(lineInside([floor], 1, 1000)).toEqual([
      [0, 2000],
      [4000, 6000],
    ]);
    expect(lineInside([floor], 0, 2000)).toEqual([[0, 1000]]);
    expect(lineInside([floor], 1, 0)).toEqual([]);
    expect(lineInside([floor], 1, 4000)).toEqual([]);
  });

  it('meets the corner of a roof from below as one stretch', () => {
    const gable: Point[] = [
      [0, 0],
      [4000, 2000],
      [0, 4000],
    ];
    expect(lineInside([gable], 1, 2000)).toEqual([[0, 4000]]);
    expect(lineInside([gable], 0, 4000)).toEqual([]);
  });

  it('stops at a core', () => {
    expect(lineInside([rectangle(0, 0, 6000, 4000), rectangle(2000, 1000, 1000, 1000)], 1, 1500)).toEqual([
      [0, 2000],
      [3000, 6000],
    ]);
  });

  it('is nowhere in no floor', () => {
    expect(lineInside([], 0, 0)).toEqual([]);
    expect(lineInside([[]], 0, 0)).toEqual([]);
    expect(lineInside([[[0, 0]]], 0, 0)).toEqual([]);
  });
});

describe('what two lists of stretches have in common', () => {
  const list = fc
    .uniqueArray(fc.integer({ min: 0, max: 40 }), { minLength: 0, maxLength: 12 })
    .map((ends): Interval[] => {
      const sorted = ends.sort((a, b) => a - b);
      return sorted.flatMap((from, i): Interval[] => (i % 2 === 0 ? [[from, sorted[i + 1] ?? from + 1]] : []));
    });
  const covers = (intervals: readonly Interval[], at: number) => intervals.some(([from, to]) => from < at && at < to);

  it('covers what both cover', () => {
    fc.assert(
      fc.property(list, list, (a, b) => {
        const both = intervalsMeet(a, b);
        for (let at = 0.5; at < 42; at++) expect(covers(both, at)).toBe(covers(a, at) && covers(b, at));
      }),
      { numRuns: 200 },
    );
  });

  it('is nothing where they only touch', () => {
    expect(intervalsMeet([[0, 2]], [[2, 4]])).toEqual([]);
  });
});
