import { papersOf } from '../plan/papers.ts';
import { planWrite } from '../plan/write.ts';
import { analysisText } from './analysis-text.ts';
import { csvOf } from './csv.ts';
import { calendarText } from './icalendar.ts';
import { handoverPages } from './page-bundle.ts';
import { type PageSet, pageSets } from './page-sets.ts';
import type { PaperFonts, PaperSource } from './paper-source.ts';
import type { PaperFile, PaperGroup, PlanDocument } from './plan-document.ts';
import { planTables } from './plan-tables.ts';
import { pageSvg } from './svg.ts';
import type { Table } from './table.ts';
import { cautionsOf } from './words.ts';

type Fonts = () => Promise<PaperFonts>;

/** Every document of a plan. The same source gives the same bytes.
 *  @param fonts asked for by those that need them */
export function documentsOf(source: PaperSource, fonts: Fonts): readonly PlanDocument[] {
  const sets = pageSets(source);
  const calendar = calendarText(source);
  return [
    {
      ...pdfDocument(source, fonts, {
        name: 'papers.pdf',
        words: 'All sheets and records in one, PDF',
        group: 'sheets',
        pages: (told) => handoverPages(source, sets, told),
      }),
      gathers: true,
    },
    ...sets.flatMap((set) => setDocuments(source, fonts, set)),
    { name: 'tables.xlsx', words: 'All lists, spreadsheet', group: 'lists', make: () => workbook(source) },
    ...planTables(source).map(({ name, words, make }): PlanDocument => tableDocument(name, words, () => make(source))),
    ...(calendar === null ? [] : [fileDocument('records.ics', 'Calendar of the work', 'records', () => calendar)]),
    fileDocument('analysis.json', 'Analysis, JSON', 'data', () => analysisText(source.analysis)),
    fileDocument('plan.json', 'Plan file, JSON', 'data', () => planWrite(source.file)),
  ];
}

/** Pages are laid out, then written: so much of the time goes into the first, by the joint plan of a thousand rooms. */
const laidShare = 0.6;

/** A set of pages as PDF, and its drawings sheet by sheet as SVG. */
export function setDocuments(source: PaperSource, fonts: Fonts, set: PageSet): readonly PlanDocument[] {
  const { stem, words, group, pages, isDrawing } = set;
  const pdf = pdfDocument(source, fonts, { name: `${stem}.pdf`, words: `${words}, PDF`, group, pages });
  if (!isDrawing) return [pdf];
  const svg: PlanDocument = {
    name: `${stem}.svg`,
    words: `${words}, SVG`,
    group,
    make: async (told = () => {}) => {
      const { svgFonts } = await import('./svg-fonts.ts');
      const planText = planWrite(source.file);
      const faces = await fonts();
      const laid = pages((share) => told(share * laidShare));
      return laid.map((page, i) => {
        told(laidShare + (1 - laidShare) * (i / laid.length));
        return {
          name: i === 0 ? `${stem}.svg` : `${stem}-${i + 1}.svg`,
          content: pageSvg(page, { planText, fontFaces: svgFonts(page, faces) }),
        };
      });
    },
  };
  return [pdf, svg];
}

/** A table as a document of its own. */
export function tableDocument(name: string, words: string, make: () => Table): PlanDocument {
  return fileDocument(`${name}.csv`, `${words}, CSV`, 'lists', () => csvOf(make()));
}

function fileDocument(name: string, words: string, group: PaperGroup, make: () => string): PlanDocument {
  return { name, words, group, make: async () => [{ name, content: make() }] };
}

function pdfDocument(
  { file, plan, date }: PaperSource,
  fonts: Fonts,
  { name, words, group, pages }: Pick<PlanDocument, 'name' | 'words' | 'group'> & Pick<PageSet, 'pages'>,
): PlanDocument {
  return {
    name,
    words,
    group,
    make: async (told = () => {}) => {
      const { pagesPdf } = await import('./pdf.ts');
      const about = { title: plan.name, date: papersOf(file).date ?? date, planText: planWrite(file) };
      const laid = pages((share) => told(share * laidShare));
      const content = await pagesPdf(laid, { ...about, fonts: await fonts() }, (share) =>
        told(laidShare + (1 - laidShare) * share),
      );
      return [{ name, content }];
    },
  };
}

async function workbook(source: PaperSource): Promise<readonly PaperFile[]> {
  const { tablesXlsx } = await import('./xlsx.ts');
  const { plan, analysis, file, date } = source;
  const papers = papersOf(file);
  const tables = planTables(source).map(({ make }) => make(source));
  const cautions = cautionsOf(papers, analysis);
  const content = await tablesXlsx(tables, { title: plan.name, date: papers.date ?? date, cautions });
  return [{ name: 'tables.xlsx', content }];
}
