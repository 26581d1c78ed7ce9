import { expect, test } from 'vitest';
import { textLines, textWidthMm } from '../../src/documents/text-width.ts';
import { areaText, figureText, findingText, namesOf } from '../../src/documents/words.ts';
import { analysisOf, bay, box, joint, planOf, room } from './fixture.ts';

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

test('two rooms of one name are told apart by their ids wherever they are named; a name of its own stands alone', () => {
  const at = [0, 1, 2].map((i) => box(5000 * i, 0, 5000, 5000));
  const [a, b, c] = at as [(typeof at)[number], (typeof at)[number], (typeof at)[number]];
  const plan = planOf({ rooms: [room('r1', 'Hall', a), room('r2', 'Hall', b), room('r3', 'Bath', c)], doorways: [] });
  const line = [
    [5000, 0],
    [5000, 5000],
  ] as const;
  const between = joint('J1', 'drawn', line, ['B1', 'B2']);
  const bays = [bay('B1', ['r1'], a, 5, 5), bay('B2', ['r2'], b, 5, 5), bay('B3', ['r3'], c, 5, 5)];
  const names = namesOf(plan, analysisOf({ bays, joints: [between], edges: [] }));
  expect(names.joint(between)).toBe('Hall (r1) \u2013 Hall (r2)');
  expect(names.jointAcross(between)).toBe(true);
  expect(['r1', 'r2', 'r3'].map((id) => names.room(id))).toEqual(['Hall (r1)', 'Hall (r2)', 'Bath']);
  expect(names.ref('r1')).toBe('Hall (r1)');
});
