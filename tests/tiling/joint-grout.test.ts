import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { Joint } from '../../src/plan/analysis.ts';
import type { TileGrid } from '../../src/plan/plan.ts';
import { lineInGrid } from '../../src/tiling/joint-grout.ts';
import { analysed } from '../contract/analysed.ts';
import { createChance } from '../floors/chance.ts';
import { box, type PlanJson, planJson, type RoomJson, type TilesJson } from '../floors/plan-json.ts';
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

const square: TilesJson = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] };
const left: RoomJson = { id: 'r1', name: 'Left', outline: box(0, 0, 1806, 1806) };
const right: RoomJson = { id: 'r2', name: 'Right', outline: box(1926, 0, 1806, 1806) };
const door = (x: number): Partial<PlanJson> => ({
  doorways: [
    {
      id: 'd1',
      line: [
        [x, 500],
        [x, 1400],
      ],
      wallMm: 120,
      leaf: true,
    },
  ],
});

function grouts(json: PlanJson): Partial<Joint>[] {
  return analysed(json).analysis.joints.map(({ onGroutLine, offGroutMm, cutsTiles, tilesAt, bondLets }) => ({
    ...{ onGroutLine, tilesAt, bondLets, cutsTiles },
    offGroutMm: offGroutMm === null ? null : Math.round(offGroutMm * 1000) / 1000,
  }));
}

