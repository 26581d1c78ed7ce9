import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groutStrokes, type Strokes } from '../../src/documents/tile-lines.ts';
import { type Point, pointBetween, pointDistance } from '../../src/geometry/point.ts';
import { regionContains } from '../../src/geometry/region.ts';
import { boxOf, type Region } from '../../src/geometry/ring.ts';
import type { TileBond, TileGrid } from '../../src/plan/plan.ts';
import { gridFrame } from '../../src/plan/tile-grid.ts';
import { type TileRow, tileBox, tileRows } from '../../src/tiling/rows.ts';
import { box } from './fixture.ts';
import { grid } from './tile-fixture.ts';

type Line = readonly [Point, Point];

function linesOf(strokes: Strokes): readonly Line[] {
  return Array.from({ length: strokes.length / 4 }, (_, k): Line => {
    const [x1, y1, x2, y2] = strokes.slice(4 * k, 4 * k + 4) as unknown as [number, number, number, number];
    return [
      [x1, y1],
      [x2, y2],
    ];
  });
}

function rounded(lines: readonly Line[]): readonly string[] {
  return lines.map(([[x1, y1], [x2, y2]]) => [x1, y1, x2, y2].map((mm) => mm.toFixed(1)).join(' ')).sort();
}

/** 3 x 2 m from the corner of a tile. */
const room: Region = { outline: box(0, 0, 3000, 2000), holes: [] };

describe('grout lines', () => {
  it('run from wall to wall, half a grout before each tile: 3 along and 4 across a room of 3 x 2 m', () => {
    expect(rounded(linesOf(groutStrokes(grid, room)))).toEqual(
      [
        ...['601.5', '1204.5', '1807.5'].map((y) => `0.0 ${y} 3000.0 ${y}`),
        ...['601.5', '1204.5', '1807.5', '2410.5'].map((x) => `${x} 0.0 ${x} 2000.0`),
      ].sort(),
    );
  });

  it('stand in every other course of a half bond half a tile on', () => {
    const half: TileGrid = { ...grid, bond: 'half', shiftMm: 301.5 };
    const upright = linesOf(groutStrokes(half, room)).filter(([a, b]) => a[0] === b[0]);
    const inCourse = (y: number) =>
      upright.filter(([a, b]) => a[1] < y && b[1] > y).map(([a]) => Number(a[0].toFixed(1)));
    expect(inCourse(300)).toEqual([601.5, 1204.5, 1807.5, 2410.5]);
    expect(inCourse(900)).toEqual([300, 903, 1506, 2109, 2712]);
    expect(inCourse(1500)).toEqual(inCourse(300));
  });

  it('stop at walls and holes', () => {
    const core: Region = { outline: box(0, 0, 3000, 2000), holes: [box(500, 500, 400, 400)] };
    const at601 = linesOf(groutStrokes(grid, core)).filter(([a, b]) => a[0] === 601.5 && b[0] === 601.5);
    expect(rounded(at601)).toEqual(['601.5 0.0 601.5 500.0', '601.5 900.0 601.5 2000.0']);
  });

  it('turn with the floor and its grid', () => {
    const turned: TileGrid = { ...grid, angleDeg: 30, origin: [700, -200] };
    const frame = gridFrame(turned);
    const floor: Region = { outline: room.outline.map(frame.toSheet), holes: [] };
    const back = linesOf(groutStrokes(turned, floor)).map(([a, b]): Line => [frame.toGrid(a), frame.toGrid(b)]);
    expect(rounded(back)).toEqual(rounded(linesOf(groutStrokes(grid, room))));
  });

  it('leave short strokes out where there would be too many, and keep the courses', () => {
    const hall: Region = { outline: box(0, 0, 100_000, 100_000), holes: [] };
    const fine = { ...grid, lengthMm: 200, widthMm: 200 };
    // 100 m of courses of 203 mm: 492
    expect(groutStrokes({ ...fine, bond: 'half', shiftMm: 101.5 }, hall).length / 4).toBe(492);
    expect(groutStrokes({ ...fine, bond: 'herringbone' }, hall)).toHaveLength(0);
    expect(groutStrokes({ ...fine, lengthMm: 5, widthMm: 5 }, hall)).toHaveLength(0);
  });
});

