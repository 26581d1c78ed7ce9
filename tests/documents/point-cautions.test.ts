import { describe, expect, it } from 'vitest';
import { firstHeatingOf } from '../../src/documents/first-heating.ts';
import type { Form } from '../../src/documents/form.ts';
import type { Page } from '../../src/documents/page.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { pointCautions, pointCautionTexts } from '../../src/documents/point-cautions.ts';
import { pourForm, pourTable } from '../../src/documents/pour-papers.ts';
import { drynessForm } from '../../src/documents/records-dryness.ts';
import { settingOutFacts, settingOutNotes } from '../../src/documents/setting-out-words.ts';
import { pourPages, testPointPages } from '../../src/documents/site-sheets.ts';
import type { Point } from '../../src/geometry/point.ts';
import { recordsOf } from '../../src/plan/papers.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { pageTexts, pageWords, textOffPage, textOverText } from './page-check.ts';
import { hallAndStore } from './paper-fixture.ts';

/** Hall from [0, 0] to [12000, 5000], store below it from [0, 5100] to [4000, 8000]; a doorway 900 mm wide in the wall of 100 mm between them. In the hall a
 *  column from [8000, 2000] to [8400, 2400], an island that is built off the slab, a cupboard that stands on the screed, and a pipe. */
function floor(over: Partial<PlanFile>): PaperSource {
  return hallAndStore({
    columns: [{ id: 'c1', outline: square([8000, 2000], 400) }],
    pipes: [{ id: 'p1', centre: [11000, 4000], diameterMm: 110 }],
    joinery: [
      { id: 'j1', name: 'Island', outline: square([9500, 1500], 1000), under: 'built-off-slab' },
      { id: 'j2', name: 'Cupboard', outline: square([100, 100], 600), under: 'insulated' },
    ],
    ...over,
  });
}

function square([x, y]: Point, side: number): readonly Point[] {
  return [
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
  ];
}

const base = (...points: readonly Point[]) => floor({ papers: { basePoints: points.map((at) => ({ at })) } });
const tests = (...points: readonly Point[]) => floor({ records: { testPoints: points.map((at) => ({ at })) } });
const access = (at: Point) => floor({ pour: { access: at } });
const told = (source: PaperSource) =>
  pointCautions(source).map(({ kind, index, words }) => [kind, index, words.replaceAll('\u00a0', ' ')]);

describe('base points', () => {
  it('that are two and far apart have no caution, on the floor, in a column or off the floor', () => {
    expect(told(base([0, 0], [12000, 0]))).toEqual([]);
    expect(told(base([8200, 2200], [-3000, 9000]))).toEqual([]);
  });

  it('beyond the second are told to be for checking only', () => {
    expect(told(base([0, 0], [12000, 0], [0, 5000]))).toEqual([
      ['base', 2, 'Base point 3 is for checking only: joints are set out from base points 1 and 2.'],
    ]);
  });

  it('at one place are told, and which two of three then serve', () => {
    expect(told(base([0, 0], [0, 0]))).toEqual([
      ['base', 0, 'The base points lie at one place: set out from the walls.'],
    ]);
    expect(told(base([0, 0], [0, 0], [12000, 0]))).toEqual([
      ['base', 1, 'Base point 2 lies at the place of base point 1 and serves for nothing.'],
    ]);
  });

  it('that are only one are told to be too few', () => {
    expect(told(base([0, 0]))).toEqual([['base', 0, 'There is one base point only: set out from the walls.']]);
  });

  // by hand: 300 mm across and 399 mm down are 499.2 mm apart, 300 and 400 are 500 mm
  it('nearer to each other than 500 mm are told, those at 500 mm are not', () => {
    const [one] = told(base([0, 0], [300, 399]));
    expect(one?.slice(0, 2)).toEqual(['base', 1]);
    expect(one?.[2]).toContain('Base points 1 and 2 are 499 mm apart');
    expect(told(base([0, 0], [300, 400]))).toEqual([]);
  });

  it('stand with their cautions on the joint plan and in the list of setting out', () => {
    const source = base([0, 0], [12000, 0], [0, 5000]);
    const words = 'Base point 3 is for checking only: joints are set out from base points 1 and 2';
    expect(settingOutFacts(source)).toContainEqual(['Caution', words]);
    expect(settingOutNotes(source)).toContain(`${words}.`);
  });
});

