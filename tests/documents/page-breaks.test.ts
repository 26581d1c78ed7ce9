import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { comparisonOf } from '../../src/documents/compare.ts';
import { comparisonForm } from '../../src/documents/compare-form.ts';
import { formPages, tableForm } from '../../src/documents/form-pages.ts';
import type { Page } from '../../src/documents/page.ts';
import { pageSets } from '../../src/documents/page-sets.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { columnText, tableOf } from '../../src/documents/table.ts';
import { pageTexts, textOffPage, textOverText } from './page-check.ts';
import { pagePaths } from './page-text-check.ts';
import { demoNames, demoText, hallAndStore, paperSourceOf } from './paper-fixture.ts';

/** Pages of lists and forms, apart from drawings and sketches. */
function written(source: PaperSource): readonly Page[] {
  return pageSets(source)
    .flatMap(({ pages }) => pages())
    .filter(({ scale, groups }) => scale === null && groups.length === 3);
}

/** Between the lines under the head of a page and over its foot. */
function body({ groups, ...page }: Page): Page {
  return { ...page, groups: groups.slice(1, 2) };
}

/** Lines under the head of a table and under each of its rows, from the top down, mm. */
function ruleHeights(page: Page): readonly number[] {
  const rules = pagePaths(body(page)).filter(({ closed, height, width }) => !closed && height === 0 && width > 100);
  return rules.map(({ top }) => top).sort((a, b) => a - b);
}

/** How much of the room between head and foot is filled, how much is left, and how high what begins the page is: up to the third line of a table, or all. mm */
function filled(page: Page) {
  const ruleOf = (group: number) => pagePaths({ ...page, groups: page.groups.slice(group, group + 1) })[0]?.top ?? 0;
  const [headMm, footMm] = [ruleOf(0), ruleOf(2)];
  const lowest = Math.max(
    ...pageTexts(body(page)).map(({ at }) => at[1]),
    ...pagePaths(body(page)).map(({ top, height }) => top + height),
  );
  const begun = ruleHeights(page)[3] ?? lowest;
  return { share: (lowest - headMm) / (footMm - headMm), leftMm: footMm - lowest, beginMm: begun - headMm };
}

/** Pages that are left early though what follows could begin on them: no form has one. */
function leftEarly(pages: readonly Page[]): readonly string[] {
  return pages.flatMap((page, i) => {
    const next = pages[i + 1];
    if (next?.title !== page.title) return [];
    const { share, leftMm } = filled(page);
    return share < 0.6 && filled(next).beginMm <= leftMm ? [`${page.title}, ${page.subject}: ${share}`] : [];
  });
}

/** A row so high may have a page to itself, mm. */
const highMm = 70;

const realFloor = (name: string) => new URL(`../../../shared/real-plans/${name}.json`, import.meta.url);
const realNames = ['duplex_L0', 'largebuilding_L0', 'resplan_0', 'westport_5', 'westport_6'];

const floors: readonly (readonly [name: string, text: () => string])[] = [
  ...demoNames.map((name) => [name, () => demoText(name)] as const),
  ...realNames
    .filter((name) => existsSync(realFloor(name)))
    .map((name) => [name, () => readFileSync(realFloor(name), 'utf8')] as const),
  ['a floor with hostile names', () => JSON.stringify(hostileFile())],
];

function hostileFile() {
  const { file } = hallAndStore();
  const names = ['=1+1<b>\u202e\u0007"', 'long words '.repeat(900)];
  return { ...file, rooms: file.rooms.map((room, i) => ({ ...room, name: names[i] ?? room.name })) };
}

describe.each(floors)('the written pages of %s', (_, text) => {
  const pages = written(paperSourceOf(text()));

  it('never hold signatures alone: what is signed stands above them', () => {
    const signed = pages.filter((page) => pageTexts(page).some(({ text: words }) => words === 'Signature'));
    expect(signed.length).toBeGreaterThan(0);
    for (const page of signed) {
      const names = pageTexts(body(page)).filter(({ style }) => style !== 'sheet-small');
      const first = pageTexts(body(page)).find(({ text: words }) => words === 'Name');
      const above = names.filter(({ at }) => at[1] < (first?.at[1] ?? 0) - 8);
      expect(above.length, page.subject).toBeGreaterThan(0);
    }
  });

  it('never hold one row of a table alone under a head that is repeated', () => {
    const lonely = pages.filter((page) => {
      const before = pages[pages.indexOf(page) - 1];
      if (before?.title !== page.title) return false;
      const heads = pageTexts(body(page)).filter(({ style }) => style === 'sheet-head');
      const [head, row, ...others] = ruleHeights(page);
      if (head === undefined || row === undefined) return false;
      return others.length === 0 && heads.length > 3 && row - head < highMm;
    });
    expect(lonely.map(({ subject, title }) => `${title}: ${subject}`)).toEqual([]);
  });

  it('are filled to three fifths and more where what follows could begin on them', () => {
    expect(leftEarly(pages)).toEqual([]);
  });

  it('have no text over text and none off the page', () => {
    for (const page of pages.slice(0, 30)) expect([...textOverText(page), ...textOffPage(page)]).toEqual([]);
  });
});

