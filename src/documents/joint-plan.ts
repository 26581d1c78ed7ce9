import { papersOf } from '../plan/papers.ts';
import type { Drawing } from './drawing.ts';
import { drawingOf } from './drawing-list.ts';
import { dimensionedDrawing } from './joint-dimensions.ts';
import type { PaperSource } from './paper-source.ts';
import { sheetContent } from './sheet-content.ts';
import { type Sheets, sheetPages } from './sheet-pages.ts';
import { jointStrip } from './sheet-strip.ts';
import type { SheetDrawing } from './strip-flow.ts';

/** The joint plan to scale: bays, movement joints with what they are set out by, and findings, on one sheet or over several. */
export function jointPlanPages(source: PaperSource): Sheets {
  const drawing = jointPlanDrawing(source);
  return sheetPages(drawing, jointStrip(drawing, sheetContent(source)), papersOf(source.file));
}

function jointPlanDrawing(source: PaperSource): SheetDrawing {
  const small = drawingOf(source.plan, source.analysis);
  const made = new Map<number, Drawing>();
  return {
    small,
    at(scale) {
      const known = made.get(scale) ?? dimensionedDrawing(source, small, { scale });
      made.set(scale, known);
      return known;
    },
  };
}
