import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { doorwayForm, doorwayPages, doorwaysTable } from '../../src/documents/doorway-sheet.ts';
import { registerTable } from '../../src/documents/register.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import type { Cell, Table } from '../../src/documents/table.ts';
import { jointsTable } from '../../src/documents/tables.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { pagePaths, pageTexts, textsOffPage, textsOverText } from './page-text-check.ts';
import { demoText, paperSourceOf } from './paper-fixture.ts';

type Place = readonly [number, number];
const identity = (place: Place): Place => place;
const turned = ([x, y]: Place): Place => [20_000 - y, x];

interface Opening {
  /** Upper and lower face of the wall between the rooms. */
  readonly facesMm: Place;
  readonly lineMm: number;
  readonly leaf?: boolean;
  readonly names?: readonly [string, string];
}

/** Two rooms, one above the other, with a doorway of 900 mm between them. */
function rooms(
  { facesMm: [upper, lower], lineMm, leaf = true, names = ['Hall', 'Kitchen'] }: Opening,
  turn = identity,
) {
  const box = (top: number, bottom: number): readonly Place[] =>
    (
      [
        [0, top],
        [5000, top],
        [5000, bottom],
        [0, bottom],
      ] as const
    ).map(turn);
  const plan: PlanFile = {
    format: 'screed-bays/plan',
    version: 1,
    name: 'Two rooms',
    rooms: [
      { id: 'r1', name: names[0], outline: box(0, upper) },
      { id: 'r2', name: names[1], outline: box(lower, lower + 4000) },
    ],
    doorways: [{ id: 'd1', line: [turn([2000, lineMm]), turn([2900, lineMm])], wallMm: lower - upper, leaf }],
  };
  return paperSourceOf(JSON.stringify(plan));
}

function cells(table: Table, row = 0): Readonly<Record<string, Cell>> {
  return Object.fromEntries(table.columns.map(({ head }, i) => [head, table.rows[row]?.[i] ?? null]));
}

