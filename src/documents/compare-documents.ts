import { comparisonOf } from './compare.ts';
import { comparisonPages } from './compare-drawing.ts';
import { comparisonTables } from './compare-tables.ts';
import { csvOf } from './csv.ts';
import type { PlanDocument } from './documents.ts';
import type { PaperFonts, PaperSource } from './paper-source.ts';
import { pageSvg } from './svg.ts';

/** What tells of a revision, beside the documents of the plan itself.
 *  @param _fonts asked for by those that need them */
export function comparisonDocuments(
  before: PaperSource,
  now: PaperSource,
  _fonts: () => Promise<PaperFonts>,
): readonly PlanDocument[] {
  return [
    {
      name: 'compare.svg',
      words: 'Revision: the drawing, SVG',
      group: 'sheets',
      make: () => pageSvg(comparisonPages(before, now)[0]),
    },
    ...comparisonTables(comparisonOf(before, now)).map(
      (table): PlanDocument => ({
        name: `${table.name}.csv`,
        words: `Revision: ${table.title.toLowerCase()}, CSV`,
        group: 'lists',
        make: () => csvOf(table),
      }),
    ),
  ];
}
