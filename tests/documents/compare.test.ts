import { describe, expect, it } from 'vitest';
import { comparisonOf } from '../../src/documents/compare.ts';
import { comparisonDocuments } from '../../src/documents/compare-documents.ts';
import { comparisonDrawing } from '../../src/documents/compare-drawing.ts';
import { comparisonForm } from '../../src/documents/compare-form.ts';
import {
  compareJointsTable,
  compareOrderTable,
  compareQuantitiesTable,
  compareSettingsTable,
  comparisonTables,
} from '../../src/documents/compare-tables.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import type { Point } from '../../src/geometry/point.ts';
import { jointsKept } from '../../src/plan/edits/joints.ts';
import { orderStarts } from '../../src/plan/papers.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { jointAt, rectangle } from './compare-fixture.ts';
import { demoNames, demoText, hallAndStore, paperSourceOf, shippedFonts } from './paper-fixture.ts';

const became = (changes: readonly { readonly what: string }[]) => changes.map(({ what }) => what).sort();

describe('a plan and itself', () => {
  it.each(demoNames)('has no change: %s', (name) => {
    const source = paperSourceOf(demoText(name));
    const { joints, bays, settings, findings, quantities, notes } = comparisonOf(source, source);
    expect(notes).toEqual(['No difference: the two plans are the same.']);
    expect(joints).toHaveLength(source.analysis.joints.length);
    expect(new Set([...became(joints), ...became(bays)])).toEqual(new Set(['same']));
    expect(settings).toEqual([]);
    expect(findings).toEqual({ came: [], went: [] });
    expect(quantities.every(({ before, now }) => before === now)).toBe(true);
  });
});

describe('a joint', () => {
  // by hand: from 6000 to 6300 mm is 300 mm; the bay on its left grows by 0.3 x 5 = 1.5 m2
  it('that is dragged by 300 mm has moved by 300 mm, and none has come or gone', () => {
    const { joints, bays } = comparisonOf(hallAndStore(jointAt(6000)), hallAndStore(jointAt(6300)));
    const moved = joints.filter(({ what }) => what === 'moved');
    expect(moved).toHaveLength(1);
    expect(moved[0]?.movedMm).toBeCloseTo(300, 6);
    expect(joints.filter(({ what }) => what === 'appeared' || what === 'went')).toEqual([]);
    const areas = bays.flatMap(({ before, now }) => (before && now ? [now.areaM2 - before.areaM2] : []));
    expect(Math.max(...areas)).toBeCloseTo(1.5, 6);
    expect(Math.min(...areas)).toBeCloseTo(-1.5, 6);
  });

  // the split puts the joint of a hall of 12 m at 6 m or thereabouts: kept and dragged it is drawn by hand, 300 mm from where it was
  it('that the split found and a hand has dragged is one that moved, and says that it was found', () => {
    const before = hallAndStore();
    const found = before.analysis.joints.find(({ kind }) => kind === 'field');
    const kept = jointsKept(before.file, before.analysis.joints, [found?.id ?? '']).file;
    const dragged = kept.drawnJoints?.map(({ id, line }) => ({
      id,
      line: line.map(([x, y]) => [x + 300, y] as const),
    }));
    const comparison = comparisonOf(before, hallAndStore({ drawnJoints: dragged }));
    expect(became(comparison.joints).filter((what) => what === 'appeared' || what === 'went')).toEqual([]);
    const moved = comparison.joints.filter(({ what }) => what === 'moved');
    expect(moved.map(({ movedMm }) => Math.round(movedMm))).toEqual([300]);
    const [row] = compareJointsTable(comparison).rows;
    expect(row?.[0]).toBe('moved');
    expect(row?.at(-1)).toContain('kind was: Intermediate movement joint');
  });

  it('that is drawn anew has come, and one that is taken out is gone', () => {
    const wide = { screed: { limits: { areaM2: 100, lengthM: 20, aspect: 5 } } };
    const [without, withOne] = [hallAndStore(wide), hallAndStore({ ...wide, ...jointAt(6000) })];
    const came = comparisonOf(without, withOne);
    expect(came.joints.filter(({ what }) => what === 'appeared').map(({ now }) => now?.kind)).toEqual(['drawn']);
    const went = comparisonOf(withOne, without);
    expect(went.joints.filter(({ what }) => what === 'went').map(({ before }) => before?.kind)).toEqual(['drawn']);
  });

  // by hand: along its wall by 200 mm
  it('in a doorway goes where the doorway goes', () => {
    const doorways: PlanFile['doorways'] = [
      {
        id: 'd1',
        line: [
          [1200, 5050],
          [2100, 5050],
        ],
        wallMm: 100,
      },
    ];
    const { joints } = comparisonOf(hallAndStore(), hallAndStore({ doorways }));
    const doorway = joints.find(({ now }) => now?.kind === 'doorway');
    expect(doorway?.what).toBe('moved');
    expect(doorway?.movedMm).toBeCloseTo(200, 6);
  });

  it('is marked in the drawing of the revision where it moved, with the place where it was', () => {
    const { items } = comparisonDrawing(hallAndStore(jointAt(6000)), hallAndStore(jointAt(6300)));
    const lines = items.flatMap((item) => (item.shape === 'line' ? [item] : []));
    const places = (style: string) => lines.filter((line) => line.style === style).map(({ points }) => points[0]?.[0]);
    expect(places('revision-moved')).toEqual([6300]);
    expect(places('revision-gone')).toEqual([6000]);
    expect(places('revision-new')).toEqual([]);
    const texts = items.flatMap((item) => (item.shape === 'label' ? item.forms.flat().map(({ text }) => text) : []));
    expect(texts.some((text) => /moved 300\u00a0mm/u.test(text))).toBe(true);
  });
});

