import type { Drawing } from './drawing.ts';
import type { Ink } from './ink.ts';
import { legendOf } from './legend.ts';
import type { SheetLayout } from './sheet.ts';
import type { NumberedFinding, SheetContent } from './sheet-content.ts';
import { footRows, legend, scaleBar, titleBlock } from './strip-parts.ts';
import { type Column, columnIn, padMm, rowMm, rule, textRow } from './strip-pen.ts';
import { textLines } from './text-width.ts';
import { countText, findingText } from './words.ts';

/** The strip beside the drawing: title, facts, scale bar, legend, findings as far as there is room, cautions at the foot. */
export function stripInks(
  drawing: Drawing,
  content: SheetContent,
  layout: SheetLayout,
  unlettered: number,
): readonly Ink[] {
  const { strip } = layout;
  const column = columnIn(strip);
  titleBlock(column, content, layout);
  scaleBar(column, layout.scale);
  legend(column, legendOf(drawing, 1 / layout.scale));

  const note = unlettered === 0 ? null : `Without room on the drawing: ${unlettered} of the names. See the lists.`;
  const foot = footRows(column.width, note);
  const footTop = strip.y + strip.height - padMm - foot.length * rowMm;
  findingList(column, content.findings, footTop - padMm);
  column.y = footTop;
  rule(column, -padMm / 2);
  for (const row of foot) textRow(column, row, 'sheet-text');
  return column.inks;
}

/** Faults first and in the order of the analysis; says how many have found no room. */
function findingList(column: Column, findings: readonly NumberedFinding[], bottom: number): void {
  rule(column, -1);
  column.y += 1;
  const faults = findings.filter(({ finding }) => finding.severity === 'fault');
  const others = findings.filter(({ finding }) => finding.severity !== 'fault');
  const cautions = findings.filter(({ finding }) => finding.severity === 'caution').length;
  textRow(
    column,
    faults.length === 0 ? 'No fault found' : countText('fault', faults.length),
    faults.length === 0 ? 'sheet-head' : 'sheet-fault',
  );
  textRow(column, `${countText('caution', cautions)}, ${countText('note', others.length - cautions)}`, 'sheet-text');
  const all = [...faults, ...others];
  for (const [i, { number, finding }] of all.entries()) {
    const rows = textLines(findingText(finding), 'sheet-text', column.width - 8);
    const last = i === all.length - 1;
    if (column.y + (rows.length + (last ? 0 : 1)) * rowMm > bottom) {
      textRow(column, `${all.length - i} more in the analysis`, 'sheet-head');
      return;
    }
    const top = column.y;
    textRow(column, String(number), finding.severity === 'fault' ? 'sheet-fault' : 'sheet-head');
    column.y = top;
    for (const row of rows) textRow(column, row, 'sheet-text', rowMm, 8);
    column.y += 0.8;
  }
}
