import type { Point } from '../geometry/point.ts';
import { type PaperStatus, papersOf, type Revision } from '../plan/papers.ts';
import type { Ink } from './ink.ts';
import type { PaperSource } from './paper-source.ts';
import type { SheetLayout } from './sheet.ts';
import { type Column, padMm, penStroke, rowMm, textAt } from './strip-pen.ts';
import type { TextStyleName } from './styles.ts';
import { textCut, textLines, textLinesFirst, textWidthMm } from './text-width.ts';
import { cautionsOf, faultsOpen, notChecked, oneLine, statusNames, textBefore } from './words.ts';

/** What the title block of a sheet says. */
export interface TitleBlock {
  readonly project: string;
  readonly title: string;
  readonly subject: string;
  readonly number: string;
  readonly status: PaperStatus;
  readonly date: string;
  /** Empty: nobody is responsible. */
  readonly designer: string;
  /** What keeps a sheet for construction from being built from; null where nothing does. */
  readonly faults: string | null;
  readonly revisions: readonly Revision[];
  /** Null: not known. */
  readonly northDeg: number | null;
  readonly cautions: readonly string[];
}

/** Which sheet of how many. */
export interface SheetCount {
  readonly page: number;
  readonly of: number;
}

export function titleBlockOf({ file, plan, analysis, date }: PaperSource, subject: string): TitleBlock {
  const papers = papersOf(file);
  const { status, northDeg } = papers;
  return {
    project: oneLine(papers.project),
    title: oneLine(plan.name),
    subject,
    number: oneLine(papers.number),
    status,
    date: papers.date ?? date,
    designer: oneLine(papers.designer),
    faults: faultsOpen(papers, analysis),
    revisions: papers.revisions.map(({ mark, date: day, text, by }) => ({
      mark: oneLine(mark),
      date: oneLine(day),
      text: oneLine(text),
      by: oneLine(by),
    })),
    northDeg,
    cautions: cautionsOf(papers, analysis),
  };
}

/** What stands in large letters across a sheet that nobody answers for, or that has faults and is there to build from; null where it may be. */
export function acrossWords({ designer, faults }: Pick<TitleBlock, 'designer' | 'faults'>): string | null {
  if (designer !== '') return faults;
  return faults === null ? notChecked : `${notChecked}. ${faults}`;
}

/** Sheet or page and how many there are, the number of the papers before it. Examples: "B-12, sheet 1 of 6", "Page 1 of 6" */
export function sheetNumberText(
  { number }: Pick<TitleBlock, 'number'>,
  { page, of }: SheetCount,
  {
    what,
    style,
    widthMm,
  }: { readonly what: 'Sheet' | 'Page'; readonly style: TextStyleName; readonly widthMm: number },
): string {
  const count = `${page} of ${of}`;
  if (number === '') return `${what} ${count}`;
  const counted = `, ${what.toLowerCase()} ${count}`;
  return `${textBefore(textCut(number, style, widthMm - textWidthMm(counted, style)))}${counted}`;
}

interface BlockCell {
  readonly words: string;
  readonly lines: readonly string[];
  readonly style: TextStyleName;
  /** Set under the lines in the usual letters. */
  readonly under?: readonly string[];
  /** Of the width of the block. */
  readonly share: number;
}

const wordsMm = 3.4;
const cellPadMm = 1;
const titleRowMm = rowMm * 1.4;
const insetMm = 2;
const frameStroke = penStroke(0.25, 'ink');

function cellRows(block: TitleBlock, { scale, paper }: SheetLayout, count: SheetCount, widthMm: number): BlockCell[][] {
  const cell = (words: string, text: string, share = 1, most = 1, style: TextStyleName = 'sheet-text'): BlockCell => {
    const lines = textLinesFirst(text, style, widthMm * share - 2 * insetMm, most);
    return { words, lines: lines.length === 0 ? ['\u2013'] : lines, style, share };
  };
  const designer =
    block.designer === ''
      ? cell('Responsible designer: none named', notChecked, 1, 1, 'sheet-fault')
      : cell('Responsible designer', block.designer, 1, 2);
  const numberShare = 0.48;
  const widthOfNumberMm = widthMm * numberShare - 2 * insetMm;
  const number = sheetNumberText(block, count, { what: 'Sheet', style: 'sheet-text', widthMm: widthOfNumberMm });
  return [
    ...(block.project === '' ? [] : [[cell('Project', block.project, 1, 2)]]),
    [
      {
        ...cell('Plan', block.title, 1, 2, 'sheet-title'),
        under: textLinesFirst(block.subject, 'sheet-text', widthMm - 2 * insetMm, 2),
      },
    ],
    [cell('Status', statusNames[block.status], 0.6), cell('Date', block.date, 0.4)],
    ...(block.faults === null ? [] : [[cell('Findings', block.faults, 1, 2, 'sheet-fault')]]),
    [designer],
    [cell('Scale', `1 : ${scale}`, 0.24), cell('Paper', paper, 0.28, 2), cell('Number', number, numberShare)],
  ];
}

function cellRowMm(cells: readonly BlockCell[]): number {
  return Math.max(...cells.map(cellMm));
}

function cellMm({ lines, style, under = [] }: BlockCell): number {
  return wordsMm + lines.length * lineMm(style) + under.length * rowMm + cellPadMm;
}

function lineMm(style: TextStyleName): number {
  return style === 'sheet-title' ? titleRowMm : rowMm;
}

/** Ruled cells across the whole width of a strip's column, ending at its foot.
 *  @returns how high they are, and their inks */
