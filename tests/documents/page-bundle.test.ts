import { describe, expect, it } from 'vitest';
import type { Page } from '../../src/documents/page.ts';
import { handoverPages } from '../../src/documents/page-bundle.ts';
import { type PageSet, pageSets } from '../../src/documents/page-sets.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { pagesPdf } from '../../src/documents/pdf.ts';
import { pageTexts, textOffPage, textOverText } from './page-check.ts';
import { textsOffPage } from './page-text-check.ts';
import { demoNames, demoText, hallAndStore, paperSourceOf, shippedFonts } from './paper-fixture.ts';
import { pdfRead } from './pdf-reader.ts';

const inAll = /^Page (\d+) of (\d+) in all$/u;

/** Rows of the list of contents, read off the page as they stand beside each other. */
function contentsOf(page: Page): readonly (readonly string[])[] {
  const rows = new Map<number, { readonly x: number; readonly text: string }[]>();
  for (const { text, at } of pageTexts(page)) {
    const row = rows.get(Math.round(at[1] * 10)) ?? [];
    rows.set(Math.round(at[1] * 10), [...row, { x: at[0], text }]);
  }
  return [...rows.values()]
    .map((row) => [...row].sort((a, b) => a.x - b.x).map(({ text }) => text))
    .filter((row) => row.length === 4 && /^\d+$/u.test(row[3] ?? ''));
}

function through(page: Page | undefined): readonly number[] {
  const found = page === undefined ? [] : pageTexts(page).flatMap(({ text }) => inAll.exec(text)?.slice(1) ?? []);
  return found.map(Number);
}

function bundle(source: PaperSource): { readonly sets: readonly PageSet[]; readonly pages: readonly Page[] } {
  const sets = pageSets(source);
  return { sets, pages: handoverPages(source, sets) };
}

describe.each([...demoNames, 'hall and store'])('all papers of %s in one', (name) => {
  const source =
    name === 'hall and store' ? hallAndStore() : paperSourceOf(demoText(name as (typeof demoNames)[number]));
  const { sets, pages } = bundle(source);

  it('are numbered through from the first page to the last', () => {
    expect(pages.map(through)).toEqual(pages.map((_, i) => [i + 1, pages.length]));
  });

  it('begin with one page of contents that tells of each paper the page on which it begins, and how many it has', () => {
    const [contents, ...rest] = pages;
    const rows = contentsOf(contents as Page);
    expect(rows.length).toBeGreaterThan(4);
    let next = 2;
    for (const [paper, , count, from] of rows) {
      expect(Number(from), paper).toBe(next);
      for (const page of pages.slice(next - 1, next - 1 + Number(count))) expect(page.part).toBe(paper);
      next += Number(count);
    }
    expect(next).toBe(rest.length + 2);
  });

  it('are the pages of the papers themselves, laid out once, with nothing but the number written over them', () => {
    const alone = sets.filter(({ group }) => group !== 'lists').flatMap((set) => set.pages());
    const bound = pages.slice(1);
    expect(bound).toHaveLength(alone.length);
    for (const [i, page] of bound.entries()) {
      expect(page.bound?.alone).toBe(alone[i]);
      expect(page.groups.slice(0, -1)).toEqual(alone[i]?.groups);
      expect(page.groups.at(-1)).toBe(page.bound?.over);
    }
  });

  it('have the number clear of all else, and where any printer prints', () => {
    for (const page of pages) {
      const number = page.bound?.over.inks ?? [];
      expect(number).toHaveLength(1);
      expect(textsOffPage({ ...page, groups: [{ ref: null, inks: number }] })).toEqual([]);
      expect(textOffPage(page)).toEqual([]);
      expect(textOverText(page).filter((pair) => pair.includes('in all'))).toEqual([]);
    }
  });

  it('have a mark of the outline at the first page of each paper', () => {
    const marked = pages.flatMap(({ bound }, i) => (bound?.mark == null ? [] : [[bound.mark, String(i + 1)]]));
    const [contents] = pages;
    expect(marked).toEqual([
      ['Contents', '1'],
      ...contentsOf(contents as Page).map(([paper, , , from]) => [paper, from]),
    ]);
  });
});

it('all papers in one, read back from the PDF, are numbered 1 to the last and begin where the contents say', async () => {
  const { pages } = bundle(hallAndStore());
  const fonts = await shippedFonts();
  const read = await pdfRead(await pagesPdf(pages, { title: 'Hall', date: '2027-03-01', planText: '{}', fonts }));
  const numbers = read.pages.map(({ texts }) => texts.map(({ text }) => text).filter((text) => inAll.test(text)));
  expect(numbers).toEqual(read.pages.map((_, i) => [`Page ${i + 1} of ${read.pages.length} in all`]));
  const [contents] = pages;
  for (const [paper = '', , , from] of contentsOf(contents as Page)) {
    const words = read.pages[Number(from) - 1]?.texts.map(({ text }) => text).join(' ');
    expect(words).toContain(paper);
  }
});
