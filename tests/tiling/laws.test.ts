import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { TileFieldReport } from '../../src/plan/analysis.ts';
import { tileBox, tileRows } from '../../src/tiling/rows.ts';
import { createChance } from '../floors/chance.ts';
import { turned } from '../floors/placed.ts';
import type { TilesJson } from '../floors/plan-json.ts';
import { areaInBounds, tilesOver } from '../oracle/tile-plane.ts';
import { anyRoom, anyTiles, bonds, tiledBay } from './one-bay.ts';

/** What must hold for tiles whatever the room: the same grid by other words is the same floor. */

const seeds = [3, 4, 8, 10, 13] as const;
const base: TilesJson = { lengthMm: 600, widthMm: 300, groutMm: 3, origin: [0, 0], angleDeg: 0, bond: 'straight' };

/** What is counted and measured, to 0.001 mm. */
function figures({ full, cut, underHalf, slivers, smallestCutMm, tileM2, laid, order, cuts }: TileFieldReport) {
  const round = (value: number, digits: number) => Math.round(value * 10 ** digits) / 10 ** digits;
  return {
    ...{ full, cut, underHalf, slivers, laid, order },
    smallestCutMm: round(smallestCutMm ?? -1, 3),
    tileM2: round(tileM2, 8),
    cuts: cuts.map(({ sizesMm, tiles }) => [tiles, ...sizesMm.map((size) => round(size, 3))]),
  };
}

const laid = (seed: number, tiles: TilesJson) =>
  figures(tiledBay(anyRoom(seed, { skew: seed % 2 === 1 }), tiles).report);

describe('a set-out point', () => {
  it.each(bonds)('may be any corner of the same tiles, in %s bond', (bond) => {
    for (const seed of seeds) {
      const shiftMm = { straight: 0, half: 301.5, third: 201, offset: 100, herringbone: 0 }[bond];
      const at = (origin: Point) => laid(seed, { ...base, bond, offsetMm: 100, origin });
      const here = at([40, 70]);
      // along a course by two tiles; across by one course with its shift, or by a herringbone's step of a tile's width both ways
      const steps: readonly Point[] =
        bond === 'herringbone'
          ? [
              [303, 303],
              [603, -603],
            ]
          : [
              [1206, 0],
              [shiftMm, 303],
            ];
      for (const [dx, dy] of steps) {
        expect(at([40 + dx, 70 + dy])).toEqual(here);
        expect(at([40 - 3 * dx, 70 - 3 * dy])).toEqual(here);
      }
    }
  });

  it('of half bond repeats every two courses, not every one', () => {
    let other = 0;
    for (const seed of seeds) {
      const at = (courses: number) => laid(seed, { ...base, bond: 'half', origin: [40, 70 + courses * 303] });
      expect(at(2)).toEqual(at(0));
      if (JSON.stringify(at(1)) !== JSON.stringify(at(0))) other++;
    }
    expect(other).toBe(seeds.length);
  });
});

describe('a bond', () => {
  it('shifted by nothing, or by a whole tile and its grout, is straight', () => {
    for (const seed of seeds) {
      const straight = laid(seed, { ...base, origin: [10, 20] });
      for (const offsetMm of [0, 603])
        expect(laid(seed, { ...base, origin: [10, 20], bond: 'offset', offsetMm })).toEqual(straight);
    }
  });

  it('shifted by half or a third is half or third bond', () => {
    for (const seed of seeds) {
      expect(laid(seed, { ...base, bond: 'offset', offsetMm: 301.5 })).toEqual(laid(seed, { ...base, bond: 'half' }));
      expect(laid(seed, { ...base, bond: 'offset', offsetMm: 201 })).toEqual(laid(seed, { ...base, bond: 'third' }));
    }
  });

  it('of square tiles is the same by whole right angles, where it is straight', () => {
    for (const seed of seeds) {
      const square = { ...base, widthMm: 600, origin: [0, 0] as const };
      const here = laid(seed, square);
      // a tile turned by a right angle lies to the left of its corner
      expect(laid(seed, { ...square, angleDeg: 90, origin: [600, 0], allowance: 0.1 })).toEqual(here);
      expect(laid(seed, { ...square, angleDeg: 180, origin: [600, 600] })).toEqual(here);
      expect(laid(seed, { ...square, angleDeg: 270, origin: [0, 600] })).toEqual(here);
      expect(laid(seed, { ...square, angleDeg: -360_000 })).toEqual(here);
    }
  });
});

