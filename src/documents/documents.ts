import type { Analysis } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { analysisText } from './analysis-text.ts';
import { baysCsv, jointsCsv, quantitiesCsv } from './csv.ts';
import { drawingOf } from './drawing-list.ts';
import { setOutSheet } from './set-out.ts';
import { sheetContent } from './sheet-content.ts';
import { sheetSvg, svgOf } from './svg.ts';
import { cutsCsv, tilesCsv } from './tile-csv.ts';

export interface PlanDocument {
  /** End of the file's name. */
  readonly name: string;
  readonly text: string;
}

/** Every document of a plan. The same plan and analysis give the same bytes. */
export function documentsOf(plan: Plan, analysis: Analysis): readonly PlanDocument[] {
  return [
    { name: 'analysis.json', text: analysisText(analysis) },
    { name: 'quantities.csv', text: quantitiesCsv(plan, analysis) },
    { name: 'joints.csv', text: jointsCsv(plan, analysis) },
    { name: 'bays.csv', text: baysCsv(plan, analysis) },
    { name: 'plan.svg', text: svgOf(drawingOf(plan, analysis), sheetContent(plan, analysis)) },
    ...(analysis.tiles === null ? [] : tileDocuments(plan, analysis)),
  ];
}

/** The tiler's papers. */
function tileDocuments(plan: Plan, analysis: Analysis): readonly PlanDocument[] {
  return [
    { name: 'set-out.svg', text: sheetSvg(setOutSheet(plan, analysis)) },
    { name: 'tiles.csv', text: tilesCsv(plan, analysis) },
    { name: 'cuts.csv', text: cutsCsv(plan, analysis) },
  ];
}
