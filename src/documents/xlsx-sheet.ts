import { type Cell, cellDecimals, columnHead, type Table, type TableColumn } from './table.ts';
import { figureText } from './words.ts';
import { type CellPlace, cellName, cellXml, lineXml } from './xlsx-cells.ts';
import { type PrintedSheet, printSheets, printXml } from './xlsx-print.ts';
import { styleOf } from './xlsx-styles.ts';
import { boldShare, textRows } from './xlsx-width.ts';

/** One sheet of a workbook. */
export interface Sheet extends Pick<Table, 'columns' | 'rows' | 'rowDecimals' | 'sums'>, PrintedSheet {
  /** As `sheetNames` gives it. */
  readonly name: string;
  /** Lines above the head. */
  readonly lead: readonly string[];
  readonly notes: readonly string[];
}

/** Row of the head, from 1. */
export function sheetHeadRow({ lead }: Sheet): number {
  return lead.length === 0 ? 1 : lead.length + 2;
}

/** Whether the first column is printed again on the second of two sheets side by side. */
export function sheetRepeatsFirst({ widths }: Sheet): boolean {
  return widths.length > 1 && printSheets(widths) > 1;
}

/** Range of the head and the rows that can be sorted. Example: "A1:J17" */
export function sheetRange(sheet: Sheet): readonly [from: string, to: string] {
  const row = sheetHeadRow(sheet);
  const last = row + sheet.rows.length - (sheet.sums ?? 0);
  return [cellName({ column: 0, row }), cellName({ column: sheet.columns.length - 1, row: last })];
}

/** @param at place of the sheet in the workbook, from 0 */
export function sheetXml(sheet: Sheet, at: number): string {
  const { widths } = sheet;
  const headRow = sheetHeadRow(sheet);
  const lead = wideLines(sheet.lead, { column: 0, row: 1 }, widths);
  const first = sheetRepeatsFirst(sheet) ? 1 : 0;
  const notes = wideLines(sheet.notes, { column: first, row: headRow + sheet.rows.length + 2 }, widths);
  const merges = [...lead, ...notes].map(({ merge }) => merge).filter((merge) => merge !== '');
  const { fit, setUp } = printXml(sheet);
  return [
    '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">',
    fit,
    `<sheetViews><sheetView workbookViewId="0"${at === 0 ? ' tabSelected="1"' : ''}>${frozenXml(sheet, widths)}</sheetView></sheetViews>`,
    `<sheetFormatPr defaultRowHeight="${lineHeightPt + clearPt}"/>`,
    `<cols>${widths.map((width, i) => `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`).join('')}</cols>`,
    '<sheetData>',
    ...lead.map(({ xml }) => xml),
    headXml(sheet.columns, widths, headRow),
    ...sheet.rows.map((cells, i) =>
      rowXml(
        cells,
        sheet.columns.map((column) => cellDecimals(sheet, column, i)),
        widths,
        headRow + 1 + i,
      ),
    ),
    ...notes.map(({ xml }) => xml),
    '</sheetData>',
    sheet.lead.length > 0 || sheet.rows.length === 0 ? '' : `<autoFilter ref="${sheetRange(sheet).join(':')}"/>`,
    merges.length === 0 ? '' : `<mergeCells count="${merges.length}">${merges.join('')}</mergeCells>`,
    setUp,
    '</worksheet>',
  ].join('');
}

/** The head stays in sight, and the first column where it leaves room for others. */
function frozenXml(sheet: Sheet, widths: readonly number[]): string {
  if (sheet.lead.length > 0) return '';
  const row = sheetHeadRow(sheet);
  const holdsFirst = (widths[0] ?? 0) <= widestHeld && widths.length > 1;
  const corner = cellName({ column: holdsFirst ? 1 : 0, row: row + 1 });
  return holdsFirst
    ? `<pane xSplit="1" ySplit="${row}" topLeftCell="${corner}" activePane="bottomRight" state="frozen"/>`
    : `<pane ySplit="${row}" topLeftCell="${corner}" activePane="bottomLeft" state="frozen"/>`;
}

/** Digits wide. */
const widestHeld = 20;

function headXml(columns: readonly TableColumn[], widths: readonly number[], row: number): string {
  const heads = columns.map(columnHead);
  const cells = heads.map((head, i) =>
    lineXml(head, styleOf(columns[i]?.decimals === null ? 'head' : 'head-figure'), { column: i, row }),
  );
  const lines = heads.reduce((most, head, i) => Math.max(most, textRows(head, (widths[i] ?? 0) / boldShare)), 1);
  return `<row r="${row}" ${heightXml(lines)}>${cells.join('')}</row>`;
}

function rowXml(
  cells: readonly Cell[],
  decimals: readonly (number | null)[],
  widths: readonly number[],
  row: number,
): string {
  const xml = decimals.map((digits, i) => cellXml(cells[i] ?? null, digits, { column: i, row }));
  const lines = cells.reduce<number>(
    (most, cell, i) => (typeof cell === 'string' ? Math.max(most, textRows(cell, widths[i] ?? 0)) : most),
    1,
  );
  return `<row r="${row}" ${heightXml(lines)}>${xml.join('')}</row>`;
}

/** Not all readers find out by themselves how high a row of broken lines is. */
function heightXml(lines: number, share = 1): string {
  return `ht="${figureText(Math.min(mostHeightPt, share * (lines * lineHeightPt + clearPt)), 1)}" customHeight="1"`;
}

/** So wide, in digits, are lines that go over several columns. */
const lineWidth = 100;
const lineHeightPt = 12.5;
const clearPt = 2;
/** The highest row that there is. */
const mostHeightPt = 409;

/** Lines over as many columns as they need to be read. */
function wideLines(
  lines: readonly string[],
  { column, row: firstRow }: CellPlace,
  widths: readonly number[],
): readonly { readonly xml: string; readonly merge: string }[] {
  let width = 0;
  let end = column;
  while (end < widths.length && width < lineWidth) width += widths[end++] ?? 0;
  return lines.map((line, i) => {
    const row = firstRow + i;
    const isTitle = row === 1;
    const share = isTitle ? titleShare : 1;
    const cell = lineXml(line, styleOf(isTitle ? 'title' : 'note'), { column, row });
    return {
      xml: `<row r="${row}" ${heightXml(textRows(line, width / share), share)}>${cell}</row>`,
      merge:
        end - column < 2 ? '' : `<mergeCell ref="${cellName({ column, row })}:${cellName({ column: end - 1, row })}"/>`,
    };
  });
}

/** Size of a title over that of other text. */
const titleShare = 1.5;
