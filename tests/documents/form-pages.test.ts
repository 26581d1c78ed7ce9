import { describe, expect, it } from 'vitest';
import type { Form } from '../../src/documents/form.ts';
import { formPages, tableForm } from '../../src/documents/form-pages.ts';
import type { Page } from '../../src/documents/page.ts';
import { sectionPages } from '../../src/documents/sections.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import { columnFigure, columnText, type Table, type TableColumn, tableOf } from '../../src/documents/table.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { analysisOf, planOf } from './fixture.ts';
import { pageTexts, pageWords, textBlock, textOffPage, textOverText } from './page-check.ts';
import { paperSource } from './paper-fixture.ts';

function laid(forms: readonly Form[], papers: NonNullable<PlanFile['papers']> = {}): readonly Page[] {
  return formPages(forms, paperSource(planOf(), analysisOf(), { papers }));
}

function listOf(rows: number): Table {
  return tableOf(
    { name: 'joints', title: 'Joint list', notes: ['Lengths are net.'] },
    [
      columnText<number>('Joint', (i) => `J${i}`),
      columnText<number>('Between', (i) => `Reading room ${i} - Corridor`),
      columnFigure<number>('Length', 'm', 2, (i) => i * 100 + 0.5),
      { ...columnText<number>('Checked', () => null), toFill: true },
    ],
    Array.from({ length: rows }, (_, i) => i + 1),
  );
}

function wideTable(columns: number, text = 'Something to read'): Table {
  const made = Array.from(
    { length: columns },
    (_, i): TableColumn => ({ head: `Column ${i + 1}`, unit: null, decimals: null }),
  );
  const row = made.map((_, i) => `${text} ${i + 1}`);
  return { name: 'wide', title: 'Wide list', columns: made, rows: [row, row, row], notes: [] };
}

function expectReadable(pages: readonly Page[]): void {
  for (const page of pages) {
    expect(textOverText(page)).toEqual([]);
    expect(textOffPage(page)).toEqual([]);
  }
}

describe('a long table', () => {
  const pages = laid([tableForm(listOf(120), 'House')]);

  it('goes on over several pages, its head on each of them and no row lost', () => {
    expect(pages.length).toBeGreaterThan(2);
    for (const page of pages) expect(pageWords(page)).toMatch(/Joint Between Length \(m\) Checked/u);
    const rows = pages.flatMap((page) => pageTexts(page).filter(({ text }) => /^J\d+$/u.test(text)));
    expect(rows.map(({ text }) => text)).toEqual(Array.from({ length: 120 }, (_, i) => `J${i + 1}`));
  });

  it('has the number of the papers before that of the page', () => {
    const [first] = laid([tableForm(listOf(3), 'House')], { number: 'J-01' });
    expect(pageWords(first as Page)).toContain('J-01, page 1 of 1');
  });

  it('is numbered through, and its notes stand behind the last row', () => {
    expect(pages.map((page) => /Page (\d+) of (\d+)/u.exec(pageWords(page))?.slice(1))).toEqual(
      pages.map((_, i) => [String(i + 1), String(pages.length)]),
    );
    expect(pageWords(pages[pages.length - 1] as Page)).toContain('Lengths are net.');
  });

  it('has its figures under each other to the right, with all decimals', () => {
    for (const page of pages) {
      const figures = pageTexts(page).filter(({ text }) => /^[\d\u00a0]+\.\d\d$/u.test(text));
      expect(figures.length).toBeGreaterThan(5);
      for (const { anchor, at } of figures) expect([anchor, at[0]]).toEqual(['end', figures[0]?.at[0]]);
    }
  });

  it('stands on A4 upright, 210 x 297 mm by ISO 216, and every row to write in is 8 mm high or more', () => {
    for (const { widthMm, heightMm } of pages) expect([widthMm, heightMm]).toEqual([210, 297]);
    const ys = pageTexts(pages[0] as Page)
      .filter(({ text }) => /^J\d+$/u.test(text))
      .map(({ at }) => at[1]);
    for (const [i, y] of ys.slice(1).entries()) expect(y - (ys[i] ?? 0)).toBeGreaterThanOrEqual(7.999);
  });

  it('overlaps nowhere', () => {
    expectReadable(pages);
  });
});

