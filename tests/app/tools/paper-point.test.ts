import { expect, test } from 'vitest';
import { paperPointHeld } from '../../../src/app/tools/papers/paper-point.ts';
import { acted, pressAt, sceneOf, twoRooms } from './scene.ts';

const scene = sceneOf(twoRooms, { step: 'papers' });

test('a press places a point of the kind that is in hand, on the corner that catches the hand', () => {
  const turn = acted(paperPointHeld('test'), scene, [pressAt(20, 15)]);
  expect(turn.step?.name).toBe('Test point 1 placed');
  expect(turn.step?.file.records?.testPoints).toEqual([{ name: '1', at: [0, 0] }]);
});

test('undo tells which point was placed, and whether the access was placed or moved', () => {
  const first = acted(paperPointHeld('test'), scene, [pressAt(20, 15)]).step?.file ?? twoRooms;
  expect(acted(paperPointHeld('test'), { ...scene, file: first }, [pressAt(900, 900)]).step?.name).toBe(
    'Test point 2 placed',
  );
  const placed = acted(paperPointHeld('access'), scene, [pressAt(900, 900)]).step;
  expect(placed?.name).toBe('Access placed');
  const moved = acted(paperPointHeld('access'), { ...scene, file: placed?.file ?? twoRooms }, [pressAt(20, 15)]).step;
  expect(moved?.name).toBe('Access moved');
});

test('a place can be typed, and arrow keys lead the hand', () => {
  const typed = acted(paperPointHeld('test'), scene, [{ kind: 'place', at: [1234, 567] }]);
  expect(typed.step?.file.records?.testPoints).toEqual([{ name: '1', at: [1234, 567] }]);
  const steered = acted(paperPointHeld('test', { at: [100, 100], marks: [], onSide: false }), scene, [
    { kind: 'steer', by: [10, 0] },
    { kind: 'enter' },
  ]);
  expect(steered.step?.file.records?.testPoints).toEqual([{ name: '1', at: [110, 100] }]);
});
