import { describe, expect, it } from 'vitest';
import type { Form, FormBlock } from '../../src/documents/form.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { recordForms } from '../../src/documents/records.ts';
import type { Table } from '../../src/documents/table.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { planOf } from './fixture.ts';
import { demoNames, demoText, paperSourceOf } from './paper-fixture.ts';
import { gridSource } from './pour-fixture.ts';

const dwelling = paperSourceOf(demoText('1-dwelling'));

function formOf(source: PaperSource, title: string): Form {
  const found = recordForms(source).find((form) => form.title === title);
  if (found === undefined) throw new Error(`no ${title}`);
  return found;
}

function blocksOf<Kind extends FormBlock['kind']>({ blocks }: Form, kind: Kind) {
  return blocks.filter((block): block is Extract<FormBlock, { kind: Kind }> => block.kind === kind);
}

function tableNamed(form: Form, name: string): Table {
  const found = blocksOf(form, 'table').find(({ table }) => table.name === name);
  if (found === undefined) throw new Error(`no table ${name}`);
  return found.table;
}

function column({ columns, rows }: Table, head: string) {
  const at = columns.findIndex((each) => each.head === head);
  return rows.map((row) => row[at]);
}

function wordsOf(form: Form): string {
  return JSON.stringify(form.blocks).replaceAll('\u00a0', ' ');
}

function withRecords(records: PlanFile['records'], file: Partial<PlanFile> = {}): PaperSource {
  return { ...dwelling, file: { ...dwelling.file, records, ...file } };
}

/** The dwelling with no other rooms heated than these. */
function heatedOnly(...ids: readonly string[]): PaperSource {
  const rooms = dwelling.plan.rooms.map((room) => ({ ...room, heated: ids.includes(room.id) }));
  return { ...dwelling, plan: { ...dwelling.plan, rooms } };
}

describe('the first-heating record', () => {
  const form = formOf(withRecords({ laidOn: '2027-03-01', highestSupplyC: 38 }), 'First-heating record');

  it('has a row for each of the seven days with its date and wanted supply, and room for readings', () => {
    // 21 days cement (EN 1264-4, restated), then 3 days and 4 (from memory)
    const table = tableNamed(form, 'first-heating');
    expect(column(table, 'Day after laying')).toEqual([21, 22, 23, 24, 25, 26, 27]);
    expect(column(table, 'Date')).toEqual(['22', '23', '24', '25', '26', '27', '28'].map((day) => `2027-03-${day}`));
    expect(column(table, 'Wanted supply').map((text) => String(text).replace('\u00a0', ' '))).toEqual([
      ...Array(3).fill('20 to 25 \u00b0C'),
      ...Array(4).fill('38 \u00b0C'),
    ]);
    expect(table.columns.filter(({ toFill }) => toFill).map(({ head }) => head)).toEqual([
      'Supply',
      'Return',
      'Room',
      'Screed at points',
      'Initials',
    ]);
  });

  it('leaves the dates to be written where no laying date is entered', () => {
    const table = tableNamed(formOf(dwelling, 'First-heating record'), 'first-heating');
    expect(table.columns.find(({ head }) => head === 'Date')?.toFill).toBe(true);
  });

  it('says when not to start', () => {
    const words = wordsOf(form);
    for (const ban of [
      'younger than 21 days',
      'pressure test is not signed',
      'open cracks',
      'bridged',
      'not ventilated',
    ])
      expect(words).toContain(ban);
  });

  it('never gives a day for covering', () => {
    expect(wordsOf(form)).toContain('No date releases the floor for covering');
    expect(wordsOf(form)).toContain('That is no release');
  });

  it('is signed', () => {
    expect(blocksOf(form, 'signatures').flatMap(({ parties }) => parties)).toContain('Heating');
  });

  it('is left out with the pressure test where no room is heated', () => {
    expect(recordForms(heatedOnly()).map(({ title }) => title)).toEqual([
      'Check list before the pour',
      'Drying and dryness record',
      'Check list before the covering',
    ]);
  });
});

describe('the dryness record', () => {
  it.each([
    // EN 1264-4:2021 as restated in trade literature
    ['CT-C25-F4', '1.8 CM-%'],
    ['CAF-C25-F5', '0.5 CM-%'],
  ] as const)('of %s has the limit of %s and says that no date releases', (screedClass, limit) => {
    const { screed } = dwelling.plan;
    const source = { ...dwelling, plan: { ...dwelling.plan, screed: { ...screed, class: screedClass } } };
    const words = wordsOf(formOf(source, 'Drying and dryness record'));
    expect(words).toContain(`at most ${limit}`);
    expect(words).toContain('No date releases');
  });

  it('names each marked point with its room, and the rooms without any', () => {
    // the second corner of the plan file's rooms: living is 5.2 m wide at the top, the hall begins at 5.4 m
    const form = formOf(
      withRecords({ testPoints: [{ at: [2000, 9000] }, { name: 'By the door', at: [7000, 4000] }] }),
      'Drying and dryness record',
    );
    const table = tableNamed(form, 'dryness');
    expect(column(table, 'Point').slice(0, 2)).toEqual(['1', 'By the door']);
    expect(column(table, 'Room').slice(0, 2)).toEqual(['Living, dining and kitchen', 'Entrance hall']);
    expect(table.rows.length).toBeGreaterThan(2);
    const words = wordsOf(form);
    expect(words).toMatch(/No point is marked in [^.]*Bathroom/);
    expect(words).not.toMatch(/No point is marked in [^.]*Entrance hall/);
  });

  it('names neither pipes nor a first heating where no room is heated', () => {
    const points = { ...heatedOnly(), file: withRecords({ testPoints: [{ at: [2000, 9000] }] }).file };
    for (const source of [heatedOnly(), points]) {
      const [about] = blocksOf(formOf(source, 'Drying and dryness record'), 'text').map(({ lines }) => lines.join(' '));
      const words = wordsOf(formOf(source, 'Drying and dryness record'));
      expect(words).not.toMatch(/pipes|first heating|heating zone/u);
      expect(about).toContain('No date releases the floor for covering: only a dryness test');
    }
  });

  it('says to mark points where none is marked, at least one for each heating zone and room', () => {
    const form = formOf(dwelling, 'Drying and dryness record');
    expect(wordsOf(form)).toContain('No test point is marked: mark them on the plan');
    const heated = dwelling.plan.rooms.filter(({ heated: isHeated }) => isHeated);
    expect(column(tableNamed(form, 'dryness'), 'Room').filter((room) => room !== null)).toHaveLength(heated.length);
  });
});

