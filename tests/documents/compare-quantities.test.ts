import { describe, expect, it } from 'vitest';
import { comparisonOf } from '../../src/documents/compare.ts';
import { comparisonDrawing } from '../../src/documents/compare-drawing.ts';
import { compareOrderTable, compareQuantitiesTable, compareSettingsTable } from '../../src/documents/compare-tables.ts';
import { takeOffOf } from '../../src/documents/takeoff-tables.ts';
import { orderStarts } from '../../src/plan/papers.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { jointAt, rectangle } from './compare-fixture.ts';
import { hallAndStore } from './paper-fixture.ts';

describe('a quantity that changed', () => {
  const screedRows = (nowMm: number) =>
    compareQuantitiesTable(
      comparisonOf(hallAndStore({ screed: { thicknessMm: 65 } }), hallAndStore({ screed: { thicknessMm: nowMm } })),
    );

  // by hand: 71.6 m2 of floor (12 x 5 + 4 x 2.9) and a doorway of 0.9 x 0.1 m: 71.69 m2. 0.01 mm more of screed is 0.0007 m3
  it('shows figures that differ, with as many digits as that takes', () => {
    const { rows, rowDecimals } = screedRows(65.01);
    const at = rows.findIndex(([room, words, unit]) => room === 'In all' && words === 'Screed' && unit === 'm3');
    expect(rows[at]?.[5]).toBeCloseTo((71.69 * 0.01) / 1000, 3);
    expect(rowDecimals?.[at]).toBeGreaterThan(2);
    const kg = rows.find(([room, words, unit]) => room === 'In all' && words === 'Screed' && unit === 'kg');
    expect(kg?.[5]).not.toBe(0);
  });

  it.each([65, 65.001, 65.01, 65.3, 70, 120])(
    'has a change that is the difference of the figures beside it, at %s mm',
    (mm) => {
      for (const [, , , before, now, change] of screedRows(mm).rows)
        expect(Number(change)).toBeCloseTo(Number(now) - Number(before), 6);
    },
  );
});

describe('the edge strip before and now', () => {
  // strips of two heights, since the rooms have coverings of 10 and 12 mm: each is a line of the take-off, rounded by itself
  it('is in all what the lines of the take-off add up to, and in each room what they say of it', () => {
    const floor = (storeM: number) => {
      const { rooms } = hallAndStore().file;
      return hallAndStore({
        rooms: rooms.map((room) =>
          room.id === 'store'
            ? { ...room, ...rectangle('store', [0, 5100], [storeM * 1000, 8000]), buildUp: { coveringMm: 12 } }
            : room,
        ),
      });
    };
    for (const storeM of [4.0025, 4.0075, 4.0625, 4.1125]) {
      const [before, now] = [floor(storeM), floor(storeM + 1)];
      const pairs = comparisonOf(before, now).quantities.filter(({ words }) => words === 'Edge strip');
      const lines = takeOffOf(before).lines.filter(({ group }) => group === 'edge-strip');
      const nets = lines.map(({ net, decimals }) => Number(net.toFixed(decimals)));
      const [whole, ...rooms] = pairs.map((pair) => pair.before ?? 0);
      expect(whole).toBeCloseTo(
        nets.reduce((sum, net) => sum + net, 0),
        6,
      );
      expect(rooms.reduce((sum, room) => sum + room, 0)).toBeCloseTo(whole ?? 0, 6);
    }
  });
});

