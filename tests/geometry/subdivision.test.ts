import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../src/geometry/noding.ts';
import type { Point } from '../../src/geometry/point.ts';
import { ringSignedArea } from '../../src/geometry/ring.ts';
import {
  facesBoundary,
  loopPoints,
  loopsRegion,
  type Subdivision,
  subdivisionOf,
} from '../../src/geometry/subdivision.ts';
// biome-ignore lint/correctness/useImportExtensions: the rule takes the declarations beside the file for the file itself
import { jtsArea, jtsFaceAreas } from './jts.mjs';
import { areaOf, moved, rectangle, region, shapes, ways } from './shapes.ts';
import { turfCrossingsOf } from './turf.ts';

const toGrid = ([x, y]: Point): Point => [Math.round(x * 10), Math.round(y * 10)];
const ringChain = (outline: readonly Point[]): Chain => ({ points: outline.map(toGrid), closed: true });
const lineChain = (...points: Point[]): Chain => ({ points: points.map(toGrid), closed: false });
const netMm2 = (subdivision: Subdivision, has: (inside: ReadonlySet<number>) => boolean): number =>
  subdivision.faces.reduce((sum, { area, inside }, f) => sum + (f > 0 && has(inside) ? area : 0), 0) / 100;
const allEdges = ({ edges }: Subdivision) => edges.map((_, i) => i);

