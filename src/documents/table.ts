import type { DrawingRef } from './drawing.ts';

/** A table as all its writers take it: CSV, spreadsheet and printed page. Text and numbers are kept apart, so that a number stays a number and a text
 *  never becomes a formula. */
export interface Table {
  /** Of file and spreadsheet tab: lower case and hyphens, at most 31 characters. */
  readonly name: string;
  readonly title: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly Cell[])[];
  /** What each row stands for on the drawing, row by row; left out where rows stand for nothing. */
  readonly refs?: readonly (readonly DrawingRef[])[];
  /** Digits of each row in the columns that leave them to the row, where rows have units of their own. */
  readonly rowDecimals?: readonly number[];
  /** So many of the last rows add up those above, and are not sorted with them. */
  readonly sums?: number;
  /** What holds for the whole table: allowances, what is not counted. */
  readonly notes: readonly string[];
}

export type Cell = string | number | null;

export interface TableColumn {
  readonly head: string;
  /** Such as mm or m2; null where the column has none. */
  readonly unit: string | null;
  /** Digits behind the decimal mark in print and in the spreadsheet's format; null: a column of text. */
  readonly decimals: number | null;
  /** To be filled in by hand: printed with room to write. */
  readonly toFill?: true;
  /** In files alone, which are read row by row without the notes: on paper the notes below say it once. */
  readonly unprinted?: true;
  /** The row's own digits go before those of the column. */
  readonly byRow?: true;
}

/** A column of a table that is made row by row. */
export interface ColumnOf<Row> extends TableColumn {
  readonly cell: (row: Row) => Cell;
}

/** @param columns, rows of one kind */
export function tableOf<Row>(
  about: Pick<Table, 'name' | 'title' | 'sums'> & { readonly notes?: readonly string[] },
  columns: readonly ColumnOf<Row>[],
  rows: readonly Row[],
  refs?: (row: Row) => readonly DrawingRef[],
): Table {
  return {
    ...about,
    notes: about.notes ?? [],
    columns: columns.map(({ cell: _, ...column }) => column),
    rows: rows.map((row) => columns.map(({ cell }) => cell(row))),
    ...(refs && { refs: rows.map(refs) }),
  };
}

/** A table as it is printed. */
export function tablePrinted(table: Table): Table {
  const isPrinted = (_: unknown, i: number) => table.columns[i]?.unprinted === undefined;
  if (table.columns.every(isPrinted)) return table;
  return { ...table, columns: table.columns.filter(isPrinted), rows: table.rows.map((row) => row.filter(isPrinted)) };
}

/** Digits of a cell; null: text. */
export function cellDecimals(
  { rowDecimals }: Pick<Table, 'rowDecimals'>,
  { decimals, byRow }: TableColumn,
  row: number,
): number | null {
  return byRow ? (rowDecimals?.[row] ?? decimals) : decimals;
}

/** A column of words. */
export function columnText<Row>(head: string, cell: (row: Row) => string | null): ColumnOf<Row> {
  return { head, unit: null, decimals: null, cell };
}

/** A column of figures. */
export function columnFigure<Row>(
  head: string,
  unit: string | null,
  decimals: number,
  cell: (row: Row) => number | null,
): ColumnOf<Row> {
  return { head, unit, decimals, cell };
}

/** The same with digits that each row has of its own. */
export function columnByRow<Row>(column: ColumnOf<Row>): ColumnOf<Row> {
  return { ...column, byRow: true };
}

/** Head as CSV, spreadsheet and print have it. Example: "Length (m)" */
export function columnHead({ head, unit }: Pick<TableColumn, 'head' | 'unit'>): string {
  return unit === null ? head : `${head} (${unit})`;
}

/** Most of what is told, and nothing in it needs what follows. */
const usual = /^[ -~]*$/u;
/** Control characters that no table holds: all but the line ends. */
const unheld = /(?![\r\n])\p{Cc}/gu;
/** Halves of a character that is written in two, and what is no character. */
const broken = /[\p{Cs}\ufffe\uffff]/gu;

/** Digits that a number is written with at most: a millionth is finer than any figure here and leaves no 0.30000000000000004. */
export const heldDecimals = 6;

/** A cell as every file can hold it: control characters are spaces, broken characters are told by the sign for them; what is no
 *  number is empty. */
export function cellHeld(cell: Cell): Cell {
  if (typeof cell === 'string') return usual.test(cell) ? cell : cell.replace(unheld, ' ').replace(broken, '\ufffd');
  if (Number.isSafeInteger(cell)) return Number(cell) + 0;
  return cell === null || !Number.isFinite(cell) ? null : Number(cell.toFixed(heldDecimals)) + 0;
}

/** Starts that a spreadsheet takes for a formula, the wide forms of East Asian keyboards among them. */
const formulaStart = /^\s*[=+\-@\r\uff1d\uff0b\uff0d\uff20]|^[\r\n]/u;

export function isLikeFormula(text: string): boolean {
  return formulaStart.test(text);
}

/** Words of a drawing without the spaces at which no line breaks, and without those in figures: a table is searched.
 *  Example: "left wall 21\u00a0830\u00a0mm" -> "left wall 21830 mm" */
export function plain(text: string): string {
  return text.replace(/(?<=\d)\u00a0(?=\d{3}(?!\d))/gu, '').replaceAll('\u00a0', ' ');
}
