import type { Analysis } from '../plan/analysis.ts';

/** Beyond these a figure is rounding of the arithmetic: at ten kilometres the twelfth digit is 0.0001 mm. */
const DIGITS = 12;

/** An analysis as JSON on one line, line end and all: figures to 12 significant digits, so that 0.1 + 0.2 is printed 0.3. Points that
 *  neighbours share stay the same point, as equal figures are cut alike. */
export function analysisText(analysis: Analysis): string {
  return `${JSON.stringify(analysis, (_, value: unknown) => (typeof value === 'number' ? figureCut(value) : value))}\n`;
}

function figureCut(value: number): number {
  return Number.isInteger(value) ? value : Number(value.toPrecision(DIGITS));
}
