import fc from 'fast-check';
import { expect, it } from 'vitest';
import { figuresRounded } from '../../src/takeoff/figures-rounded.ts';

it('gives the last digit to what lost most', () => {
  // 33.333 each of 100: 33.33 thrice is 99.99, the hundredth goes to the first
  expect(figuresRounded([100 / 3, 100 / 3, 100 / 3], 100, 2)).toEqual([33.34, 33.33, 33.33]);
  // 1.25, 1.25, 2.5 down to 1.2, 1.2, 2.5: one tenth is missing
  expect(figuresRounded([1.25, 1.25, 2.5], 5, 1)).toEqual([1.3, 1.2, 2.5]);
  expect(figuresRounded([0.4, 0.4, 0.4], 1.2, 0)).toEqual([1, 0, 0]);
});

it('leaves figures that need no rounding as they are', () => {
  expect(figuresRounded([0.3, 0.6, 1.1], 2, 1)).toEqual([0.3, 0.6, 1.1]);
  expect(figuresRounded([], 0, 2)).toEqual([]);
});

it('adds up to the whole as it is shown, no part off by a whole digit, whatever the parts', () => {
  const parts = fc.array(fc.double({ min: 0, max: 5000, noNaN: true }), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(parts, fc.integer({ min: 0, max: 3 }), (given, decimals) => {
      const whole = given.reduce((sum, part) => sum + part, 0);
      const rounded = figuresRounded(given, whole, decimals);
      const digit = 10 ** -decimals;
      expect(rounded.reduce((sum, part) => sum + part, 0).toFixed(decimals)).toBe(whole.toFixed(decimals));
      for (const [i, part] of rounded.entries())
        expect(Math.abs(part - (given[i] ?? 0))).toBeLessThan(digit * 1.000001);
    }),
  );
});