describe.each(ways)('two pieces of floor in one plane, %s', (_, move) => {
  it('share, leave and cover the area that an outside library finds', () => {
    fc.assert(
      fc.property(shapes, shapes, (one, two) => {
        const [a, b] = [region(moved(one, move).outline), region(moved(two, move).outline)];
        const plane = subdivisionOf([ringChain(a.outline), ringChain(b.outline)]);
        // every crossing point moves by up to a weld, 1 mm, along sides of up to 20 m
        const slack = 40_000;
        const off = (found: number, right: number) => expect(Math.abs(found - right)).toBeLessThan(slack);
        off(
          netMm2(plane, (inside) => inside.has(0) && inside.has(1)),
          jtsArea('intersect', [a], [b]),
        );
        off(
          netMm2(plane, (inside) => inside.has(0) && !inside.has(1)),
          jtsArea('subtract', [a], [b]),
        );
        off(
          netMm2(plane, (inside) => inside.size > 0),
          jtsArea('union', [a], [b]),
        );
      }),
      { numRuns: 25 },
    );
  });

  it('are tiled by the faces that an outside library encloses with the same lines', () => {
    fc.assert(
      fc.property(shapes, shapes, (one, two) => {
        const outlines = [moved(one, move).outline, moved(two, move).outline];
        const plane = subdivisionOf(outlines.map(ringChain));
        const at = (p: number): Point => [plane.x[p] ?? 0, plane.y[p] ?? 0];
        const right = jtsFaceAreas(plane.edges.map(({ from, to }) => [at(from), at(to)] as const));
        const found = plane.faces.slice(1).map(({ area }) => area);
        expect(found.toSorted((a, b) => a - b)).toEqual(right.toSorted((a, b) => a - b));
      }),
      { numRuns: 20 },
    );
  });

  it('are bounded by simple loops that add up to the faces within', () => {
    fc.assert(
      fc.property(shapes, shapes, (one, two) => {
        const plane = subdivisionOf([moved(one, move).outline, moved(two, move).outline].map(ringChain));
        for (const has of [(f: number) => plane.faces[f]?.inside.size === 2, (f: number) => f > 0]) {
          const regions = facesBoundary(plane, has, allEdges(plane)).map((loops) => loopsRegion(plane, loops, 1));
          const right = plane.faces.reduce((sum, { area }, f) => sum + (has(f) ? area : 0), 0);
          expect(areaOf(regions)).toBeCloseTo(right, 3);
          for (const { outline, holes } of regions) {
            expect(new Set(outline.map(String)).size).toBe(outline.length);
            expect(turfCrossingsOf(outline)).toEqual([]);
            expect(ringSignedArea(outline)).toBeGreaterThan(0);
            for (const hole of holes) expect(ringSignedArea(hole)).toBeLessThan(0);
          }
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe('rooms side by side', () => {
  const left = rectangle(0, 0, 4000, 3000);
  const right = rectangle(4000, 1000, 2000, 1000);

  it('share the wall between them, with the points of both on it', () => {
    const plane = subdivisionOf([left, right].map(ringChain));
    const shared = plane.edges.filter(({ chains }) => chains.length === 2);
    expect(shared).toHaveLength(1);
    expect(plane.faces.slice(1).map(({ area }) => area)).toEqual([12e8, 2e8]);
    // 4 + 4 corners, of which none fall together; the left wall is parted into three
    expect(plane.x).toHaveLength(8);
    expect(plane.edges).toHaveLength(4 + 2 + 4 - 1);
  });

  it('0.9 mm apart are brought together, 2 mm apart are not', () => {
    const apart = (gap: number) => subdivisionOf([left, rectangle(4000 + gap, 0, 2000, 3000)].map(ringChain));
    expect(apart(0.9).edges.some(({ chains }) => chains.length === 2)).toBe(true);
    expect(apart(2).edges.some(({ chains }) => chains.length === 2)).toBe(false);
  });
});

describe('a room', () => {
  const room = rectangle(0, 0, 6000, 4000);

  it('with a core is the floor round it', () => {
    const plane = subdivisionOf([room, rectangle(1000, 1000, 1000, 500)].map(ringChain));
    expect(plane.faces).toHaveLength(3);
    expect(plane.faces.find(({ inside }) => inside.has(0) && !inside.has(1))?.area).toBe((24e6 - 0.5e6) * 100);
    expect(plane.faces.find(({ inside }) => inside.has(1))).toMatchObject({ area: 5e7 });
  });

  it('is parted by a line from wall to wall, and not by one that ends in it', () => {
    expect(subdivisionOf([ringChain(room), lineChain([2000, 0], [2000, 4000])]).faces).toHaveLength(3);
    const ended = subdivisionOf([ringChain(room), lineChain([2000, 0], [2000, 3000])]);
    expect(ended.faces).toHaveLength(2);
    expect(ended.edges.filter(({ left, right }) => left === right)).toHaveLength(1);
  });

  it('whose outline crosses itself has its floor in both halves', () => {
    const bow: Point[] = [
      [0, 0],
      [2000, 2000],
      [2000, 0],
      [0, 2000],
    ];
    const plane = subdivisionOf([ringChain(bow)]);
    expect(netMm2(plane, (inside) => inside.has(0))).toBe(2e6);
    expect(facesBoundary(plane, (f) => f > 0, allEdges(plane))).toHaveLength(2);
  });

  it('drawn twice over itself is inside of both', () => {
    const plane = subdivisionOf([room, room].map(ringChain));
    expect(plane.faces).toHaveLength(2);
    expect([...(plane.faces[1]?.inside ?? [])]).toEqual([0, 1]);
  });

  it('is read back in mm as it was drawn', () => {
    const plane = subdivisionOf([ringChain(rectangle(0.3, 0.7, 1234.5, 999.9))]);
    const points = loopPoints(plane, plane.faces[1]?.loops[0] ?? [], 10);
    expect(new Set(points.map(String))).toEqual(
      new Set(rectangle(0.3, 0.7, 1234.5, 999.9).map((p) => String(toGrid(p).map((v) => v / 10)))),
    );
  });
});

describe('nothing', () => {
  it('is the outside alone', () => {
    for (const chains of [
      [],
      [ringChain([])],
      [ringChain([[5, 5]])],
      [
        ringChain([
          [0, 0],
          [100, 0],
        ]),
      ],
    ] as const) {
      const plane = subdivisionOf(chains);
      expect(plane.faces).toHaveLength(1);
      expect(plane.faces[0]?.area).toBe(Infinity);
      expect(facesBoundary(plane, (f) => f > 0, allEdges(plane))).toEqual([]);
    }
  });
});

describe('the order of lines round a point', () => {
  // docs/decisions/0005: coordinates reach 1e8 grid steps to either side of 0, and yet no exact predicate is needed
  it('is right for lines of 20 km that part by a millimetre at their ends', () => {
    const hub: Point = [-1e7, -1e7];
    const ends: Point[] = [3, 1, 4, 0, 2].map((k) => [1e7, -1e7 + 1.1 * k]);
    const plane = subdivisionOf(ends.map((end, i) => ringChain([hub, end, ends[(i + 1) % 5] ?? end])));
    const fan = plane.faces.slice(1).map(({ area }) => area);
    // four slices of 20 km by 1.1 mm / 2 between five lines, in square grid steps
    expect(fan).toEqual([0, 1, 2, 3].map(() => 2e8 * 11 * 0.5));
  });
});
