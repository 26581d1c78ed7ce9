import { comparisonOf } from './compare.ts';
import { comparisonSheet } from './compare-drawing.ts';
import { comparisonTables } from './compare-tables.ts';
import { csvOf } from './csv.ts';
import type { PlanDocument } from './documents.ts';
import type { PaperSource } from './paper-source.ts';
import { pageSvg } from './svg.ts';

/** What tells of a revision, beside the documents of the plan itself. */
export function comparisonDocuments(
  before: PaperSource,
  now: PaperSource,
): readonly Pick<PlanDocument, 'name' | 'make'>[] {
  return [
    ...comparisonTables(comparisonOf(before, now)).map((table) => ({
      name: `${table.name}.csv`,
      make: () => csvOf(table),
    })),
    { name: 'compare.svg', make: () => pageSvg(comparisonSheet(before, now)) },
  ];
}