describe('the doorway sheet', () => {
  // by hand: faces at 4000 and 4100 mm, the line at 4040: 40 mm from the hall, 60 mm from the kitchen
  it.each([
    ['as drawn', identity],
    ['turned', turned],
  ] as const)('tells how far the joint lies from both faces of a wall of 100 mm: %s', (_, turn) => {
    const row = cells(doorwaysTable(rooms({ facesMm: [4000, 4100], lineMm: 4040 }, turn)));
    const isHallFirst = row.Doorway === 'Door Hall \u2013 Kitchen';
    expect(isHallFirst || row.Doorway === 'Door Kitchen \u2013 Hall').toBe(true);
    expect([row['To the first face'], row['To the second face']].map(Number)).toEqual(
      isHallFirst ? [40, 60] : [60, 40],
    );
    expect(row).toMatchObject({
      Id: 'd1',
      Leaf: 'nearer to Hall',
      'Clear width': 900,
      'Wall depth': 100,
      'Under the leaf': 'yes',
      Remarks: null,
    });
  });

  it('says that a leaf stands in the middle, and that there is none', () => {
    const leaf = (over: Partial<Opening>) =>
      cells(doorwaysTable(rooms({ facesMm: [4000, 4100], lineMm: 4050, ...over }))).Leaf;
    expect(leaf({})).toBe('in the middle of the wall');
    expect(leaf({ leaf: false })).toBe('none');
  });

  // by hand: from 4000 to 4500 mm, the leaf at 4040: the floor of the opening beyond it is 460 mm deep, more than the 300 mm that may stay
  // (trade practice); a second joint stands at the face of the kitchen, 500 and 0 mm from the faces
  it('tells of the second joint at a deep opening', () => {
    const table = doorwaysTable(rooms({ facesMm: [4000, 4500], lineMm: 4040 }));
    expect(table.rows).toHaveLength(2);
    const [own, second] = [cells(table, 0), cells(table, 1)];
    const from = (row: typeof own) =>
      [row['To the first face'], row['To the second face']].map((mm) => Math.round(Number(mm)));
    expect([from(own).sort((a, b) => a - b), from(second).sort((a, b) => a - b)]).toEqual([
      [40, 460],
      [0, 500],
    ]);
    expect(own['Under the leaf']).toBe('yes');
    expect(second['Under the leaf']).toBe('no, 460 mm off it');
    expect(second.Remarks).toContain('second joint, at the face of the room');
  });

  it('lists a doorway without a joint with the reason', () => {
    const { file } = rooms({ facesMm: [4000, 4100], lineMm: 4040 });
    const row = cells(doorwaysTable(paperSourceOf(JSON.stringify({ ...file, rooms: file.rooms.slice(0, 1) }))));
    expect(row).toMatchObject({
      Joint: 'none',
      Doorway: 'Door out of Hall',
      'To the first face': null,
    });
    expect(row.Remarks).toBe('It meets one room only, Hall.');
  });

  it('names doorways by the rooms that they join, and tells two that join the same rooms apart by their ids', () => {
    const { file } = rooms({ facesMm: [4000, 4100], lineMm: 4050, leaf: false });
    const doorways: PlanFile['doorways'] = [
      ...(file.doorways ?? []),
      { id: 'd2', line: [[500, 4050], [1400, 4050]], wallMm: 100 }, // biome-ignore format: a line a doorway
      { id: 'd3', line: [[3500, 4050], [4400, 4050]], wallMm: 100 }, // biome-ignore format: a line a doorway
    ];
    const source = paperSourceOf(JSON.stringify({ ...file, doorways }));
    const list = doorwaysTable(source);
    expect(list.rows.map((_, i) => cells(list, i).Doorway)).toEqual([
      'Opening Hall \u2013 Kitchen',
      'Door Hall \u2013 Kitchen (d2)',
      'Door Hall \u2013 Kitchen (d3)',
    ]);
    const why = (table: Table) => table.rows.map((_, i) => cells(table, i).Why);
    for (const table of [registerTable(source), jointsTable(source)])
      expect(why(table)).toEqual(
        expect.arrayContaining(['opening Hall \u2013 Kitchen', 'door Hall \u2013 Kitchen (d2)']),
      );
  });

  it('names a joint of the building that stands for the doorway', () => {
    const { file } = rooms({ facesMm: [4000, 4120], lineMm: 4060 });
    const structuralJoints: PlanFile['structuralJoints'] = [
      {
        id: 's1',
        line: [
          [0, 4060],
          [5000, 4060],
        ],
        widthMm: 20,
      },
    ];
    const row = cells(doorwaysTable(paperSourceOf(JSON.stringify({ ...file, structuralJoints }))));
    expect(row).toMatchObject({ 'To the first face': 60, 'Width of the joint': 20 });
    expect(row.Remarks).toContain('Structural joint carried through: it stands for the doorway');
  });

  it('has columns to fill on site, in the list and on the form', () => {
    const source = rooms({ facesMm: [4000, 4100], lineMm: 4040 });
    const toFill = ({ columns }: Table) => columns.flatMap(({ head, toFill: isToFill }) => (isToFill ? [head] : []));
    expect(toFill(doorwaysTable(source))).toEqual(['Measured on site', 'Checked']);
    const tables = doorwayForm(source).blocks.flatMap((block) => (block.kind === 'table' ? [block.table] : []));
    expect(tables.flatMap(toFill)).toEqual(['Measured on site', 'Checked']);
  });
});

