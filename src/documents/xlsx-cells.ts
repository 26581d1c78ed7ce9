import { type Cell, cellHeld, isLikeFormula } from './table.ts';
import { oneLine } from './words.ts';
import { styleFigure, styleOf } from './xlsx-styles.ts';
import { xmlText } from './xml-text.ts';

/** What the file format holds in one cell, characters; ECMA-376 and its readers end a longer one or refuse the file. */
const mostText = 32_767;

/** Nearly all that stands in cells, and it needs nothing of what follows. */
const plainText = /^[ !#-%(-;=?-^`-~]{0,1000}$/u;

/** Text as a cell holds it: line ends stay, a text that is too long is cut, and what would be read as the sign for a character by its number is not. */
export function cellTextXml(text: string): string {
  if (plainText.test(text)) return text;
  const lines = text.replace(/\r\n?/gu, '\n');
  const cut = lines.length <= mostText ? lines : `${lines.slice(0, mostText - 1).replace(/\p{Cs}$/u, '')}\u2026`;
  return cut
    .replace(/_(?=x[\da-f]{4}_)/giu, '_x005F_')
    .split('\n')
    .map(xmlText)
    .join('\n');
}

export interface CellPlace {
  /** From 0. */
  readonly column: number;
  /** From 1. */
  readonly row: number;
}

/** Example: column 27 of row 3 -> "AB3" */
export function cellName({ column, row }: CellPlace): string {
  return `${columnName(column)}${row}`;
}

/** @param column from 0. Example: 27 -> "AB" */
function columnName(column: number): string {
  const last = letters.charAt(column % 26);
  return column < 26 ? last : columnName(Math.floor(column / 26) - 1) + last;
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** A text with a look of its own, a head or a note. */
export function lineXml(text: string, style: number, place: CellPlace): string {
  return `<c r="${cellName(place)}" s="${style}" t="inlineStr"><is><t xml:space="preserve">${cellTextXml(text)}</t></is></c>`;
}

/** A cell of a table: a figure is a number with the format of its column, a text is a text whatever it looks like, and nothing is an
 *  empty cell. */
export function cellXml(cell: Cell, decimals: number | null, place: CellPlace): string {
  const held = cellHeld(cell);
  if (held === null || held === '') return `<c r="${cellName(place)}" s="${styleOf('text')}"/>`;
  if (typeof held === 'number') return `<c r="${cellName(place)}" s="${styleFigure(decimals)}"><v>${held}</v></c>`;
  return lineXml(held, styleOf(isLikeFormula(held) ? 'text-quoted' : 'text'), place);
}

const longestName = 31;

/** Names that a workbook can have for its sheets: no sign of a reference, not too long, and no two alike.
 *  Example: ["a/b", "A:B"] -> ["a-b", "A-B~2"] */
export function sheetNames(wished: readonly string[]): readonly string[] {
  const taken = new Set(['history']);
  return wished.map((name) => {
    const legal =
      oneLine(name)
        .replace(/[[\]:*?/\\]/gu, '-')
        .replace(/^'+|'+$/gu, '') || 'sheet';
    for (let count = 1; ; count++) {
      const end = count === 1 ? '' : `~${count}`;
      const held = legal.slice(0, longestName - end.length).replace(/\p{Cs}$|'$/gu, '') + end;
      if (taken.has(held.toLowerCase())) continue;
      taken.add(held.toLowerCase());
      return held;
    }
  });
}
