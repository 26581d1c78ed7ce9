import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/ring.ts';
import type { WallCut } from '../../src/plan/analysis.ts';
import { analysed } from '../contract/analysed.ts';
import { box, type PlanJson, planJson, type TilesJson } from '../floors/plan-json.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';

/** Small rooms tiled on paper: where each tile begins, what the walls leave of it, and what is to be ordered. Tiles of 600 with 3 of grout repeat
 *  every 603, so that they lie at 0-600, 603-1203, 1206-1806 and so on. Off-cuts: two that are cut across the same way come from one tile where they
 *  and a saw cut of 3 fit in it. A cut is under half below 300 of 600, a sliver below 200. Allowances of 10, 15 and 20 %: usual, no source. */

interface Counted {
  readonly full: number;
  readonly cut: number;
  readonly underHalf: number;
  readonly slivers: number;
  readonly smallestCutMm: number | null;
  readonly laid: number;
  readonly fromOffCuts: number;
  readonly order: number;
  readonly boxes: number | null;
}

/** A stretch along which tiles are cut: what it is and where, the sizes, how many tiles. */
type Cut = readonly [where: string, sizesMm: readonly number[], tiles: number];

interface HandRoom {
  readonly name: string;
  readonly plan: PlanJson;
  readonly counted: Counted;
  readonly cuts: readonly Cut[];
}

const square: TilesJson = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] };
const long: TilesJson = { ...square, widthMm: 300 };

function room(outline: Ring, tiles: TilesJson, rest: Partial<PlanJson> = {}): PlanJson {
  return planJson('By hand', [{ id: 'r1', name: 'Room', outline }], { tiles, ...rest });
}

