import { beforeEach, expect, test } from 'vitest';
import { countsWords } from '../../src/app/card/counts.ts';
import { type CardEdit, editPut, editTry, triedOf } from '../../src/app/card/put.ts';
import { planStore, sheetStart } from '../../src/app/state/planStore.ts';
import { rectangleSizeSet } from '../../src/plan/edits/corners.ts';
import { objectsOf } from '../../src/plan/edits/objects.ts';
import type { PlanFile } from '../../src/plan/schema.ts';

/** Two rooms with a wall of 120 mm between them and a doorway in it. */
const file: PlanFile = {
  format: 'screed-bays/plan',
  version: 1,
  name: 'Two rooms',
  rooms: [
    {
      id: 'r1',
      name: 'Hall',
      outline: [
        [0, 0],
        [4000, 0],
        [4000, 3000],
        [0, 3000],
      ],
    },
    {
      id: 'r2',
      outline: [
        [4120, 0],
        [8000, 0],
        [8000, 3000],
        [4120, 3000],
      ],
    },
  ],
  doorways: [
    {
      id: 'd1',
      line: [
        [4060, 1000],
        [4060, 1900],
      ],
      wallMm: 120,
    },
  ],
};

const wider: CardEdit<number> = (plan, widthMm) => triedOf(rectangleSizeSet(plan, 'r1', { widthMm }));
const history = () => planStore.getState().history;

beforeEach(() => sheetStart(file, 'file'));

test('digits on the way to a figure leave no trace in the doorway that follows the wall', () => {
  for (const widthMm of [3, 39, 390, 3900]) editPut(`Length ${widthMm}`, wider, widthMm, 'typing');
  expect(history().past.map(({ name }) => name)).toEqual(['Length 3900']);
  const [doorway] = history().present.file.doorways ?? [];
  // 100 mm more wall: 220 mm deep, the leaf still in its middle, at 3900 + 110
  expect(doorway).toMatchObject({ wallMm: 220 });
  expect(doorway?.line[0]).toEqual([4010, 1000]);
});

test('a figure that comes back to what stood there is no step', () => {
  editPut('Length 4500', wider, 4500, 'typing');
  editPut('Length 4000', wider, 4000, 'typing');
  expect(history().past).toEqual([]);
  expect(history().present.file).toBe(file);
});

test('what cannot be is refused in words, and the plan stays', () => {
  const noSide: CardEdit<number> = (plan, widthMm) => triedOf(rectangleSizeSet(plan, 'd1', { widthMm }));
  expect(editTry(noSide, 900, 'typing')).toBe('Only a rectangle has two sides to set.');
  editPut('Length 900', noSide, 900, 'typing');
  expect(history().present.file).toBe(file);
});

test('chosen things are counted by what they are', () => {
  expect(countsWords(objectsOf(file), 3)).toBe('2 rooms, 1 doorway');
  expect(countsWords(objectsOf(file).slice(0, 1), 3)).toBe('1 room, 2 bays or joints');
});