describe('floor and grid together', () => {
  it.each([90, 180, 33, 61.7])('turned by %d degrees keep every figure', (byDeg) => {
    for (const bond of bonds) {
      for (const seed of seeds.slice(0, 3)) {
        // an allowance of its own: the usual one asks for the angle
        const tiles = { ...anyTiles(createChance(seed), bond, 0), origin: [0, 0] as const, allowance: 0.1 };
        const room = anyRoom(seed, { skew: seed % 2 === 1 });
        const place = turned(byDeg);
        const there = { outline: room.outline.map(place), holes: room.holes.map((hole) => hole.map(place)) };
        const turnedFigures = figures(tiledBay(there, { ...tiles, angleDeg: byDeg }).report);
        expect(turnedFigures).toEqual(figures(tiledBay(room, tiles).report));
      }
    }
  });

  it('mirrored keep every figure of a straight bond', () => {
    for (const seed of seeds) {
      const room = anyRoom(seed, { skew: seed % 2 === 1 });
      const mirror = ([x, y]: Point): Point => [-x, y];
      const there = { outline: room.outline.map(mirror), holes: room.holes.map((hole) => hole.map(mirror)) };
      const [here, mirrored] = [
        tiledBay(room, { ...base, origin: [40, 70] }).report,
        // a tile lies to the right of its corner
        tiledBay(there, { ...base, origin: [-40 - 600, 70] }).report,
      ].map(figures);
      const sorted = (cuts: readonly number[][]) => cuts.map(String).sort();
      expect({ ...mirrored, cuts: sorted(mirrored?.cuts ?? []) }).toEqual({ ...here, cuts: sorted(here?.cuts ?? []) });
    }
  });

  it('twice as large leave cuts twice as large', () => {
    for (const seed of seeds) {
      const room = anyRoom(seed, { skew: false });
      const twice = ([x, y]: Point): Point => [2 * x, 2 * y];
      const there = { outline: room.outline.map(twice), holes: room.holes.map((hole) => hole.map(twice)) };
      const here = tiledBay(room, base).report;
      const large = tiledBay(there, { ...base, lengthMm: 1200, widthMm: 600, groutMm: 6 }).report;
      expect([large.full, large.cut, large.slivers]).toEqual([here.full, here.cut, here.slivers]);
      expect(large.smallestCutMm).toBeCloseTo(2 * (here.smallestCutMm ?? 0), 6);
      expect(large.tileM2).toBeCloseTo(4 * here.tileM2, 6);
    }
  });
});

describe('tiles with half of their grout all round', () => {
  const plane = { minX: -1777, maxX: 1903, minY: -1555, maxY: 1622 };
  const bounds = { x0: plane.minX, x1: plane.maxX, y0: plane.minY, y1: plane.maxY };
  const floor = {
    outline: [
      [bounds.x0, bounds.y0],
      [bounds.x1, bounds.y0],
      [bounds.x1, bounds.y1],
      [bounds.x0, bounds.y1],
    ] as const,
    holes: [],
  };

  it.each(bonds)('fill the plane once, in %s bond, whatever their proportion', (bond) => {
    for (const [lengthMm, widthMm, groutMm] of [
      [600, 300, 3],
      [200, 100, 0],
      [450, 150, 5],
      [300, 300, 2],
      [333.3, 141, 10],
      [100, 250, 3],
    ] as const) {
      const { grid } = tiledBay(anyRoom(4, { skew: false }), {
        ...base,
        lengthMm,
        widthMm,
        groutMm,
        bond,
        offsetMm: 77,
      });
      const half = groutMm / 2;
      const cells = tileRows(grid, plane).flatMap((row) => {
        const pace = Math.min(...row.step.filter((s) => s !== 0).map(Math.abs));
        const most = Math.ceil(20_000 / pace);
        return Array.from({ length: 2 * most + 1 }, (_, k) => tileBox(row, k - most))
          .map(({ minX, maxX, minY, maxY }) => ({ x0: minX - half, x1: maxX + half, y0: minY - half, y1: maxY + half }))
          .filter((c) => c.x1 > bounds.x0 && c.x0 < bounds.x1 && c.y1 > bounds.y0 && c.y0 < bounds.y1);
      });
      const covered = cells.reduce((sum, cell) => sum + areaInBounds([floor], cell), 0);
      const whole = (bounds.x1 - bounds.x0) * (bounds.y1 - bounds.y0);
      expect(Math.abs(covered - whole)).toBeLessThan(0.01);
      const overlap = cells.some((a, i) =>
        cells
          .slice(i + 1)
          .some(
            (b) =>
              Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0) > 1e-6 && Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0) > 1e-6,
          ),
      );
      expect(overlap).toBe(false);
      // and each of them once, where the contract puts it
      const key = (x: number, y: number, w: number) => [x, y, w].map((v) => Math.round(v * 100)).join(' ');
      const right = [...tilesOver(grid, { x0: -1500, x1: 1500, y0: -1500, y1: 1500 })];
      const known = new Set(cells.map((c) => key(c.x0 + half, c.y0 + half, c.x1 - c.x0)));
      expect(known.size).toBe(cells.length);
      for (const { bounds: b } of right) expect(known).toContain(key(b.x0, b.y0, b.x1 - b.x0 + groutMm));
    }
  });
});
