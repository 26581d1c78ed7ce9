import { expect, test } from 'vitest';
import { differenceText, figureRead, figureShort } from '../../src/app/parts/format.ts';

test('a figure is read with a point or a comma, and nothing else is a figure', () => {
  expect(figureRead('4.5')).toBe(4.5);
  expect(figureRead(' 4,5 ')).toBe(4.5);
  expect(figureRead('-12')).toBe(-12);
  expect(figureRead('.5')).toBe(0.5);
  for (const text of ['', '4.5.1', '1e3', '4 m', 'x', '--1', '.']) expect(figureRead(text)).toBeNull();
});

test('a field shows as many decimals as the figure has, up to its own', () => {
  expect(figureShort(65, 1)).toBe('65');
  expect(figureShort(0.125, 2)).toBe('0.13');
  expect(figureShort(12.5, 1)).toBe('12.5');
});

test('a difference is that of the figures as they are shown', () => {
  // Unrounded it is 10.32.
  expect(differenceText(10.36, 0.04, 1)).toBe('−10.4');
  expect(differenceText(0.04, 10.36, 1)).toBe('+10.4');
  expect(differenceText(10.36, 10.44, 1)).toBeNull();
});