describe('the other way round', () => {
  const versions = [
    ['a joint that is dragged', hallAndStore(jointAt(6000)), hallAndStore(jointAt(6300))],
    ['a joint more', hallAndStore(), hallAndStore({ ...jointAt(3000), screed: { thicknessMm: 70 } })],
    [
      'a demo with another rule set',
      paperSourceOf(demoText('2-public-library')),
      paperSourceOf(demoText('2-public-library'), { ruleSet: 'tile-us-exposed' }),
    ],
  ] as const;

  it.each(versions)('what came is what went and every sign is the other: %s', (_, before, now) => {
    const [there, back] = [comparisonOf(before, now), comparisonOf(now, before)];
    const other = (what: string) => (what === 'appeared' ? 'went' : what === 'went' ? 'appeared' : what);
    for (const list of ['joints', 'bays'] as const)
      expect(became(back[list])).toEqual(there[list].map(({ what }) => other(what)).sort());
    const pairs = (changes: typeof there.joints, swap: boolean) =>
      changes
        .map((change) =>
          [
            swap ? change.now?.id : change.before?.id,
            swap ? change.before?.id : change.now?.id,
            change.movedMm.toFixed(6),
          ].join(' '),
        )
        .sort();
    expect(pairs(back.joints, true)).toEqual(pairs(there.joints, false));
    const change = (table: ReturnType<typeof compareQuantitiesTable>) =>
      table.rows.map((row) => [row[0], row[1], row[2], Number(row[5])] as const);
    const signed = change(compareQuantitiesTable(there)).map(([room, words, unit, value]) => [
      room,
      words,
      unit,
      0 - value,
    ]);
    expect(change(compareQuantitiesTable(back))).toEqual(signed);
    expect(back.settings).toEqual(there.settings.map((each) => ({ ...each, before: each.now, now: each.before })));
    expect(back.findings).toEqual({ came: there.findings.went, went: there.findings.came });
  });
});

describe('what stays', () => {
  it.each(demoNames)('a room under another id is the same room, with the same joints and bays: %s', (name) => {
    const before = paperSourceOf(demoText(name));
    const [first] = before.file.rooms;
    const id = first?.id ?? '';
    const renamed = (own: string) => (own === id ? 'another-id' : own);
    const rooms = before.file.rooms.map((room) => ({ ...room, id: renamed(room.id) }));
    const tileFields = before.file.tileFields?.map((field) => ({ ...field, rooms: field.rooms.map(renamed) }));
    const now = paperSourceOf(JSON.stringify({ ...before.file, rooms, ...(tileFields && { tileFields }) }));
    const { joints, bays, settings, findings } = comparisonOf(before, now);
    expect(new Set([...became(joints), ...became(bays)])).toEqual(new Set(['same']));
    expect(settings).toEqual([]);
    expect(findings).toEqual({ came: [], went: [] });
  });

  // by hand: 5 mm more of screed is 5 / thickness more of it
  it.each(demoNames)('with 5 mm more of screed no joint and no bay changes, only settings and screed: %s', (name) => {
    const before = paperSourceOf(demoText(name));
    const thicknessMm = before.plan.screed.thicknessMm + 5;
    const now = paperSourceOf(demoText(name), { screed: { ...before.file.screed, thicknessMm } });
    const comparison = comparisonOf(before, now);
    expect(new Set([...became(comparison.joints), ...became(comparison.bays)])).toEqual(new Set(['same']));
    expect(compareSettingsTable(comparison).rows).toEqual([
      ['Plan', 'Thickness of the screed', 'mm', thicknessMm - 5, thicknessMm],
    ]);
    const changed = comparison.quantities.filter(({ before: was, now: is }) => was !== is);
    expect(new Set(changed.map(({ words }) => words))).toEqual(new Set(['Screed']));
    // shown figures are off by less than a last digit each
    const times = thicknessMm / (thicknessMm - 5);
    for (const { before: was, now: is, decimals } of changed)
      expect(Math.abs((is ?? 0) - (was ?? 0) * times)).toBeLessThan((1 + times) * 10 ** -decimals);
  });

  it('settings of a doorway are told by what it joins, as on the other papers', () => {
    const rooms = [rectangle('Hall', [0, 0], [4000, 3000]), rectangle('Bath', [4100, 0], [7000, 3000])];
    const walled = (wallMm: number) => {
      const line: [Point, Point] = [
        [4050, 1000],
        [4050, 1900],
      ];
      return hallAndStore({ rooms, doorways: [{ id: 'd1', line, wallMm, leaf: true }], drawnJoints: [] });
    };
    // the wall stands from 4000 to 4100 mm
    const [change, ...others] = comparisonOf(walled(100), walled(120)).settings;
    expect(others).toEqual([]);
    expect(change).toMatchObject({ of: 'Door Hall \u2013 Bath', words: 'Depth of the opening', before: 100, now: 120 });
  });

  it('settings are told in words, and what is not entered is called that', () => {
    const now = hallAndStore({ temperatures: { highestC: 50 }, buildUp: { insulationMm: 40 } });
    const rows = compareSettingsTable(comparisonOf(hallAndStore(), now)).rows;
    expect(rows).toContainEqual(['Plan', 'Highest temperature', '\u00b0C', 45, 50]);
    expect(rows).toContainEqual(['Plan', 'Insulation', 'mm', 'not entered', 40]);
  });
});

