import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { TileGrid } from '../../src/plan/plan.ts';
import { lineInGrid } from '../../src/tiling/joint-grout.ts';
import { createChance } from '../floors/chance.ts';
import { planJson, type TilesJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';
import { between, distance } from '../oracle/planar.ts';
import { tilePlane, tilesOver } from '../oracle/tile-plane.ts';
import { anyTiles, bonds } from './one-bay.ts';

function gridOf(tiles: TilesJson): TileGrid {
  const { tiles: grid } = planOf(planJson('Grid', [], { tiles }));
  if (grid === null) throw new Error('no tiles');
  return grid;
}

const long: TilesJson = { lengthMm: 600, widthMm: 300, groutMm: 3, origin: [0, 0] };

describe('how far a line lies off the grout', () => {
  const off = (tiles: TilesJson, ...line: Point[]) => lineInGrid(line, gridOf(tiles));

  // Grout along the courses: 303 k - 1.5; across them, course 0: 603 k - 1.5, and each course shifted.
  it.each<[string, TilesJson, readonly Point[], number]>([
    [
      'level, on a grout line',
      long,
      [
        [0, 604.5],
        [5000, 604.5],
      ],
      0,
    ],
    [
      'level, 200 below one',
      { ...long, widthMm: 600 },
      [
        [0, 801.5],
        [5000, 801.5],
      ],
      200,
    ],
    [
      'level, in the middle of a course',
      long,
      [
        [0, 150],
        [5000, 150],
      ],
      151.5,
    ],
    [
      'level, 1 mm beside a joint of no width',
      { ...long, groutMm: 0 },
      [
        [0, 301],
        [5000, 301],
      ],
      1,
    ],
    [
      'upright, on a grout line',
      long,
      [
        [1204.5, 0],
        [1204.5, 5000],
      ],
      0,
    ],
    [
      'upright, askew by 10 mm from a grout line',
      long,
      [
        [1204.5, 0],
        [1214.5, 5000],
      ],
      10,
    ],
    [
      'upright, across half bond, on the grout of every other course',
      { ...long, bond: 'half' },
      [
        [601.5, 0],
        [601.5, 5000],
      ],
      301.5,
    ],
    [
      'upright, across half bond, between both',
      { ...long, bond: 'half' },
      [
        [601.5 + 150.75, 0],
        [601.5 + 150.75, 5000],
      ],
      150.75,
    ],
    [
      'upright, across third bond, on the grout of one course in three',
      { ...long, bond: 'third' },
      [
        [601.5, 0],
        [601.5, 5000],
      ],
      201,
    ],
    [
      'upright, across half bond, but within one course',
      { ...long, bond: 'half' },
      [
        [601.5, 10],
        [601.5, 290],
      ],
      0,
    ],
    [
      'level, along the courses of half bond',
      { ...long, bond: 'half' },
      [
        [0, 604.5],
        [5000, 604.5],
      ],
      0,
    ],
    [
      'level, in a herringbone: through the middle of upright tiles',
      { ...long, lengthMm: 200, widthMm: 100, groutMm: 0, bond: 'herringbone' },
      [
        [0, 100],
        [4000, 100],
      ],
      100,
    ],
    [
      'bent, both legs on grout',
      long,
      [
        [1204.5, 0],
        [1204.5, 604.5],
        [5000, 604.5],
      ],
      0,
    ],
    [
      'bent, the second leg 40 off',
      long,
      [
        [1204.5, 0],
        [1204.5, 644.5],
        [5000, 644.5],
      ],
      40,
    ],
    [
      'closed, all four sides on grout',
      long,
      [
        [601.5, 301.5],
        [1204.5, 301.5],
        [1204.5, 907.5],
        [601.5, 907.5],
        [601.5, 301.5],
      ],
      0,
    ],
    [
      'level, with a jog of 0.3 mm that rounding made',
      long,
      [
        [0, 604.5],
        [2000, 604.5],
        [2000, 604.2],
        [5000, 604.2],
      ],
      0.3,
    ],
    [
      'turned by a right angle with the grid',
      { ...long, angleDeg: 90 },
      [
        [-604.5, 0],
        [-604.5, 5000],
      ],
      0,
    ],
    [
      'far from the set-out point',
      { ...long, origin: [1e6, -1e6] },
      [
        [1e6 + 603 * 77 - 1.5, 0],
        [1e6 + 603 * 77 - 1.5, 3000],
      ],
      0,
    ],
  ])('%s', (_, tiles, line, rightMm) => {
    const found = off(tiles, ...line);
    expect(found.offMm).toBeCloseTo(rightMm, 6);
    expect(found.isOn).toBe(rightMm <= (tiles.groutMm ?? 0) / 2 + 1);
  });

  it('is on it as far as half of the grout and 1 mm, and no further', () => {
    for (const groutMm of [0, 3, 10]) {
      const tiles = { ...long, groutMm };
      const y = 300 + groutMm / 2;
      const reach = groutMm / 2 + 1;
      for (const side of [1, -1]) {
        const at = (mm: number) => off(tiles, [0, y + side * mm], [3000, y + side * mm]).isOn;
        expect([at(reach - 0.001), at(reach + 0.001)]).toEqual([true, false]);
      }
    }
  });
});

/** The place of a line in the cells (a tile and half of its grout all round) that it passes, at every millimetre. */
function sampledOff(line: readonly [Point, Point], grid: TileGrid): number {
  const plane = tilePlane(grid);
  const [p, q] = [plane.to(line[0]), plane.to(line[1])];
  const axis = Math.abs(q[0] - p[0]) >= Math.abs(q[1] - p[1]) ? 1 : 0;
  const half = grid.groutMm / 2;
  const count = Math.ceil(distance(p, q));
  let most = 0;
  for (let i = 0; i <= count; i++) {
    const at = between(p, q, i / count);
    const near = { x0: at[0] - half - 1, x1: at[0] + half + 1, y0: at[1] - half - 1, y1: at[1] + half + 1 };
    const off = [...tilesOver(grid, near)].flatMap(({ bounds: { x0, x1, y0, y1 } }) => {
      const sides = [at[0] - x0 + half, x1 + half - at[0], at[1] - y0 + half, y1 + half - at[1]] as const;
      return Math.min(...sides) < 0 ? [] : [axis === 1 ? Math.min(sides[2], sides[3]) : Math.min(sides[0], sides[1])];
    });
    most = Math.max(most, Math.min(...off));
  }
  return most;
}

describe('a line sampled at every millimetre', () => {
  it.each(bonds)('lies as far off the grout as is told, in %s bond', (bond) => {
    for (let seed = 1; seed <= 10; seed++) {
      const chance = createChance(seed * 97);
      const angleDeg = chance.pick([0, 0, 17, 45, 90]);
      const grid = gridOf(anyTiles(chance, bond, angleDeg));
      const from: Point = [chance.whole(-3000, 3000), chance.whole(-3000, 3000)];
      const way = ((angleDeg + chance.pick([0, 90, 1.5, 24, 71])) * Math.PI) / 180;
      const runMm = chance.whole(500, 2500);
      const to: Point = [from[0] + runMm * Math.cos(way), from[1] + runMm * Math.sin(way)];
      const sampled = sampledOff([from, to], grid);
      const { offMm } = lineInGrid([from, to], grid);
      // between two samples a line moves on by 1 mm at the most
      expect(offMm).toBeGreaterThanOrEqual(sampled - 0.001);
      expect(offMm).toBeLessThanOrEqual(sampled + 1);
    }
  });
});
