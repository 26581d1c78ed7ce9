import type { Point } from '../geometry/point.ts';
import { circle } from './circle.ts';
import { fillInks, type Ink, lineInks, markInks } from './ink.ts';
import type { LegendRow } from './legend.ts';
import type { SheetLayout } from './sheet.ts';
import { box, type Column, headMm, rowMm, rule, textAt, textRow } from './strip-pen.ts';
import { marks } from './symbols.ts';
import { textLines, textLinesFirst } from './text-width.ts';
import { cautionLines } from './words.ts';

/** The parts of a strip that all sheets have. */

const sampleMm = 20;

/** What the sheet is of, and the facts that hold for all of it. */
export interface StripTitle {
  readonly title: string;
  readonly subject: string;
  readonly facts: readonly (readonly [head: string, text: string])[];
}

export function titleBlock(column: Column, { title, subject, facts }: StripTitle, { scale, paper }: SheetLayout): void {
  for (const row of textLinesFirst(title, 'sheet-title', column.width, 3)) {
    textRow(column, row, 'sheet-title', rowMm * 1.4);
  }
  textRow(column, subject, 'sheet-text');
  column.y += 1.5;
  rule(column, 0);
  column.y += 1.5;
  for (const [head, text] of [['Scale', `1 : ${scale} on ${paper}`] as const, ...facts]) {
    const top = column.y;
    textRow(column, head, 'sheet-head');
    column.y = top;
    for (const row of textLines(text, 'sheet-text', column.width - headMm))
      textRow(column, row, 'sheet-text', rowMm, headMm);
  }
  textRow(column, 'Which way north lies is not known.', 'sheet-text');
  column.y += 2.5;
}

/** Metres that a bar of four parts may stand for. */
const barPartsM = [0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10, 20, 50, 100, 200, 500, 1000];
const barParts = 4;
const longestBarMm = 62;

export function scaleBar(column: Column, scale: number): void {
  const partM = barPartsM.filter((m) => (m * 1000 * barParts) / scale <= longestBarMm).at(-1) ?? 0.1;
  const partMm = (partM * 1000) / scale;
  const top = column.y;
  for (let i = 0; i < barParts; i++) {
    const x = column.left + i * partMm;
    column.inks.push({
      ink: 'path',
      lines: [box(x, top, x + partMm, top + 1.6)],
      closed: true,
      fill: i % 2 === 0 ? 'ink' : 'paper',
      stroke: { widthMm: 0.25, colour: 'ink', dashMm: [], cap: 'butt' },
    });
  }
  for (const i of [0, 2, 4]) {
    const label = i === 4 ? `${partM * i} m` : String(partM * i);
    textAt(column, label, 'sheet-text', [column.left + i * partMm, top + 4.4], i === 0 ? 'start' : 'middle');
  }
  column.y += 9;
}

export function legend(column: Column, rows: readonly LegendRow[]): void {
  rule(column, -1);
  column.y += 1;
  for (const row of rows) {
    const lines = textLines(row.words, 'sheet-text', column.width - sampleMm - 2);
    const height = Math.max(lines.length * rowMm + 0.6, row.shape === 'mark' ? marks[row.style].reachMm.up + 2.4 : 5.6);
    column.inks.push(...sampleInks(row, [column.left, column.y + height / 2]));
    const top = column.y;
    column.y += (height - lines.length * rowMm) / 2;
    for (const line of lines) textRow(column, line, 'sheet-text', rowMm, sampleMm + 2);
    column.y = top + height;
  }
  column.y += 2;
}

function sampleInks(row: LegendRow, [x, y]: Point): readonly Ink[] {
  const right = x + sampleMm - 2;
  if (row.shape === 'line')
    return lineInks(row.style, [
      [x + 1.5, y],
      [right, y],
    ]);
  if (row.shape === 'fill') {
    // a pipe is known by being round
    const outline = row.style === 'pipe' ? circle([(x + right) / 2, y], 1.6) : box(x + 3, y - 2, right - 2, y + 2);
    return fillInks(row.style, outline, []);
  }
  const { left, right: reach, up, down } = marks[row.style].reachMm;
  return markInks({ style: row.style, text: null }, [(x + right + left - reach) / 2, y + (up - down) / 2]);
}

/** What every sheet ends with.
 *  @param note what has found no room on the drawing; null where all has */
export function footRows(width: number, note: string | null): readonly string[] {
  const lines = note === null ? cautionLines : [note, ...cautionLines];
  return lines.flatMap((line) => textLines(line, 'sheet-text', width));
}