export function titleBlockCells(
  block: TitleBlock,
  layout: SheetLayout,
  count: SheetCount,
  column: Pick<Column, 'left' | 'width'>,
): { readonly heightMm: number; readonly ink: (column: Column) => void } {
  const [left, width] = [column.left - padMm, column.width + 2 * padMm];
  const rows = cellRows(block, layout, count, width);
  const heightMm = rows.reduce((sum, cells) => sum + cellRowMm(cells), 0);
  const ink = (at: Column) => {
    let top = at.y;
    for (const cells of rows) {
      const height = cellRowMm(cells);
      at.inks.push(line([left, top], [left + width, top]));
      let x = left;
      for (const [i, cell] of cells.entries()) {
        if (i > 0) at.inks.push(line([x, top], [x, top + height]));
        cellInks(at, cell, [x + insetMm, top]);
        x += cell.share * width;
      }
      top += height;
    }
    at.y = top;
  };
  return { heightMm, ink };
}

function cellInks(column: Column, { words, lines, style, under = [] }: BlockCell, [x, top]: Point): void {
  textAt(column, words, 'sheet-small', [x, top + wordsMm / 2 + 0.4], 'start');
  for (const [i, text] of lines.entries())
    textAt(column, text, style, [x, top + wordsMm + (i + 0.5) * lineMm(style)], 'start');
  const y = top + wordsMm + lines.length * lineMm(style);
  for (const [i, text] of under.entries()) textAt(column, text, 'sheet-text', [x, y + (i + 0.5) * rowMm], 'start');
}

function line(from: Point, to: Point): Ink {
  return { ink: 'path', lines: [[from, to]], closed: false, fill: null, stroke: frameStroke };
}

/** Revisions that a block shows; the newest, which stand last, before the older. */
const mostRevisions = { usual: 5, low: 2 } as const;
/** A sheet lower than this, as A4 lying, has room for fewer. */
const lowSheetMm = 250;
/** A change of so many lines stands in its column; a longer one under its row, across the whole table. */
const mostInColumn = 2;
/** Lines of a longer change; what is longer still stands in full in the list. */
const mostUnder = { low: 2, usual: 6 } as const;
const listed = 'Whole text in the list of revisions.';
const revisionColumns = { mark: 0, date: 11, text: 34, by: 66 } as const;

function linesUnder(text: string, width: number, most: number): readonly string[] {
  const lines = textLines(text, 'sheet-text', width);
  return lines.length <= most ? lines : [...textLinesFirst(text, 'sheet-text', width, most - 1), listed];
}

/** Table of revisions, the newest last; says how many earlier ones have no room. */
export function revisionRows(
  { revisions }: Pick<TitleBlock, 'revisions'>,
  { heightMm: sheetMm }: Pick<SheetLayout, 'heightMm'>,
  width: number,
): { readonly heightMm: number; readonly ink: (column: Column) => void } {
  if (revisions.length === 0) return { heightMm: 0, ink: () => {} };
  const size = sheetMm < lowSheetMm ? 'low' : 'usual';
  const shown = revisions.slice(-mostRevisions[size]);
  const earlier = revisions.length - shown.length;
  const rows = shown.map(({ mark, date, text, by }) => {
    const lines = textLines(text, 'sheet-text', revisionColumns.by - revisionColumns.text - 1.5);
    const isLong = lines.length > mostInColumn;
    return {
      mark: textCut(mark, 'sheet-head', revisionColumns.date - 1.5),
      date: textCut(date, 'sheet-text', revisionColumns.text - revisionColumns.date - 1.5),
      text: isLong ? [] : lines,
      under: isLong ? linesUnder(text, width - revisionColumns.date, mostUnder[size]) : [],
      by: textCut(by, 'sheet-text', width - revisionColumns.by),
    };
  });
  const heights = rows.map(({ text, under }) => (Math.max(1, text.length) + under.length) * rowMm);
  const heightMm = wordsMm + 1 + (earlier > 0 ? rowMm : 0) + heights.reduce((sum, each) => sum + each, 0) + 1;
  const ink = (column: Column) => {
    const at = (x: number, text: string, style: TextStyleName, y: number) => {
      if (text !== '') textAt(column, text, style, [column.left + x, y], 'start');
    };
    const heads = { mark: 'Rev.', date: 'Date', text: 'Change', by: 'By' } as const;
    for (const key of ['mark', 'date', 'text', 'by'] as const)
      at(revisionColumns[key], heads[key], 'sheet-small', column.y + wordsMm / 2);
    column.y += wordsMm + 1;
    if (earlier > 0) {
      const words = `${earlier} earlier ${earlier === 1 ? 'revision' : 'revisions'} in the list of revisions`;
      at(0, words, 'sheet-text', column.y + rowMm / 2);
      column.y += rowMm;
    }
    for (const [i, row] of rows.entries()) {
      const y = column.y + rowMm / 2;
      at(revisionColumns.mark, row.mark, 'sheet-head', y);
      at(revisionColumns.date, row.date, 'sheet-text', y);
      for (const [k, text] of row.text.entries()) at(revisionColumns.text, text, 'sheet-text', y + k * rowMm);
      for (const [k, text] of row.under.entries()) at(revisionColumns.date, text, 'sheet-text', y + (k + 1) * rowMm);
      at(revisionColumns.by, row.by, 'sheet-text', y);
      column.y += heights[i] ?? 0;
    }
    column.y += 1;
  };
  return { heightMm, ink };
}
