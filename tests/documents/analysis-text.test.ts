import fc from 'fast-check';
import { expect, it } from 'vitest';
import { analysisText } from '../../src/documents/analysis-text.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import { analysisOf } from './fixture.ts';

/** The area of floor as it is printed. */
function printed(floorM2: number): string | undefined {
  const analysis = analysisOf();
  return /"floorM2":([^,}]+)/.exec(
    analysisText({ ...analysis, quantities: { ...analysis.quantities, rooms: [], floorM2 } }),
  )?.[1];
}

it('prints figures to twelve significant digits, whole numbers as they are, and what is no number as null', () => {
  expect(printed(0.1 + 0.2)).toBe('0.3');
  expect(printed(-1234567.891 / 3)).toBe('-411522.630333');
  expect(printed(2 / 3e9)).toBe('6.66666666667e-10');
  expect(printed(1234567890123456)).toBe('1234567890123456');
  expect(printed(-0)).toBe('0');
  expect(printed(Number.NaN)).toBe('null');
});

it('is one line, and nothing but figures differs from the analysis', () => {
  const analysis: Analysis = { ...analysisOf(), plan: '0.30000000000000004\n' };
  const text = analysisText(analysis);
  expect(text.indexOf('\n')).toBe(text.length - 1);
  expect(JSON.parse(text).plan).toBe(analysis.plan);
  expect(analysisText(JSON.parse(text))).toBe(text);
});

it('prints a figure so that it reads back within half a unit of its twelfth digit', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: 1e-6, max: 1e7 }), (figure) => {
      expect(Math.abs(Number(printed(figure)) - figure)).toBeLessThanOrEqual(figure * 5.001e-12);
    }),
  );
});
