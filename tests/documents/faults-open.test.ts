import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { comparisonPages } from '../../src/documents/compare-drawing.ts';
import { calendarText } from '../../src/documents/icalendar.ts';
import { jointPlanPages } from '../../src/documents/joint-plan.ts';
import type { Page } from '../../src/documents/page.ts';
import { handoverPages } from '../../src/documents/page-bundle.ts';
import { pageSets } from '../../src/documents/page-sets.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { pageTexts, textOffPage, textOverText } from './page-check.ts';
import { hallAndStore, paperFiles } from './paper-fixture.ts';

const answered: PlanFile['papers'] = { designer: 'Planning office', status: 'for-construction' };
const tiles = { lengthMm: 600, widthMm: 600 };
/** A floor on the bare slab is held to it, which is a fault of every bay. */
const held: Partial<PlanFile> = { buildUp: { insulationMm: 0 }, tiles };
const free: Partial<PlanFile> = { buildUp: { insulationMm: 40 }, sealant: { widthMm: 10 }, tiles };

function floor(over: Partial<PlanFile>, papers: PlanFile['papers'] = answered): PaperSource {
  return hallAndStore({ ...over, papers });
}

function pagesOf(source: PaperSource): readonly Page[] {
  const sets = pageSets(source);
  return [
    ...handoverPages(source, sets),
    ...sets.filter(({ group }) => group === 'lists').flatMap(({ pages }) => pages()),
    ...comparisonPages(source, source),
    ...jointPlanPages({
      ...source,
      file: { ...source.file, papers: { ...source.file.papers, paper: 'A4', scale: 20 } },
    }),
  ];
}

function faultsOf({ analysis }: PaperSource): number {
  return analysis.findings.filter(({ severity }) => severity === 'fault').length;
}

function redWords(page: Page): readonly string[] {
  return pageTexts(page).flatMap(({ text, colour }) => (colour === 'fault' ? [text] : []));
}

function acrossWords({ groups }: Page): readonly string[] {
  const inks = groups.flatMap((group) => group.inks);
  return inks.flatMap((ink) => (ink.ink === 'text' && ink.style.startsWith('across-') ? [ink.text] : []));
}

describe('papers for construction of a floor with faults', () => {
  const source = floor(held);
  const pages = pagesOf(source);
  const words = `${faultsOf(source)} faults open: not for construction`;

  it('say in red on every sheet and page how many faults are open', () => {
    expect(faultsOf(source)).toBeGreaterThan(1);
    expect(pages.length).toBeGreaterThan(15);
    for (const page of pages) expect(redWords(page).join(' '), page.subject).toContain(words);
  });

  it('say it across every drawing', () => {
    const plans = jointPlanPages(source);
    for (const page of plans) expect(acrossWords(page)).toEqual([words]);
  });

  it('set it where no text stands over it or off the paper', () => {
    for (const page of pages) {
      expect(textOverText(page), page.subject).toEqual([]);
      expect(textOffPage(page), page.subject).toEqual([]);
    }
  });

  it('say it of one fault in the singular', () => {
    const [fault] = source.analysis.findings.filter(({ severity }) => severity === 'fault');
    const one = { ...source, analysis: { ...source.analysis, findings: fault === undefined ? [] : [fault] } };
    expect(jointPlanPages(one).map(acrossWords)).toEqual([['1 fault open: not for construction']]);
  });

  it('say besides that nobody answers for them where nobody does', () => {
    const unanswered = floor(held, { status: 'for-construction' });
    for (const page of jointPlanPages(unanswered))
      expect(acrossWords(page)).toEqual([`Not checked for construction. ${words}`]);
    for (const page of pagesOf(unanswered)) {
      expect(redWords(page).join(' '), page.subject).toContain(words);
      expect(redWords(page).join(' '), page.subject).toContain('Not checked for construction');
      expect(textOverText(page), page.subject).toEqual([]);
    }
  });

  it('say it in the workbook, on its first sheet and under every page that is printed', async () => {
    const [file] = await paperFiles(source, /^tables\.xlsx$/u);
    const parts = unzipSync(file?.content as Uint8Array);
    const sheets = Object.entries(parts).filter(([path]) => path.startsWith('xl/worksheets/'));
    expect(sheets.length).toBeGreaterThan(5);
    for (const [path, xml] of sheets) expect(strFromU8(xml), path).toContain(words);
  });

  it('say it in the calendar of the work', () => {
    const dated = { ...source, file: { ...source.file, records: { laidOn: '2027-03-01' } } };
    expect(calendarText(dated)?.replaceAll(/\r\n /gu, '')).toContain(words);
  });
});

describe('papers that say nothing of open faults', () => {
  it('are those for construction of a floor without faults', () => {
    const source = floor(free);
    expect(faultsOf(source)).toBe(0);
    for (const page of pagesOf(source)) {
      expect(redWords(page), page.subject).toEqual([]);
      expect(acrossWords(page)).toEqual([]);
    }
  });

  it('are those for comment, which nobody builds from', () => {
    for (const page of pagesOf(floor(held, { designer: 'Planning office', status: 'for-comment' })))
      expect(redWords(page).join(' '), page.subject).not.toContain('faults open');
  });
});
