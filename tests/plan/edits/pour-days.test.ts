import { expect, test } from 'vitest';
import {
  pourBaysPut,
  pourBaysTakenOut,
  pourDayAdded,
  pourDayDated,
  pourDayMoved,
  pourDayRemoved,
  pourDaysOf,
  pourDaysProposed,
} from '../../../src/plan/edits/pour-days.ts';
import { planEmpty } from '../../../src/plan/empty.ts';

const file = planEmpty('Test');
const two = pourDaysProposed(file, [
  { date: null, bays: ['a', 'b'] },
  { date: '2027-03-02', bays: ['c'] },
]);

test('proposed days are taken over with the dates that there are', () => {
  expect(pourDaysOf(two)).toEqual([{ bays: ['a', 'b'] }, { date: '2027-03-02', bays: ['c'] }]);
});

test('a day is added, dated, and taken away without a trace in the file', () => {
  const dated = pourDayDated(pourDayAdded(file), 0, '2027-03-01');
  expect(pourDaysOf(dated)).toEqual([{ date: '2027-03-01', bays: [] }]);
  expect(pourDaysOf(pourDayDated(dated, 0, undefined))).toEqual([{ bays: [] }]);
  expect(pourDayRemoved(dated, 0)).toEqual(file);
});

test('a bay that is put into a day is no longer laid on another', () => {
  expect(pourDaysOf(pourBaysPut(two, 1, ['a', 'd'])).map(({ bays }) => bays)).toEqual([['b'], ['c', 'a', 'd']]);
  expect(pourBaysPut(two, 0, ['a'])).toBe(two);
});

test('bays are taken out of a day, those among them that the floor does not have any more', () => {
  expect(pourDaysOf(pourBaysTakenOut(two, 0, ['a', 'gone'])).map(({ bays }) => bays)).toEqual([['b'], ['c']]);
  expect(pourBaysTakenOut(two, 0, ['c'])).toBe(two);
});

test('days change places, and the first is not moved before itself', () => {
  expect(pourDaysOf(pourDayMoved(two, 1, 'earlier')).map(({ bays }) => bays)).toEqual([['c'], ['a', 'b']]);
  expect(pourDayMoved(two, 0, 'earlier')).toBe(two);
  expect(pourDayMoved(two, 1, 'later')).toBe(two);
});
