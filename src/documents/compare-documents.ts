import { comparisonOf } from './compare.ts';
import { comparisonPages } from './compare-drawing.ts';
import { comparisonForm } from './compare-form.ts';
import { comparisonTables } from './compare-tables.ts';
import { setDocuments, tableDocument } from './documents.ts';
import { formPages } from './form-pages.ts';
import { once } from './page-sets.ts';
import type { PaperFonts, PaperSource } from './paper-source.ts';
import type { PlanDocument } from './plan-document.ts';

/** What tells of a revision, beside the documents of the plan itself.
 *  @param fonts asked for by those that need them */
export function comparisonDocuments(
  before: PaperSource,
  now: PaperSource,
  fonts: () => Promise<PaperFonts>,
): readonly PlanDocument[] {
  const comparison = comparisonOf(before, now);
  const pages = once(() => comparisonPages(before, now));
  const form = once(() => formPages([comparisonForm(comparison)], now));
  return [
    ...setDocuments(now, fonts, {
      stem: 'compare',
      words: 'Revision: what changed, drawn',
      group: 'sheets',
      pages,
      isDrawing: true,
    }),
    ...setDocuments(now, fonts, {
      stem: 'revision',
      words: 'Revision: what changed, in words',
      group: 'lists',
      pages: form,
      isDrawing: false,
    }),
    ...comparisonTables(comparison).map((table) =>
      tableDocument(table.name, `Revision: ${table.title.toLowerCase()}`, () => table),
    ),
  ];
}
