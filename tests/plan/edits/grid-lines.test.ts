import { expect, test } from 'vitest';
import {
  gridLineAdded,
  gridLineBeside,
  gridLineChanged,
  gridLineRemoved,
  gridLinesOf,
} from '../../../src/plan/edits/grid-lines.ts';
import { planEmpty } from '../../../src/plan/empty.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';

const file = planEmpty('Test');
const up = (x: number) => ({ from: [x, 0], to: [x, 6000] }) as const;
const level = (y: number) => ({ from: [0, y], to: [9000, y] }) as const;
const names = (plan: PlanFile) => gridLinesOf(plan).map(({ name }) => name);

/** A floor of 8 by 5 m, its corner at [1000, 2000]. */
const floor: PlanFile = {
  ...file,
  rooms: [
    {
      id: 'r1',
      outline: [
        [1000, 2000],
        [9000, 2000],
        [9000, 7000],
        [1000, 7000],
      ],
    },
  ],
};

test('lines up the sheet are named by letters and lines across it by numbers, each by the first that is free', () => {
  const grid = [up(0), up(4000), level(0), up(8000), level(5000)].reduce(gridLineAdded, file);
  expect(names(grid)).toEqual(['A', 'B', '1', 'C', '2']);
  expect(names(gridLineAdded(gridLineRemoved(grid, 1), up(4000)))).toEqual(['A', '1', 'C', '2', 'B']);
});

test('no line is called I or O, which are read as 1 and 0', () => {
  // The alphabet less two letters has 24: after Z comes AA.
  const grid = Array.from({ length: 25 }, (_, i) => up(i * 1000)).reduce(gridLineAdded, file);
  expect(names(grid).join(' ')).toBe('A B C D E F G H J K L M N P Q R S T U V W X Y Z AA');
});

test('a line without a length and one beyond the sheet are not taken', () => {
  expect(gridLineAdded(file, { from: [0, 0], to: [0, 0.5] })).toBe(file);
  // The sheet reaches 10 km each way.
  expect(gridLineAdded(file, { from: [0, 0], to: [2e7, 0] })).toBe(file);
});

test('a line is renamed, and its ends are moved as long as they lie apart', () => {
  const one = gridLineAdded(file, up(0));
  expect(names(gridLineChanged(one, 0, { name: 'A.1' }))).toEqual(['A.1']);
  const moved = gridLineChanged(one, 0, { to: [0.04, 4000] });
  expect(gridLinesOf(moved)).toEqual([{ name: 'A', from: [0, 0], to: [0, 4000] }]);
  expect(gridLineChanged(one, 0, { to: [0, 0] })).toBe(one);
  expect(gridLineChanged(one, 0, { name: 'A' })).toBe(one);
});

test('the last line that is taken away leaves no trace in the file', () => {
  expect(gridLineRemoved(gridLineAdded(file, up(0)), 0)).toEqual(file);
});

test('a line that is added without a place lies along an edge of the floor that has none, and runs past its corners', () => {
  const grid = [1, 2, 3, 4].reduce((plan) => gridLineAdded(plan, gridLineBeside(plan)), floor);
  // 3 % of 8 m are 240 mm, in steps of 100 mm: 300 mm.
  expect(gridLinesOf(grid)).toEqual([
    { name: 'A', from: [1000, 1700], to: [1000, 7300] },
    { name: '1', from: [700, 2000], to: [9300, 2000] },
    { name: 'B', from: [9000, 1700], to: [9000, 7300] },
    { name: '2', from: [700, 7000], to: [9300, 7000] },
  ]);
});

test('a line can be added before there is a floor', () => {
  expect(names(gridLineAdded(file, gridLineBeside(file)))).toEqual(['A']);
});
