import type { Point } from '../geometry/point.ts';
import type { Ring } from '../geometry/ring.ts';
import type { Ink } from './ink.ts';
import type { PaperBox } from './sheet.ts';
import { type Stroke, type TextStyleName, textStyles } from './styles.ts';

/** Height of a line of text in a strip, and what is kept clear of its frame, mm on paper. */
export const rowMm = 4.6;
export const padMm = 4;
/** Where the text stands that belongs to a head in the same line. */
export const headMm = 31;

export function penStroke(widthMm: number, colour: Stroke['colour']): Stroke {
  return { widthMm, colour, dashMm: [], cap: 'butt' };
}

const fineStroke = penStroke(0.25, 'faint');

/** A pen that writes down a column. */
export interface Column {
  readonly inks: Ink[];
  readonly left: number;
  readonly width: number;
  y: number;
}

export function columnIn({ x, y, width }: PaperBox, inks: Ink[] = []): Column {
  return { inks, left: x + padMm, width: width - 2 * padMm, y: y + padMm };
}

export function textRow(column: Column, line: string, style: TextStyleName, height = rowMm, indent = 0): void {
  textAt(column, line, style, [column.left + indent, column.y + height / 2], 'start');
  column.y += height;
}

export function textAt(
  column: Column,
  line: string,
  style: TextStyleName,
  at: Point,
  anchor: 'start' | 'middle' | 'end',
): void {
  const { colour } = textStyles[style];
  column.inks.push({ ink: 'text', text: line, style, colour, at, anchor, angleDeg: 0, halo: null });
}

/** A thin line across the column. */
export function rule(column: Column, down: number): void {
  const y = column.y + down;
  const lines: Point[][] = [
    [
      [column.left, y],
      [column.left + column.width, y],
    ],
  ];
  column.inks.push({ ink: 'path', lines, closed: false, fill: null, stroke: fineStroke });
}

export function box(left: number, top: number, right: number, bottom: number): Ring {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}
