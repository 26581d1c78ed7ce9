import fc from 'fast-check';
import type { Point } from '../../src/geometry/point.ts';
import { ruleSetKeys, screedClassKeys } from '../../src/plan/reference.ts';
import { coverings, type PlanFile } from '../../src/plan/schema.ts';
import { jointLocks, paperScales, paperSizes, paperStatuses, setOutFaces } from '../../src/plan/schema-papers.ts';

/** Any plan that the schema lets through, on the 0.1 mm grid: floors need make no sense. */

const place = fc.integer({ min: -1e8, max: 1e8 }).map((steps) => steps / 10 + 0);
const point: fc.Arbitrary<Point> = fc.tuple(place, place);
/** Three corners 1 m apart, so that no weld leaves fewer, and others anywhere. */
const ring = fc
  .tuple(fc.integer({ min: -1000, max: 1000 }), fc.array(point, { maxLength: 6 }))
  .map(([at, more]): readonly Point[] => [[at, 0], [at + 1000, 0], [at, 1000], ...more]);
const line = fc.array(point, { minLength: 2, maxLength: 4 });
const amount = fc.double({ min: 0, max: 1e4, noNaN: true }).map((value) => value + 0);
const positive = fc.double({ min: 1e-3, max: 1e4, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true }).map((value) => value + 0);
const celsius = fc.double({ min: -50, max: 90, noNaN: true }).map((value) => value + 0);

/** Each field there or not. */
const some = <T extends object>(fields: { [K in keyof T]: fc.Arbitrary<T[K]> }) =>
  fc.record(fields, { requiredKeys: [] }) as fc.Arbitrary<Partial<T>>;

const temperatures = some({ layingC: celsius, highestC: celsius, lowestC: celsius, belowC: celsius });
const buildUp = some({ insulationMm: amount, adhesiveMm: amount, coveringMm: amount });

/** Objects of the plan, their ids still to be given. */
const lists = {
  rooms: fc.record(
    {
      name: fc.string(),
      outline: ring,
      holes: fc.array(ring, { maxLength: 2 }),
      heated: fc.boolean(),
      zone: fc.string(),
      covering: fc.constantFrom(...coverings),
      temperatures,
      buildUp,
    },
    { requiredKeys: ['outline'] },
  ),
  doorways: fc.record({ line: fc.tuple(point, point), wallMm: amount, leaf: fc.boolean() }, { requiredKeys: ['line'] }),
  columns: fc.record({ outline: ring }),
  pipes: fc.record({ centre: point, diameterMm: positive }),
  joinery: fc.record(
    {
      name: fc.string(),
      outline: ring,
      under: fc.constantFrom('insulated', 'no-insulation', 'built-off-slab'),
      fixedThrough: fc.boolean(),
    },
    { requiredKeys: ['outline'] },
  ),
  slabContacts: fc.record({ outline: ring }),
  structuralJoints: fc.record({ line, widthMm: amount }, { requiredKeys: ['line'] }),
  sunZones: fc.record({ outline: ring, highestC: celsius }),
  drawnJoints: fc.record({ line }),
  noJoint: fc.record({ line }),
  keepClear: fc.record({ outline: ring }),
} as const;

const days = fc.constantFrom('2027-01-31', '2028-02-29', '2027-12-31');
const named = fc.array(fc.record({ name: fc.string(), at: point }, { requiredKeys: ['at'] }), { maxLength: 3 });

const papers = some({
  project: fc.string(),
  number: fc.string(),
  status: fc.constantFrom(...paperStatuses),
  designer: fc.string(),
  date: days,
  northDeg: fc.integer({ min: -360, max: 360 }).map((deg) => deg + 0),
  revisions: fc.array(
    fc.record({ mark: fc.string(), date: days, text: fc.string(), by: fc.string() }, { requiredKeys: ['mark'] }),
    { maxLength: 3 },
  ),
  face: fc.constantFrom(...setOutFaces),
  basePoints: named,
  gridLines: fc.array(fc.record({ name: fc.string(), from: point, to: point }), { maxLength: 3 }),
  paper: fc.constantFrom(...paperSizes),
  scale: fc.constantFrom(...paperScales),
  joints: fc.array(
    fc.record(
      {
        key: fc.string({ minLength: 1 }),
        profile: fc.string(),
        sealant: fc.string(),
        colour: fc.string(),
        fixing: fc.string(),
        lock: fc.constantFrom(...jointLocks),
        pipes: fc.integer({ min: 0, max: 1000 }),
        decidedBy: fc.string(),
        suppliedBy: fc.string(),
        photo: fc.string(),
      },
      { requiredKeys: ['key'] },
    ),
    { maxLength: 3 },
  ),
});

const order = some({
  stripRollM: fc.integer({ min: 1, max: 1000 }),
  stripAllowance: share,
  profileBarM: fc.integer({ min: 1, max: 100 }),
  profileSpares: fc.integer({ min: 0, max: 1000 }),
  insulationLayersMm: fc.array(fc.integer({ min: 1, max: 1000 }), { maxLength: 3 }),
  insulationPackM2: fc.integer({ min: 1, max: 100 }),
  currency: fc.string(),
  prices: some({ stripRoll: amount, tile: amount }),
});

const pour = some({
  mostM3PerDay: positive,
  access: point,
  days: fc.array(fc.record({ date: days, bays: fc.array(fc.string(), { maxLength: 3 }) }, { requiredKeys: ['bays'] }), {
    maxLength: 3,
  }),
});

const records = some({
  laidOn: days,
  dataSheetDays: fc.integer({ min: 0, max: 365 }),
  dataSheet: fc.string(),
  highestSupplyC: fc.integer({ min: 20, max: 90 }),
  testPoints: named,
});

const settings = some({
  papers,
  order,
  pour,
  records,
  ruleSet: fc.constantFrom(...ruleSetKeys),
  screed: some({
    class: fc.constantFrom(...screedClassKeys),
    thicknessMm: positive,
    limits: some({ areaM2: positive, lengthM: positive, aspect: share.map((value) => 1 + value), aspectFromM: amount }),
    expansionPerK: share.map((value) => value / 1e4),
    shrinkageMmPerM: share,
    swellingMmPerM: share,
    source: fc.string(),
  }),
  temperatures,
  heating: some({ pipeOutsideMm: positive, pipeSpacingMm: positive }),
  loads: fc.record({ imposedKPa: amount, pointKN: amount, deadAllowanceKPa: amount }, { requiredKeys: ['imposedKPa'] }),
  buildUp,
  jointProfile: some({ widthMm: positive, usableTravel: share }),
  edgeStrip: some({ thicknessMm: positive, usableTravel: share }),
  sealant: some({ widthMm: positive, capability: share.map((value) => 0.01 + value * 0.9) }),
  layout: some({
    aim: fc.constantFrom('least-joint', 'even-bays', 'grout-lines'),
    reentrantMm: amount,
    columnMm: amount,
    neckRatio: share,
  }),
});

const objects: fc.Arbitrary<Readonly<Record<string, readonly object[]>>> = fc.record(
  Object.fromEntries(
    Object.entries(lists).map(([key, item]) => [key, fc.array(item as fc.Arbitrary<object>, { maxLength: 3 })]),
  ),
);

export const anyPlan: fc.Arbitrary<PlanFile> = fc.tuple(fc.string(), settings, objects).map(([name, set, things]) => {
  const named = Object.entries(things).map(([key, items]) => [
    key,
    items.map((item, i) => ({ id: `${key}-${i}`, ...item })),
  ]);
  return { format: 'screed-bays/plan', version: 1, name, ...set, ...Object.fromEntries(named) } as PlanFile;
});
