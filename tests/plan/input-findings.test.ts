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
function found(fields: Partial<PlanFile>, room: object = {}, offFloor: readonly string[] = []) {
  return inputFindings(
    planResolve({ ...planEmpty('Test'), rooms: [{ id: 'r1', name: 'Hall', outline, ...room }], ...fields }),
    new Set(offFloor),
  );
}

test('a heated floor under tile by the strict rules leaves nothing open', () => {
  expect(found({})).toEqual([]);
});

test('an empty sheet is said to have no rooms and leaves nothing else open under any rule set', () => {
  expect(found({ rooms: [], ruleSet: 'data-sheet' })).toEqual([{ code: 'no-rooms', at: null, refs: [] }]);
});

test('unheated rooms that warm with the plan are named, but not those with a highest temperature of their own', () => {
  const rooms = [
    { id: 'r1', name: 'Hall', outline },
    { id: 'r2', name: 'Store', outline, heated: false },
    { id: 'r3', name: 'Porch', outline, heated: false, temperatures: { highestC: 45 } },
    { id: 'r4', name: 'Shed', outline, heated: false, temperatures: { lowestC: 5 } },
  ];
  const notes = (temperatures: object) =>
    found({ rooms, temperatures }).filter(({ code }) => code === 'unheated-as-plan');
  expect(notes({ layingC: 15, highestC: 45 })).toMatchObject([
    { names: ['Store', 'Shed'], highestC: 45, refs: ['r2', 'r4'] },
  ]);
  expect(notes({ layingC: 15, highestC: 15 })).toEqual([]);
});

test('rules for calcium sulfate on a cement screed are named', () => {
  expect(found({ ruleSet: 'ca-france' })).toMatchObject([
    { code: 'rule-set-other-screed', screed: 'CT-C25-F4', names: ['Hall'], refs: ['r1'], areaM2: 40 },
  ]);
  expect(found({ ruleSet: 'ca-france', screed: { class: 'CAF-C25-F5' } })).toEqual([]);
});

test('a floor that the rule set does not speak of is named with its rooms and the limits it takes, a caution for each kind of floor', () => {
  const strict = { areaM2: 40, lengthM: 8, aspect: 2 };
  const rooms = [
    { id: 'r1', name: 'Hall', outline },
    { id: 'r2', name: 'Store', outline, heated: false },
    { id: 'r3', name: 'Bath', outline },
    { id: 'r4', name: 'Study', outline, covering: 'timber' },
    { id: 'r5', name: 'Shed', outline, heated: false, covering: 'none' },
  ] as const;
  const cautions = (fields: Partial<PlanFile>) =>
    found({ rooms, ...fields }).filter(({ code }) => code === 'rule-set-other-floor');
  expect(cautions({ ruleSet: 'tile-uk-unheated' })).toMatchObject([
    { names: ['Hall', 'Bath'], refs: ['r1', 'r3'], source: 'en-1264-4-bays', ...strict },
    { names: ['Study'], refs: ['r4'], source: 'heated-other-coverings', ...strict },
    { names: ['Shed'], refs: ['r5'], areaM2: null, lengthM: null, aspect: null },
  ]);
  // tile field, indoors: heated or not, stone or ceramic only
  expect(cautions({ ruleSet: 'tile-us-interior' }).map(({ refs }) => refs)).toEqual([['r4'], ['r5']]);
  // French practice speaks of every floor of calcium sulfate, the German of all but unheated floor under other coverings
  const screed = { class: 'CAF-C25-F5' } as const;
  expect(cautions({ ruleSet: 'ca-france', screed })).toEqual([]);
  expect(cautions({ ruleSet: 'ca-germany', screed }).map(({ refs }) => refs)).toEqual([['r5']]);
  expect(cautions({ ruleSet: 'en-strict' })).toEqual([]);
});

test("limits of the user's own are not said to be taken from another rule set", () => {
  const ruleSet = 'tile-uk-unheated';
  expect(found({ ruleSet, screed: { limits: { areaM2: 20, lengthM: 5 } } })).toMatchObject([
    { code: 'rule-set-other-floor', areaM2: null, lengthM: null, aspect: 2 },
  ]);
  expect(found({ ruleSet, screed: { limits: { areaM2: 20, lengthM: 5, aspect: 2 }, source: 'Sheet 4' } })).toEqual([]);
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
  const unheated = { heated: false, temperatures: { highestC: 24 } };
  expect(found({}, unheated)).toMatchObject([{ ...expected, source: 'unheated-hard-covering' }]);
  expect(found({}, { ...unheated, covering: 'timber' })).toEqual([]);
});

test('a screed next to the pipes takes 55 C by EN 1264-4, in the sun as well', () => {
  const sunZones = [{ id: 'u1', outline, highestC: 56 }];
  expect(found({ temperatures: { highestC: 55 } })).toEqual([]);
  expect(found({ temperatures: { highestC: 57 }, sunZones })).toMatchObject([
    { code: 'screed-hot', highestC: 57, limitC: 55, refs: ['r1', 'u1'] },
  ]);
  expect(found({ temperatures: { highestC: 55 }, sunZones }, {}, ['u1'])).toEqual([]);
  const unheated = found({ temperatures: { highestC: 57 } }, { heated: false, covering: 'none' });
  expect(unheated.map(({ code }) => code)).toEqual(['unheated-as-plan']);
});

test('a tile field in a room that is not there is named', () => {
  const tileFields = [{ id: 't1', rooms: ['r1', 'r9'], lengthMm: 600, widthMm: 600 }];
  expect(found({ tileFields })).toMatchObject([{ code: 'tile-field-unknown-room', field: 't1', room: 'r9' }]);
});
