import { type Cell, cellHeld, columnHead, isLikeFormula, type Table } from './table.ts';

/** A table as RFC 4180 has it: comma, CRLF, UTF-8, one head row with the units. A number stays a number, and a text that a spreadsheet could take for a
 *  formula is made harmless. Notes are left out: a file of rows is read by programs. */
export function csvOf({ columns, rows }: Table): string {
  return [columns.map(columnHead), ...rows].map((row) => `${row.map(cellCsv).join(',')}\r\n`).join('');
}

function cellCsv(cell: Cell): string {
  const held = cellHeld(cell);
  if (typeof held !== 'string') return held === null ? '' : String(held);
  const safe = isLikeFormula(held) ? `'${held}` : held;
  return /[",\r\n]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
