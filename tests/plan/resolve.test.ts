import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { planEmpty } from '../../src/plan/empty.ts';
import type { Covering } from '../../src/plan/plan.ts';
import type { RuleSetKey, ScreedClassKey } from '../../src/plan/reference.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { sourceOf } from '../../src/plan/sources.ts';
import { anyPlan } from './any-plan.ts';

const outline: readonly Point[] = [
  [0, 0],
  [4000, 0],
  [4000, 4000],
  [0, 4000],
];

function planOf(fields: Partial<PlanFile>) {
  return planResolve({ ...planEmpty('Test'), rooms: [{ id: 'r1', outline }], ...fields });
}

function roomOf(fields: Partial<PlanFile>, room: object = {}) {
  const [first] = planOf({ rooms: [{ id: 'r1', outline, ...room }], ...fields }).rooms;
  if (first === undefined) throw new Error('no room');
  return first;
}

test('a plan that says nothing takes the start values of the design and leaves the rest open', () => {
  const plan = planOf({});
  expect(plan.ruleSet).toBe('en-strict');
  expect(plan.temperatures).toEqual({ layingC: 15, highestC: 45, lowestC: 15, belowC: 10 });
  expect(plan.jointProfile).toEqual({ widthMm: 10, usableTravel: 0.5 });
  expect(plan.edgeStrip).toEqual({ thicknessMm: 10, usableTravel: 0.5 });
  expect(plan.sealant).toEqual({ widthMm: 8, capability: 0.25 });
  expect(plan.layout).toEqual({ aim: 'least-joint', reentrantMm: 150, columnMm: 400, neckRatio: 0.6 });
  expect([plan.heating, plan.loads, plan.buildUp, plan.tiles]).toEqual([null, null, null, null]);
  expect(plan.rooms[0]).toMatchObject({
    name: 'r1',
    heated: true,
    covering: 'stone-or-ceramic',
    zone: null,
    holes: [],
  });
});

describe('limits of a bay', () => {
  const none = Infinity;
  const floors: readonly [RuleSetKey, ScreedClassKey, boolean, Covering, number, number, number, string][] = [
    // EN 1264-4, strict reading; heated floor under any other covering takes the same
    ['en-strict', 'CT-C25-F4', true, 'stone-or-ceramic', 40, 8, 2, 'published'],
    ['en-strict', 'CT-C25-F4', true, 'timber', 40, 8, 2, 'practice'],
    ['en-strict', 'CT-C25-F4', true, 'none', 40, 8, 2, 'practice'],
    // the safer of 40 m2 / 8 m and the 100 m2 / 10 m of BS 5385-3
    ['en-strict', 'CT-C25-F4', false, 'stone-or-ceramic', 40, 8, 2, 'practice'],
    ['en-strict', 'CT-C25-F4', false, 'textile', none, none, none, 'practice'],
    ['en-rectangle', 'CT-C25-F4', true, 'stone-or-ceramic', 40, 8, 2, 'memory'],
    // CPT 3578
    ['ca-france', 'CAF-C20-F4', true, 'stone-or-ceramic', 300, 25, none, 'published'],
    ['ca-france', 'CA-C20-F4', false, 'resilient', 1000, 45, none, 'published'],
    // association leaflet on joints in flowing screeds; BS 8204-7
    ['ca-germany', 'CAF-C25-F5', true, 'stone-or-ceramic', none, 10, 2, 'memory'],
    ['ca-germany', 'CAF-C25-F5', true, 'resilient', none, 20, 2, 'memory'],
    ['ca-uk', 'CAF-C25-F5', true, 'timber', 300, none, 2, 'memory'],
    // a rule set for calcium sulfate says nothing about cement
    ['ca-france', 'CT-C25-F4', true, 'stone-or-ceramic', 40, 8, 2, 'published'],
    // TCNA EJ171: 25 ft and 12 ft, of 0.3048 m
    ['tile-us-interior', 'CT-C25-F4', true, 'stone-or-ceramic', none, 25 * 0.3048, none, 'published'],
    ['tile-us-exposed', 'CT-C25-F4', false, 'stone-or-ceramic', none, 12 * 0.3048, none, 'published'],
    ['tile-us-interior', 'CT-C25-F4', true, 'timber', 40, 8, 2, 'practice'],
    // BS 5385-3
    ['tile-uk-unheated', 'CT-C25-F4', false, 'stone-or-ceramic', 100, 10, none, 'published'],
    ['tile-uk-unheated', 'CT-C25-F4', true, 'stone-or-ceramic', 40, 8, 2, 'published'],
    ['data-sheet', 'CT-C25-F4', true, 'stone-or-ceramic', 40, 8, 2, 'published'],
  ];
  test.each(floors)(
    '%s, %s, heated %s, %s',
    (ruleSet, screedClass, heated, covering, areaM2, lengthM, aspect, standing) => {
      const room = roomOf({ ruleSet, screed: { class: screedClass } }, { heated, covering });
      expect(room.limits).toMatchObject({ areaM2, aspect, aspectFromM: 5 });
      expect(room.limits.lengthM).toBeCloseTo(lengthM, 9);
      expect(sourceOf(room.limitSources.lengthM)?.standing).toBe(standing);
    },
  );

  test('a figure of the user goes before the rule set, on heated and unheated floor, and names his document', () => {
    const screed = { limits: { areaM2: 60, aspectFromM: 0 }, source: 'Data sheet of the screed, 2026' };
    const heated = roomOf({ screed });
    expect(heated.limits).toEqual({ areaM2: 60, lengthM: 8, aspect: 2, aspectFromM: 0 });
    expect(heated.limitSources).toMatchObject({
      areaM2: screed.source,
      lengthM: 'en-1264-4-bays',
      aspectFromM: screed.source,
    });
    expect(roomOf({ screed }, { heated: false, covering: 'timber' }).limits).toEqual({
      areaM2: 60,
      lengthM: Infinity,
      aspect: Infinity,
      aspectFromM: 0,
    });
  });

  test('a true rectangle may pass only under the rule set that says so, and not a limit of the user', () => {
    const ruleSet: RuleSetKey = 'en-rectangle';
    expect(roomOf({ ruleSet }).limits.rectangleMayPass).toBe(true);
    expect(roomOf({}).limits.rectangleMayPass).toBeUndefined();
    expect(roomOf({ ruleSet, screed: { limits: { areaM2: 40 } } }).limits.rectangleMayPass).toBeUndefined();
    expect(roomOf({ ruleSet }, { covering: 'timber' }).limits.rectangleMayPass).toBeUndefined();
  });
});

