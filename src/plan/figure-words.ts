/** Figures in the words of findings. */

const MOST_DIGITS = 4;

/** The most decimals that a number can be written with. */
const MOST_FIXED = 100;

/** A number with at most so many decimals, without trailing zeros. "0" is written for nought alone, never "-0": what would round to it
 *  gets the decimals of its first figure. Example: 0.04 with at most one -> "0.04"; 0.00023 -> "0.0002". */
export function roundedText(value: number, digits: number): string {
  const rounded = Number(value.toFixed(digits)) + 0;
  if (rounded !== 0 || value === 0) return String(rounded);
  const first = Math.min(Math.ceil(-Math.log10(Math.abs(value))), MOST_FIXED);
  return value.toFixed(first).replace(/\.?0+$/, '');
}

/** A figure that is over its limit, with as many decimals as it takes to read so: 40.04 over 40 is not written 40. */
export function overText(value: number, limit: number, digits: number): string {
  return roundedText(value, digitsApart(value, limit, digits));
}

function digitsApart(a: number, b: number, digits: number): number {
  const apart = a.toFixed(digits) !== b.toFixed(digits) || digits >= MOST_DIGITS;
  return apart ? digits : digitsApart(a, b, digits + 1);
}

/** "Hall", "Hall and Kitchen", "Hall, Kitchen and Store". */
export function namesText(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}

/** Order in which people read ids: B2 before B10. */
export function naturalOrder(a: string, b: string): number {
  const as = a.match(/\d+|\D+/g) ?? [];
  const bs = b.match(/\d+|\D+/g) ?? [];
  for (const [i, part] of as.entries()) {
    const other = bs[i];
    if (other === undefined) return 1;
    const numbers = Number(part) - Number(other);
    if (numbers !== 0 && !Number.isNaN(numbers)) return numbers;
    if (part !== other) return part < other ? -1 : 1;
  }
  return as.length - bs.length;
}

/** "has 1 more problem", "has 12 more problems". */
export function moreText(count: number, noun: string): string {
  return `has ${count} more ${noun}${count === 1 ? '' : 's'}`;
}
