import { papersOf } from '../plan/papers.ts';
import { drawingOf } from './drawing-list.ts';
import type { PaperSource } from './paper-source.ts';
import { sheetContent } from './sheet-content.ts';
import { type Sheets, sheetPages } from './sheet-pages.ts';
import { jointStrip } from './sheet-strip.ts';

/** The joint plan to scale: bays, movement joints and findings, on one sheet or over several. */
export function jointPlanPages(source: PaperSource): Sheets {
  const { file, plan, analysis } = source;
  const drawing = drawingOf(plan, analysis);
  return sheetPages(drawing, jointStrip(drawing, sheetContent(source)), papersOf(file));
}