describe('the screed', () => {
  test('cement expands by 12e-6, flowing calcium sulfate by 12e-6 within 10 to 16, conventional by 8e-6', () => {
    expect(planOf({}).screed).toMatchObject({
      class: 'CT-C25-F4',
      expansionPerK: 12e-6,
      expansionRangePerK: [10e-6, 12e-6],
    });
    expect(planOf({ screed: { class: 'CAF-C30-F7' } }).screed).toMatchObject({
      expansionPerK: 12e-6,
      expansionRangePerK: [10e-6, 16e-6],
      flexuralNPerMm2: 7,
      compressiveNPerMm2: 30,
      elasticModulusNPerMm2: [15000, 20000],
    });
    expect(planOf({ screed: { class: 'CA-C20-F4' } }).screed).toMatchObject({
      expansionPerK: 8e-6,
      expansionRangePerK: [8e-6, 8e-6],
    });
  });

  test("the user's own expansion stands alone", () => {
    const { screed } = planOf({ screed: { expansionPerK: 9e-6, source: 'Test report' } });
    expect(screed).toMatchObject({ expansionPerK: 9e-6, expansionRangePerK: [9e-6, 9e-6], source: 'Test report' });
  });
});

test("a room's own temperatures and build-up go before the plan's, field by field", () => {
  const room = roomOf(
    { temperatures: { highestC: 40, layingC: 18 }, buildUp: { insulationMm: 50, coveringMm: 12 } },
    { temperatures: { highestC: 35 }, buildUp: { coveringMm: 20 } },
  );
  expect(room.temperatures).toEqual({ layingC: 18, highestC: 35, lowestC: 15, belowC: 10 });
  expect(room.buildUp).toEqual({ insulationMm: 50, adhesiveMm: 4, coveringMm: 20 });
});

test('a room or a unit without a name, or with one of blanks, goes by its id', () => {
  expect(['Hall', ' Hall ', undefined, '', ' \t', '\u0001'].map((name) => roomOf({}, { name }).name)).toEqual([
    'Hall',
    ' Hall ',
    'r1',
    'r1',
    'r1',
    'r1',
  ]);
  expect(planOf({ joinery: [{ id: 'j1', name: ' ', outline }] }).joinery[0]?.name).toBe('j1');
});

test('a build-up that nobody entered is not known, empty braces in a room included', () => {
  expect(roomOf({}, { buildUp: {} }).buildUp).toBeNull();
  expect(roomOf({}, { buildUp: { insulationMm: 40 } }).buildUp?.insulationMm).toBe(40);
});

test('corners closer than 1 mm become one, the repeat that closes a ring among them', () => {
  const loose: readonly Point[] = [
    [0, 0],
    [0.9, 0],
    [4000, 0],
    [4000, 4000],
    [4000, 4000],
    [0, 4000],
    [0, 0.5],
    [0, 0],
  ];
  expect(roomOf({}, { outline: loose, holes: [loose] })).toMatchObject({ outline, holes: [outline] });
  const crumbs = Array.from({ length: 20_000 }, (_, i): Point => [Math.min(i / 2, 4000), 0]);
  expect(roomOf({}, { outline: [...crumbs, [0, 4000]] }).outline).toHaveLength(4002);
});

test('filling in defaults is always possible and never drops a thing that was drawn', () => {
  fc.assert(
    fc.property(anyPlan, (file) => {
      const plan = planResolve(file);
      const counts = (of: PlanFile | typeof plan) =>
        [
          of.rooms,
          of.doorways,
          of.columns,
          of.pipes,
          of.joinery,
          of.slabContacts,
          of.structuralJoints,
          of.sunZones,
          of.drawnJoints,
          of.noJoint,
          of.keepClear,
        ].map((list) => list?.length ?? 0);
      expect(counts(plan)).toEqual(counts(file));
      for (const { limits } of plan.rooms)
        expect(Math.min(limits.areaM2, limits.lengthM, limits.aspect)).toBeGreaterThan(0);
    }),
  );
});
