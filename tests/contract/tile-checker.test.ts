import { describe, expect, it } from 'vitest';
import type { Analysis, Joint, TileFieldReport, Tiles } from '../../src/plan/analysis.ts';
import { box, planJson } from '../floors/plan-json.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { analysed } from './analysed.ts';

/** What the checker says of tiles: a floor reckoned by hand passes, and each way of spoiling it is told.
 *
 *  A hall of 9 x 6 m with a joint at 4500, tiles of 600 with 3. Across: 7 whole columns up to 4218, the joint in the eighth (4221-4821), 6 more whole
 *  ones from 4824, 558 of the last. Down: 9 whole rows, 573 of the last. Whole: 13 x 9. Cut: 13 at the lower wall, 10 in the eighth column, 10 in the last.
 *  Grout: 14 lines across and 9 down, so that tiles are (9000 - 42) x (6000 - 27). The joint lies 4500 - 4219.5 beside the grout. */
const { plan, analysis: right } = analysed(
  planJson('Hall', [{ id: 'r1', name: 'Hall', outline: box(0, 0, 9000, 6000) }], {
    tiles: { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] },
    drawnJoints: [
      {
        id: 'x1',
        line: [
          [4500, 0],
          [4500, 6000],
        ],
      },
    ],
  }),
);

const tiles = right.tiles as Tiles;
const field = tiles.fields[0] as TileFieldReport;
const joint = right.joints[0] as Joint;
const withTiles = (change: Partial<Tiles>): Analysis => ({ ...right, tiles: { ...tiles, ...change } });
const withField = (change: Partial<TileFieldReport>): Analysis => withTiles({ fields: [{ ...field, ...change }] });
const withJoint = (change: Partial<Joint>): Analysis => ({ ...right, joints: [{ ...joint, ...change }] });
const [firstCut] = field.cuts;

describe('the checker of tiles', () => {
  it('passes a hall reckoned by hand', () => {
    expect(analysisFaults(plan, right)).toEqual([]);
    expect([field.full, field.cut]).toEqual([117, 33]);
    expect(field.tileM2).toBeCloseTo(8.958 * 5.973, 9);
    expect(field.groutM2).toBeCloseTo(54 - 8.958 * 5.973, 9);
    expect([joint.offGroutMm, joint.onGroutLine, joint.cutsTiles]).toEqual([280.5, false, 10]);
  });

  it.each<[string, Analysis, string]>([
    ['one whole tile too many', withField({ full: 118 }), '118 tiles whole'],
    ['one cut tile too few', withField({ cut: 32 }), '32 tiles cut'],
    ['tiles of a larger floor', withField({ tileM2: 53.6, groutM2: 0.4 }), '53.6 m2 of tiles'],
    ['grout of a larger floor', withField({ groutM2: 0.6 }), 'tiles and grout'],
    ['a first tile off the grid', withField({ firstTile: box(10, 0, 600, 600) }), 'no whole tile'],
    ['a first tile over the joint', withField({ firstTile: box(4221, 0, 600, 600) }), 'no whole tile'],
    ['no first tile', withField({ firstTile: null }), 'no whole tile'],
    ['more slivers than cuts under half', withField({ underHalf: 1, slivers: 2 }), 'more slivers'],
    ['a tile to lay too few', withField({ laid: field.laid - 1, order: field.order - 1 }), '42 tiles in pieces'],
    ['a piece that no tile gives', withField({ fromOffCuts: field.fromOffCuts - 1 }), '42 tiles in pieces'],
    ['fewer tiles than lie whole', withField({ laid: 100 }), 'more tiles sawn than cut'],
    ['an order without its allowance', withField({ order: field.laid }), 'tiles ordered'],
    ['a smallest cut that none is', withField({ smallestCutMm: 100 }), 'none of the cuts'],
    ['other rooms', withField({ rooms: ['r2'] }), 'rooms r2'],
    ['another field', withField({ id: 't9' }), 'no report'],
    ['a report too many', withTiles({ fields: [field, { ...field, id: 't9' }] }), 'does not have'],
    ['no tiles at all', { ...right, tiles: null }, 'no report'],
    ['sums that do not add up', withTiles({ slivers: tiles.slivers + 1 }), 'the fields together'],
    ['another set-out point', withTiles({ origin: [1, 1] }), 'set-out point'],
    [
      'a cut off the bay',
      withField({
        cuts: firstCut
          ? [
              {
                ...firstCut,
                line: [
                  [1, 1],
                  [2, 2],
                ],
              },
              ...field.cuts.slice(1),
            ]
          : [],
      }),
      'lies off the bay',
    ],
    [
      'a cut as large as a tile',
      withField({ cuts: field.cuts.map((cut) => ({ ...cut, sizesMm: [cut.wholeMm] })) }),
      'tiles cut, sizes 600',
    ],
    ['a joint said to lie in grout', withJoint({ onGroutLine: true }), 'J1 (drawn): off the grout'],
    ['a joint measured wrong', withJoint({ offGroutMm: 20.5 }), 'should be 280.5'],
    ['a joint not measured', withJoint({ offGroutMm: null, onGroutLine: null }), 'should be 280.5'],
    ['a joint that is said to cut a tile less', withJoint({ cutsTiles: 9 }), 'J1: cuts 9 tiles'],
    ['a joint over which tiles run on', withJoint({ tilesAt: 'on-line' }), 'said to lie in grout'],
  ])('tells %s', (_, spoiled, told) => {
    expect(analysisFaults(plan, spoiled).join('; ')).toContain(told);
  });
});
