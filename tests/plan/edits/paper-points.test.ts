import { expect, test } from 'vitest';
import { planJointNoted } from '../../../src/plan/edits/joint-notes.ts';
import {
  paperPointAdded,
  paperPointChanged,
  paperPointRemoved,
  paperPoints,
} from '../../../src/plan/edits/paper-points.ts';
import { planEmpty } from '../../../src/plan/empty.ts';

const file = planEmpty('Test');

test('base points are numbered in the order in which they are placed, until they have names', () => {
  const placed = paperPointAdded(paperPointAdded(file, 'base', [0.04, 0]), 'base', [4000, 0]);
  expect(paperPoints(placed, 'base').map(({ name, at }) => [name, at])).toEqual([
    ['1', [0, 0]],
    ['2', [4000, 0]],
  ]);
  const named = paperPointChanged(placed, { kind: 'base', index: 1 }, { name: 'Nail by the stair' });
  expect(paperPoints(named, 'base').map(({ name }) => name)).toEqual(['1', 'Nail by the stair']);
});

test('a point is taken away without a trace in the file', () => {
  const placed = paperPointAdded(file, 'test', [100, 200]);
  expect(paperPointRemoved(placed, { kind: 'test', index: 0 })).toEqual(file);
});

test('there is one access: another place moves it', () => {
  const placed = paperPointAdded(paperPointAdded(file, 'access', [0, 0]), 'access', [500, 0]);
  expect(paperPoints(placed, 'access').map(({ at }) => at)).toEqual([[500, 0]]);
});

test('a point beyond the sheet is not taken', () => {
  expect(paperPointAdded(file, 'base', [2e7, 0])).toBe(file);
});

test('what is said of a joint in the register is kept by its key, and goes when nothing is left of it', () => {
  const noted = planJointNoted(planJointNoted(file, 'J-a', { colour: 'sand' }), 'J-a', { pipes: 4 });
  expect(noted.papers?.joints).toEqual([{ key: 'J-a', colour: 'sand', pipes: 4 }]);
  expect(planJointNoted(noted, 'J-a', { colour: undefined, pipes: undefined })).toEqual(file);
});
