import type { Point } from '../geometry/point.ts';
import type { FormBlock } from './form.ts';
import type { Ink } from './ink.ts';
import type { PaperBox } from './sheet.ts';
import { box, type Column, penStroke, rowMm, textAt, textRow } from './strip-pen.ts';
import { textLinesEven } from './text-even.ts';
import { textLinesFirst } from './text-width.ts';
import { textHeld } from './words.ts';

/** A piece of a form that no page end parts. */
export interface FormPiece {
  readonly heightMm: number;
  /** Writes at the column's place and moves it down by the height. */
  readonly ink: (column: Column) => void;
  /** Never stands last on a page: what follows belongs to it. */
  readonly keeps?: true;
  /** Stands again above it where it begins a page. */
  readonly repeat?: FormPiece;
  /** Not wanted where a page begins or ends. */
  readonly blank?: true;
}

type OtherBlock = Exclude<FormBlock, { readonly kind: 'table' }>;

export function blockPieces(block: OtherBlock, { width, height }: PaperBox): readonly FormPiece[] {
  switch (block.kind) {
    case 'head':
      return headPieces(block.text, width);
    case 'text':
      return block.lines.flatMap((line) => wordPieces(line, width));
    case 'fields':
      return [...block.fields.map((field) => fieldPiece(field, width)), gapPiece(2)];
    case 'checks':
      return [...block.items.map((item) => checkPiece(item, width)), gapPiece(2)];
    case 'signatures':
      return signaturePieces(block.parties, width, height);
  }
}

function headPieces(text: string, width: number): readonly FormPiece[] {
  const rows = textLinesFirst(textHeld(text), 'sheet-head', width, 3);
  return [
    { ...gapPiece(3), keeps: true },
    { ...rowsPiece(rows, 'sheet-head', 1.2), keeps: true },
  ];
}

/** Longer lines are hard to read. */
const widestWordsMm = 186;

/** A paragraph, line by line: a long one goes on on the next page. */
export function wordPieces(text: string, width: number): readonly FormPiece[] {
  const lines = textLinesEven(textHeld(text), 'sheet-text', Math.min(width, widestWordsMm), Infinity);
  return lines.map((line, i) => rowsPiece([line], 'sheet-text', i === lines.length - 1 ? 1.2 : 0));
}

export function rowsPiece(rows: readonly string[], style: 'sheet-text' | 'sheet-head', gap: number): FormPiece {
  return {
    heightMm: rows.length * rowMm + gap,
    ink(column) {
      for (const row of rows) textRow(column, row, style);
      column.y += gap;
    },
  };
}

export function gapPiece(heightMm: number): FormPiece {
  return {
    heightMm,
    blank: true,
    ink(column) {
      column.y += heightMm;
    },
  };
}

const writingMm = 8;
const fieldGapMm = 3;

/** What is asked for, and what is known of it or a line to write on. */
function fieldPiece([words, known]: readonly [string, string], width: number): FormPiece {
  const wordsMm = Math.min(64, width * 0.36);
  const asked = textLinesFirst(textHeld(words), 'sheet-text', wordsMm, 4);
  const told = textLinesFirst(textHeld(known), 'sheet-text', Math.min(width, widestWordsMm) - wordsMm - fieldGapMm, 12);
  const rows = Math.max(asked.length, told.length, 1);
  const heightMm = told.length === 0 ? Math.max(writingMm, rows * rowMm + 2) : rows * rowMm + 1.4;
  return {
    heightMm,
    ink(column) {
      const top = column.y + (told.length === 0 ? heightMm - rows * rowMm - 0.4 : 0.4);
      const right = column.left + wordsMm + fieldGapMm;
      for (const [i, line] of asked.entries()) rowAt(column, line, [column.left, top + i * rowMm]);
      for (const [i, line] of told.entries()) rowAt(column, line, [right, top + i * rowMm]);
      if (told.length === 0) {
        const end = column.left + Math.min(width, widestWordsMm);
        column.inks.push(line([right, column.y + heightMm - 0.6], [end, column.y + heightMm - 0.6]));
      }
      column.y += heightMm;
    },
  };
}

const boxMm = 3.6;
const initialsMm = 26;

/** A box to tick, what is checked, room for initials. */
function checkPiece(item: string, width: number): FormPiece {
  const besideMm = boxMm + 3;
  const wide = Math.min(width, widestWordsMm);
  const rows = textLinesEven(textHeld(item), 'sheet-text', wide - besideMm - initialsMm - 18, 10);
  const heightMm = Math.max(writingMm, rows.length * rowMm + 2.4);
  return {
    heightMm,
    ink(column) {
      const top = column.y + 1.2;
      const boxTop = top + (rowMm - boxMm) / 2;
      column.inks.push({
        ink: 'path',
        lines: [box(column.left, boxTop, column.left + boxMm, boxTop + boxMm)],
        closed: true,
        fill: null,
        stroke: penStroke(0.3, 'ink'),
      });
      for (const [i, row] of rows.entries()) rowAt(column, row, [column.left + besideMm, top + i * rowMm]);
      const from = column.left + wide - initialsMm;
      const foot = top + rowMm + 0.6;
      column.inks.push(line([from, foot], [from + initialsMm, foot]));
      textAt(column, 'initials', 'sheet-small', [from - 1.5, foot - 1.2], 'end');
      column.y += heightMm;
    },
  };
}

const partyMm = 11;
const partyShare = 0.2;
const signShares = [
  ['Name', 0.22, 0.48],
  ['Date', 0.51, 0.65],
  ['Signature', 0.68, 1],
] as const;

/** Those who sign, a row for each, all on one page where they can be. */
function signaturePieces(parties: readonly string[], width: number, height: number): readonly FormPiece[] {
  const pieces = parties.map((party) => partyPiece(party, width));
  const all = pieces.reduce((sum, { heightMm }) => sum + heightMm, 0);
  if (all > height / 2) return pieces;
  return pieces.map((piece, i): FormPiece => (i === pieces.length - 1 ? piece : { ...piece, keeps: true }));
}

function partyPiece(party: string, width: number): FormPiece {
  const wide = Math.min(width, widestWordsMm);
  const rows = textLinesFirst(textHeld(party), 'sheet-head', wide * partyShare, 2);
  const heightMm = partyMm;
  return {
    heightMm,
    ink(column) {
      const foot = column.y + heightMm - 4;
      const top = foot - rows.length * rowMm + (rows.length > 1 ? 2 : 0);
      for (const [i, row] of rows.entries()) rowAt(column, row, [column.left, top + i * rowMm], 'sheet-head');
      for (const [words, from, to] of signShares) {
        column.inks.push(line([column.left + from * wide, foot], [column.left + to * wide, foot]));
        textAt(column, words, 'sheet-small', [column.left + from * wide, foot + 1.9], 'start');
      }
      column.y += heightMm;
    },
  };
}

function rowAt(column: Column, text: string, [x, top]: Point, style: 'sheet-text' | 'sheet-head' = 'sheet-text'): void {
  textAt(column, text, style, [x, top + rowMm / 2], 'start');
}

function line(from: Point, to: Point, widthMm = 0.2): Ink {
  return { ink: 'path', lines: [[from, to]], closed: false, fill: null, stroke: penStroke(widthMm, 'ink') };
}