describe('test points', () => {
  it('in rooms and apart have no caution', () => {
    expect(told(tests([3000, 2500], [2000, 6000]))).toEqual([]);
  });

  it('at one place are one test', () => {
    expect(told(tests([3000, 2500], [2000, 6000], [3000, 2500]))).toEqual([
      ['test', 2, 'Test point 3 lies at the place of test point 1.'],
    ]);
  });

  it.each([
    ['off every room', [20000, 2500], 'lies off the floor, in no room: there is no screed to test'],
    ['in the wall between two rooms', [3000, 5050], 'lies off the floor, in no room: there is no screed to test'],
    ['in a column', [8200, 2200], 'stands in column c1: there is no screed to test'],
    ['in a pipe', [11010, 4010], 'stands in pipe p1: there is no screed to test'],
    [
      'in a unit that is built off the slab',
      [10000, 2000],
      'stands in Island, which is built off the slab: there is no screed to test',
    ],
    ['under a unit on the screed', [400, 400], 'lies under Cupboard: it cannot be reached once that stands there'],
    ['in a doorway', [1400, 5060], 'lies in a doorway: move it into the room that it is to release'],
  ] as const)('%s have no screed to test, or none that can be reached', (_where, at, words) => {
    expect(told(tests([3000, 2500], at))).toEqual([['test', 1, `Test point 2 ${words}.`]]);
  });

  it('stand with their cautions on the dryness record and on the sheet of the points', () => {
    const source = tests([3000, 2500], [8200, 2200]);
    const words = 'Test point 2 stands in column c1: there is no screed to test';
    expect(linesOf(drynessForm(source, firstHeatingOf(source.plan, recordsOf(source.file))))).toContain(`${words}.`);
    expect(wordsOf(testPointPages(source) ?? [])).toContain(words);
  });

  it('far off the floor are told and not drawn, and those beside it are drawn inside the frame', () => {
    for (const page of testPointPages(tests([3000, 2500], [14000, 2500], [500_000, 2500])) ?? []) {
      expect(textOffPage(page)).toEqual([]);
      expect(textOverText(page)).toEqual([]);
      const names = pageTexts(page).flatMap(({ text, style }) =>
        style === 'sheet-head' && /^\d$/u.test(text) ? [text] : [],
      );
      expect(names.sort()).toEqual(['1', '2']);
    }
  });
});

describe('the access of the pour', () => {
  it.each([
    ['in a room', [3000, 2500]],
    ['in a doorway', [1400, 5050]],
    ['outside, where a hose comes in by a window', [-1500, 2500]],
    ['where a cupboard will stand', [400, 400]],
  ] as const)('has no caution %s', (_where, at) => {
    expect(told(access(at))).toEqual([]);
  });

  it('in a column is told, on the pour plan, its form and its list', () => {
    const source = access([8200, 2200]);
    const words = 'The access for the pour stands in column c1: nothing is brought in there';
    expect(told(source)).toEqual([['access', 0, `${words}.`]]);
    expect(linesOf(pourForm(source))).toContain(`${words}.`);
    expect(pourTable(source).notes).toContain(`${words}.`);
    expect(wordsOf(pourPages(source))).toContain(words);
  });

  // by hand: the floor ends 12 m to the right
  it('far off the floor is told and not drawn', () => {
    const source = access([312_000, 2500]);
    expect(told(source)).toEqual([
      ['access', 0, 'The access for the pour lies 300 m to the right, too far off to be drawn.'],
    ]);
    for (const page of pourPages(source)) expect(page.groups.some(({ ref }) => ref?.id === 'access')).toBe(false);
    for (const page of pourPages(access([-1500, 2500])))
      expect(page.groups.some(({ ref }) => ref?.id === 'access')).toBe(true);
  });
});

describe('cautions of points', () => {
  it('say the same when the floor is moved with its points, and by which point they are', () => {
    const points: readonly Point[] = [
      [3000, 2500],
      [8200, 2200],
      [3000, 2500],
      [20000, 0],
    ];
    const moved = ([x, y]: Point): Point => [x + 100_000, y - 40_000];
    const { rooms } = floor({}).file;
    const far = tests(...points.map(moved));
    const there = hallAndStore({
      rooms: rooms.map((room) => ({ ...room, outline: room.outline.map(moved) })),
      columns: [{ id: 'c1', outline: square([8000, 2000], 400).map(moved) }],
      doorways: [],
      records: far.file.records,
    });
    expect(told(there)).toEqual(told(tests(...points)));
    for (const { index, at } of pointCautions(there)) expect(at).toEqual(moved(points[index] as Point));
  });

  it('of which there are many are told up to a number, and how many more there are', () => {
    const many = tests(...Array.from({ length: 40 }, (_, i): Point => [20_000 + 100 * i, 0]));
    const texts = pointCautionTexts(many, { kind: 'test', most: 3 });
    expect(texts).toHaveLength(4);
    expect(texts.at(-1)).toBe('37 more cautions on such points.');
  });

  it('hold names made to be a nuisance as one short line', () => {
    const name = `\u202e=1+1<b>\n\u0007${'W'.repeat(10_000)}`;
    const source = floor({
      records: {
        testPoints: [
          { name, at: [3000, 2500] },
          { name, at: [3000, 2500] },
        ],
      },
    });
    const [words] = pointCautionTexts(source, { kind: 'test', most: 3 });
    expect(words?.length).toBeLessThan(200);
    expect(words).not.toMatch(/[\p{Cc}\u202e]/u);
  });
});

function linesOf({ blocks }: Form): readonly string[] {
  return blocks.flatMap((block) => (block.kind === 'text' ? block.lines : []));
}

/** With breaks of lines as spaces. */
function wordsOf(pages: readonly Page[]): string {
  return pages.map(pageWords).join(' ').replaceAll('\u00a0', ' ');
}
