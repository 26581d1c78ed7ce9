import type { Point } from '../geometry/point.ts';
import { type FormPiece, gapPiece, rowsPiece, wordPieces } from './form-pages-blocks.ts';
import type { Ink } from './ink.ts';
import { perSource } from './paper-source.ts';
import { type Column, penStroke, rowMm, textAt } from './strip-pen.ts';
import { type Cell, cellDecimals, cellHeld, columnHead, type Table, type TableColumn } from './table.ts';
import { textLines, textLinesFirst, textWidthMm } from './text-width.ts';
import { figureText, oneLine, textHeld } from './words.ts';

/** A column of a table as it is printed. */
interface PrintColumn {
  readonly column: TableColumn;
  readonly head: string;
  /** Of each row. */
  readonly texts: readonly string[];
  /** Narrower, its longest word or a figure would be broken. */
  readonly leastMm: number;
  /** Wide enough to be read without many line breaks. */
  readonly easyMm: number;
  /** How long its texts are: columns share out the page by it. */
  readonly weightMm: number;
  /** Wider is of no use. */
  readonly mostMm: number;
}

interface PlacedColumn extends PrintColumn {
  /** From the left of the table. */
  readonly x: number;
  readonly widthMm: number;
}

const cellPadMm = 1.5;
const cellDownMm = 0.9;
/** What rounding may take of a width that just fits. */
const slackMm = 0.01;
/** A word longer than this is broken: an id or a name made to be a nuisance. */
const longestWordMm = 34;
const easyTextMm = 44;
/** A longer text is given more, so that it takes about so many lines. */
const easyLines = 6;
const mostEasyMm = 72;
const widestTextMm = 84;
/** Room to write a date or initials, and to write words. */
const fillMm = { easy: 20, most: 40 } as const;
const mostCellLines = 20;
const mostHeadLines = 5;
/** Over a column of short cells a head takes so many lines. */
const easyHeadLines = 3;
/** More than a cell has room for. */
const mostCharacters = 1000;
/** Room to write a line by hand. */
const leastFillRowMm = 8;

/** Width at which a table is not cramped. */
export function tableWidthMm(table: Table): number {
  return sum(printColumns(table), ({ easyMm }) => easyMm);
}

/** A table row by row, its head again on each page; wider than the page it is parted by columns, the first of them repeated.
 *  @param titled whether its title stands above it */
export function tablePieces(table: Table, width: number, titled: 'titled' | 'untitled'): readonly FormPiece[] {
  const parts = columnParts(printColumns(table), width);
  const title = titled === 'titled' ? [oneLine(table.title)] : [];
  const notes = table.notes.flatMap((note) => wordPieces(note, width));
  const rows = parts.flatMap((columns, i) => {
    const which = parts.length === 1 ? [] : [`Part ${i + 1} of ${parts.length}, by columns`];
    const words = [...title, ...which].join('. ');
    return partPieces(columnsPlaced(columns, width), words, table.rows.length);
  });
  return [...notesHeld(rows, notes), gapPiece(2)];
}

/** More notes than this may go on on the next page. */
const mostNotesMm = 30;

/** Few notes stay with the last row, all of them. */
function notesHeld(rows: readonly FormPiece[], notes: readonly FormPiece[]): readonly FormPiece[] {
  const pieces = [...rows, ...notes];
  if (notes.length === 0 || sum(notes, ({ heightMm }) => heightMm) > mostNotesMm) return pieces;
  // the last row and the gap below it
  const from = rows.length - 2;
  return pieces.map((piece, i): FormPiece => (i < from || i === pieces.length - 1 ? piece : { ...piece, keeps: true }));
}

/** Its texts are measured once, for the paper that it takes and for its pages. */
const printColumns = perSource((table: Table): readonly PrintColumn[] =>
  table.columns.map((column, i): PrintColumn => {
    const texts = table.rows.map((row, k) => cellText(row[i] ?? null, cellDecimals(table, column, k)));
    const head = oneLine(columnHead(column));
    const widths = texts.map((text) => textWidthMm(text, 'sheet-text'));
    const wordMm = Math.max(6, headMm(head), longestWord(texts));
    const leastMm = Math.min(longestWordMm, wordMm) + 2 * cellPadMm + slackMm;
    const longestMm = widths.reduce((most, width) => Math.max(most, width), 0) + 2 * cellPadMm + slackMm;
    const readMm = Math.min(mostEasyMm, Math.max(easyTextMm, longestMm / easyLines));
    const mostMm = Math.max(leastMm, Math.min(longestMm, widestTextMm), column.toFill ? fillMm.most : 0);
    const easyMm = Math.max(leastMm, Math.min(longestMm, readMm), column.toFill ? fillMm.easy : 0);
    const weightMm = column.toFill ? easyMm : typicalMm(widths) + 2 * cellPadMm;
    return { column, head, texts, leastMm, easyMm, weightMm, mostMm };
  }),
);

