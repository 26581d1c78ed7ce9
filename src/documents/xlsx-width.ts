import { type Cell, cellDecimals, cellHeld, columnHead, type Table } from './table.ts';
import { textLines, textWidthMm } from './text-width.ts';

/** Widths of columns by what stands in them, in digits of the usual text, as the file format has them. */

const digitMm = textWidthMm('0', 'sheet-text');
/** A text stands off the figure in the column before it. */
const textIndent = 1.5;
/** More of a text does not make its column wider. */
const longestRead = 200;
/** More of a text does not make its row higher: none is that high. */
const mostRead = 5000;
const leastWidth = 6;
const mostWidth = 26;
/** Of a column of long texts, which would make its rows high. */
const mostLongWidth = 40;
const leastToFill = 11;
/** Kept clear on both sides. */
const clear = 1.5;
export const boldShare = 1.1;
/** A head stands in so many lines at the most, where its words let it. */
const headLines = 3;
/** The button of the filter stands in the head. */
const button = 2.5;

/** @returns digits */
function textWidth(text: string): number {
  return textWidthMm(text.slice(0, longestRead), 'sheet-text') / digitMm;
}

/** @param width digits
 *  @returns how many lines a text takes where it is broken to a width */
export function textRows(text: string, width: number): number {
  const room = Math.max(1, width - clear / 2 - textIndent) * digitMm;
  return text
    .slice(0, mostRead)
    .split('\n')
    .reduce(
      (rows, line) =>
        rows + (textWidthMm(line, 'sheet-text') <= room ? 1 : Math.max(1, textLines(line, 'sheet-text', room).length)),
      0,
    );
}

export function columnWidths(table: Pick<Table, 'columns' | 'rows' | 'rowDecimals'>): readonly number[] {
  return table.columns.map((column, i) => {
    const cells = table.rows.map((row, k) => cellWidth(row[i] ?? null, cellDecimals(table, column, k)));
    const widest = cells.reduce((most, width) => Math.max(most, width), 0);
    const least = column.toFill === undefined ? leastWidth : leastToFill;
    const most = widest > 2 * mostWidth ? mostLongWidth : mostWidth;
    const indent = column.decimals === null ? textIndent : 0;
    const width = Math.max(least, headWidth(columnHead(column)), Math.min(most, widest)) + clear + indent;
    return Math.ceil(width * 10) / 10;
  });
}

function cellWidth(cell: Cell, decimals: number | null): number {
  const held = cellHeld(cell);
  if (held === null) return 0;
  if (typeof held === 'number') return textWidth(decimals === null ? String(held) : held.toFixed(decimals));
  return held.split('\n').reduce((most, line) => Math.max(most, textWidth(line)), 0);
}

function headWidth(head: string): number {
  const words = head.split(' ').map((word) => textWidth(word));
  const longest = words.reduce((most, width) => Math.max(most, width), 0);
  const shared = textWidth(head) / headLines;
  return Math.min(mostWidth, Math.max(longest, shared) * boldShare + button);
}
