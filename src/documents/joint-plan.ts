import { papersOf } from '../plan/papers.ts';
import type { Drawing } from './drawing.ts';
import { floorDrawing } from './floor-drawing.ts';
import { dimensionedDrawing } from './joint-dimensions.ts';
import type { PaperSource } from './paper-source.ts';
import type { ToldShare } from './plan-document.ts';
import { sheetContent } from './sheet-content.ts';
import { type Sheets, sheetPages } from './sheet-pages.ts';
import { isPin, pinsStacked } from './sheet-pins.ts';
import { jointStrip } from './sheet-strip.ts';
import type { SheetDrawing } from './strip-flow.ts';

/** The joint plan to scale: bays, movement joints with what they are set out by, and findings, on one sheet or over several. */
export function jointPlanPages(source: PaperSource, told?: ToldShare): Sheets {
  const drawing = jointPlanDrawing(source);
  return sheetPages(drawing, jointStrip(drawing, sheetContent(source)), papersOf(source.file), told);
}

function jointPlanDrawing(source: PaperSource): SheetDrawing {
  const all = floorDrawing(source);
  const made = new Map<number, Drawing>();
  return {
    // pins would hide it: they stand on the sheets that it is the key to
    small: { ...all, items: all.items.filter((item) => !isPin(item)) },
    at(scale) {
      const known = made.get(scale) ?? pinsStacked(dimensionedDrawing(source, all, { scale }), scale);
      made.set(scale, known);
      return known;
    },
  };
}
