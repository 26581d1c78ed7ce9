import { describe, expect, test } from 'vitest';
import { lengthFigure, lengthsRead } from '../../src/app/parts/lengths.ts';

describe('a typed length', () => {
  test('is in the unit of the board where it has none of its own', () => {
    expect(lengthsRead('4500', 'mm')).toEqual({ kind: 'one', mm: 4500 });
    expect(lengthsRead('4.5', 'm')).toEqual({ kind: 'one', mm: 4500 });
  });

  test('takes a comma as well as a point, and a unit of its own', () => {
    expect(lengthsRead('4,5', 'm')).toEqual({ kind: 'one', mm: 4500 });
    expect(lengthsRead(' 4,5 m ', 'mm')).toEqual({ kind: 'one', mm: 4500 });
    expect(lengthsRead('12 cm', 'm')).toEqual({ kind: 'one', mm: 120 });
  });

  test('that is none is not read', () => {
    for (const text of ['', 'long', '4.5.1', '4 ft', '1 x 2 x 3', '--3', '4,5,']) {
      expect(lengthsRead(text, 'mm'), text).toBeNull();
    }
  });
});

describe('two sides', () => {
  test('stand with a cross, a semicolon or a space between them', () => {
    for (const text of ['4500 x 3000', '4500x3000', '4500 × 3000', '4500*3000', '4500;3000', '4500 3000']) {
      expect(lengthsRead(text, 'mm'), text).toEqual({ kind: 'two', mm: [4500, 3000] });
    }
  });

  test('have decimal commas of their own', () => {
    expect(lengthsRead('4,5 x 3,25', 'm')).toEqual({ kind: 'two', mm: [4500, 3250] });
  });

  test('share a unit at the end, and may each have their own', () => {
    expect(lengthsRead('4.5 x 3 m', 'mm')).toEqual({ kind: 'two', mm: [4500, 3000] });
    expect(lengthsRead('4500 mm x 3 m', 'm')).toEqual({ kind: 'two', mm: [4500, 3000] });
  });
});

test('a length on the board is whole millimetres, or metres to the millimetre', () => {
  expect(lengthFigure(812.4, 'mm')).toBe('812');
  expect(lengthFigure(812.4, 'm')).toBe('0.812');
});