describe('a wide table', () => {
  it('takes paper that is wider: A4 lying, then A3', () => {
    expect(laid([tableForm(wideTable(4), '')])[0]?.paper).toBe('A4 standing');
    expect(laid([tableForm(wideTable(6), '')])[0]?.paper).toBe('A4');
    expect(laid([tableForm(wideTable(9), '')])[0]?.paper).toBe('A3');
  });

  it('that is wider than A3 is parted by columns, the first of them in each part', () => {
    const pages = laid([tableForm(wideTable(40), '')]);
    const words = pages.map(pageWords).join(' ');
    const parts = Number(/Part 1 of (\d+), by columns/u.exec(words)?.[1]);
    expect(parts).toBeGreaterThan(1);
    expect(words.match(/Column 1 /gu)).toHaveLength(parts);
    for (let i = 2; i <= 40; i++) expect(words).toContain(`Column ${i} `);
    expectReadable(pages);
  });
});

describe('cells that are made to be a nuisance', () => {
  it.each([
    ['ten thousand letters without a space', 'W'.repeat(10_000)],
    ['ten thousand letters in words', 'wide words '.repeat(910)],
    [
      'letters from right to left',
      '\u202e\u063a\u0631\u0641\u0629 \u0627\u0644\u0645\u0639\u064a\u0634\u0629 '.repeat(300),
    ],
    ['signs as wide as a phrase', '\ufdfd'.repeat(10_000)],
    ['markup and control characters', '<b>\u0000\u0007</b>&amp;\r\n=1+1'.repeat(50)],
  ])('%s stay in their cells', (_what, text) => {
    for (const columns of [1, 4, 12]) {
      const pages = laid([tableForm({ ...wideTable(columns, text), title: text, notes: [text] }, text)], {
        project: text,
      });
      expectReadable(pages);
      expect(pages.map((page) => pageSvg(page)).join('')).not.toContain('<b>');
    }
  });

  it('figures of any size stay in theirs, and what is no number is left empty', () => {
    const columns = Array.from(
      { length: 5 },
      (_, i): TableColumn => ({ head: `Figure ${i}`, unit: 'mm', decimals: 1 }),
    );
    const table = { ...wideTable(1), columns, rows: [[1e300, -1e15, Number.NaN, Number.POSITIVE_INFINITY, null]] };
    const pages = laid([tableForm(table, '')]);
    expectReadable(pages);
    expect(pages.map(pageWords).join(' ')).not.toMatch(/NaN|Infinity|null/u);
  });

  it('a table without rows says so', () => {
    expect(
      laid([tableForm({ ...wideTable(3), rows: [] }, '')])
        .map(pageWords)
        .join(' '),
    ).toContain('None.');
  });
});