describe('what the tiles do at a joint', () => {
  it('cuts them under the leaf, where the field runs on', () => {
    // 1866 - 1807.5; tiles of three rows in 500-1400
    expect(grouts(planJson('Door', [left, right], { tiles: square, ...door(1866) }))).toEqual([
      { onGroutLine: false, offGroutMm: 58.5, cutsTiles: 3, tilesAt: 'cut', bondLets: true },
    ]);
  });

  it('lets the field restart at a doorway; the nearer grout counts, and the tiles of both fields that it cuts', () => {
    // the other field begins at 1926: its grout stands at 1924.5, 58.5 beyond the joint at 1866; the nearer of the two is 58.5 from both.
    const tileFields = [{ id: 't2', rooms: ['r2'], ...square, origin: [1926, 0] as const }];
    expect(grouts(planJson('Door', [left, right], { tiles: square, tileFields, ...door(1866) }))).toEqual([
      { onGroutLine: false, offGroutMm: 58.5, cutsTiles: 6, tilesAt: 'restart', bondLets: true },
    ]);
    // set out from the joint, half a grout beyond: on the line of its own, the other field is still cut
    const own = [{ id: 't2', rooms: ['r2'], ...square, origin: [1867.5, 0] as const }];
    expect(grouts(planJson('Door', [left, right], { tiles: square, tileFields: own, ...door(1866) }))).toEqual([
      { onGroutLine: true, offGroutMm: 0, cutsTiles: 3, tilesAt: 'restart', bondLets: true },
    ]);
  });

  it('ends them where only one side is tiled, in the plan file either by covering or by fields', () => {
    const end = { onGroutLine: false, offGroutMm: 58.5, cutsTiles: 3, tilesAt: 'one-side', bondLets: true };
    const bare = { ...right, covering: 'timber' } as RoomJson;
    expect(grouts(planJson('Door', [left, bare], { tiles: square, ...door(1866) }))).toEqual([end]);
    const tileFields = [{ id: 't1', rooms: ['r1'], ...square }];
    expect(grouts(planJson('Door', [left, right], { tileFields, ...door(1866) }))).toEqual([end]);
  });

  it('has nothing to tell where neither side is tiled', () => {
    const none = { onGroutLine: null, offGroutMm: null, cutsTiles: 0, tilesAt: null, bondLets: null };
    expect(grouts(planJson('Door', [left, right], door(1866)))).toEqual([none]);
    const far = { id: 'r3', name: 'Far', outline: box(9000, 0, 2000, 2000) };
    const tileFields = [{ id: 't3', rooms: ['r3'], ...square }];
    expect(grouts(planJson('Door', [left, right, far], { tileFields, ...door(1866) }))).toEqual([none]);
  });

  it('parts two fields of one open floor, where the joint lies in the grout of one', () => {
    const open = [
      { id: 'r1', name: 'Kitchen', outline: box(0, 0, 1804.5, 1806) },
      { id: 'r2', name: 'Hall', outline: box(1804.5, 0, 1806, 1806) },
    ];
    const drawnJoints = [
      {
        id: 'x1',
        line: [
          [1804.5, 0],
          [1804.5, 1806],
        ] as const,
      },
    ];
    const tileFields = [{ id: 't1', rooms: ['r1'], ...square, origin: [300, 0] as const }];
    // the hall's own grid begins at 1806, with its grout at 1804.5; the kitchen's grout stands at 1504.5 and 2107.5, and three of its tiles are cut
    const tiles = { ...square, origin: [1806, 0] as const };
    expect(grouts(planJson('Open', open, { tiles, tileFields, drawnJoints }))).toEqual([
      { onGroutLine: true, offGroutMm: 0, cutsTiles: 3, tilesAt: 'restart', bondLets: true },
    ]);
  });

  it('takes structural joints as all others', () => {
    const structural = (x: number) =>
      planJson('Hall', [left], {
        tiles: square,
        structuralJoints: [
          {
            id: 's1',
            line: [
              [x, 0],
              [x, 1806],
            ],
            widthMm: 20,
          },
        ],
      });
    expect(grouts(structural(601.5))).toEqual([
      { onGroutLine: true, offGroutMm: 0, cutsTiles: 0, tilesAt: 'on-line', bondLets: true },
    ]);
    expect(grouts(structural(800))).toEqual([
      { onGroutLine: false, offGroutMm: 198.5, cutsTiles: 3, tilesAt: 'cut', bondLets: true },
    ]);
  });

  it('lets joints run along the courses of half bond and not across them', () => {
    const hall = { id: 'r1', name: 'Hall', outline: box(0, 0, 1806, 1815) };
    const drawn = (...line: Point[]) =>
      planJson('Hall', [hall], { tiles: { ...long, bond: 'half' }, drawnJoints: [{ id: 'x1', line }] });
    expect(grouts(drawn([0, 604.5], [1806, 604.5]))).toEqual([
      { onGroutLine: true, offGroutMm: 0, cutsTiles: 0, tilesAt: 'on-line', bondLets: true },
    ]);
    // six courses: every other has its grout there, three tiles are cut
    expect(grouts(drawn([601.5, 0], [601.5, 1815]))).toEqual([
      { onGroutLine: false, offGroutMm: 301.5, cutsTiles: 3, tilesAt: 'cut', bondLets: false },
    ]);
  });

  it('lets no joint run straight through a herringbone, nor askew to any grid', () => {
    const hall = { id: 'r1', name: 'Hall', outline: box(0, 0, 1200, 1200) };
    const drawn = (tiles: TilesJson) =>
      planJson('Hall', [hall], {
        tiles,
        drawnJoints: [
          {
            id: 'x1',
            line: [
              [0, 600],
              [1200, 600],
            ],
          },
        ],
      });
    // tiles of 200 x 100: at 600 the heads and sides of four tiles lie along every 400, and one upright tile stands across: 3 in 1200
    expect(grouts(drawn({ lengthMm: 200, widthMm: 100, groutMm: 0, origin: [0, 0], bond: 'herringbone' }))).toEqual([
      { onGroutLine: false, offGroutMm: 100, cutsTiles: 3, tilesAt: 'cut', bondLets: false },
    ]);
    expect(grouts(drawn({ ...square, angleDeg: 30 }))).toMatchObject([{ onGroutLine: false, bondLets: false }]);
    expect(grouts(drawn({ ...square, angleDeg: 2.1 }))).toMatchObject([{ bondLets: false }]);
    expect(grouts(drawn({ ...square, angleDeg: 1.9 }))).toMatchObject([{ bondLets: true }]);
  });

  it('turns with the floor: a joint on the grout of a turned grid is on it', () => {
    const turn = (p: Point): Point => tilePlane({ origin: [0, 0], angleDeg: 30 }).from(p);
    const hall = { id: 'r1', name: 'Hall', outline: box(0, 0, 3012, 1806).map(turn) };
    const line = [turn([1204.5, 0]), turn([1204.5, 1806])];
    const [joint] = analysed(
      planJson('Hall', [hall], { tiles: { ...square, angleDeg: 30 }, drawnJoints: [{ id: 'x1', line }] }),
    ).analysis.joints;
    // corners are rounded to 0.1 mm
    expect(joint?.offGroutMm).toBeLessThan(0.1);
    expect(joint?.onGroutLine).toBe(true);
  });
});
