import { describe, expect, it } from 'vitest';
import { agreementsOf } from '../../src/analysis/agreement.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import { type TileFieldReport, type Tiles, tilePieces } from '../../src/plan/analysis.ts';
import { analysed } from '../contract/analysed.ts';
import { createChance } from '../floors/chance.ts';
import { box, type PlanJson, planJson, type TilesJson } from '../floors/plan-json.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';

/** Cuts no wider than the joint left open along the walls (10 mm here) are not laid. Tiles of 600 with 3 of grout, by hand. */

const tiles: TilesJson = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] };

function laid(outline: Ring, rest: Partial<PlanJson> = {}) {
  const json = planJson('', [{ id: 'r1', name: 'Room', outline }], {
    edgeStrip: { thicknessMm: 10, usableTravel: 0.5 },
    layout: { columnMm: 1000 },
    tiles,
    ...rest,
  });
  const { plan, analysis } = analysed(json);
  expect(analysisFaults(plan, analysis)).toEqual([]);
  const [field] = (analysis.tiles as Tiles).fields;
  if (field === undefined) throw new Error('no tiles');
  const slivers = analysis.findings.find(({ code }) => code === 'tile-slivers')?.message ?? null;
  return { plan, field, slivers };
}

function turned(ring: Ring, degrees: number): Ring {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return ring.map(([x, y]): Point => [x * c - y * s, x * s + y * c]);
}

