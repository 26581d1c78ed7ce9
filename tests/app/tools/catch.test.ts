import { expect, test } from 'vitest';
import { freeHold, handCatch, handCatchAlong, handStep, squareWay } from '../../../src/app/tools/catch.ts';
import { catchesOf } from '../../../src/app/tools/catch-lines.ts';
import type { SketchMark } from '../../../src/app/tools/sketch.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { emptyFile, handAt, twoRooms } from './scene.ts';

const hall = catchesOf({ ...twoRooms, rooms: twoRooms.rooms.slice(0, 1) }, 120);
const words = (marks: readonly SketchMark[]) => marks.flatMap((mark) => (mark.mark === 'words' ? [mark.text] : []));

test('a corner within reach catches the hand, and is named', () => {
  const caught = handCatch(hall, handAt([5970, 4530]), freeHold);
  expect(caught.at).toEqual([6000, 4500]);
  expect(words(caught.marks)).toEqual(['Corner of Hall']);
});

test('beside a room the hand is caught at the depth of a wall and in line with its corners', () => {
  // 120 mm to the right of x = 6000, 70 mm below the level of the upper side: within reach of the one line, not of the other.
  const beside = handCatch(hall, handAt([6140, 70]), freeHold);
  expect(beside.at).toEqual([6120, 50]);
  expect(words(beside.marks)).toEqual(['120 mm from Hall']);
  // Nearer, where a neighbour's corner lies beyond the wall.
  const corner = handCatch(hall, handAt([6140, 30]), freeHold);
  expect(corner.at).toEqual([6120, 0]);
  expect(words(corner.marks)).toEqual(['120 mm from Hall']);
});

test('a finger that may miss by more than a wall still means the corner beyond it', () => {
  const caught = handCatch(hall, handAt([6140, 20], { reachMm: 330 }), freeHold);
  expect(caught.at).toEqual([6120, 0]);
});

test('on a wall the hand lies on the wall', () => {
  const caught = handCatch(hall, handAt([3020, 4520]), freeHold);
  expect(caught.at).toEqual([3000, 4500]);
  expect(caught.onSide).toBe(true);
});

test('a hand that lets go of every hold is where it is, to the millimetre', () => {
  const caught = handCatch(hall, handAt([5970.4, 4530.4], { loose: true }), freeHold);
  expect(caught).toEqual({ at: [5970, 4530], marks: [], onSide: false });
});

test('a run keeps to right angles with the sheet', () => {
  const hold = { from: [1000, 1000] as Point, before: null, own: [], square: true };
  expect(handCatch(catchesOf(emptyFile, 120), handAt([3010, 1400]), hold).at).toEqual([3000, 1000]);
  expect(handCatch(catchesOf(emptyFile, 120), handAt([1300, -500]), hold).at).toEqual([1000, -500]);
});

test('a run keeps to a right angle with a skew run before it', () => {
  // The run before goes 3 across and 4 down; square to it is 4 across and 3 up.
  const way = squareWay([0, 0], [790, -610], [0.6, 0.8]);
  expect(way[0]).toBeCloseTo(0.8, 12);
  expect(way[1]).toBeCloseTo(-0.6, 12);
});

test('a run that is held square still ends in line with corners elsewhere', () => {
  const hold = { from: [1000, 7000] as Point, before: null, own: [], square: true };
  const caught = handCatch(hall, handAt([5965, 7100]), hold);
  expect(caught.at).toEqual([6000, 7000]);
  expect(words(caught.marks)).toEqual(['In line with Hall']);
});

test('the first corner of the outline itself catches the hand', () => {
  const own: Point[] = [
    [1000, 1000],
    [5000, 1000],
  ];
  const hold = { from: [1000, 4000] as Point, before: [-1, 0] as Point, own, square: true };
  expect(handCatch(catchesOf(emptyFile, 120), handAt([1030, 1040]), hold).at).toEqual([1000, 1000]);
});

test('a skew wall catches the hand along its length', () => {
  const skew = catchesOf(
    {
      ...emptyFile,
      rooms: [
        {
          id: 'a',
          outline: [
            [0, 0],
            [4000, 0],
            [0, 3000],
          ],
        },
      ],
    },
    120,
  );
  // The long side runs from (4000, 0) to (0, 3000); its middle lies at (2000, 1500).
  const { at, onSide } = handCatch(skew, handAt([2006, 1508]), freeHold);
  expect(at[0]).toBeCloseTo(2000, 6);
  expect(at[1]).toBeCloseTo(1500, 6);
  expect(onSide).toBe(true);
});

test('a hand that is led along a line stays on it, either way', () => {
  const empty = catchesOf(emptyFile, 120);
  expect(handCatchAlong(empty, handAt([760, 999]), [1000, 500], [1, 0]).at).toEqual([750, 500]);
});

test('the step of a free hand follows the zoom', () => {
  expect([2, 60, 240, 1900].map(handStep)).toEqual([1, 50, 100, 500]);
});