describe('papers of a revision', () => {
  it('have tables whose rows are as long as their heads, and a form that has them all', () => {
    const comparison = comparisonOf(
      hallAndStore(jointAt(6000)),
      hallAndStore({ ...jointAt(6300), temperatures: { highestC: 50 } }),
    );
    const tables = comparisonTables(comparison);
    for (const { rows, columns, refs, name } of tables) {
      expect(name).toMatch(/^[a-z-]{1,31}$/u);
      for (const row of rows) expect(row).toHaveLength(columns.length);
      expect(refs?.length ?? rows.length).toBe(rows.length);
    }
    const titles = comparisonForm(comparison).blocks.flatMap((block) => (block.kind === 'head' ? [block.text] : []));
    expect(titles).toContain('Joints: what changed');
    expect(titles).toContain('Settings that changed');
  });

  it('are the same bytes each time, and hold hostile names as text', async () => {
    const name = '=1+1<script>\u202e"\u0007';
    const { rooms } = hallAndStore().file;
    const versions = [
      hallAndStore({ name }),
      hallAndStore({ ...jointAt(3000), name, rooms: rooms.map((room) => ({ ...room, name })) }),
    ] as const;
    const made = async () => {
      const documents = comparisonDocuments(...versions, shippedFonts);
      return (await Promise.all(documents.map(({ make }) => make()))).flat();
    };
    const files = await made();
    expect(await made()).toEqual(files);
    expect(files.map((file) => file.name)).toEqual(
      expect.arrayContaining(['compare.svg', 'compare-joints.csv', 'compare-quantities.csv', 'compare-settings.csv']),
    );
    for (const { name: file, content } of files) {
      if (typeof content !== 'string') continue;
      if (file.endsWith('.svg')) expect(content).not.toContain('<script');
      else expect(content.split(/[\r\n,]/u).filter((cell) => cell.startsWith('='))).toEqual([]);
    }
  });
});