describe('pieces that fall into the perimeter joint', () => {
  // 10 tiles: 10 * 603 - 3 = 6027, and 10 at either wall: 6047. 8 tiles: 4821 and 20: 4841. Past the grout of 3 the grid leaves 7 along all four walls:
  // 2 * 10 + 2 * 8 strips and 4 corners, 40 pieces. 80 * 1.1 = 88.
  const outline = box(0, 0, 6047, 4841);

  it('are neither laid nor ordered: whole tiles stand with the joint all round', () => {
    const { field, slivers } = laid(outline, { tiles: { ...tiles, origin: [10, 10] } });
    expect([field.full, field.cut, field.slivers, field.underHalf]).toEqual([80, 40, 40, 40]);
    expect(field.smallestCutMm).toBeCloseTo(7, 9);
    expect(field.inJoint).toBe(40);
    expect(field.sawn).toEqual({ cut: 0, underHalf: 0, slivers: 0, smallestCutMm: null });
    expect([field.laid, field.fromOffCuts, field.order]).toEqual([80, 0, 88]);
    expect(tilePieces(field)).toBe(40);
    expect(field.cuts.map(({ leastShare }) => leastShare)).toEqual([1, 1, 1, 1]);
    expect(slivers).toBeNull();
  });

  it('are no part of what a layout costs', () => {
    const { plan } = laid(outline, { tiles: { ...tiles, origin: [10, 10] } });
    const [asIs] = agreementsOf(plan) ?? [];
    expect([asIs?.price.cutTiles, asIs?.price.slivers]).toEqual([0, 0]);
  });

  it.each([20, 137])('fall into it on a floor turned by %i degrees with its tiles', (angleDeg) => {
    const [origin] = turned([[10, 10]], angleDeg);
    const { field, slivers } = laid(turned(outline, angleDeg), {
      tiles: { ...tiles, origin: origin ?? [0, 0], angleDeg },
    });
    expect([field.full, field.inJoint, field.laid]).toEqual([80, 40, 80]);
    expect(slivers).toBeNull();
  });

  it('are told apart from wider ones, at the narrowest that is laid', () => {
    // 3 tiles: 1809 with grout, 50 left. 2 rows: 1206 with grout, 7 left. Sawn: 2 of 50, both from one tile. In the joint: 3 of 7, and 50 x 7 in the corner.
    const { field, slivers } = laid(box(0, 0, 1859, 1213));
    expect([field.full, field.cut, field.slivers, field.inJoint]).toEqual([6, 6, 6, 4]);
    expect(field.sawn).toEqual({ cut: 2, underHalf: 2, slivers: 2, smallestCutMm: 50 });
    // 6 + 6 - 4 - 1 = 7, x 1.1 = 7.7
    expect([tilePieces(field), field.fromOffCuts, field.laid, field.order]).toEqual([6, 1, 7, 8]);
    expect(slivers).toContain('2 in Room, down to 50 mm');
  });

  it.each([
    [10, 4],
    [10.1, 0],
  ])('are as wide as the joint at the most: of %d mm %i fall into it', (mm, inJoint) => {
    // one row of 3 tiles and their grout, 1809, and the strip: beside 4 tiles deep, 2409
    expect(laid(box(0, 0, 1809 + mm, 2409)).field.inJoint).toBe(inJoint);
  });

  it('lie round a corner as well: what a column leaves of its tile on two sides', () => {
    // 593 x 593 of the tile in the corner: 7 are left beside it and 7 below it, in one piece. 8 whole tiles.
    const { field, slivers } = laid(box(0, 0, 1806, 1806), { columns: [{ id: 'c1', outline: box(0, 0, 593, 593) }] });
    expect([field.full, field.cut, field.inJoint, field.laid]).toEqual([8, 1, 1, 8]);
    expect(slivers).toBeNull();
  });

  it('do not while some of the piece reaches further: a leg of 7 mm of a notched tile is a sliver', () => {
    // 593 wide, 200 deep: 7 beside it, 400 before it
    const { field, slivers } = laid(box(0, 0, 1806, 1806), { columns: [{ id: 'c1', outline: box(0, 0, 593, 200) }] });
    expect([field.full, field.cut, field.inJoint, field.laid]).toEqual([8, 1, 0, 9]);
    expect(slivers).toContain('down to 7 mm');
  });

  it('do not at a movement joint', () => {
    // The joint at 610 leaves 610 - 603 = 7 of the second column, and 593 beyond it.
    const line: Ring = [
      [610, 0],
      [610, 1203],
    ];
    const { field } = laid(box(0, 0, 1806, 1203), { drawnJoints: [{ id: 'x1', line }] });
    expect([field.full, field.cut, field.slivers, field.inJoint, field.sawn.slivers]).toEqual([4, 2, 2, 0, 2]);
  });

  it('are counted by the checker as well', () => {
    const json = planJson('', [{ id: 'r1', name: 'Room', outline }], { tiles: { ...tiles, origin: [10, 10] } });
    const { plan, analysis } = analysed(json);
    const all = analysis.tiles as Tiles;
    const [field] = all.fields;
    if (field === undefined) throw new Error('no tiles');
    const told = (change: Partial<TileFieldReport>) =>
      analysisFaults(plan, { ...analysis, tiles: { ...all, fields: [{ ...field, ...change }] } }).join('; ');
    expect(told({})).toBe('');
    // the 36 strips for sure, the corners of 7 x 7 perhaps
    expect(told({ inJoint: 35 })).toContain('35 tiles in the perimeter joint, should be 36 to 40');
    expect(told({ inJoint: 41 })).toContain('41 tiles in the perimeter joint');
    expect(told({ sawn: { ...field.sawn, slivers: 1 } })).toContain('slivers sawn 0, the fields together 1');
  });

  it('are as many as the checker finds piece by piece in rooms with a column, their walls near the grout lines', () => {
    let found = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const chance = createChance(seed);
      const near = (modules: number) => modules * 303 + chance.whole(-20, 20);
      const [width, height, a, b] = [near(12), near(10), near(4), near(3)];
      const angleDeg = chance.pick([0, 33, 90]);
      const corners: Ring = [
        [0, 0],
        [width, 0],
        [width, height - b],
        [width - a, height - b],
        [width - a, height],
        [0, height],
      ];
      const { field } = laid(turned(corners, angleDeg), {
        columns: [{ id: 'c1', outline: turned(box(near(2), near(2), near(1), near(2)), angleDeg) }],
        layout: { columnMm: 5000, reentrantMm: 5000 },
        tiles: { ...tiles, widthMm: 300, angleDeg, bond: chance.pick(['straight', 'half', 'third', 'herringbone']) },
      });
      found += field.inJoint;
    }
    expect(found).toBeGreaterThan(100);
  });
});
