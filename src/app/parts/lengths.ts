import type { Point } from '../../geometry/point.ts';
import { figure, figureShort } from './format.ts';

/** How lengths are shown and typed. */
export type LengthUnit = 'mm' | 'm';

export const unitMm: Readonly<Record<LengthUnit, number>> = { mm: 1, m: 1000 };

/** What was typed: one length, two sides or two coordinates, mm; null where it is neither. */
export type TypedLengths = { readonly kind: 'one'; readonly mm: number } | { readonly kind: 'two'; readonly mm: Point };

const number = String.raw`[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)`;
const measure = String.raw`(${number})\s*(mm|cm|m)?`;
const one = new RegExp(`^${measure}$`, 'i');
const two = new RegExp(String.raw`^${measure}(?:\s*[x×*/;]\s*|\s+)${measure}$`, 'i');
const ownMm: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000 };

/** Reads a typed length or pair, with a point or a comma as decimal mark and a unit where one is given.
 *  @param unit what a number without a unit is in  Example: "4,5 x 3", m -> two [4500, 3000]; "4500", mm -> one 4500 */
export function lengthsRead(text: string, unit: LengthUnit): TypedLengths | null {
  const plain = text.trim();
  const mmOf = (figure: string | undefined, given: string | undefined) =>
    Number((figure ?? '').replace(',', '.')) * (given === undefined ? unitMm[unit] : (ownMm[given.toLowerCase()] ?? 1));
  const single = one.exec(plain);
  if (single !== null) return { kind: 'one', mm: mmOf(single[1], single[2]) };
  const pair = two.exec(plain);
  if (pair === null) return null;
  // "4 x 3 m": the unit at the end is that of both.
  return { kind: 'two', mm: [mmOf(pair[1], pair[2] ?? pair[4]), mmOf(pair[3], pair[4])] };
}

/** A length on the board: whole millimetres, or metres to the millimetre. Example: 4500 in m -> "4.500" */
export function lengthFigure(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? figure(mm, 0) : figure(mm / unitMm.m, 3);
}

/** As long as it has to be: for a field that is typed in. Example: 4500 in m -> "4.5" */
export function lengthShort(mm: number, unit: LengthUnit): string {
  return figureShort(mm / unitMm[unit], unit === 'mm' ? 1 : 4);
}
