import type { Drawing } from './drawing.ts';
import { leavesOut, leftRows, unletteredText } from './set-out-left.ts';
import type { TextBlock } from './set-out-text.ts';
import { columnMm, drawingAsIs, type SheetStrip, stripOf } from './strip-flow.ts';
import type { StripPart } from './strip-parts.ts';
import { type Column, headMm, rowMm, rule, textRow } from './strip-pen.ts';
import { textLines, textLinesFirst } from './text-width.ts';
import type { TitleBlock } from './title-block.ts';

interface SetOutContent {
  readonly block: TitleBlock;
  readonly drawing: Drawing;
  readonly blocks: readonly TextBlock[];
}

interface BlockPart extends StripPart {
  readonly block: TextBlock;
}

const indentMm = 2;
const gapMm = 1;

/** The strip of a set-out sheet: as many columns as its text needs. */
export function setOutStrip({ block, drawing, blocks }: SetOutContent): SheetStrip {
  const textsOf = (left: readonly BlockPart[]) => left.map((part) => part.block);
  return stripOf<BlockPart>({
    block,
    facts: [],
    drawing: drawingAsIs(drawing),
    parts: blocks.map(blockPart),
    mayLeave: [(left) => left.length === 0, (left) => !leavesOut(textsOf(left), 'room')],
    leftText: (left) => leftRows(textsOf(left), columnMm),
    note: (unlettered, left) => unletteredText(unlettered.labels, textsOf(left)),
    noteLines: 5,
  });
}

function blockPart(block: TextBlock): BlockPart {
  return { block, heightMm: blockHeight(block, columnMm), ink: (column) => blockInks(column, block) };
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