/** Root of the mean of the squares: long texts count for more, but a single one among many short ones does not have it all. */
function typicalMm(widths: readonly number[]): number {
  return Math.sqrt(sum(widths, (width) => width * width) / Math.max(1, widths.length));
}

/** Narrowest width in which a head takes few lines. */
function headMm(head: string): number {
  const words = wordsOf(head);
  let least = Math.max(...words.map((word) => textWidthMm(word, 'sheet-head')));
  while (textLines(head, 'sheet-head', least + slackMm).length > easyHeadLines) {
    // a line more fits only where the first word of a line comes up to the line before
    const lines = textLines(head, 'sheet-head', least + slackMm);
    const longer = lines.slice(1).map((line, i) => textWidthMm(`${lines[i]} ${wordsOf(line)[0]}`, 'sheet-head'));
    least = Math.min(...longer.filter((width) => width > least));
  }
  return least;
}

function cellText(cell: Cell, decimals: number | null): string {
  const held = cellHeld(cell);
  if (held === null) return '';
  if (typeof held === 'number') return decimals === null ? String(held) : figureText(held, decimals);
  const text = textHeld(held);
  return text.length > mostCharacters ? `${text.slice(0, mostCharacters)}\u2026` : text;
}

function wordsOf(text: string): readonly string[] {
  return text.split(/[^\S\u00a0]+/u);
}

function longestWord(texts: readonly string[]): number {
  let most = 0;
  for (const text of texts) for (const word of wordsOf(text)) most = Math.max(most, textWidthMm(word, 'sheet-text'));
  return most;
}

/** Width at which it can be read still. */
export function tableTightMm(table: Table): number {
  return sum(printColumns(table), tight);
}

/** A wide table is set closer before it is parted. */
const closestShare = 0.7;

function tight({ leastMm, easyMm }: PrintColumn): number {
  return Math.max(leastMm, closestShare * easyMm);
}

/** As many columns as fit beside each other, and with each further part the first one; parts are about as wide as each other. */
function columnParts(columns: readonly PrintColumn[], width: number): readonly (readonly PrintColumn[])[] {
  const [first, ...rest] = columns;
  if (first === undefined) return [];
  const parts = columnsParted(first, rest, width, Infinity);
  const even = columnsParted(first, rest, width, first.easyMm + sum(rest, easy) / parts.length);
  return even.length === parts.length ? even : parts;
}

/** @param enoughMm a part that is as wide takes no further column */
function columnsParted(
  first: PrintColumn,
  rest: readonly PrintColumn[],
  width: number,
  enoughMm: number,
): readonly (readonly PrintColumn[])[] {
  const parts: PrintColumn[][] = [[first]];
  for (const column of rest) {
    const open = parts[parts.length - 1] as PrintColumn[];
    const isFull = sum(open, tight) + tight(column) > width || sum(open, easy) >= enoughMm;
    if (open.length > 1 && isFull) parts.push([first, column]);
    else open.push(column);
  }
  return parts;
}

const easy = ({ easyMm }: PrintColumn) => easyMm;

/** Columns of the page's width share it by how long their texts are, so that they break into about as many lines as each other; none is narrower than
 *  its longest word, none wider than is of use. */
function columnsPlaced(columns: readonly PrintColumn[], width: number): readonly PlacedColumn[] {
  const least = sum(columns, floorMm);
  // two columns may be wider than the page together
  const shrink = Math.min(1, width / least);
  const share = shareOf(columns, width);
  let x = 0;
  return columns.map((column) => {
    const placed = { ...column, x, widthMm: sharedMm(column, share) * shrink };
    x += placed.widthMm;
    return placed;
  });
}

function floorMm(column: PrintColumn): number {
  return column.column.toFill ? tight(column) : column.leastMm;
}

function sharedMm(column: PrintColumn, share: number): number {
  const floor = floorMm(column);
  // of each line about half a word is left empty
  const wantedMm = column.weightMm * share + column.leastMm / 2;
  return Math.min(Math.max(column.mostMm, floor), Math.max(floor, wantedMm));
}

/** Halvings until the share is closer than any printer draws. */
const shareSteps = 40;

/** The largest share of its weight that each column can have, so that all stand within the width. */
function shareOf(columns: readonly PrintColumn[], width: number): number {
  let [low, high] = [0, 1];
  const takes = (share: number) => sum(columns, (column) => sharedMm(column, share));
  for (let i = 0; i < shareSteps && takes(high) < width; i++) high *= 2;
  for (let i = 0; i < shareSteps; i++) {
    const middle = (low + high) / 2;
    if (takes(middle) <= width) low = middle;
    else high = middle;
  }
  return low;
}

function partPieces(columns: readonly PlacedColumn[], title: string, rows: number): readonly FormPiece[] {
  const head = headPiece(columns);
  const all = columns.reduce((most, { x, widthMm }) => Math.max(most, x + widthMm), 0);
  const titles =
    title === '' ? [] : [gapPiece(2), rowsPiece(textLinesFirst(title, 'sheet-head', all, 3), 'sheet-head', 1)];
  const body = Array.from({ length: rows }, (_, i): FormPiece => ({ ...rowPiece(columns, i), repeat: head }));
  const none = rows === 0 ? [rowsPiece(['None.'], 'sheet-text', 1)] : [];
  return [
    ...titles.map((piece): FormPiece => ({ ...piece, keeps: true })),
    { ...head, keeps: true },
    ...fewKept(body),
    ...none,
    gapPiece(1.5),
  ];
}

