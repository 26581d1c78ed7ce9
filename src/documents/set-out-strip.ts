import type { Box } from '../geometry/ring.ts';
import type { Drawing } from './drawing.ts';
import type { Ink } from './ink.ts';
import { legendOf } from './legend.ts';
import type { TextBlock } from './set-out-text.ts';
import { type SheetLayout, sheetLayout } from './sheet.ts';
import type { SheetStrip } from './sheet-inks.ts';
import { footRows, legend, scaleBar, titleBlock } from './strip-parts.ts';
import { type Column, columnIn, headMm, padMm, rowMm, rule, textRow } from './strip-pen.ts';
import { textLines } from './text-width.ts';

interface StripContent {
  readonly title: string;
  readonly drawing: Drawing;
  readonly blocks: readonly TextBlock[];
}

const subject = 'Setting out of the tiles';
const indentMm = 4;
const gapMm = 1;
/** Room for what is said at the foot, so that the length of the strip is known before labels are seated. */
const footLines = 7;
/** As many columns as the strip may have before it takes the room of the drawing. */
const mostColumns = 3;

/** The strip of a set-out sheet: as many columns as its text needs. */
export function setOutStrip({ title, drawing, blocks }: StripContent): SheetStrip {
  return {
    title,
    subject,
    layout(box: Box) {
      let layout = sheetLayout(box);
      for (let columns = 2; columns <= mostColumns && flow(layout, columns - 1).left > 0; columns++)
        layout = sheetLayout(box, columns);
      return layout;
    },
    inks: (layout, unlettered) => flow(layout, columnsOf(layout), unlettered).inks,
  };

  function flow(layout: SheetLayout, columns: number, unlettered = 0): { inks: readonly Ink[]; left: number } {
    const inks: Ink[] = [];
    const { strip } = layout;
    const width = strip.width / columns;
    const columnAt = (i: number) => columnIn({ ...strip, x: strip.x + i * width, width }, inks);
    let column = columnAt(0);
    titleBlock(column, { title, subject, facts: [] }, layout);
    scaleBar(column, layout.scale);
    legend(column, legendOf(drawing, 1 / layout.scale));
    const foot = footRows(column.width, unlettered, 'names and cut sizes');
    const footTop = strip.y + strip.height - padMm - Math.max(foot.length, footLines) * rowMm;
    let at = 0;
    let left = blocks.length;
    for (const block of blocks) {
      const bottom = at === columns - 1 ? footTop - padMm - rowMm : strip.y + strip.height - padMm;
      const height = blockHeight(block, column.width);
      if (column.y + height > bottom && at < columns - 1) {
        at++;
        column = columnAt(at);
      } else if (column.y + height > bottom) break;
      blockInks(column, block);
      left--;
    }
    if (left > 0) textRow(column, `${left} more in joints.csv and tiles.csv`, 'sheet-head');
    column = columnAt(columns - 1);
    column.y = footTop;
    rule(column, -padMm / 2);
    for (const row of foot) textRow(column, row, 'sheet-text');
    return { inks, left };
  }
}

const columnMm = sheetLayout({ minX: 0, minY: 0, maxX: 1, maxY: 1 }).strip.width;

function columnsOf({ strip }: SheetLayout): number {
  return Math.round(strip.width / columnMm);
}

function blockRows({ lines }: TextBlock, width: number): readonly string[] {
  return lines.flatMap((line) => textLines(line, 'sheet-text', width - indentMm));
}

function factRows({ facts }: TextBlock, width: number) {
  return facts.map(([head, text]) => ({ head, rows: textLines(text, 'sheet-text', width - headMm) }));
}

function headRows({ head }: TextBlock, width: number): readonly string[] {
  return textLines(head, 'sheet-head', width);
}

function blockHeight(block: TextBlock, width: number): number {
  const facts = factRows(block, width).reduce((sum, { rows }) => sum + rows.length, 0);
  const rows = headRows(block, width).length + blockRows(block, width).length + facts;
  return rows * rowMm + gapMm + (block.opens ? 2 * gapMm : 0);
}

function blockInks(column: Column, block: TextBlock): void {
  if (block.opens) {
    rule(column, 0);
    column.y += 2 * gapMm;
  }
  for (const row of headRows(block, column.width)) textRow(column, row, 'sheet-head');
  for (const { head, rows } of factRows(block, column.width)) {
    const top = column.y;
    textRow(column, head, 'sheet-text');
    column.y = top;
    for (const row of rows) textRow(column, row, 'sheet-text', rowMm, headMm);
  }
  for (const row of blockRows(block, column.width)) textRow(column, row, 'sheet-text', rowMm, indentMm);
  column.y += gapMm;
}
