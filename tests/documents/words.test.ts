import { expect, test } from 'vitest';
import { textLines, textWidthMm } from '../../src/documents/text-width.ts';
import { areaText, figureText, findingText } from '../../src/documents/words.ts';

const held = '\u00a0';

test('from ten thousand on the digits stand in groups of three, whichever decimal mark is used', () => {
  expect(areaText(10000.44)).toBe(`10${held}000.4 m²`);
  expect(figureText(1234567.5, 1, ',')).toBe(`1${held}234${held}567,5`);
  expect(figureText(-25000, 0)).toBe(`-25${held}000`);
  expect(figureText(9999.4, 1)).toBe('9999.4');
  expect(figureText(-0.04, 1)).toBe('0.0');
});

test('no line of a finding ends between a figure and its unit', () => {
  const said = findingText({ message: 'Bay B23 is 8.8 m long; the limit is 8 m. It takes 5 mm at 30 °C, 4 Kitchens.' });
  expect(said).toBe(
    `Bay B23 is 8.8${held}m long; the limit is 8${held}m. It takes 5${held}mm at 30${held}°C, 4 Kitchens.`,
  );
  const narrow = textWidthMm('Bay B23 is 8.8', 'sheet-text') + 0.1;
  expect(textLines(said, 'sheet-text', narrow).slice(0, 3)).toEqual([
    'Bay B23 is',
    `8.8${held}m long;`,
    'the limit is',
  ]);
  expect(findingText({ message: 'Bay B12 is 2.09 : 1 long to wide. EN 1264-4 knows no such: 2 rooms.' })).toBe(
    `Bay B12 is 2.09${held}:${held}1 long to wide. EN${held}1264-4 knows no such: 2 rooms.`,
  );
});