const rooms: readonly HandRoom[] = [
  {
    // 5 tiles and 4 grouts: 3012; 3 and 2: 1806. 15 x 1.1 = 16.5: 17, in boxes of 4: 5.
    name: 'a rectangle that tiles fill',
    plan: room(box(0, 0, 3012, 1806), { ...square, tilesPerBox: 4 }),
    counted: {
      ...{ full: 15, cut: 0, underHalf: 0, slivers: 0, smallestCutMm: null },
      ...{ laid: 15, fromOffCuts: 0, order: 17, boxes: 5 },
    },
    cuts: [],
  },
  {
    // 3 tiles with grout: 1809; 1859 - 1809 = 50. Two rows: 1203. Both slivers from one tile: 6 + 1 = 7, x 1.1 = 7.7.
    name: 'a rectangle that leaves a sliver at one wall',
    plan: room(box(0, 0, 1859, 1203), square),
    counted: {
      ...{ full: 6, cut: 2, underHalf: 2, slivers: 2, smallestCutMm: 50 },
      ...{ laid: 7, fromOffCuts: 1, order: 8, boxes: null },
    },
    cuts: [['wall x=1859', [50], 2]],
  },
  {
    // Of 3 x 3 tiles one lies in the corner that is missing (x over 1000, y under 900). The one left of it: 1000 - 603 = 397 wide. The one below it:
    // 1203 - 900 = 303 deep. The one at the corner is notched, and has both. Cut across different ways: no two from one tile. 8 x 1.1 = 8.8.
    name: 'an L, its corner in a tile',
    plan: room(
      [
        [0, 0],
        [1000, 0],
        [1000, 900],
        [1806, 900],
        [1806, 1806],
        [0, 1806],
      ],
      square,
      { layout: { reentrantMm: 5000 } },
    ),
    counted: {
      ...{ full: 5, cut: 3, underHalf: 0, slivers: 0, smallestCutMm: 303 },
      ...{ laid: 8, fromOffCuts: 0, order: 9, boxes: null },
    },
    cuts: [
      ['wall x=1000', [397], 2],
      ['wall y=900', [303], 2],
    ],
  },
  {
    // The column stands 700-1000 in the tile 603-1203, 200 deep: 97 beside it, 203 on its other side, 400 before it. 9 x 1.1 = 9.9.
    name: 'a column at the wall, in one tile',
    plan: room(box(0, 0, 1806, 1806), square, { columns: [{ id: 'c1', outline: box(700, 0, 300, 200) }] }),
    counted: {
      ...{ full: 8, cut: 1, underHalf: 1, slivers: 1, smallestCutMm: 97 },
      ...{ laid: 9, fromOffCuts: 0, order: 10, boxes: null },
    },
    cuts: [
      ['column c1 x=1000', [203], 1],
      ['column c1 x=700', [97], 1],
      ['column c1 y=200', [400], 1],
    ],
  },
  {
    // A post 750-850 by 200-300 in the tile 603-1203 by 0-600: 147 and 353 beside it, 200 and 300 above and below. The pipe is drilled for and makes
    // no narrow piece. 7 whole, 2 cut.
    name: 'a post and a pipe, each within one tile',
    plan: room(box(0, 0, 1806, 1806), square, {
      columns: [{ id: 'c1', outline: box(750, 200, 100, 100) }],
      pipes: [{ id: 'p1', centre: [300, 1500], diameterMm: 40 }],
    }),
    counted: {
      ...{ full: 7, cut: 2, underHalf: 1, slivers: 1, smallestCutMm: 147 },
      ...{ laid: 9, fromOffCuts: 0, order: 10, boxes: null },
    },
    cuts: [
      ['column c1 x=750', [147], 1],
      ['column c1 x=850', [353], 1],
      ['column c1 y=200', [200], 1],
      ['column c1 y=300', [300], 1],
    ],
  },
  {
    // A column from 603.7 to 1300, 100 deep, in two tiles. Of the first it leaves 500, and beside it a leg of 0.7, which is nothing; of the second 500
    // and 506. 9 x 1.1 = 9.9.
    name: 'a column that leaves a leg thinner than a weld',
    plan: room(box(0, 0, 1806, 1806), square, {
      columns: [{ id: 'c1', outline: box(603.7, 0, 696.3, 100) }],
      layout: { columnMm: 1000 },
    }),
    counted: {
      ...{ full: 7, cut: 2, underHalf: 0, slivers: 0, smallestCutMm: 500 },
      ...{ laid: 9, fromOffCuts: 0, order: 10, boxes: null },
    },
    cuts: [
      ['column c1 x=1300', [506], 1],
      ['column c1 y=100', [500], 2],
    ],
  },
  {
    // A column from 100 to 603.5, 100 deep, in a room 500 deep. Of the first tile it leaves 100 beside it and 400 before it; the 0.5 that it reaches
    // into the second are nothing. All are 500 at the lower wall. 3 x 1.1 = 3.3.
    name: 'a column that reaches into a tile by less than a weld',
    plan: room(box(0, 0, 1806, 500), square, {
      columns: [{ id: 'c1', outline: box(100, 0, 503.5, 100) }],
      layout: { columnMm: 1000 },
    }),
    counted: {
      ...{ full: 0, cut: 3, underHalf: 1, slivers: 1, smallestCutMm: 100 },
      ...{ laid: 3, fromOffCuts: 0, order: 4, boxes: null },
    },
    cuts: [
      ['column c1 x=100', [100], 1],
      ['column c1 y=100', [400], 1],
      ['wall y=500', [500], 3],
    ],
  },
  {
    // Tiles begin 100 left of the wall: 400 of each 600 is floor, cut at both walls. Four rows: 2409. Two of 400 do not fit in 600. 4 x 1.1 = 4.4.
    name: 'a corridor narrower than a tile',
    plan: room(box(0, 0, 400, 2409), { ...square, origin: [-100, 0] }),
    counted: {
      ...{ full: 0, cut: 4, underHalf: 0, slivers: 0, smallestCutMm: 400 },
      ...{ laid: 4, fromOffCuts: 0, order: 5, boxes: null },
    },
    cuts: [
      ['wall x=0', [400], 4],
      ['wall x=400', [400], 4],
    ],
  },
  {
    // Two rooms of 3 x 3 tiles, the wall between them 1806-1926, its doorway 500-1400 with the joint at 1866. Left: whole tiles, and under the leaf
    // 1866 - 1809 = 57 of three tiles, of which the jambs leave 600 - 500 = 100 and 1400 - 1206 = 194. Right: the same tiles from the other side, 2409 - 1866 = 543
    // under the leaf, 2409 - 1926 = 483 at the wall, the same 100 and 194 at the jambs; two columns whole; 3732 - 3618 = 114 at the far wall.
    // Narrow: 3 of 57, those at the jambs of 100 and 194 (32 %), 3 of 114. Of 9 pieces 3 and 3 are the same tiles, two of 114 one: 15 + 5 = 20 laid.
    name: 'a doorway in a wall of 120, cut under the leaf',
    plan: planJson(
      'Doorway',
      [
        { id: 'r1', name: 'Left', outline: box(0, 0, 1806, 1806) },
        { id: 'r2', name: 'Right', outline: box(1926, 0, 1806, 1806) },
      ],
      {
        tiles: { ...square, tilesPerBox: 5 },
        doorways: [
          {
            id: 'd1',
            line: [
              [1866, 500],
              [1866, 1400],
            ],
            wallMm: 120,
            leaf: true,
          },
        ],
      },
    ),
    counted: {
      ...{ full: 15, cut: 6, underHalf: 8, slivers: 8, smallestCutMm: 57 },
      ...{ laid: 20, fromOffCuts: 4, order: 22, boxes: 5 },
    },
    cuts: [
      ['jamb y=1400', [194], 1],
      ['jamb y=1400', [194], 1],
      ['jamb y=500', [100], 1],
      ['jamb y=500', [100], 1],
      ['joint J1 x=1866', [543], 3],
      ['joint J1 x=1866', [57], 3],
      ['wall x=1926', [483], 1],
      ['wall x=1926', [483], 1],
      ['wall x=3732', [114], 3],
    ],
  },
  {
    // Turned, a tile is 300 wide on the sheet, to the left of its corner, and 600 deep: columns 0-300, 303-603, 606-906 and 909-1000: 91; rows 0-600
    // and 603-1000: 397. 91 of 300 is under a third. 3 whole + 5 cut, no two from one: 397 + 397 is over 597. 8 x 1.1 = 8.8.
    name: 'a grid turned by a right angle',
    plan: room(box(0, 0, 1000, 1000), { ...long, origin: [300, 0], angleDeg: 90 }),
    counted: {
      ...{ full: 3, cut: 5, underHalf: 2, slivers: 2, smallestCutMm: 91 },
      ...{ laid: 8, fromOffCuts: 0, order: 9, boxes: null },
    },
    cuts: [
      ['wall x=1000', [91], 2],
      ['wall y=1000', [397], 4],
    ],
  },
  {
    // Courses of 303, shifted by 301.5 in turn. Even: 0-600, 603-1203, 1206-1700: 494. Odd: up to 298.5, 301.5-901.5, 904.5-1504.5, 1507.5-1700: 192.5.
    // 298.5 is under half, 192.5 under a third. 298.5 + 192.5 from one tile, twice: 8 + 4 = 12, x 1.1 = 13.2.
    name: 'half bond: two sizes in turn',
    plan: room(box(0, 0, 1700, 1209), { ...long, bond: 'half' }),
    counted: {
      ...{ full: 8, cut: 6, underHalf: 4, slivers: 2, smallestCutMm: 192.5 },
      ...{ laid: 12, fromOffCuts: 2, order: 14, boxes: null },
    },
    cuts: [
      ['wall x=0', [298.5], 2],
      ['wall x=1700', [192.5, 494], 4],
    ],
  },
  {
    // Shifted by 201: 1809-1900: 91; up to 198, 1407-1900: 493; up to 399, 1608-1900: 292. Off-cuts: 493 + 91, and 399 + 198 with the saw cut are
    // 600 to the hair. 7 + 3 = 10, x 1.1 = 11.
    name: 'third bond: three sizes in turn',
    plan: room(box(0, 0, 1900, 906), { ...long, bond: 'third' }),
    counted: {
      ...{ full: 7, cut: 5, underHalf: 3, slivers: 2, smallestCutMm: 91 },
      ...{ laid: 10, fromOffCuts: 2, order: 11, boxes: null },
    },
    cuts: [
      ['wall x=0', [198, 399], 2],
      ['wall x=1900', [91, 292, 493], 3],
    ],
  },
  {
    // Tiles with diagonals of 400 stand on their corners: middles at 200 a, 200 b with a + b odd. Of 800 x 800: (1 2), (2 1), (2 3), (3 2) whole, and
    // at each wall two halves, 200 deep of 400. Askew: each takes a tile of its own. 12 x 1.15 = 13.8.
    name: 'a grid turned by 45 degrees',
    plan: room(box(0, 0, 800, 800), {
      ...{ lengthMm: 200 * Math.SQRT2, widthMm: 200 * Math.SQRT2, groutMm: 0 },
      ...{ origin: [0, 0], angleDeg: 45 },
    }),
    counted: {
      ...{ full: 4, cut: 8, underHalf: 0, slivers: 0, smallestCutMm: 200 },
      ...{ laid: 12, fromOffCuts: 0, order: 14, boxes: null },
    },
    cuts: [
      ['wall x=0 askew', [200], 2],
      ['wall x=800 askew', [200], 2],
      ['wall y=0 askew', [200], 2],
      ['wall y=800 askew', [200], 2],
    ],
  },
  {
    // The joint at 800 parts the tiles 603-1203: 197 and 403. Both pieces come from one tile. 197 is under a third. 4 + 2 = 6, x 1.1 = 6.6.
    name: 'a joint off the grout: cuts along both of its sides',
    plan: room(box(0, 0, 1806, 1203), square, {
      drawnJoints: [
        {
          id: 'x1',
          line: [
            [800, 0],
            [800, 1203],
          ],
        },
      ],
    }),
    counted: {
      ...{ full: 4, cut: 2, underHalf: 2, slivers: 2, smallestCutMm: 197 },
      ...{ laid: 6, fromOffCuts: 2, order: 7, boxes: null },
    },
    cuts: [
      ['joint J1 x=800', [197], 2],
      ['joint J1 x=800', [403], 2],
    ],
  },
  {
    // Tiles of 200 x 100 in squares of 100, without grout. Level ones from (0 0), (1 1), (2 2) whole, from (3 3) and (-1 3) by half; upright ones from
    // (0 1), (1 2), (3 0) whole, from (2 -1) and (2 3) by half. Two halves of 100 and a saw cut do not fit in 200. 10 x 1.2 = 12.
    name: 'a herringbone',
    plan: room(box(0, 0, 400, 400), { lengthMm: 200, widthMm: 100, groutMm: 0, origin: [0, 0], bond: 'herringbone' }),
    counted: {
      ...{ full: 6, cut: 4, underHalf: 0, slivers: 0, smallestCutMm: 100 },
      ...{ laid: 10, fromOffCuts: 0, order: 12, boxes: null },
    },
    cuts: [
      ['wall x=0', [100], 1],
      ['wall x=400', [100], 1],
      ['wall y=0', [100], 1],
      ['wall y=400', [100], 1],
    ],
  },
];

