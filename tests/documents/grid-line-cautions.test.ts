import { expect, test } from 'vitest';
import { gridLineCautions } from '../../src/documents/grid-line-cautions.ts';
import type { GridLine } from '../../src/plan/papers.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import type { PlanFile } from '../../src/plan/schema.ts';

/** A room of 8 by 6 m with lines of a grid. */
function told(...gridLines: GridLine[]): readonly (readonly [number, string])[] {
  const file: PlanFile = {
    format: 'screed-bays/plan',
    version: 1,
    name: 'Test',
    papers: { gridLines },
    rooms: [
      {
        id: 'r1',
        outline: [
          [0, 0],
          [8000, 0],
          [8000, 6000],
          [0, 6000],
        ],
      },
    ],
  };
  return gridLineCautions({ file, plan: planResolve(file) }).map(({ index, words }) => [index, words]);
}

const lineA: GridLine = { name: 'A', from: [0, -500], to: [0, 6500] };
const line1: GridLine = { name: '1', from: [-500, 0], to: [8500, 0] };

test('two lines that are square to each other need no caution', () => {
  expect(told(lineA, line1)).toEqual([]);
});

test('a line without a length serves for nothing', () => {
  expect(told(lineA, { name: 'B', from: [10, 10], to: [10, 10] })).toEqual([
    [1, 'Grid line B has no length and serves for nothing.'],
  ]);
});

test('a line that is askew to the first is said not to serve, where none is square to it', () => {
  const askew: GridLine = { name: 'X', from: [0, 0], to: [8000, 2000] };
  expect(told(lineA, askew)).toEqual([[1, 'Grid line X is not square to A: joints are set out from A alone.']]);
  expect(told(lineA, askew, line1)).toEqual([]);
});

test('a line down the street is said not to be drawn', () => {
  expect(told(lineA, line1, { name: 'B', from: [90_000, 0], to: [90_000, 6000] })).toEqual([
    [2, 'Grid line B passes too far off the floor to be drawn.'],
  ]);
});

test('a line on another, and one that is called like another, are told', () => {
  expect(told(lineA, line1, { name: ' A ', from: [0, 1000], to: [0, 3000] })).toEqual([
    [2, 'Grid line A lies on A and adds nothing to it.'],
    [2, 'Another grid line is called A too.'],
  ]);
});

test('a short line that joints are set out from is told to be too short for it', () => {
  // As for base points: less than half a metre between two marks (shared/order-starts.json, leastBaseMm).
  const [caution] = told({ name: 'A', from: [0, 0], to: [0, 400] }, line1);
  expect(caution?.[1]).toMatch(/^Grid line A is 400\smm long: with less than 500\smm between its ends/u);
});