const anyGrid = fc
  .record({
    lengthMm: fc.constantFrom(300, 450, 600, 1200, 333.3),
    widthMm: fc.constantFrom(100, 300, 450, 200),
    groutMm: fc.constantFrom(0, 2, 5),
    angleDeg: fc.constantFrom(0, 17, 45, 90, 180),
    bond: fc.constantFrom<TileBond>('straight', 'half', 'third', 'offset', 'herringbone'),
    offsetMm: fc.constantFrom(37.5, 100, 250),
    x: fc.integer({ min: -900, max: 900 }),
    y: fc.integer({ min: -900, max: 900 }),
  })
  .map(({ x, y, offsetMm, ...of }): TileGrid => {
    const shifts = { straight: 0, half: 0.5, third: 1 / 3, herringbone: 0 };
    const shiftMm = of.bond === 'offset' ? offsetMm : shifts[of.bond] * (of.lengthMm + of.groutMm);
    return { ...grid, ...of, origin: [x, y], shiftMm };
  });

/** An L of 5 x 4 m with a core. */
const floor: Region = {
  outline: [
    [0, 0],
    [5000, 0],
    [5000, 2500],
    [2000, 2500],
    [2000, 4000],
    [0, 4000],
  ],
  holes: [box(700, 700, 333, 555)],
};

describe('in every bond', () => {
  it('no grout line runs over a tile or off the floor', () => {
    fc.assert(
      fc.property(anyGrid, (of) => {
        const frame = gridFrame(of);
        const rows = tileRows(of, boxOf(floor.outline.map(frame.toGrid)));
        const places = linesOf(groutStrokes(of, floor))
          .filter(([a, b]) => pointDistance(a, b) > 1)
          .flatMap(([a, b]) => [0.03, 0.5, 0.82].map((share) => pointBetween(a, b, share)));
        expect(places.filter((p) => !regionContains(floor, p))).toEqual([]);
        const deepest = Math.max(...places.flatMap((p) => rows.map((row) => depthIn(row, frame.toGrid(p)))));
        expect(deepest).toBeCloseTo(-of.groutMm / 2, 6);
      }),
      { seed: 3, numRuns: 40 },
    );
  });

  it('every tile that lies whole on the floor has grout lines all round', () => {
    fc.assert(
      fc.property(anyGrid, (of) => {
        const frame = gridFrame(of);
        const lines = linesOf(groutStrokes(of, floor)).map(([a, b]) => boxOf([frame.toGrid(a), frame.toGrid(b)]));
        const covered = ([x, y]: Point) =>
          lines.some(
            (line) => x >= line.minX - 0.01 && x <= line.maxX + 0.01 && y >= line.minY - 0.01 && y <= line.maxY + 0.01,
          );
        let whole = 0;
        for (const row of tileRows(of, boxOf(floor.outline.map(frame.toGrid)))) {
          for (let i = -60; i <= 60; i++) {
            const tile = tileBox(row, i);
            const half = of.groutMm / 2;
            const [l, r, t, b] = [tile.minX - half, tile.maxX + half, tile.minY - half, tile.maxY + half];
            const round: Point[] = [0.02, 0.37, 0.71, 0.98].flatMap((share): Point[] => [
              [l + share * (r - l), t],
              [l + share * (r - l), b],
              [l, t + share * (b - t)],
              [r, t + share * (b - t)],
            ]);
            if (!round.every((p) => regionContains(floor, frame.toSheet(p)))) continue;
            whole++;
            // a side along a wall has no line of its own
            const free = round.filter((p) => around(frame.toSheet(p)).every((q) => regionContains(floor, q)));
            expect(free.filter((p) => !covered(p))).toEqual([]);
          }
        }
        expect(whole).toBeGreaterThan(0);
      }),
      { seed: 5, numRuns: 40 },
    );
  });
});

/** How deep a place lies in the tiles of a row, mm; negative in the grout. */
function depthIn(row: TileRow, [x, y]: Point): number {
  const [dx, dy] = [x - row.at[0], y - row.at[1]];
  const near = Math.round((dx * row.step[0] + dy * row.step[1]) / (row.step[0] ** 2 + row.step[1] ** 2));
  let deepest = -Infinity;
  for (let i = near - 1; i <= near + 1; i++) {
    const { minX, maxX, minY, maxY } = tileBox(row, i);
    deepest = Math.max(deepest, Math.min(x - minX, maxX - x, y - minY, maxY - y));
  }
  return deepest;
}

function around([x, y]: Point): readonly Point[] {
  return [
    [x - 1, y],
    [x + 1, y],
    [x, y - 1],
    [x, y + 1],
  ];
}