describe('what papers, orders, pour and records are made with', () => {
  it('is told in mm where it is a place on the plan, as all places are entered', () => {
    const rows = comparisonOf(
      hallAndStore(),
      hallAndStore({
        papers: {
          basePoints: [{ name: 'P1', at: [0, 50] }],
          gridLines: [{ name: 'A', from: [0, -500], to: [0, 8500] }],
        },
        pour: { access: [2000, 8000] },
        records: { testPoints: [{ name: '1', at: [3000, 3000] }] },
      }),
    ).settings;
    expect(rows.map(({ words, unit }) => [words, unit])).toEqual([
      ['Base points', 'mm'],
      ['Grid lines', 'mm'],
      ['Access for the pour', 'mm'],
      ['Test points', 'mm'],
    ]);
  });

  it('is told where it changed, each field by its words', () => {
    const before = hallAndStore({
      papers: { basePoints: [{ name: 'P1', at: [0, 0] }], status: 'for-comment' },
      records: { laidOn: '2027-03-01' },
    });
    const now = hallAndStore({
      papers: { basePoints: [{ name: 'P1', at: [0, 50] }], status: 'for-construction' },
      records: { laidOn: '2027-03-15' },
      order: { loadM3: 7 },
      pour: { mostM3PerDay: 9 },
    });
    const told = comparisonOf(before, now).settings.map(({ words, before: was, now: is }) => [words, was, is]);
    expect(told).toEqual([
      ['Status of the sheets', 'For comment', 'For construction'],
      ['Base points', 'P1 0, 0', 'P1 0, 50'],
      // a truck mixer's usual load goes before
      ['Load of screed', orderStarts.loadM3.value, 7],
      ['Most screed in a day', null, 9],
      ['Last bay laid on', '2027-03-01', '2027-03-15'],
    ]);
  });

  it('is told of things that came, went or lie elsewhere, by name and place', () => {
    const column = (x: number) => ({
      id: 'c1',
      outline: [
        [x, 1000],
        [x + 300, 1000],
        [x + 300, 1300],
        [x, 1300],
      ] as [number, number][],
    });
    const before = hallAndStore({
      columns: [column(4000)],
      pipes: [{ id: 'p1', centre: [2000, 2000], diameterMm: 110 }],
    });
    const now = hallAndStore({ columns: [column(5000)] });
    expect(
      comparisonOf(before, now).settings.map(({ of, words, before: was, now: is }) => [of, words, was, is]),
    ).toEqual([
      ['c1', 'Column, from and to', '4000, 1000 to 4300, 1300', '5000, 1000 to 5300, 1300'],
      ['p1', 'Pipe through the screed, at', '2000, 2000', null],
    ]);
  });

  it('changes what is ordered, line by line: three pipes through each joint in place of two take half as many sleeves again', () => {
    const [before, now] = [2, 3].map((sleevesPerJoint) =>
      hallAndStore({ order: { sleevesPerJoint, sleeveSpares: 0 } }),
    );
    if (before === undefined || now === undefined) throw new Error('two versions');
    const { orders } = comparisonOf(before, now);
    expect(orders.map(({ item }) => item)).toEqual(['Sleeves on heating pipes']);
    const [sleeves] = orders;
    expect(sleeves?.before?.gross).toBeGreaterThan(0);
    expect(sleeves?.now?.gross).toBe(1.5 * (sleeves?.before?.gross ?? 0));
    expect(compareOrderTable(comparisonOf(now, now)).rows).toEqual([]);
  });

  it('is told in percent and price by price, and not where the usual figure is entered', () => {
    const before = hallAndStore();
    const now = hallAndStore({
      order: {
        stripRollM: orderStarts.stripRollM.value,
        screedAllowance: 0.08,
        prices: { stripRoll: 12.5, tile: 3.456 },
      },
    });
    const [screed, ...prices] = comparisonOf(before, now).settings;
    expect([screed?.words, screed?.unit, screed?.now]).toEqual(['Screed lost', '%', 8]);
    expect(prices.map(({ words, before: was, now: is }) => [words, was, is])).toEqual([
      ['Price: a roll of edge strip', null, 12.5],
      ['Price: a tile', null, 3.456],
    ]);
  });

  it('has a price in the currency that is entered, and in none where the two versions have two or none', () => {
    const priced = (tile: number | undefined, currency?: string) =>
      hallAndStore({ order: { ...(tile && { prices: { tile } }), ...(currency && { currency }) } });
    const unit = (before: PaperSource, now: PaperSource) =>
      comparisonOf(before, now).settings.find(({ words }) => words === 'Price: a tile')?.unit;
    expect(unit(priced(3, 'EUR'), priced(4, 'EUR'))).toBe('EUR');
    expect(unit(priced(undefined), priced(4, 'EUR'))).toBe('EUR');
    expect(unit(priced(3), priced(4))).toBeNull();
    expect(unit(priced(3), priced(4, 'EUR'))).toBeNull();
    expect(unit(priced(3, 'EUR'), priced(4, 'CHF'))).toBeNull();
  });
});

describe('counts of a comparison', () => {
  it('are those of what it lists, and nought of a plan and itself', () => {
    const before = hallAndStore(jointAt(6000));
    const now = hallAndStore({ ...jointAt(6300), temperatures: { highestC: 50 }, screed: { thicknessMm: 70 } });
    const { counts, joints, settings } = comparisonOf(before, now);
    expect(counts.joints.moved).toBe(1);
    expect(Object.values(counts.joints).reduce((sum, count) => sum + count, 0)).toBe(joints.length);
    expect(counts.settings).toBe(settings.length);
    // by hand: only screed is more of, in m3 and in kg
    expect(counts.quantities).toBe(2);
    const none = comparisonOf(before, before).counts;
    expect([none.settings, none.quantities, none.findingsCame, none.findingsWent]).toEqual([0, 0, 0, 0]);
  });
});
