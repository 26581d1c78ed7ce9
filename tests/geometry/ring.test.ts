import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { regionArea, regionCentroid, regionContains, regionPerimeter } from '../../src/geometry/region.ts';
import {
  boxMiddle,
  boxOf,
  type Ring,
  ringArea,
  ringCentroid,
  ringContains,
  ringIsConvex,
  ringPerimeter,
  ringSignedArea,
} from '../../src/geometry/ring.ts';
// biome-ignore lint/correctness/useImportExtensions: the rule takes the declarations beside the file for the file itself
import { jtsArea } from './jts.mjs';
import { moved, rectangle, region, shapes, stars, ways } from './shapes.ts';
import { turfContains } from './turf.ts';

describe.each(ways)('a piece of floor, %s', (_, move) => {
  it('measures what an outside library measures, holes left out', () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const here = moved(shape, move);
        expect(regionArea(here)).toBeCloseTo(jtsArea('union', [here], []), 3);
      }),
      { numRuns: 40 },
    );
  });

  it('holds the places that an outside library finds in it', () => {
    const places = fc.tuple(fc.integer({ min: -17_000, max: 17_000 }), fc.integer({ min: -17_000, max: 17_000 }));
    fc.assert(
      // a tenth of a grid step off the grid, so that no place lies on a side that runs along it
      fc.property(stars, places, (shape, [x, y]) => {
        const { outline } = moved(shape, move);
        const place = move([x, y]);
        const inside = [place[0] + 0.013, place[1] + 0.0171] as const;
        expect(ringContains(outline, inside)).toBe(turfContains(outline, inside));
      }),
      { numRuns: 60 },
    );
  });
});

describe('a ring', () => {
  const star: Ring = [0, 2, 4, 1, 3].map((i) => [Math.cos((i * 2 * Math.PI) / 5), Math.sin((i * 2 * Math.PI) / 5)]);

  it('is convex where it turns one way only, corners along a side and drawn twice left out', () => {
    expect(ringIsConvex(rectangle(0, 0, 4, 3))).toBe(true);
    expect(ringIsConvex(rectangle(0, 0, 4, 3).toReversed())).toBe(true);
    expect(
      ringIsConvex([
        [0, 0],
        [2, 0],
        [4, 0],
        [4, 0],
        [4, 3],
      ]),
    ).toBe(true);
  });

  it('is not where it turns both ways, goes round twice or goes back', () => {
    expect(
      ringIsConvex([
        [0, 0],
        [4, 4],
        [4, 0],
        [0, 4],
      ]),
    ).toBe(false);
    expect(ringIsConvex(star)).toBe(false);
    expect(ringIsConvex([...rectangle(0, 0, 4, 3), ...rectangle(0, 0, 4, 3)])).toBe(false);
    expect(
      ringIsConvex([
        [0, 0],
        [4, 0],
        [2, 0],
        [2, 3],
      ]),
    ).toBe(false);
  });
});

describe('measures', () => {
  const room = rectangle(1000, 2000, 4000, 3000);
  const court = rectangle(1500, 2500, 1000, 1000);

  it('have a sign by the way round: positive clockwise on the sheet', () => {
    expect(ringSignedArea(room)).toBe(12e6);
    expect(ringSignedArea(room.toReversed())).toBe(-12e6);
  });

  it('leave nothing out far from the origin', () => {
    expect(ringArea(rectangle(1e7, -1e7, 0.1, 0.1))).toBeCloseTo(0.01, 9);
  });

  it('count the rim of a hole and not its floor', () => {
    const floor = region(room, court);
    expect(regionArea(floor)).toBe(11e6);
    expect(regionPerimeter(floor)).toBe(14_000 + 4000);
    expect(ringPerimeter(room)).toBe(14_000);
    expect(regionContains(floor, [2000, 3000])).toBe(false);
    expect(regionContains(floor, [4000, 4000])).toBe(true);
  });

  it('find the middle of the floor, pushed away from a hole', () => {
    // 12 m2 about (3000, 3500), less 1 m2 about (2000, 3000)
    expect(regionCentroid(region(room, court))).toEqual([(12 * 3000 - 2000) / 11, (12 * 3500 - 3000) / 11]);
    // an L of a 2 x 1 and a 1 x 1 square: (2 * 1 + 1 * 0.5) / 3, (2 * 0.5 + 1 * 1.5) / 3
    const [x, y] = ringCentroid([
      [0, 0],
      [2, 0],
      [2, 1],
      [1, 1],
      [1, 2],
      [0, 2],
    ]);
    expect(x).toBeCloseTo(2.5 / 3, 12);
    expect(y).toBeCloseTo(2.5 / 3, 12);
  });

  it('have an answer for what has no floor', () => {
    expect(ringArea([])).toBe(0);
    expect(ringPerimeter([[5, 5]])).toBe(0);
    expect(ringCentroid([])).toEqual([0, 0]);
    expect(
      ringCentroid([
        [0, 0],
        [4, 0],
        [2, 0],
      ]),
    ).toEqual([2, 0]);
    expect(regionCentroid(region(room, room))).toEqual([3000, 3500]);
    expect(boxOf([])).toEqual({ minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity });
  });
});

it('the middle of a box lies between its sides', () => {
  expect(boxMiddle({ minX: 0, minY: 0, maxX: 4, maxY: 2 })).toEqual([2, 1]);
  expect(boxMiddle(boxOf(rectangle(-3000, 1000, 2000, 500)))).toEqual([-2000, 1250]);
});