describe('the check list before the pour', () => {
  const form = formOf(dwelling, 'Check list before the pour');

  it('names each place where the screed is held to the slab, with its room', () => {
    const items = blocksOf(form, 'checks').flatMap((block) => block.items);
    expect(items.some((item) => item.includes('Living') && item.includes('Cooking island'))).toBe(true);
    expect(wordsOf(formOf(gridSource(2, 1), 'Check list before the pour'))).not.toContain('held to the slab');
  });

  it('lists the joint in every doorway', () => {
    const table = tableNamed(form, 'doorway-checks');
    const doorways = dwelling.analysis.joints.filter(({ kind }) => kind === 'doorway');
    expect(column(table, 'Joint')).toEqual(doorways.map(({ id }) => id));
    expect(new Set(column(table, 'Line'))).toContain('under the leaf');
  });

  it('has strip, sleeves, profiles, pipes, mesh, insulation and heights, and three signatures', () => {
    const words = wordsOf(form);
    // sleeve 300 mm: EN 1264-4 as restated; overlap of strip 100 mm: common practice
    for (const part of [
      'Edge strip stands everywhere',
      '300 mm',
      '100 mm',
      'plumb over the full depth',
      'Pipes are fixed',
      'Mesh is cut',
      'insulation is closed',
      'Heights are checked',
    ])
      expect(words).toContain(part);
    expect(blocksOf(form, 'signatures').flatMap(({ parties }) => parties)).toEqual(['Heating', 'Screed', 'Tiling']);
  });

  it('asks nothing of heating pipes, and no signature of the heating, where no room is heated', () => {
    const cold = formOf(heatedOnly(), 'Check list before the pour');
    const heads = blocksOf(cold, 'head').map(({ text }) => text);
    const items = blocksOf(cold, 'checks').flatMap((block) => block.items);
    expect([...heads, ...items].filter((words) => /heat|sleeve|pipe clip|pressure/iu.test(words))).toEqual([]);
    // the pipes that are left run through the screed: the strip stands round them
    expect(items.filter((words) => words.includes('pipe'))).toEqual([
      expect.stringMatching(/^Edge strip stands everywhere/u),
    ]);
    expect(blocksOf(cold, 'signatures').flatMap(({ parties }) => parties)).toEqual(['Screed', 'Tiling']);
    expect(items).toContain('The test points for dryness are marked');
  });

  it('asks all that a heated floor asks where a single room is heated', () => {
    const [room] = dwelling.plan.rooms;
    const words = blocksOf(formOf(heatedOnly(room?.id ?? ''), 'Check list before the pour'), 'checks');
    expect(words.flatMap(({ items }) => items)).toEqual(blocksOf(form, 'checks').flatMap(({ items }) => items));
  });
});

it('the check list after the pour keeps the strip until the covering is grouted and the joints one over the other', () => {
  const words = wordsOf(formOf(dwelling, 'Check list before the covering'));
  expect(words).toContain('trimmed only after the covering is grouted');
  expect(words).toContain('exactly over its joint in the screed');
});

it('the pressure test says no pressure of its own, and has a row for each heated room', () => {
  const form = formOf(dwelling, 'Pressure test and balancing record');
  expect(wordsOf(form)).not.toMatch(/\d bar/);
  const rooms = column(tableNamed(form, 'balancing'), 'Room').filter((room) => room !== null);
  expect(rooms).toHaveLength(dwelling.plan.rooms.filter(({ heated }) => heated).length);
});

it.each(demoNames)('the records of %s have names that tables can have, and rows as wide as their heads', (name) => {
  for (const form of recordForms(paperSourceOf(demoText(name))))
    for (const { table } of blocksOf(form, 'table')) {
      expect(table.name).toMatch(/^[a-z][a-z-]{0,30}$/);
      for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
    }
});

it('names that are long or hostile leave every line of the records in one piece', () => {
  const name = 'A\r\nB\u202e;=1+1\u0000';
  const plan = planOf({ name });
  const source = gridSource(2, 1, {
    records: { dataSheet: name, testPoints: [{ name, at: [100, 100] }] },
    papers: { project: name },
  });
  const named = {
    ...source,
    plan: { ...source.plan, name, rooms: plan.rooms.slice(0, 1).map((room) => ({ ...room, name })) },
  };
  for (const form of recordForms(named)) {
    const texts: string[] = [];
    JSON.stringify([form.title, form.subject, form.blocks], (_, value: unknown) => {
      if (typeof value === 'string') texts.push(value);
      return value;
    });
    for (const text of texts) expect(text).not.toMatch(/[\p{Cc}\u202e]/u);
  }
});
