import { analysisText } from './analysis-text.ts';
import { baysCsv, jointsCsv, quantitiesCsv } from './csv.ts';
import { drawingOf } from './drawing-list.ts';
import type { PaperFonts, PaperSource } from './paper-source.ts';
import { setOutSheet } from './set-out.ts';
import { sheetContent } from './sheet-content.ts';
import { pageSvg, svgOf } from './svg.ts';
import { cutsCsv, tilesCsv } from './tile-csv.ts';

export interface PlanDocument {
  /** End of the file's name. */
  readonly name: string;
  /** Makes it when it is asked for: text is UTF-8. */
  readonly make: () => string | Uint8Array | Promise<Uint8Array>;
}

/** Every document of a plan. The same source gives the same bytes.
 *  @param _fonts asked for by those that need them */
export function documentsOf(source: PaperSource, _fonts: () => Promise<PaperFonts>): readonly PlanDocument[] {
  const { plan, analysis } = source;
  return [
    { name: 'analysis.json', make: () => analysisText(analysis) },
    { name: 'quantities.csv', make: () => quantitiesCsv(plan, analysis) },
    { name: 'joints.csv', make: () => jointsCsv(plan, analysis) },
    { name: 'bays.csv', make: () => baysCsv(plan, analysis) },
    { name: 'plan.svg', make: () => svgOf(drawingOf(plan, analysis), sheetContent(plan, analysis)) },
    ...(analysis.tiles === null ? [] : tileDocuments(source)),
  ];
}

/** The tiler's papers. */
function tileDocuments({ plan, analysis }: PaperSource): readonly PlanDocument[] {
  return [
    { name: 'set-out.svg', make: () => pageSvg(setOutSheet(plan, analysis)) },
    { name: 'tiles.csv', make: () => tilesCsv(plan, analysis) },
    { name: 'cuts.csv', make: () => cutsCsv(plan, analysis) },
  ];
}
