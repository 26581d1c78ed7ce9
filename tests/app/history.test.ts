import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type History,
  historyCommit,
  historyRedo,
  historyRetract,
  historyStart,
  historyUndo,
} from '../../src/app/state/history.ts';

const step = (state: string, gesture: string | null = null) => ({ name: `to ${state}`, state, gesture });

function undoAll(history: History<string>): History<string> {
  return history.past.length === 0 ? history : undoAll(historyUndo(history));
}

function redoAll(history: History<string>): History<string> {
  return history.future.length === 0 ? history : redoAll(historyRedo(history));
}

test('undoing every step gives the first state, doing them again the last', () => {
  fc.assert(
    fc.property(fc.array(fc.string()), (states) => {
      const end = states.reduce((history, state) => historyCommit(history, step(state)), historyStart('start'));
      expect(undoAll(end).present).toBe('start');
      expect(redoAll(undoAll(end)).present).toBe(end.present);
    }),
  );
});

test('a gesture is one step, and undo goes back to before it', () => {
  const dragged = ['a', 'b', 'c'].reduce(
    (history, state) => historyCommit(history, step(state, 'drag')),
    historyStart('start'),
  );
  expect(dragged.past).toHaveLength(1);
  expect(historyUndo(dragged).present).toBe('start');
  expect(dragged.past[0]?.name).toBe('to c');
  expect(historyRedo(historyUndo(dragged)).present).toBe('c');
});

test('a gesture that is taken back leaves no step, and takes back nothing else', () => {
  const one = historyCommit(historyStart('start'), step('a', 'first'));
  const two = ['b', 'c'].reduce((history, state) => historyCommit(history, step(state, 'second')), one);
  expect(historyRetract(two, 'second')).toEqual(one);
  expect(historyRetract(one, 'second')).toBe(one);
});

test('two gestures are two steps', () => {
  const one = historyCommit(historyStart('start'), step('a', 'first'));
  const two = historyCommit(one, step('b', 'second'));
  expect(historyUndo(two).present).toBe('a');
});

test('a gesture that was undone does not go on', () => {
  const undone = historyUndo(historyCommit(historyStart('start'), step('a', 'drag')));
  expect(historyUndo(historyCommit(undone, step('b', 'drag'))).present).toBe('start');
});

test('an edit that changes nothing is no step and keeps what can be done again', () => {
  const undone = historyUndo(historyCommit(historyStart('start'), step('a')));
  expect(historyCommit(undone, step('start'))).toBe(undone);
});

test('a new step after an undo forgets what was undone', () => {
  const undone = historyUndo(historyCommit(historyStart('start'), step('a')));
  expect(historyRedo(historyCommit(undone, step('b'))).present).toBe('b');
});
