import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Agreement, type AgreementWay, agreementsOf } from '../../src/analysis/agreement.ts';
import { type Analysis, jointIsFound } from '../../src/plan/analysis.ts';
import { rules } from '../../src/plan/reference.ts';
import { type PlanJson, planJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';
import { analysed } from './analysed.ts';

function demoJson(file: string): PlanJson {
  return JSON.parse(readFileSync(new URL(`../../demo-plans/${file}`, import.meta.url), 'utf8')) as PlanJson;
}

function waysOf(json: PlanJson): Readonly<Record<AgreementWay, Agreement>> {
  const found = agreementsOf(planOf(json)) ?? [];
  return Object.fromEntries(found.map((each) => [each.way, each])) as Record<AgreementWay, Agreement>;
}

/** The plan after a way was taken. */
function taken(json: PlanJson, { setOuts, aim }: Agreement): PlanJson {
  const origin = setOuts.find(({ field }) => field === null)?.origin;
  return {
    ...json,
    ...(json.tiles && origin ? { tiles: { ...json.tiles, origin } } : {}),
    ...(json.tileFields
      ? {
          tileFields: json.tileFields.map((field) => {
            const moved = setOuts.find((each) => each.field === field.id);
            return moved ? { ...field, origin: moved.origin } : field;
          }),
        }
      : {}),
    ...(aim === null ? {} : { layout: { ...json.layout, aim } }),
  };
}

const lengthOf = ({ joints }: Analysis, wanted: (joint: Analysis['joints'][number]) => boolean) =>
  joints.filter(wanted).reduce((sum, { lengthM }) => sum + lengthM, 0);

/** 12 x 5 m: one joint at 6.000 m; tiles of 600 with 3 from the corner have their grout lines at 603 k - 1.5, the nearest at 6028.5. */
const long = {
  ...planJson('Long room', [
    {
      id: 'r1',
      name: 'Room',
      outline: [
        [0, 0],
        [12000, 0],
        [12000, 5000],
        [0, 5000],
      ],
    },
  ]),
  tiles: { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] as const },
};