describe('sketches of doorways', () => {
  // by hand, at 1 : 10: 900 mm are 90 mm, a wall of 100 mm is 10 mm, and the joint lies 4 mm from one face and 6 mm from the other
  it('are true to scale', () => {
    const [page, ...others] = doorwayPages(rooms({ facesMm: [4000, 4100], lineMm: 4040 }));
    expect(others).toEqual([]);
    if (page === undefined) throw new Error('no page');
    expect(page.scale).toBe(10);
    const paths = pagePaths(page);
    const walls = paths.filter(({ closed, height }) => closed && Math.abs(height - 10) < 1e-9);
    expect(walls).toHaveLength(2);
    const [left, right] = [...walls].sort((a, b) => a.left - b.left);
    expect((right?.left ?? 0) - (left?.left ?? 0) - (left?.width ?? 0)).toBeCloseTo(90, 9);
    const across = paths.filter(({ closed, width, height }) => !closed && height === 0 && Math.abs(width - 90) < 1e-9);
    const heights = new Set(across.map(({ top }) => Math.round((top - (left?.top ?? 0)) * 1000) / 1000));
    expect(heights.has(4) || heights.has(6)).toBe(true);
    const texts = pageTexts(page).map(({ text }) => text.replaceAll('\u00a0', ' '));
    for (const words of ['900 mm clear', '40 mm from Hall', '60 mm from Kitchen', 'Scale 1 : 10'])
      expect(texts).toContain(words);
  });

  const cases = readdirSync(new URL('../cases/', import.meta.url)).filter((name) => name.endsWith('.json'));
  const casePlan = (name: string): string =>
    JSON.stringify(
      (JSON.parse(readFileSync(new URL(`../cases/${name}`, import.meta.url), 'utf8')) as { plan: unknown }).plan,
    );

  it.each([
    ...(['1-dwelling', '2-public-library'] as const).map((name) => [name, () => demoText(name)] as const),
    ['all cases with doorways', null] as const,
  ])('have no text over text and none off the page: %s', (_, text) => {
    const plans = text === null ? cases.filter((name) => name.startsWith('door')).map(casePlan) : [text()];
    for (const plan of plans) {
      for (const page of doorwayPages(paperSourceOf(plan))) {
        expect(textsOverText(page)).toEqual([]);
        expect(textsOffPage(page)).toEqual([]);
      }
    }
  });

  it.each(['1-dwelling', '2-public-library'] as const)('cut no name of a room that a few lines hold: %s', (name) => {
    const texts = doorwayPages(paperSourceOf(demoText(name))).flatMap(pageTexts);
    expect(texts.map(({ text }) => text).filter((text) => text.includes('\u2026'))).toEqual([]);
  });

  it('give a long name the lines that it takes, beside the wall and in the opening', () => {
    const names = [
      'Living, dining and kitchen with the winter garden',
      'Reading room of the children on the court',
    ] as const;
    const pages = doorwayPages(rooms({ facesMm: [4000, 4100], lineMm: 4040, names }));
    const words = pages.flatMap(pageTexts).map(({ text }) => text.replaceAll('\u00a0', ' '));
    expect(words.join(' ')).toContain(`40 mm from ${names[0]}`);
    expect(words.join(' ')).toContain(`60 mm from ${names[1]}`);
    expect(words.filter((text) => text.includes('\u2026'))).toEqual([]);
    for (const page of pages) expect([...textsOverText(page), ...textsOffPage(page)]).toEqual([]);
  });

  it('stay in their room with names that are hostile, and are the same bytes each time', () => {
    const names = ['=SUM(A1)<b>\u202e\u0007"', 'x'.repeat(10_000)] as const;
    const source = rooms({ facesMm: [4000, 4100], lineMm: 4040, names });
    const pages = doorwayPages(source);
    for (const page of pages) {
      expect(textsOverText(page)).toEqual([]);
      expect(textsOffPage(page)).toEqual([]);
      expect(pageSvg(page)).not.toContain('<b>');
    }
    expect(doorwayPages(source).map((page) => pageSvg(page))).toEqual(pages.map((page) => pageSvg(page)));
  });
});

// sealant is counted where a joint comes up through stone or ceramic on either side: decision 0006
it('the doorway sheet gives sealant to the joints that the order gives it to, and to no other', () => {
  const source = paperSourceOf(demoText('1-dwelling'));
  const hard = new Set(source.plan.rooms.flatMap(({ id, covering }) => (covering === 'stone-or-ceramic' ? [id] : [])));
  const hardBays = new Set(
    source.analysis.bays.flatMap(({ id, rooms: own }) => (own.some((room) => hard.has(room)) ? [id] : [])),
  );
  const { columns, rows: told } = doorwaysTable(source);
  const at = (head: string) => columns.findIndex((column) => column.head === head);
  const isTold = new Map(told.map((row) => [row[at('Joint')], !String(row[at('Sealant')]).startsWith('none')]));
  const joints = source.analysis.joints.filter(({ kind }) => kind === 'doorway');
  expect(joints.some(({ bays }) => !bays.some((bay) => hardBays.has(bay)))).toBe(true);
  for (const { id, bays } of joints) expect(isTold.get(id), id).toBe(bays.some((bay) => hardBays.has(bay)));
});
