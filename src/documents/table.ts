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
}

/** A column of a table that is made row by row. */
export interface ColumnOf<Row> extends TableColumn {
  readonly cell: (row: Row) => Cell;
}

/** @param columns, rows of one kind */
export function tableOf<Row>(
  about: Pick<Table, 'name' | 'title'> & { readonly notes?: readonly string[] },
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