describe('a form', () => {
  const form: Form = {
    title: 'Check list before the pour',
    subject: 'Reading rooms',
    blocks: [
      { kind: 'head', text: 'Edges' },
      { kind: 'text', lines: ['Every line is checked on site.'] },
      {
        kind: 'fields',
        fields: [
          ['Manifold', ''],
          ['Screed', 'CT-C25-F4'],
        ],
      },
      { kind: 'checks', items: Array.from({ length: 60 }, (_, i) => `Check ${i + 1}: the strip stands everywhere`) },
      { kind: 'signatures', parties: ['Heating', 'Screed', 'Tiling'] },
    ],
  };
  const pages = laid([form, { ...form, title: 'Second form' }], { designer: 'Planning office', project: 'Mill' });
  const strokes = (page: Page) =>
    page.groups.flatMap(({ inks }) => inks.flatMap((ink) => (ink.ink === 'path' ? [ink] : [])));

  it('has a box to tick and room for initials at every check', () => {
    for (const page of pages) {
      const checks = pageTexts(page).filter(({ text }) => text.startsWith('Check ') && text.includes(':')).length;
      expect(strokes(page).filter(({ closed }) => closed)).toHaveLength(checks);
      expect(pageTexts(page).filter(({ text }) => text === 'initials')).toHaveLength(checks);
    }
  });

  it('has a line to write on where nothing is known, and none where something is', () => {
    const [page] = pages as [Page];
    const isJustUnder = (y: number, of: number) => y > of && y < of + 4;
    const lineUnder = (words: string) => {
      const label = pageTexts(page).find(({ text }) => text === words);
      return strokes(page).some(
        ({ lines, closed }) =>
          !closed && (lines[0]?.[0]?.[0] ?? 0) > 60 && isJustUnder(lines[0]?.[0]?.[1] ?? 0, label?.at[1] ?? 0),
      );
    };
    expect(lineUnder('Manifold')).toBe(true);
    expect(lineUnder('Screed')).toBe(false);
  });

  it('keeps those who sign on one page', () => {
    const signing = pages.map((page) => pageTexts(page).filter(({ text }) => text === 'Signature').length);
    expect(signing.filter((count) => count > 0)).toEqual([3, 3]);
  });

  it('has no page with signatures alone, however long it is', () => {
    for (let checks = 10; checks < 40; checks++) {
      const items = Array.from({ length: checks }, (_, i) => `Check ${i + 1}: done`);
      const signed: Form = { ...form, blocks: [{ kind: 'checks', items }, ...form.blocks.slice(-1)] };
      const last = laid([signed]).at(-1) as Page;
      expect(pageWords(last)).toContain('Signature');
      expect(pageWords(last)).toContain(`Check ${checks}:`);
    }
  });

  it('begins a page of its own, with project, day and status, and who answers for it at the foot', () => {
    const first = pages.findIndex(({ title }) => title === 'Second form');
    expect(first).toBeGreaterThan(0);
    for (const page of pages) {
      for (const part of ['Mill', '2027-03-01', 'For information', 'Planning office', 'structural engineer'])
        expect(pageWords(page)).toContain(part);
    }
  });

  it('says in red at the foot of each page that it is not checked where nobody answers for it', () => {
    const unanswered = laid([form]);
    expect(unanswered.length).toBeGreaterThan(1);
    for (const page of [...unanswered, ...sectionPages(paperSource(planOf(), analysisOf()))]) {
      const red = pageTexts(page).filter(({ style }) => style === 'sheet-fault');
      expect(red.map(({ text }) => text).join()).toMatch(/not checked for construction/iu);
      expect(Math.min(...red.map(({ at }) => at[1]))).toBeGreaterThan(page.heightMm - 35);
    }
  });

  it('never parts a head from what follows', () => {
    const many: Form = {
      ...form,
      blocks: Array.from({ length: 60 }, (_, i) => [
        { kind: 'head', text: `Head ${i}` } as const,
        { kind: 'text', lines: [`Words ${i}`, 'More words'] } as const,
      ]).flat(),
    };
    for (const page of laid([many])) {
      const heads = pageTexts(page).filter(({ text }) => text.startsWith('Head '));
      for (const { text } of heads) expect(pageWords(page)).toContain(text.replace('Head', 'Words'));
    }
  });

  it('overlaps nowhere and has the same bytes every time', () => {
    expectReadable(pages);
    const again = laid([form, { ...form, title: 'Second form' }], { designer: 'Planning office', project: 'Mill' });
    expect(again.map((page) => pageSvg(page))).toEqual(pages.map((page) => pageSvg(page)));
  });
});

it('the check of pages sees text over text and over the edge of the paper', () => {
  const [page] = laid([tableForm(listOf(3), '')]) as [Page];
  const [text] = pageTexts(page).slice(-1);
  if (text === undefined) throw new Error('a page without text');
  const moved = { ...text, at: [text.at[0] + 1, text.at[1] + 1] as const };
  const over = {
    ...page,
    groups: [
      ...page.groups,
      { ref: null, inks: [moved, { ...text, at: [page.widthMm, 5] as const, anchor: 'start' as const }] },
    ],
  };
  expect(textOverText(over)).toHaveLength(1);
  expect(textOffPage(over)).toHaveLength(1);
  // 2.5 mm capitals: a block is as high as these and what hangs below the line
  const ys = textBlock(text).corners.map(([, y]) => y);
  expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(1.8);
});
