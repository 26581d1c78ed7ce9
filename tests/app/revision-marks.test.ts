import { expect, test } from 'vitest';
import { markNext } from '../../src/app/panels/papers/revision-marks.ts';

test('the first revision is A, and letters go on as columns of a table do', () => {
  expect(markNext([])).toBe('A');
  expect(markNext(['A'])).toBe('B');
  expect(markNext(['A', 'B', 'C'])).toBe('D');
  expect(markNext(['Z'])).toBe('AA');
  expect(markNext(['AZ'])).toBe('BA');
  expect(markNext(['a', 'b'])).toBe('c');
});

test('numbers go on as numbers, with what stands before them', () => {
  expect(markNext(['1', '2'])).toBe('3');
  expect(markNext(['P01', 'P02'])).toBe('P03');
  expect(markNext(['P09'])).toBe('P10');
  expect(markNext(['99'])).toBe('100');
});

test('a mark that is there already is not given again, and words are no marks to go on from', () => {
  expect(markNext(['B', 'A'])).toBe('C');
  expect(markNext(['B', 'as built'])).toBe('C');
  expect(markNext(['', ' '])).toBe('A');
});