it.each(demoNames)('pages of a comparison of %s are filled as far where what follows could begin on them', (name) => {
  const earlier = paperSourceOf(demoText(name));
  const rooms = earlier.file.rooms.map((room) => ({ ...room, heated: false, covering: 'stone-or-ceramic' as const }));
  for (const over of [{ screed: { class: 'CT-C25-F5' as const, thicknessMm: 75 } }, { rooms }]) {
    const form = comparisonForm(comparisonOf(earlier, paperSourceOf(demoText(name), over)));
    expect(leftEarly(formPages([form], earlier))).toEqual([]);
  }
});

describe('a table below other things', () => {
  const checked = Array.from({ length: 12 }, (_, i) => i + 1);
  const list = tableOf({ name: 'list', title: 'List' }, [columnText<number>('Joint', (i) => `J${i}`)], checked);
  const rowsOn = (page: Page) => pageTexts(page).filter(({ text }) => /^J\d+$/u.test(text)).length;

  // by hand: of twelve rows a quarter are three; a row has one line of 4.6 mm and is 6.4 mm high
  it('begins on a page where three of its rows have room, and fills it', () => {
    const begun = Array.from({ length: 60 }, (_, i) => {
      const lines = Array.from({ length: i + 1 }, (_each, k) => `Words ${k}`);
      const blocks = [{ kind: 'text', lines } as const, { kind: 'table', table: list } as const];
      const [first, second] = formPages([{ title: 'Form', subject: 'House', blocks }], hallAndStore());
      if (first === undefined || pageTexts(first).every(({ text }) => text !== `Words ${i}`)) return null;
      if (second !== undefined && rowsOn(first) > 0) expect(filled(first).leftMm).toBeLessThan(4 + 2 * 6.4 + 3.5);
      return rowsOn(first);
    });
    const counts = new Set(begun);
    for (const count of [1, 2]) expect(counts.has(count)).toBe(false);
    for (const count of [0, 3, 4, 8, 12]) expect(counts.has(count), String(count)).toBe(true);
  });
});

describe('columns of a printed table', () => {
  const long = 'Nothing is laid beyond the stop of work and what spills over is cleared before it sets';
  const table = tableOf(
    { name: 'days', title: 'Days' },
    [
      columnText<number>('Day', (i) => String(i)),
      columnText<number>('Stop of work at joints', () => 'J10, J11, J12, J13, J14, J15, J16, J17, J18, J19'),
      columnText<number>('Remarks', () => long),
      columnText<number>('Waterproofing', () => 'Polyurethane resin'),
    ],
    [1, 2, 3, 4, 5, 6, 7, 8],
  );

  it('break no word that a column could hold, however narrow the page makes them', () => {
    const [page] = formPages([tableForm(table, 'House')], hallAndStore());
    const words = new Set(
      table.rows
        .flat()
        .concat(table.columns.map(({ head }) => head))
        .join(' ')
        .split(' '),
    );
    const printed = pageTexts(body(page as Page)).flatMap(({ text }) => text.split(' '));
    expect(printed.filter((word) => !words.has(word))).toEqual([]);
  });

  it('share the page by what stands in them: two long texts take about as many lines as each other', () => {
    const [page] = formPages([tableForm(table, 'House')], hallAndStore());
    const texts = pageTexts(body(page as Page)).filter(({ style }) => style === 'sheet-text');
    const linesOf = (pattern: RegExp) => texts.filter(({ text }) => pattern.test(text)).length / table.rows.length;
    const [joints, remarks] = [linesOf(/^J\d/u), texts.filter(({ text }) => long.includes(text)).length / 8];
    expect(Math.abs(joints - remarks)).toBeLessThanOrEqual(1);
  });

  it.each([1, 2, 3, 24, 25, 26, 27, 28, 29, 30, 31, 32, 33, 50, 51, 52, 53, 54, 55])(
    'of %i rows never leave one of them alone on a page',
    (count) => {
      const rows = Array.from({ length: count }, (_, i) => i + 1);
      const list = tableOf({ name: 'list', title: 'List' }, [columnText<number>('Joint', (i) => `J${i}`)], rows);
      const pages = formPages([tableForm(list, 'House')], hallAndStore());
      const counts = pages.map((page) => pageTexts(page).filter(({ text }) => /^J\d+$/u.test(text)).length);
      expect(counts.reduce((sum, each) => sum + each, 0)).toBe(count);
      if (count > 1) for (const each of counts) expect(each).toBeGreaterThan(1);
    },
  );
});