function box(width: number, height: number): readonly (readonly [number, number])[] {
  return [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
}

describe('joints and tiles brought together', () => {
  it('moves the set-out point so that the joint of a room of 12 m lies in grout', () => {
    const before = analysed(long).analysis;
    expect(lengthOf(before, jointIsFound)).toBeCloseTo(5, 6);
    expect(before.joints[0]?.offGroutMm).toBeCloseTo(28.5, 6);
    const way = waysOf(long)['set-out'];
    expect(way.price.offGroutM).toBe(0);
    expect(way.onGroutShare).toBe(1);
    const after = analysed(taken(long, way)).analysis;
    expect(after.joints[0]?.onGroutLine).toBe(true);
    expect(after.tiles?.slivers).toBe(0);
  });

  it('moves the joint of a room of 12 m to the grout line beside it, where that keeps the limits', () => {
    const way = waysOf(long).joints;
    expect(way.aim).toBe('grout-lines');
    expect(way.setOuts).toEqual([]);
    const after = analysed(taken(long, way)).analysis;
    expect(after.joints.map(({ line }) => line[0]?.[0])).toEqual([6028.5]);
    expect(after.bays.every(({ within }) => within)).toBe(true);
  });

  it('counts a joint that was brought into grout by hand', () => {
    const drawn = [{ id: 'x1', line: [[6028.5, 0] as const, [6028.5, 5000] as const] as const }];
    const { analysis } = analysed({ ...long, drawnJoints: drawn });
    expect(analysis.joints.map(({ kind, onGroutLine }) => [kind, onGroutLine])).toEqual([['drawn', true]]);
    const way = waysOf({ ...long, drawnJoints: drawn })['as-is'];
    expect([way.price.jointM, way.price.offGroutM, way.onGroutShare]).toEqual([5, 0, 1]);
  });

  it('promises what the plan then has', () => {
    const json = demoJson('1-dwelling.json');
    for (const way of agreementsOf(planOf(json)) ?? []) {
      const { analysis } = analysed(taken(json, way));
      expect(analysis.tiles?.sawn.cut).toBe(way.price.cutTiles);
      expect(analysis.tiles?.sawn.slivers).toBe(way.price.slivers);
      expect(lengthOf(analysis, jointIsFound)).toBeCloseTo(way.price.jointM, 6);
      const off = lengthOf(analysis, ({ kind, onGroutLine }) => kind !== 'doorway' && onGroutLine === false);
      expect(off).toBeCloseTo(way.price.offGroutM, 6);
    }
  });

  it('sums by the weights that are shown, and never offers a set-out point that costs more than the present one', () => {
    const json = demoJson('2-public-library.json');
    const ways = waysOf(json);
    for (const { price } of Object.values(ways)) {
      const { jointM, offGroutM, cutTiles, slivers, totalM } = price;
      const weights = [rules.offGroutPrice.value, rules.cutTilePriceM.value, rules.sliverPriceM.value] as const;
      expect(totalM).toBeCloseTo(jointM + offGroutM * weights[0] + cutTiles * weights[1] + slivers * weights[2], 9);
    }
    expect(ways['set-out'].price.totalM).toBeLessThanOrEqual(ways['as-is'].price.totalM);
    expect(ways.both.price.totalM).toBeLessThanOrEqual(ways.joints.price.totalM);
  });

  it('finds the set-out point that the jambs of a doorway ask for, and moving both is never dearer than moving one', () => {
    // Two rooms of 4.5 and 3.7 x 3 m. With whole tiles at the upper wall each row of tiles beside the doorway is notched to tongues of 129 mm: 22 cut tiles
    // and 4 slivers, 22 x 0.02 + 4 x 0.2 = 1.24 m. Set out 250 mm higher 36 tiles are cut and none is a sliver: 0.72 m.
    const rooms = [
      { id: 'r1', name: 'One', outline: box(4500, 3000) },
      { id: 'r2', name: 'Two', outline: box(3700, 3000).map(([x, y]) => [x + 4620, y] as const) },
    ];
    const doorways = [
      { id: 'd1', line: [[4560, 1062.5] as const, [4560, 1937.5] as const] as const, wallMm: 120, leaf: false },
    ];
    const tiles = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] as const };
    const doorway = waysOf({ ...planJson('Two rooms', rooms), doorways, tiles });
    expect(doorway['as-is'].price.totalM).toBeCloseTo(1.24, 6);
    expect(doorway['set-out'].price.totalM).toBeLessThanOrEqual(0.72);

    // A U and a T, where the point that serves the joints as they lie is not among those that the corners ask for.
    const uShape = [
      [0, 0],
      [15_000, 0],
      [15_000, 9000],
      [10_000, 9000],
      [10_000, 4000],
      [5000, 4000],
      [5000, 9000],
      [0, 9000],
    ];
    const tShape = [
      [0, 0],
      [15_000, 0],
      [15_000, 4000],
      [10_000, 4000],
      [10_000, 9000],
      [5000, 9000],
      [5000, 4000],
      [0, 4000],
    ];
    for (const outline of [uShape, tShape]) {
      const plan = planJson('Room', [
        { id: 'r1', name: 'Room', outline: outline.map(([x = 0, y = 0]) => [x, y] as const) },
      ]);
      const ways = waysOf({ ...plan, tiles: { ...tiles, origin: [200, 100] } });
      for (const way of ['as-is', 'joints', 'set-out'] as const)
        expect(ways.both.price.totalM).toBeLessThanOrEqual(ways[way].price.totalM + 0.001);
    }
  });

  it('moves each tile field by itself', () => {
    const two = {
      ...planJson('Two rooms', [
        {
          id: 'r1',
          name: 'One',
          outline: [
            [0, 0],
            [4000, 0],
            [4000, 4000],
            [0, 4000],
          ],
        },
        {
          id: 'r2',
          name: 'Two',
          outline: [
            [4100, 0],
            [8300, 0],
            [8300, 4000],
            [4100, 4000],
          ],
        },
      ]),
      tiles: { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [100, 100] as const },
      tileFields: [{ id: 't1', rooms: ['r2'], lengthMm: 300, widthMm: 300, groutMm: 3, origin: [100, 100] as const }],
    };
    const { setOuts } = waysOf(two)['set-out'];
    expect(setOuts.map(({ field }) => field).sort()).toEqual([null, 't1'].sort());
  });

  it('offers nothing where there are no tiles, and stops when it is told to', () => {
    const { tiles: _, ...bare } = long;
    expect(agreementsOf(planOf(bare))).toEqual([]);
    expect(agreementsOf(planOf(long), { cancelled: () => true })).toBeNull();
  });

  it('tells how far it is, rising to the whole', () => {
    const shares: number[] = [];
    agreementsOf(planOf(long), { onProgress: (share) => shares.push(share) });
    expect(shares.length).toBeGreaterThan(3);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(shares.at(-1)).toBe(1);
  });
});
