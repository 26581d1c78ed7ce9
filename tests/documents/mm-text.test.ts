import fc from 'fast-check';
import { expect, it } from 'vitest';
import { mmText } from '../../src/documents/mm-text.ts';

it('a length on paper is written as the engine writes it once it is rounded', () => {
  expect([0, -0, 0.0004, -0.0004, -0.25, 12, 12.5, 12.05, -3.001, 99.9996].map(mmText)).toEqual([
    ...['0', '0', '0', '0', '-0.25', '12', '12.5', '12.05', '-3.001', '100'],
  ]);
  fc.assert(
    fc.property(fc.double({ min: -1e7, max: 1e7, noNaN: true }), (value) => {
      expect(mmText(value)).toBe(String(Math.round(value * 1000) / 1000 + 0));
    }),
  );
});
