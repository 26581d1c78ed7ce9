import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import { tilingOf } from '../../src/tiling/tiling.ts';
import { analysed } from '../contract/analysed.ts';
import { box, type PlanJson, planJson, type TilesJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';
import { gridSplit } from '../movement/grid-split.ts';
import { tileFaults } from '../oracle/check-tiles.ts';
import { createScene } from '../oracle/scene.ts';
import { tiledBay } from './one-bay.ts';

/** Figures that the plan file lets through and nobody would mean. Each within seconds, and told where it is left out. */

const room = { id: 'r1', name: 'Room', outline: box(0, 0, 4000, 3000) };
const square: TilesJson = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] };

const laid = (tiles: Partial<TilesJson>, rest: Partial<PlanJson> = {}): Analysis => {
  const { plan, analysis } = analysed(planJson('Hostile', [room], { tiles: { ...square, ...tiles }, ...rest }));
  expect(tileFaults(createScene(plan, analysis))).toEqual([]);
  return analysis;
};

const codes = ({ findings }: Analysis) => findings.map(({ code }) => code);
const seconds = 10_000;

describe('tiles of hostile figures', () => {
  it.each<[string, Partial<TilesJson>]>([
    ['a thousandth of a millimetre', { lengthMm: 0.001, widthMm: 0.001, groutMm: 0 }],
    ['a thousandth of a millimetre by 10 km', { lengthMm: 1e7, widthMm: 0.001, groutMm: 0, bond: 'herringbone' }],
    ['thinner than two welds, wide grout or not', { lengthMm: 1.9, widthMm: 600, groutMm: 100 }],
  ])(
    'are not laid but told where they are %s',
    (_, tiles) => {
      const analysis = laid(tiles);
      expect(analysis.tiles).toBeNull();
      expect(codes(analysis)).toContain('tile-too-fine');
    },
    seconds,
  );

  it.each<[string, Partial<TilesJson>, Partial<Analysis['tiles']>]>([
    // the room lies in one tile, 4000 x 3000 of it
    ['10 km', { lengthMm: 1e7, widthMm: 1e7 }, { full: 0, cut: 1, smallestCutMm: 3000 }],
    ['10 km, in a herringbone', { lengthMm: 1e7, widthMm: 1e7, bond: 'herringbone' }, { full: 0, cut: 1 }],
    // 4000 / 600 and 3000 / 600: 6 x 5 whole, 400 of the last column
    ['without grout', { groutMm: 0 }, { full: 30, cut: 5, smallestCutMm: 400 }],
    // tiles at 0, 1600 and 3200 by 0 and 1600
    ['with grout wider than the tile', { groutMm: 1000 }, { full: 6, cut: 0, smallestCutMm: null }],
    ['with grout of 10 km', { groutMm: 1e7 }, { full: 1, cut: 0, smallestCutMm: null }],
    // 1e6 degrees are 2777 turns and 280 degrees
    ['turned by a million degrees', { angleDeg: 1e6 }, null as never],
    ['turned back by a million degrees', { angleDeg: -1e6, bond: 'herringbone' }, null as never],
    // 1e7 = 603 x 16583 + 451 and as far the other way: tiles begin at 451 and 152
    ['set out 10 km away', { origin: [1e7, -1e7] }, { full: 20, cut: 22, smallestCutMm: 149 }],
    [
      'set out 10 km away, small and askew',
      { lengthMm: 60, widthMm: 20, origin: [1e7, 1e7], angleDeg: 33.3, bond: 'herringbone' },
      null as never,
    ],
    ['shifted by more than a tile', { bond: 'offset', offsetMm: 703 }, null as never],
    ['shifted by 10 km', { bond: 'offset', offsetMm: 1e7 }, null as never],
    ['fine, at the limit of what is counted', { lengthMm: 2, widthMm: 2, groutMm: 0 }, { full: 3_000_000, cut: 0 }],
  ])(
    'are laid where they are %s',
    (_, tiles, right) => {
      const found = laid(tiles).tiles;
      expect(found).not.toBeNull();
      expect(found).toMatchObject(right ?? {});
    },
    seconds,
  );

  it('are the same whether shifted by 100 or by a tile and its grout more', () => {
    const at = (offsetMm: number) => laid({ bond: 'offset', offsetMm }).tiles;
    expect(at(703)).toEqual(at(100));
    expect(at(100 + 603 * 1000)).toEqual(at(100));
  });

  it('are the same turned by 280 degrees or by 1e6', () => {
    const { angleDeg: _, ...here } = tiledBay(
      { outline: room.outline, holes: [] },
      { ...square, angleDeg: 280 },
    ).report;
    const { angleDeg: __, ...there } = tiledBay(
      { outline: room.outline, holes: [] },
      { ...square, angleDeg: 1e6 },
    ).report;
    expect([there.full, there.cut, there.slivers]).toEqual([here.full, here.cut, here.slivers]);
    expect(there.tileM2).toBeCloseTo(here.tileM2, 6);
  });
});

