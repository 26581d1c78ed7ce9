import { expect, test } from 'vitest';
import type { BoxPx } from '../../src/app/canvas/viewport.ts';
import { cardPlace, wordsRoom } from '../../src/app/card/cardPlace.ts';

const board = { widthPx: 1000, heightPx: 700 };
const [widthPx, heightPx] = [320, 240];
const box = (leftPx: number, topPx: number, rightPx: number, bottomPx: number): BoxPx => ({
  leftPx,
  topPx,
  rightPx,
  bottomPx,
});
const covers = (place: { readonly left: number; readonly top: number }, thing: BoxPx) =>
  place.left < thing.rightPx &&
  place.left + widthPx > thing.leftPx &&
  place.top < thing.bottomPx &&
  place.top + heightPx > thing.topPx;

test('the figures stand beside the thing, else below or above it, and never over it while there is room', () => {
  const left = box(100, 200, 300, 400);
  expect(cardPlace(left, null, board, heightPx).left).toBe(320);
  const right = box(800, 200, 980, 400);
  expect(cardPlace(right, null, board, heightPx).left).toBe(460);
  const broadHigh = box(50, 60, 950, 300);
  expect(cardPlace(broadHigh, null, board, heightPx).top).toBe(320);
  const broadLow = box(50, 400, 950, 650);
  expect(cardPlace(broadLow, null, board, heightPx).top).toBe(140);
  for (const thing of [left, right, broadHigh, broadLow]) {
    expect(covers(cardPlace(thing, null, board, heightPx), thing)).toBe(false);
  }
});

test('they keep off the bay that a finding is about too where there is room round it, else off the finding', () => {
  const pin = box(180, 300, 220, 340);
  const bay = box(100, 200, 500, 600);
  expect(covers(cardPlace(pin, bay, board, heightPx), bay)).toBe(false);
  const hall = box(20, 20, 980, 680);
  expect(covers(cardPlace(pin, hall, board, heightPx), pin)).toBe(false);
});

test('on a narrow board they lie along its foot, or along its head where the thing is at the foot', () => {
  const narrow = { widthPx: 460, heightPx: 900 };
  for (const thing of [box(40, 100, 200, 300), box(40, 700, 200, 820)]) {
    expect(covers(cardPlace(thing, null, narrow, heightPx), thing)).toBe(false);
  }
});

test('the words of a step keep off them: at the head of the board, or beside those that go from head to foot', () => {
  const whole = { leftPx: 0, rightPx: 1000 };
  expect(wordsRoom({ left: 300, top: 200 }, board, 240)).toEqual({ at: 'foot', ...whole });
  expect(wordsRoom({ left: 300, top: 440 }, board, 240)).toEqual({ at: 'head', ...whole });
  expect(wordsRoom({ left: 500, top: 12 }, board, 660)).toEqual({ at: 'foot', leftPx: 0, rightPx: 500 });
  expect(wordsRoom({ left: 100, top: 12 }, board, 660)).toEqual({ at: 'foot', leftPx: 420, rightPx: 1000 });
});
