import { expect, test } from 'vitest';
import { gridLineHeld } from '../../../src/app/tools/papers/grid-line.ts';
import type { Act } from '../../../src/app/tools/stance.ts';
import { firstWishes } from '../../../src/app/tools/wishes.ts';
import { acted, drag, emptyFile, handAt, hoverAt, length, pressAt, sceneOf } from './scene.ts';

const scene = sceneOf(emptyFile, { step: 'papers' });
const linesOf = (acts: readonly Act[], over = scene) =>
  acted(gridLineHeld(), over, acts).step?.file.papers?.gridLines ?? [];

test('two presses place a line, held to a right angle, and undo tells which', () => {
  const turn = acted(gridLineHeld(), scene, [pressAt(0, 0), pressAt(40, -5000)]);
  expect(turn.step?.name).toBe('Grid line A placed');
  expect(turn.step?.file.papers?.gridLines).toEqual([{ name: 'A', from: [0, 0], to: [0, -5000] }]);
  const across = acted(gridLineHeld(), { ...scene, file: turn.step?.file ?? emptyFile }, [
    pressAt(0, 0),
    pressAt(6000, 50),
  ]);
  expect(across.step?.name).toBe('Grid line 1 placed');
});

test('a line is askew where right angles are let go, by the key that is held or in the bar', () => {
  const loose: Act = { kind: 'press', hand: handAt([3000, 4000], { loose: true }) };
  expect(linesOf([pressAt(0, 0), loose])).toEqual([{ name: 'A', from: [0, 0], to: [3000, 4000] }]);
  const free = { ...scene, wishes: { ...firstWishes, square: false } };
  expect(linesOf([pressAt(0, 0), pressAt(3000, 4000)], free)).toEqual([{ name: 'A', from: [0, 0], to: [3000, 4000] }]);
});

test('a drag from end to end places a line', () => {
  expect(linesOf(drag([0, 0], [4000, 0]))).toEqual([{ name: '1', from: [0, 0], to: [4000, 0] }]);
});

test('the length is typed the way that the hand points, or with its direction', () => {
  expect(linesOf([pressAt(0, 0), hoverAt(900, 20), length(7200)])).toEqual([
    { name: '1', from: [0, 0], to: [7200, 0] },
  ]);
  // 90 degrees are up the sheet, where y goes down.
  expect(linesOf([pressAt(0, 0), length(3000, 90)])).toEqual([{ name: 'A', from: [0, 0], to: [0, -3000] }]);
});

test('both ends are typed as places', () => {
  const places: readonly Act[] = [
    { kind: 'place', at: [1000, 2000] },
    { kind: 'place', at: [1000, 9000] },
  ];
  expect(linesOf(places)).toEqual([{ name: 'A', from: [1000, 2000], to: [1000, 9000] }]);
});

test('keys alone place a line: Enter sets an end, arrow keys lead the hand', () => {
  const keys: readonly Act[] = [
    { kind: 'steer', by: [0, 0] },
    { kind: 'enter' },
    { kind: 'steer', by: [500, 0] },
    { kind: 'enter' },
  ];
  expect(linesOf(keys)).toEqual([{ name: '1', from: [0, 0], to: [500, 0] }]);
});

test('Escape takes the first end back, and then puts the tool down', () => {
  const back: Act = { kind: 'back' };
  const once = acted(gridLineHeld(), scene, [pressAt(0, 0), back]);
  expect(once.next !== 'rest' && once.next.underway).toBe(false);
  expect(acted(gridLineHeld(), scene, [pressAt(0, 0), back, back]).next).toBe('rest');
});

test('a second press on the first end waits for another place', () => {
  const turn = acted(gridLineHeld(), scene, [pressAt(0, 0), pressAt(0, 0)]);
  expect(turn.step).toBeUndefined();
  expect(turn.next !== 'rest' && turn.next.underway).toBe(true);
});
