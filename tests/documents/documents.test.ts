import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { analysisText } from '../../src/documents/analysis-text.ts';
import { comparisonDocuments } from '../../src/documents/compare-documents.ts';
import { documentsOf } from '../../src/documents/documents.ts';
import type { PaperFonts, PaperSource } from '../../src/documents/paper-source.ts';
import { planTextIn } from '../../src/documents/plan-data.ts';
import { planWrite } from '../../src/plan/write.ts';
import {
  demoNames,
  demoText,
  noFonts,
  paperFiles,
  paperSourceAnew,
  paperSourceOf,
  shippedFonts,
} from './paper-fixture.ts';

const dwelling = paperSourceOf(demoText('1-dwelling'));

describe('documents', () => {
  it('are all there: sheets, lists, records and data, each name once', () => {
    const names = documentsOf(dwelling, noFonts).map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of [
      ...[
        'papers.pdf',
        'plan.pdf',
        'plan.svg',
        'sections.pdf',
        'doorways.pdf',
        'set-out.pdf',
        'set-out.svg',
        'pour-plan.pdf',
      ],
      ...['lists.pdf', 'tables.xlsx', 'take-off.csv', 'joints.csv', 'joint-register.csv', 'bays.csv', 'findings.csv'],
      ...['records.pdf', 'analysis.json', 'plan.json'],
    ])
      expect(names).toContain(name);
  });

  it('have tiles where there are tiles, doorways where there are doorways, and a calendar where there is a date', () => {
    const bare = paperSourceOf(demoText('1-dwelling'), { tiles: undefined, doorways: [] });
    const names = documentsOf(bare, noFonts).map(({ name }) => name);
    for (const name of ['set-out.pdf', 'cuts.csv', 'doorways.pdf', 'records.ics']) expect(names).not.toContain(name);
    expect(documentsOf(paperSourceOf(demoText('2-public-library')), noFonts).map(({ name }) => name)).toContain(
      'records.ics',
    );
  });

  it('give the analysis as the command line prints it, and the plan as it is saved', async () => {
    const files = await paperFiles(dwelling, /^(?:analysis|plan)\.json$/u);
    expect(files.map(({ content }) => content)).toEqual([analysisText(dwelling.analysis), planWrite(dwelling.file)]);
  });

  it.each(demoNames)('of %s are the same bytes each time they are made', { timeout: 120_000 }, async (name) => {
    const fonts = await shippedFonts();
    const made = async (source: PaperSource, held: PaperFonts) => {
      const files = await Promise.all(documentsOf(source, async () => held).map(({ make }) => make()));
      return files.flat();
    };
    // in fonts that other papers were set in before, and of another analysis in fonts that nothing was
    const one = await made(paperSourceOf(demoText(name)), fonts);
    const other = await made(paperSourceAnew(demoText(name)), { ...fonts });
    expect(one.map((file) => file.name)).toEqual(other.map((file) => file.name));
    for (const [i, { name: file, content }] of one.entries()) {
      expect(sameBytes(content, other[i]?.content ?? ''), file).toBe(true);
    }
    // whatever drawing is found in ten years opens as the plan again
    const text = planWrite(paperSourceOf(demoText(name)).file);
    for (const { name: file, content } of one) {
      if (!/\.(?:pdf|svg)$/u.test(file)) continue;
      const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
      expect(planTextIn(bytes), file).toBe(text);
    }
    const workbook = one.find((file) => file.name === 'tables.xlsx')?.content;
    expect(Object.keys(unzipSync(workbook as Uint8Array)).length).toBeGreaterThan(5);
  });

  it('of a revision stand beside those of the plan, under names of their own', async () => {
    const now = paperSourceOf(demoText('1-dwelling'), { screed: { class: 'CT-C25-F5', thicknessMm: 70 } });
    const own = new Set(documentsOf(now, noFonts).map(({ name }) => name));
    const revision = comparisonDocuments(dwelling, now, noFonts);
    expect(revision.filter(({ name }) => own.has(name))).toEqual([]);
    const settings = revision.find(({ name }) => name === 'compare-settings.csv');
    expect(String((await settings?.make())?.[0]?.content)).toMatch(/thickness.*62.*70/iu);
  });
});

function sameBytes(a: string | Uint8Array, b: string | Uint8Array): boolean {
  if (typeof a === 'string' || typeof b === 'string') return a === b;
  return a.length === b.length && a.every((byte, i) => byte === b[i]);
}
