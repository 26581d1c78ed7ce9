import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type HalfPlane, regionClip, regionInBox } from '../../src/geometry/region-clip.ts';
import type { Box, Region } from '../../src/geometry/ring.ts';
import { boxOf } from '../../src/geometry/ring.ts';
// biome-ignore lint/correctness/useImportExtensions: the rule takes the declarations beside the file for the file itself
import { jtsArea } from './jts.mjs';
import { areaOf, moved, rectangle, rectangles, region, stars, steps, turn, ways } from './shapes.ts';

const floors = fc.oneof(rectangles, stars, steps);
/** On the lattice of the shapes, so that the line runs through corners and along walls. */
const places = fc.integer({ min: -30, max: 30 }).map((k) => k * 250);
const planes = fc.record({
  axis: fc.constantFrom<0 | 1>(0, 1),
  at: places,
  side: fc.constantFrom<1 | -1>(1, -1),
});

/** The half-plane as a cutter that reaches beyond the shape. */
function planeRegion({ axis, at, side }: HalfPlane): Region {
  const far = 400_000;
  const from = side === 1 ? at : at - far;
  return region(axis === 0 ? rectangle(from, -far / 2, far, far) : rectangle(-far / 2, from, far, far));
}

const lies = (box: Box, { axis, at, side }: HalfPlane): boolean =>
  side === 1 ? (axis === 0 ? box.minX : box.minY) >= at : (axis === 0 ? box.maxX : box.maxY) <= at;

describe.each(ways)('a floor cut along a line, %s', (_, move) => {
  it('keeps what an outside library keeps', () => {
    fc.assert(
      fc.property(floors, planes, (floor, plane) => {
        const here = moved(floor, move);
        expect(areaOf(regionClip(here, plane))).toBeCloseTo(jtsArea('intersect', [here], [planeRegion(plane)]), 1);
      }),
      { numRuns: 60 },
    );
  });

  it('adds up on both sides, each piece on its own side', () => {
    fc.assert(
      fc.property(floors, planes, (floor, plane) => {
        const here = moved(floor, move);
        const other: HalfPlane = { ...plane, side: plane.side === 1 ? -1 : 1 };
        const both = [plane, other].map((half) => regionClip(here, half));
        expect(areaOf(both.flat())).toBeCloseTo(areaOf([here]), 2);
        for (const piece of both[0] ?? []) expect(lies(boxOf(piece.outline), plane)).toBe(true);
        for (const piece of both[1] ?? []) expect(lies(boxOf(piece.outline), other)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('in a box is what an outside library finds in the box', () => {
    const boxes = fc.tuple(places, places, fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 }));
    fc.assert(
      fc.property(floors, boxes, (floor, [x, y, w, h]) => {
        const here = moved(floor, move);
        const outline = rectangle(x, y, w * 250, h * 250);
        const right = jtsArea('intersect', [here], [region(outline)]);
        expect(areaOf(regionInBox(here, boxOf(outline)))).toBeCloseTo(right, 1);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a core with a corner on the line', () => {
  // 1 x 1 m with a core of 0.5 x 0.5 m, turned by 45 degrees off the axes: the line meets the core at one corner only
  const floor = moved(region(rectangle(-10_000, 9500, 1000, 1000), rectangle(-9750, 9750, 500, 500)), turn(45));

  it('is kept whole on its side', () => {
    expect(areaOf(regionClip(floor, { axis: 1, at: 0, side: 1 }))).toBeCloseTo(625_041, -1);
  });
});

describe('a U-shaped floor', () => {
  // 6 x 4 m with a bay of 2 x 3 m taken out of its lower side
  const floor = region([
    [0, 0],
    [6000, 0],
    [6000, 4000],
    [4000, 4000],
    [4000, 1000],
    [2000, 1000],
    [2000, 4000],
    [0, 4000],
  ]);

  it('falls into its two legs below the line, and is one above it', () => {
    const below = regionClip(floor, { axis: 1, at: 2000, side: 1 });
    expect(below.map((piece) => areaOf([piece]))).toEqual([4e6, 4e6]);
    expect(regionClip(floor, { axis: 1, at: 2000, side: -1 })).toHaveLength(1);
  });

  it('cut along a wall in it keeps whole pieces on either side', () => {
    expect(areaOf(regionClip(floor, { axis: 1, at: 1000, side: -1 }))).toBe(6e6);
    expect(regionClip(floor, { axis: 1, at: 1000, side: 1 }).map((piece) => areaOf([piece]))).toEqual([6e6, 6e6]);
  });

  it('wholly on one side stays as it is, and leaves nothing on the other', () => {
    expect(regionClip(floor, { axis: 0, at: 0, side: 1 })).toEqual([floor]);
    expect(regionClip(floor, { axis: 0, at: 0, side: -1 })).toEqual([]);
    expect(regionClip(floor, { axis: 0, at: -1, side: -1 })).toEqual([]);
  });
});

describe('a floor round a core', () => {
  const floor = region(rectangle(0, 0, 6000, 4000), rectangle(2000, 1000, 1000, 1000).toReversed());

  it('opens where the line runs through the core, and keeps the core where it does not', () => {
    const [through] = regionClip(floor, { axis: 0, at: 2500, side: 1 });
    expect(through?.holes).toEqual([]);
    expect(areaOf([through ?? region([])])).toBe(14e6 - 0.5e6);
    const [past] = regionClip(floor, { axis: 0, at: 1000, side: 1 });
    expect(past?.holes).toHaveLength(1);
    expect(areaOf([past ?? region([])])).toBe(20e6 - 1e6);
  });
});
