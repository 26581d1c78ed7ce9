import { areaText, type DecimalMark, figureText, movementText, oneLine } from '../../documents/words.ts';

/** Figures in words as the documents print them, with the reader's own decimal mark. */
export const decimalMark: DecimalMark = new Intl.NumberFormat().format(0.5).includes(',') ? ',' : '.';

export const figure = (value: number, decimals: number) => figureText(value, decimals, decimalMark);

/** By how much a figure differs from another, of the two as they are shown; null where they are shown the same.
 *  Example: 10.35 -> 0.04, 1 decimal -> "−10.4", as "10.4" and "0.0" stand beside it */
export function differenceText(before: number, now: number, decimals: number): string | null {
  const shown = (value: number) => Number(figureText(value, decimals));
  const by = shown(now) - shown(before);
  return by === 0 ? null : `${by > 0 ? '+' : '−'}${figure(Math.abs(by), decimals)}`;
}

export const movement = (valueMm: number) => movementText(valueMm, decimalMark);
export const area = (valueM2: number) => areaText(valueM2, decimalMark);
export const length = (valueM: number) => `${figure(valueM, 2)} m`;
export const sides = (lengthM: number, widthM: number) => `${figure(lengthM, 2)} × ${figure(widthM, 2)} m`;

/** Thermal expansion as the trade can picture it: 12e-6 1/K is 0.012 mm a metre for each K. */
export const expansionFigure = (perK: number) => figure(perK * 1000, 3);
export const expansion = (perK: number) => `${expansionFigure(perK)} mm/m K`;

/** A value as a field shows it: as many decimals as it has, at most `decimals`. */
export function figureShort(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals))).replace('.', decimalMark);
}

/** A figure that is written out already, its whole part in groups as `figure` sets it. Example: "1000000.5" -> "1 000 000.5" */
export function digitsGrouped(text: string): string {
  return text.replace(/^\D?\d{5,}/, (whole) => figure(Number(whole), 0));
}

/** A limit with the digits that the findings give it. */
export const limitFigure = (limit: number) => figureShort(limit, 2);

/** A name within a sentence has at most so many letters: about two lines of the tray. */
const nameLetters = 80;
const otherDirection = /[\p{Script=Hebrew}\p{Script=Arabic}]/u;

/** A name as it stands within other words: on one line, cut where it is very long, closed in where it is written the
 *  other way. */
export function nameText(name: string): string {
  const plain = oneLine(name);
  const letters = [...plain];
  const cut = letters.length > nameLetters ? `${letters.slice(0, nameLetters - 1).join('')}…` : plain;
  return otherDirection.test(cut) ? `\u2068${cut}\u2069` : cut;
}

/** The whole name, where it is too long for the lines that it is given; undefined where it is not. */
export function hintOf(name: string): string | undefined {
  return name.length > nameLetters ? name : undefined;
}

/** Letters of a file name: systems take 255 bytes with the ending. */
const stemLetters = 80;

/** A name that every file system takes. */
export function fileStem(name: string): string {
  const plain = [...name.toLowerCase()]
    .slice(0, stemLetters)
    .join('')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return plain === '' ? 'plan' : plain;
}

/** "1 joint", "3 joints". */
export function countOf(count: number, one: string, several: string): string {
  return `${count} ${count === 1 ? one : several}`;
}

/** A number as a person types it, with a point or a comma as decimal mark and a space between groups of three digits where one is set; null where it
 *  is none. */
export function figureRead(text: string): number | null {
  const plain = text
    .trim()
    .replace(/(?<=\d)\s(?=\d{3}(?!\d))/g, '')
    .replace(',', '.');
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}
