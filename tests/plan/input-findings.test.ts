import { expect, test } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { planEmpty } from '../../src/plan/empty.ts';
import { inputFindings } from '../../src/plan/input-findings.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import type { PlanFile } from '../../src/plan/schema.ts';

const outline: readonly Point[] = [
  [0, 0],
  [4000, 0],
  [0, 4000],
];

/** Findings about a plan of one room. */
function found(fields: Partial<PlanFile>, room: object = {}) {
  return inputFindings(
    planResolve({ ...planEmpty('Test'), rooms: [{ id: 'r1', name: 'Hall', outline, ...room }], ...fields }),
  );
}

test('a heated floor under tile by the strict rules leaves nothing open', () => {
  expect(found({})).toEqual([]);
});

test('an empty sheet leaves nothing open under any rule set', () => {
  expect(found({ rooms: [], ruleSet: 'data-sheet' })).toEqual([]);
});

test('rules for calcium sulfate on a cement screed are named', () => {
  expect(found({ ruleSet: 'ca-france' })).toMatchObject([{ code: 'rule-set-other-screed', screed: 'CT-C25-F4' }]);
  expect(found({ ruleSet: 'ca-france', screed: { class: 'CAF-C25-F5' } })).toEqual([]);
});

test('the data sheet rule set asks for limits until one is entered', () => {
  expect(found({ ruleSet: 'data-sheet' })).toMatchObject([{ code: 'limits-not-entered' }]);
  expect(found({ ruleSet: 'data-sheet', screed: { limits: { lengthM: 6 } } })).toEqual([]);
  expect(found({ ruleSet: 'data-sheet', screed: { limits: { lengthM: 6 }, source: 'Sheet 4' } })).toEqual([]);
});

test('limits from memory are said to be, with their source', () => {
  const screed = { class: 'CAF-C25-F5' } as const;
  expect(found({ ruleSet: 'ca-uk', screed })).toMatchObject([{ code: 'limits-from-memory', source: 'bs-8204-7-bays' }]);
});

test('limits that are carried over to other coverings are said to be, with the rooms', () => {
  const expected = { code: 'limits-carried-over', names: ['Hall'], refs: ['r1'] };
  expect(found({}, { covering: 'timber' })).toMatchObject([{ ...expected, source: 'heated-other-coverings' }]);
  expect(found({}, { heated: false })).toMatchObject([{ ...expected, source: 'unheated-hard-covering' }]);
  expect(found({}, { heated: false, covering: 'timber' })).toEqual([]);
});

test('a screed next to the pipes takes 55 C by EN 1264-4, in the sun as well', () => {
  const sunZones = [{ id: 'u1', outline, highestC: 56 }];
  expect(found({ temperatures: { highestC: 55 } })).toEqual([]);
  expect(found({ temperatures: { highestC: 57 }, sunZones })).toMatchObject([
    { code: 'screed-hot', highestC: 57, limitC: 55, refs: ['r1', 'u1'] },
  ]);
  expect(found({ temperatures: { highestC: 57 } }, { heated: false, covering: 'none' })).toEqual([]);
});

test('a tile field in a room that is not there is named', () => {
  const tileFields = [{ id: 't1', rooms: ['r1', 'r9'], lengthMm: 600, widthMm: 600 }];
  expect(found({ tileFields })).toMatchObject([{ code: 'tile-field-unknown-room', field: 't1', room: 'r9' }]);
});
