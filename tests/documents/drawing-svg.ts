import type { Drawing } from '../../src/documents/drawing.ts';
import type { SheetContent } from '../../src/documents/sheet-content.ts';
import { sheetPages } from '../../src/documents/sheet-pages.ts';
import { jointStrip } from '../../src/documents/sheet-strip.ts';
import { drawingAsIs } from '../../src/documents/strip-flow.ts';
import { pageSvg } from '../../src/documents/svg.ts';

/** A drawing made by hand on a sheet as it is chosen, its strip beside it, without dimensions. */
export function drawingSvg(drawing: Drawing, content: SheetContent): string {
  const sheets = drawingAsIs(drawing);
  return pageSvg(sheetPages(sheets, jointStrip(sheets, content), { paper: null, scale: null })[0]);
}
