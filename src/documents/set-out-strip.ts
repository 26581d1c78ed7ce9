import type { Box } from '../geometry/ring.ts';
import type { Drawing, LabelItem } from './drawing.ts';
import type { Ink } from './ink.ts';
import { legendOf } from './legend.ts';
import { leavesOut, leftRows, unletteredText } from './set-out-left.ts';
import type { TextBlock } from './set-out-text.ts';
import { type SheetLayout, sheetLayout, sheetsAtScale } from './sheet.ts';
import type { SheetStrip } from './sheet-inks.ts';
import { footRows, legend, scaleBar, titleBlock } from './strip-parts.ts';
import { type Column, columnIn, headMm, padMm, rowMm, rule, textRow } from './strip-pen.ts';
import { textLines, textLinesFirst } from './text-width.ts';

interface StripContent {
  readonly title: string;
  readonly drawing: Drawing;
  readonly blocks: readonly TextBlock[];
}

const subject = 'Setting out of the tiles';
const indentMm = 2;
const gapMm = 1;
/** Room for what is said at the foot, so that the length of the strip is known before labels are seated. */
const footLines = 10;
/** ... and above it, where the strip leaves anything out, for saying so. */
const leftLines = 3;
/** As many columns as the strip may have before it takes the room of the drawing. */
const mostColumns = 3;

/** The strip of a set-out sheet: as many columns as its text needs. */
export function setOutStrip({ title, drawing, blocks }: StripContent): SheetStrip {
  return {
    title,
    subject,
    layout(box: Box) {
      // a long strip takes a larger paper, not a smaller scale
      const sheets = sheetsAtScale(box, sheetLayout(box).scale, mostColumns);
      return (
        sheets.find((layout) => flow(layout).left.length === 0) ??
        sheets.find((layout) => !leavesOut(flow(layout).left, 'room')) ??
        sheetLayout(box, mostColumns)
      );
    },
    inks: (layout, unlettered) => flow(layout, unlettered).inks,
  };

  function flow(
    layout: SheetLayout,
    unlettered: readonly LabelItem[] = [],
    isFull = false,
  ): { inks: readonly Ink[]; left: readonly TextBlock[] } {
    const inks: Ink[] = [];
    const columns = columnsOf(layout);
    const { strip } = layout;
    const width = strip.width / columns;
    const columnAt = (i: number) => columnIn({ ...strip, x: strip.x + i * width, width }, inks);
    let column = columnAt(0);
    const footTop = strip.y + strip.height - padMm - footLines * rowMm;
    titleBlock(column, { title, subject, facts: [] }, layout);
    scaleBar(column, layout.scale);
    legend(column, legendOf(drawing, 1 / layout.scale));
    const reserveMm = isFull ? leftLines * rowMm : 0;
    const bottomOf = (i: number) => (i === columns - 1 ? footTop - padMm - reserveMm : strip.y + strip.height - padMm);
    let at = 0;
    let shown = 0;
    for (const block of blocks) {
      const height = blockHeight(block, column.width);
      if (column.y + height > bottomOf(at) && at < columns - 1) column = columnAt(++at);
      if (column.y + height > bottomOf(at)) break;
      blockInks(column, block);
      shown++;
    }
    if (shown < blocks.length && !isFull) return flow(layout, unlettered, true);
    const left = blocks.slice(shown);
    for (const row of leftRows(left, column.width)) textRow(column, row, 'sheet-head');
    column = columnAt(columns - 1);
    column.y = footTop;
    rule(column, -padMm / 2);
    const note = unletteredText(unlettered, left);
    for (const row of footRows(column.width, note)) textRow(column, row, 'sheet-text');
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

/** A field of many rooms is known by the first of them. */
const mostHeadLines = 3;

function headRows({ head }: TextBlock, width: number): readonly string[] {
  return textLinesFirst(head, 'sheet-head', width, mostHeadLines);
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
