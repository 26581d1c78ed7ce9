import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hullOf, pocketTurn, rectangleRound, ringPockets } from '../../src/geometry/hull.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import { ringArea, ringContains, ringSignedArea } from '../../src/geometry/ring.ts';
import { moved, rectangle, shapes, stars, turn, ways } from './shapes.ts';
import { turfHull } from './turf.ts';

const names = (points: readonly Point[]) => new Set(points.map(String));

/** A room of 6 x 4 m with a niche into its lower wall: a pocket of the outline. */
const niched = (depth: number, slope = 0): Ring => [
  [0, 0],
  [6000, 0],
  [6000, 4000],
  [4000 + slope, 4000],
  [4000, 4000 - depth],
  [2000, 4000 - depth],
  [2000 - slope, 4000],
  [0, 4000],
];

describe.each(ways)('a hull, %s', (_, move) => {
  it('has the corners that an outside library finds', () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const { outline } = moved(shape, move);
        const hull = hullOf(outline);
        expect(names(hull)).toEqual(names(turfHull(outline)));
        expect(ringSignedArea(hull)).toBeGreaterThan(0);
      }),
      { numRuns: 40 },
    );
  });

  it('and its pockets make up what the outline leaves of it', () => {
    fc.assert(
      fc.property(stars, (shape) => {
        const { outline } = moved(shape, move);
        const ring = ringSignedArea(outline) > 0 ? outline : outline.toReversed();
        const pockets = ringPockets(ring).reduce((sum, { points }) => sum + ringArea(points), 0);
        expect(ringArea(ring) + pockets).toBeCloseTo(ringArea(hullOf(ring)), 3);
      }),
      { numRuns: 40 },
    );
  });

  it('never has a smaller rectangle round it in another direction', () => {
    fc.assert(
      fc.property(shapes, fc.integer({ min: 0, max: 899 }), (shape, tenths) => {
        const { outline } = moved(shape, move);
        const { length, width } = rectangleRound(outline);
        const [c, s] = [Math.cos((tenths * Math.PI) / 1800), Math.sin((tenths * Math.PI) / 1800)];
        const [u, v] = [outline.map(([x, y]) => x * c + y * s), outline.map(([x, y]) => y * c - x * s)];
        const box = (Math.max(...u) - Math.min(...u)) * (Math.max(...v) - Math.min(...v));
        // 0.2 % is what the contract gives away for the longest side
        expect(length * width).toBeLessThanOrEqual(box * 1.002 + 1);
        expect(length).toBeGreaterThanOrEqual(width);
        expect(length * width).toBeGreaterThanOrEqual(ringArea(hullOf(outline)) * (1 - 1e-9));
      }),
      { numRuns: 60 },
    );
  });
});

describe('the rectangle round a floor', () => {
  it.each([0, 17, 45, 90, 133])('of 6 x 4 m turned by %i degrees is 6 x 4 m', (deg) => {
    const { length, width } = rectangleRound(rectangle(0, 0, 6000, 4000).map(turn(deg)));
    expect(length).toBeCloseTo(6000, 0);
    expect(width).toBeCloseTo(4000, 0);
  });

  it('goes by area and not by the longest wall: a right triangle stands on either leg or on its long side', () => {
    // legs 3 and 4 m: on a leg 3 x 4 = 12 m2; on the long side 5 m times a height of 2.4 m = 12 m2; the longest side of equals counts
    const { length, width } = rectangleRound([
      [0, 0],
      [4000, 0],
      [0, 3000],
    ]);
    expect(length).toBeCloseTo(5000, 6);
    expect(width).toBeCloseTo(2400, 6);
  });

  it('has no width along a line and no sides at a point', () => {
    expect(
      rectangleRound([
        [0, 0],
        [300, 400],
        [150, 200],
      ]),
    ).toEqual({ length: 500, width: 0 });
    expect(rectangleRound([[7, 7]])).toEqual({ length: 0, width: 0 });
    expect(rectangleRound([])).toEqual({ length: 0, width: 0 });
  });
});

describe('pockets', () => {
  it('are as deep as the niche', () => {
    const pockets = ringPockets(niched(150));
    expect(pockets).toHaveLength(1);
    expect(pockets[0]?.depth).toBe(150);
  });

  it('are none in a room without niches', () => {
    expect(ringPockets(rectangle(0, 0, 6000, 4000))).toEqual([]);
    expect(ringPockets([])).toEqual([]);
  });

  it('of an L-shape is the triangle that closes it', () => {
    // 4 x 4 m with a quarter of 2 x 2 m cut away: the corner lies 2 m / root 2 behind the hull's side
    const [pocket] = ringPockets([
      [0, 0],
      [4000, 0],
      [4000, 2000],
      [2000, 2000],
      [2000, 4000],
      [0, 4000],
    ]);
    expect(pocket?.depth).toBeCloseTo(2000 / Math.SQRT2, 6);
    expect(pocket?.points).toEqual([
      [4000, 2000],
      [2000, 2000],
      [2000, 4000],
    ]);
    expect(ringContains(pocket?.points ?? [], [3000, 2500])).toBe(true);
  });

  it('turn into the bay by a right angle at a square niche, by less where its sides slope', () => {
    const turnOf = (ring: Ring) => {
      const [pocket] = ringPockets(ring);
      return pocket === undefined ? null : pocketTurn(pocket, 300);
    };
    expect(turnOf(niched(150))?.degrees).toBeCloseTo(90, 9);
    // sides that rise by 150 in 1500: atan(0.1) = 5.71 degrees
    expect(turnOf(niched(150, 1500))?.degrees).toBeCloseTo(5.7106, 3);
  });

  it('gather turns that come shortly after each other, and not those far apart', () => {
    // a niche whose far wall has two corners of atan(0.1) each, 200 mm or 2000 mm apart
    const wall = (apart: number): Ring => [
      [0, 0],
      [9000, 0],
      [9000, 4000],
      [8000, 4000],
      [5000 + apart / 2, 3700],
      [5000 - apart / 2, 3700],
      [2000, 4000],
      [0, 4000],
    ];
    const degreesOf = (ring: Ring) =>
      ringPockets(ring).map((pocket) => pocketTurn(pocket, 300).degrees)[0] ?? Number.NaN;
    const slope = (apart: number) => (Math.atan2(300, 3000 - apart / 2) * 180) / Math.PI;
    expect(degreesOf(wall(200))).toBeCloseTo(2 * slope(200), 6);
    expect(degreesOf(wall(2000))).toBeCloseTo(slope(2000), 6);
  });
});