describe('tile fields of hostile rooms', () => {
  const fields = (...tileFields: NonNullable<PlanJson['tileFields']>) => {
    const { plan, analysis } = analysed(planJson('Fields', [room], { tileFields }));
    expect(tileFaults(createScene(plan, analysis))).toEqual([]);
    return analysis;
  };

  it('lay nothing where they have none', () => {
    expect(fields({ id: 't1', rooms: [], ...square }).tiles).toBeNull();
  });

  it('lay nothing in rooms that are not there, and tell', () => {
    const analysis = fields({ id: 't1', rooms: ['r9'], ...square });
    expect(analysis.tiles).toBeNull();
    expect(codes(analysis)).toContain('tile-field-unknown-room');
  });

  it('leave a room that two of them name to the first, and tell; one that names it twice has it once', () => {
    const small = { ...square, lengthMm: 100, widthMm: 100 };
    const both = fields({ id: 't1', rooms: ['r1', 'r1'], ...square }, { id: 't2', rooms: ['r1'], ...small });
    expect(both.tiles?.fields.map(({ id, rooms }) => [id, rooms])).toEqual([['t1', ['r1']]]);
    const told = both.findings.filter(({ code }) => code === 'tile-room-twice');
    expect(told.map(({ refs }) => refs)).toEqual([['t2', 't1', 'r1']]);
    expect(told[0]?.message).toContain('t2');
    expect(codes(fields({ id: 't1', rooms: ['r1', 'r1'], ...square }))).not.toContain('tile-room-twice');
  });
});

describe('tiles on hostile floors', () => {
  it(
    'are laid in a round room of 20,000 points',
    () => {
      const radius = 3400;
      const outline = Array.from({ length: 20_000 }, (_, i): Point => {
        const angle = (2 * Math.PI * i) / 20_000;
        return [Math.round(radius * 10 * Math.cos(angle)) / 10, Math.round(radius * 10 * Math.sin(angle)) / 10];
      });
      const round = planJson('Round', [{ ...room, outline }], { tiles: { ...square, groutMm: 0 } });
      const report = analysed(round).analysis.tiles?.fields[0];
      if (report === undefined) throw new Error('no tiles');
      // A circle of 3400, tiles of 600 from its middle: in the quarter, by columns to x = 600, 1200, ... the whole ones are
      // floor(sqrt(3400^2 - x^2) / 600) = 5, 5, 4, 4, 2: 20.
      expect(report.full).toBe(80);
      expect(report.tileM2).toBeCloseTo(Math.PI * 3.4 ** 2, 3);
      // every cut tile is measured, along one curve
      expect(report.cuts.map(({ tiles }) => tiles)).toEqual([report.cut]);
    },
    seconds,
  );

  /** 100 x 100 m in bays of 6.25 m. */
  const hall = (tiles: TilesJson) => {
    const steps = Array.from({ length: 17 }, (_, i) => i * 6250);
    const plan = planOf(
      planJson('Hall', [{ id: 'r1', name: 'Hall', outline: box(0, 0, 100_000, 100_000) }], { tiles }),
    );
    return tilingOf(
      plan,
      gridSplit(steps, steps, () => 'r1'),
    );
  };

  it(
    'tell mosaic of 20 mm on 10,000 m2 as too fine to be counted, bay by bay',
    () => {
      const { tiles, findings } = hall({ ...square, lengthMm: 20, widthMm: 20, groutMm: 2 });
      expect(tiles).toBeNull();
      expect(findings.map(({ code }) => code)).toContain('tile-too-fine');
    },
    seconds,
  );

  it.each<[string, Partial<TilesJson>]>([
    ['straight', {}],
    ['askew, half as many', { lengthMm: 160, angleDeg: 45 }],
    ['in a herringbone', { lengthMm: 240, bond: 'herringbone' }],
  ])(
    'lay tiles of 80 mm on 10,000 m2 %s',
    (_, change) => {
      const tiles = { ...square, lengthMm: 80, widthMm: 80, groutMm: 2, ...change };
      const found = hall(tiles).tiles;
      // in the long run a tile covers its share of its module
      const share = (tiles.lengthMm * 80) / ((tiles.lengthMm + 2) * 82);
      expect((found?.fields[0]?.tileM2 ?? 0) / (10_000 * share)).toBeCloseTo(1, 2);
    },
    seconds,
  );
});
