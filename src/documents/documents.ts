import { papersOf } from '../plan/papers.ts';
import { analysisText } from './analysis-text.ts';
import { csvOf } from './csv.ts';
import { jointPlanPages } from './joint-plan.ts';
import type { PaperFonts, PaperSource } from './paper-source.ts';
import { planTables } from './plan-tables.ts';
import { setOutPages } from './set-out.ts';
import { pageSvg } from './svg.ts';

/** What papers are for: to build by, to order and look up, to record on site, and for other programs. */
export const paperGroups = ['sheets', 'lists', 'records', 'data'] as const;
export type PaperGroup = (typeof paperGroups)[number];

export interface PlanDocument {
  /** End of the file's name. */
  readonly name: string;
  /** What it is, and of what kind of file. */
  readonly words: string;
  readonly group: PaperGroup;
  /** Makes it when it is asked for: text is UTF-8. */
  readonly make: () => string | Uint8Array | Promise<Uint8Array>;
}

/** Every document of a plan. The same source gives the same bytes.
 *  @param _fonts asked for by those that need them */
export function documentsOf(source: PaperSource, _fonts: () => Promise<PaperFonts>): readonly PlanDocument[] {
  const { analysis } = source;
  return [
    {
      name: 'plan.svg',
      words: 'Joint plan, SVG',
      group: 'sheets',
      make: () => pageSvg(jointPlanPages(source)[0]),
    },
    ...(analysis.tiles === null
      ? []
      : [
          {
            name: 'set-out.svg',
            words: 'Set-out sheet of the tiles, SVG',
            group: 'sheets',
            make: () => pageSvg(setOutPages(source)[0]),
          } as const,
        ]),
    { name: 'tables.xlsx', words: 'All lists, spreadsheet', group: 'lists', make: () => workbook(source) },
    ...planTables(source).map(
      ({ name, words, make }): PlanDocument => ({
        name: `${name}.csv`,
        words: `${words}, CSV`,
        group: 'lists',
        make: () => csvOf(make(source)),
      }),
    ),
    { name: 'analysis.json', words: 'Analysis, JSON', group: 'data', make: () => analysisText(analysis) },
  ];
}

async function workbook(source: PaperSource): Promise<Uint8Array> {
  const { tablesXlsx } = await import('./xlsx.ts');
  const { plan, file, date } = source;
  return tablesXlsx(
    planTables(source).map(({ make }) => make(source)),
    { title: plan.name, date: papersOf(file).date ?? date },
  );
}