function cutRow({ along, object, line: [a, b], sizesMm, tiles, isAskew }: WallCut): Cut {
  const place = a[0] === b[0] ? `x=${a[0]}` : `y=${a[1]}`;
  const where = [along, object ?? '', place, isAskew ? 'askew' : ''].filter((word) => word !== '').join(' ');
  return [where, sizesMm.map((size) => Math.round(size * 1e6) / 1e6), tiles];
}

describe('rooms tiled on paper', () => {
  it.each(rooms)('$name', ({ plan: json, counted, cuts }) => {
    const { plan, analysis } = analysed(json);
    expect(analysisFaults(plan, analysis)).toEqual([]);
    const [field] = analysis.tiles?.fields ?? [];
    if (field === undefined) throw new Error('no tiles');
    const { full, cut, underHalf, slivers, smallestCutMm, laid, fromOffCuts, order, boxes } = field;
    const smallest = smallestCutMm === null ? null : Math.round(smallestCutMm * 1e6) / 1e6;
    const own = { full, cut, underHalf, slivers, smallestCutMm: smallest, laid, fromOffCuts, order, boxes };
    expect(own).toEqual(counted);
    const rows = field.cuts.filter(({ tiles, along }) => tiles > 0 && along !== 'pipe').map(cutRow);
    expect(rows.sort((a, b) => (String(a) < String(b) ? -1 : 1))).toEqual(cuts);
    const { tiles: sizes } = json;
    const whole = field.cuts.filter(({ tiles }) => tiles === 0);
    for (const { sizesMm } of whole) expect([[sizes?.lengthMm], [sizes?.widthMm]]).toContainEqual(sizesMm);
  });

  it('measures a joint that misses the grout by 198.5 mm, and the tiles that it cuts', () => {
    const { analysis } = analysed((rooms.find(({ name }) => name.startsWith('a joint off')) as HandRoom).plan);
    // 800 - 601.5, the middle of the grout before the tile that begins at 603
    expect(
      analysis.joints.map(({ offGroutMm, onGroutLine, cutsTiles, tilesAt }) => [
        offGroutMm,
        onGroutLine,
        cutsTiles,
        tilesAt,
      ]),
    ).toEqual([[198.5, false, 2, 'cut']]);
  });

  it('tells the least and the greatest cut at a wall out of square, where each tile differs from the next by little', () => {
    // From 703 to 715 deep over 6 tiles: past the row that ends at 600 with its grout, 100 + 12 x / 3615 at x = 600 and at x = 3615.
    const outline: Ring = [
      [0, 0],
      [3615, 0],
      [3615, 715],
      [0, 703],
    ];
    const cuts = analysed(room(outline, square)).analysis.tiles?.fields[0]?.cuts ?? [];
    const [skew] = cuts.filter(({ isAskew }) => isAskew);
    expect(skew?.tiles).toBe(6);
    expect(skew?.sizesMm[0]).toBeCloseTo(101.99, 2);
    expect(skew?.sizesMm[1]).toBeCloseTo(112, 2);
  });

  it('tells a piece in a corner, narrow both ways, once', () => {
    // 50 at one wall, 63 at the other: 2 + 3 pieces along them, and one in the corner
    const { findings } = analysed(room(box(0, 0, 1859, 1269), square)).analysis;
    expect(findings.find(({ code }) => code === 'tile-slivers')?.message).toContain('6 in Room, down to 50 mm');
  });

  it('tells sizes of a herringbone with the longer whole tile, and their least share of their own', () => {
    // Tiles of 600 x 200: level ones reach the wall at 700 from 200, 400 and 600, in the second, third and fourth row: 500, 300 and 100 of 600. Two
    // upright ones stand at 600: 100 of 200. The least is 100 of 600.
    const tiles: TilesJson = { lengthMm: 600, widthMm: 200, groutMm: 0, origin: [0, 0], bond: 'herringbone' };
    const cuts = analysed(room(box(0, 0, 700, 1200), tiles)).analysis.tiles?.fields[0]?.cuts ?? [];
    const [wall] = cuts.filter(({ line: [a, b] }) => a[0] === 700 && b[0] === 700);
    expect(wall?.wholeMm).toBe(600);
    expect(wall?.sizesMm).toEqual([100, 300, 500]);
    expect(wall?.tiles).toBe(5);
    expect(wall?.leastShare).toBeCloseTo(1 / 6, 9);
  });

  it('counts tiles and grout of the floor that tiles fill: 5.4 m2 and the rest of 3.012 x 1.806 m', () => {
    const { analysis } = analysed((rooms[0] as HandRoom).plan);
    expect(analysis.tiles?.fields[0]?.tileM2).toBeCloseTo(5.4, 9);
    expect(analysis.tiles?.fields[0]?.groutM2).toBeCloseTo(0.039672, 9);
  });
});
