import { expect, test } from 'vitest';
import { differenceText, digitsGrouped, figureRead, figureShort } from '../../src/app/parts/format.ts';

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

test('a number in groups of three digits is read as it is written', () => {
  expect(figureRead('1 000 000,5')).toBe(1_000_000.5);
  expect(figureRead('12\u00a0000')).toBe(12_000);
  expect(figureRead('12\u202f000')).toBe(12_000);
  for (const text of ['1 00', '1 0000', '20 10', '1  000']) expect(figureRead(text)).toBeNull();
});

test('the bounds of a field stand in groups of three digits, from ten thousand on as all figures do', () => {
  expect(digitsGrouped('1000000000')).toBe('1\u00a0000\u00a0000\u00a0000');
  expect(digitsGrouped('-10000')).toBe('-10\u00a0000');
  expect(digitsGrouped('12345.678')).toBe('12\u00a0345.678');
  expect(digitsGrouped('1000')).toBe('1000');
  expect(digitsGrouped('0.12345')).toBe('0.12345');
});

test('a difference is that of the figures as they are shown', () => {
  // Unrounded it is 10.32.
  expect(differenceText(10.36, 0.04, 1)).toBe('−10.4');
  expect(differenceText(0.04, 10.36, 1)).toBe('+10.4');
  expect(differenceText(10.36, 10.44, 1)).toBeNull();
});