describe('what is ordered otherwise', () => {
  const floor = (insulationMm: number, over: Partial<PlanFile> = {}) =>
    hallAndStore({ ...jointAt(6000), buildUp: { insulationMm, adhesiveMm: 5, coveringMm: 10 }, ...over });
  const told = (before: ReturnType<typeof hallAndStore>, now: ReturnType<typeof hallAndStore>) =>
    comparisonOf(before, now).orders.map((line) => [line.item, line.before?.spec ?? null, line.now?.spec ?? null]);

  // by hand: 71.6 m2 of rooms and 0.09 m2 of doorway; strip of 30 + 65 + 5 + 10 mm and what is trimmed, and 10 mm more of it
  it('is told in one line where only the thickness of the insulation is another, net before and now', () => {
    const trimMm = orderStarts.stripTrimMm.value;
    const comparison = comparisonOf(floor(30), floor(40));
    expect(told(floor(30), floor(40))).toEqual([
      ['Edge strip', `${110 + trimMm} mm high, 10 mm thick`, `${120 + trimMm} mm high, 10 mm thick`],
      ['Insulation', '30 mm', '40 mm'],
    ]);
    const row = compareOrderTable(comparison).rows.find(([item]) => item === 'Insulation');
    expect(row?.slice(0, 6)).toEqual(['Insulation', '30 mm', '40 mm', 'm\u00b2', 71.69, 71.69]);
    expect(comparison.counts.orders).toBe(2);
  });

  it('is told in one line of other dimensions too: width of profile, of sealant and of strip, thickness of screed', () => {
    const profile = told(floor(30), floor(30, { jointProfile: { widthMm: 12 } }));
    expect(profile.map(([, was, is]) => [was?.slice(0, 10), is?.slice(0, 10)])).toEqual([
      ['10 mm wide', '12 mm wide'],
      ['10 mm wide', '12 mm wide'],
    ]);
    expect(told(floor(30), floor(30, { screed: { thicknessMm: 70 } })).map(([item]) => item)).toEqual([
      'Edge strip',
      'Joint profile, doorways',
      'Joint profile, joints drawn by hand',
      'Screed',
      'Screed, by weight',
    ]);
    for (const over of [{ sealant: { widthMm: 10 } }, { edgeStrip: { thicknessMm: 8 } }] as const) {
      const lines = told(floor(30), floor(30, over));
      expect(lines.length).toBeGreaterThan(0);
      expect(lines.filter(([, was, is]) => was === null || is === null)).toEqual([]);
    }
  });

  it('is told layer by layer from the slab up', () => {
    const layers = (upperMm: number) => floor(20 + upperMm, { order: { insulationLayersMm: [20, upperMm] } });
    expect(told(layers(30), layers(40)).filter(([item]) => item === 'Insulation')).toEqual([
      ['Insulation', '30 mm, layer 2 of 2 from the slab up', '40 mm, layer 2 of 2 from the slab up'],
    ]);
  });

  // by hand: hall of 60 m2 and store of 11.6 m2, each with half of the doorway's 0.09 m2 or all of it on one side
  it('keeps the line of each room where rooms have insulation of their own', () => {
    const own = (hallMm: number, storeMm: number) =>
      floor(0, {
        rooms: hallAndStore().file.rooms.map((room) => ({
          ...room,
          buildUp: { insulationMm: room.id === 'hall' ? hallMm : storeMm, adhesiveMm: 5, coveringMm: 10 },
        })),
      });
    const lines = comparisonOf(own(30, 50), own(40, 60)).orders.filter(({ item }) => item === 'Insulation');
    expect(lines.map(({ before, now }) => [before?.spec, now?.spec, Math.round(now?.net ?? 0)])).toEqual([
      ['30 mm', '40 mm', 60],
      ['50 mm', '60 mm', 12],
    ]);
  });

  it('is none where nothing of the kind was ordered, which the cells say', () => {
    const without = floor(30, { drawnJoints: [], doorways: [], ...wideLimits });
    const rows = compareOrderTable(comparisonOf(without, floor(30, wideLimits))).rows;
    const row = rows.find(([item]) => item === 'Joint profile, joints drawn by hand');
    expect([row?.[1], row?.[4], row?.[6], row?.[8]]).toEqual(['none', 'none', 'none', 'none']);
  });
});

const wideLimits = { screed: { limits: { areaM2: 200, lengthM: 30, aspect: 20 } } };

describe('what there is none of', () => {
  it('is called none, and not entered only what could be entered', () => {
    const before = hallAndStore();
    const now = hallAndStore({
      pipes: [{ id: 'p1', centre: [2000, 2000], diameterMm: 110 }],
      papers: { designer: 'A. Planner', basePoints: [{ name: 'P', at: [0, 0] }] },
      rooms: before.file.rooms.map((room) => (room.id === 'hall' ? { ...room, temperatures: { layingC: 12 } } : room)),
    });
    const cells = compareSettingsTable(comparisonOf(before, now)).rows.map((row) => [row[1], row[3]]);
    expect(cells).toEqual([
      ['Responsible designer', 'not entered'],
      ['Base points', 'none'],
      ['Temperature at laying, its own', 'as the plan'],
      ['Pipe through the screed, at', 'none'],
    ]);
  });

  it('is told of a room that is new, by its place and in its quantities', () => {
    const { rooms } = hallAndStore().file;
    const before = hallAndStore({ rooms: rooms.filter(({ id }) => id === 'hall'), doorways: [] });
    const comparison = comparisonOf(before, hallAndStore());
    expect(compareSettingsTable(comparison).rows).toContainEqual([
      'Store',
      'Room, from and to',
      'mm',
      'none',
      '0, 5100 to 4000, 8000',
    ]);
    const row = compareQuantitiesTable(comparison).rows.find(([room, words]) => room === 'Store' && words === 'Floor');
    expect(row?.[3]).toBe('none');
  });
});

describe('walls that moved', () => {
  it('are drawn where they were, and no others', () => {
    const higher = hallAndStore().file.rooms.map((room) =>
      room.id === 'store' ? rectangle('store', [0, 5100], [4000, 8300]) : room,
    );
    const { items } = comparisonDrawing(hallAndStore(), hallAndStore({ rooms: higher }));
    const lines = items.flatMap((item) =>
      item.shape === 'line' && item.style === 'revision-left' ? [item.points] : [],
    );
    expect(lines).toEqual([
      [
        [4000, 8000],
        [0, 8000],
      ],
    ]);
  });
});