/** A table begins on a page where three of its rows have room, a longer one where a quarter of them have, up to six; of high rows fewer are enough. */
const firstRows = { least: 3, share: 0.25, most: 6, enoughMm: 45 } as const;

/** No few rows begin a table at the foot of a page, and no row stands alone on one: the first stay together, and the last two. */
function fewKept(rows: readonly FormPiece[]): readonly FormPiece[] {
  const first = firstTogether(rows);
  return rows.map((row, i): FormPiece => (i < first - 1 || i === rows.length - 2 ? { ...row, keeps: true } : row));
}

function firstTogether(rows: readonly FormPiece[]): number {
  const { least, share, most, enoughMm } = firstRows;
  const wanted = Math.min(rows.length, Math.max(least, Math.min(most, Math.ceil(rows.length * share))));
  let [together, heightMm] = [0, 0];
  while (together < wanted && (together < 2 || heightMm < enoughMm)) heightMm += rows[together++]?.heightMm ?? 0;
  return together;
}

function headPiece(columns: readonly PlacedColumn[]): FormPiece {
  const cells = columns.map(({ head, widthMm }) =>
    textLinesFirst(head, 'sheet-head', widthMm - 2 * cellPadMm, mostHeadLines),
  );
  const heightMm = Math.max(1, ...cells.map((lines) => lines.length)) * rowMm + 2 * cellDownMm;
  return {
    heightMm,
    ink(column) {
      for (const [i, placed] of columns.entries()) {
        const lines = cells[i] ?? [];
        // heads end where the table begins
        const top = column.y + heightMm - cellDownMm - lines.length * rowMm;
        cellInks(column, placed, lines, top, 'sheet-head');
      }
      column.y += heightMm;
      column.inks.push(tableRules([tableFoot(column, columns)], 0.35, 'ink'));
    },
  };
}

function rowPiece(columns: readonly PlacedColumn[], row: number): FormPiece {
  const cells = columns.map(({ texts, widthMm }) =>
    textLinesFirst(texts[row] ?? '', 'sheet-text', widthMm - 2 * cellPadMm, mostCellLines),
  );
  const lines = Math.max(1, ...cells.map((each) => each.length));
  const fillSides = sidesToFill(columns);
  const ownMm = lines * rowMm + 2 * cellDownMm;
  const heightMm = Math.max(ownMm, fillSides.length > 0 ? leastFillRowMm : 0);
  const downMm = cellDownMm + (heightMm - ownMm) / 2;
  return {
    heightMm,
    ink(column) {
      for (const [i, placed] of columns.entries())
        cellInks(column, placed, cells[i] ?? [], column.y + downMm, 'sheet-text');
      const sides = fillSides.map((side): readonly Point[] => [
        [column.left + side, column.y],
        [column.left + side, column.y + heightMm],
      ]);
      column.y += heightMm;
      column.inks.push(tableRules([...sides, tableFoot(column, columns)], 0.13, 'faint'));
    },
  };
}

/** Figures stand under each other to the right, words to the left. */
function cellInks(
  column: Column,
  { x, widthMm, column: { decimals } }: PlacedColumn,
  lines: readonly string[],
  top: number,
  style: 'sheet-head' | 'sheet-text',
): void {
  const isFigure = decimals !== null;
  const at = column.left + (isFigure ? x + widthMm - cellPadMm : x + cellPadMm);
  for (const [i, text] of lines.entries())
    textAt(column, text, style, [at, top + (i + 0.5) * rowMm], isFigure ? 'end' : 'start');
}

function tableRules(lines: readonly (readonly Point[])[], widthMm: number, colour: 'ink' | 'faint'): Ink {
  return { ink: 'path', lines, closed: false, fill: null, stroke: penStroke(widthMm, colour) };
}

/** The line below what stands on the page so far, as wide as the table. */
function tableFoot({ left, y }: Column, columns: readonly PlacedColumn[]): readonly Point[] {
  const last = columns[columns.length - 1];
  return [
    [left, y],
    [left + (last === undefined ? 0 : last.x + last.widthMm), y],
  ];
}

/** Where lines stand on both sides of what is filled in by hand, from the left of the table. */
function sidesToFill(columns: readonly PlacedColumn[]): readonly number[] {
  const toFill = columns.filter(({ column }) => column.toFill);
  // two that stand beside each other share theirs
  return [...new Set(toFill.flatMap(({ x, widthMm }) => [x, x + widthMm]))];
}

function sum<Each>(list: readonly Each[], of: (each: Each) => number): number {
  return list.reduce((all, each) => all + of(each), 0);
}
