import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import {
  materials,
  ruleSets,
  screedClasses,
  screedClassKeys,
  screedTypeKey,
  screedTypes,
  thicknessTable,
} from '../../src/plan/reference.ts';
import { sources } from '../../src/plan/sources.ts';

const shared = fileURLToPath(new URL('../../shared/', import.meta.url));
const dataFiles = readdirSync(shared).filter((name) => name.endsWith('.json') && name !== 'plan.schema.json');
const standings = ['published', 'memory', 'practice', 'derived', 'user'];
const units = [
  'mm',
  'm',
  'm2',
  'm3',
  'ml',
  'K',
  'kg/m3',
  'N/mm2',
  'kN',
  'mm/m',
  '1/K',
  'C',
  'd',
  'CM-%',
  'W/mK',
  'deg',
  '1',
];

interface Place {
  readonly path: string;
  readonly object: Readonly<Record<string, unknown>>;
}

/** Every object of a file with the path to it. */
function objectsIn(value: unknown, path: string): readonly Place[] {
  if (typeof value !== 'object' || value === null) return [];
  const inside = Object.entries(value).flatMap(([key, item]) => objectsIn(item, `${path}.${key}`));
  return Array.isArray(value) ? inside : [{ path, object: value as Place['object'] }, ...inside];
}

const places = dataFiles.flatMap((name) => objectsIn(JSON.parse(readFileSync(shared + name, 'utf8')), name));
const figures = places.filter(({ object }) => 'value' in object);

test('there are figures to look at in every file that has any', () => {
  expect(figures.length).toBeGreaterThan(150);
  const files = new Set(figures.map(({ path }) => path.split('.')[0]));
  expect([...files].sort()).toEqual([
    'drawing-starts',
    'first-heating',
    'materials',
    'order-starts',
    'rule-sets',
    'screed-classes',
    'thickness',
  ]);
});

test('every figure is a number with a unit, a range that holds it and a source', () => {
  for (const { path, object } of figures) {
    const { value, unit, range, source, ...rest } = object;
    expect(rest, path).toEqual({});
    expect(Number.isFinite(value), path).toBe(true);
    expect(units, path).toContain(unit);
    expect(Object.hasOwn(sources, String(source)), path).toBe(true);
    if (range === null) continue;
    const [least, most] = range as readonly number[];
    expect([least, value, most].map(Number), path).toEqual([least, value, most].map(Number).sort((a, b) => a - b));
  }
});

test('every source that is named anywhere is in the list', () => {
  const named = places
    .flatMap(({ object }) => [object.source, object.columnSource])
    .filter((key) => typeof key === 'string');
  expect(named.length).toBeGreaterThan(figures.length);
  for (const key of named) expect(Object.keys(sources)).toContain(key);
});

test('every source has a title, a place, and one of the five standings', () => {
  for (const [key, { title, where, standing }] of Object.entries(sources)) {
    expect(title.length * where.length, key).toBeGreaterThan(0);
    expect(standings, key).toContain(standing);
  }
});

test('every class has the figures that its name says, a type and a row of the thickness table', () => {
  expect(screedClassKeys.length).toBeGreaterThan(20);
  for (const key of screedClassKeys) {
    const [type, compressive, flexural] = key.split('-');
    const { compressive: c, flexural: f, thickness } = screedClasses[key];
    expect([screedTypeKey(key), `C${c.value}`, `F${f.value}`, thickness]).toEqual([
      type,
      compressive,
      flexural,
      `${type}-${flexural}`,
    ]);
    expect(Object.keys(screedTypes)).toContain(type);
    expect(Object.keys(thicknessTable.rows)).toContain(thickness);
  }
});

test('every row of a rule set is for a kind of floor that there is', () => {
  for (const [key, { rows, screeds }] of Object.entries(ruleSets)) {
    for (const screed of screeds) expect(Object.keys(screedTypes), key).toContain(screed);
    for (const { covering } of rows) expect(['stone-or-ceramic', 'other', 'any'], key).toContain(covering);
  }
});

describe('least thickness, DIN 18560-2 as printed in the cement industry handbook', () => {
  test.each([
    ['CT-F4', [45, 65, 70, 75], 45],
    ['CT-F5', [40, 55, 60, 65], 30],
    ['CA-F4', [45, 65, 70, 75], 30],
    ['CA-F5', [40, 55, 60, 65], 30],
    ['CA-F7', [35, 50, 55, 60], 30],
    ['CAF-F4', [35, 50, 60, 65], 40],
    ['CAF-F5', [35, 45, 50, 55], 30],
    ['CAF-F7', [35, 40, 45, 50], 30],
  ])('%s', (key, least, cover) => {
    expect(thicknessTable.rows[key]).toMatchObject({ least, cover: { value: cover, unit: 'mm' } });
  });

  test('no screed under a heavier load may be thinner, and every row has a figure a column', () => {
    for (const { least } of Object.values(thicknessTable.rows)) {
      expect(least).toHaveLength(thicknessTable.columns.length);
      expect(least).toEqual(least.toSorted((a, b) => a - b));
    }
  });
});

describe('thermal expansion as printed, 1e-6 per K', () => {
  test.each([
    ['cement-screed', 12],
    ['calcium-sulfate-screed', 8],
    ['calcium-sulfate-flowing', 12],
    ['mastic-asphalt', 35],
    ['resin-screed', 20],
    ['concrete', 10],
    ['ceramic-tile', 6],
    ['granite', 8],
    ['aluminium', 24],
  ] as const)('%s: %s', (key, expected) => {
    expect(materials[key].expansion?.value).toBeCloseTo(expected * 1e-6, 12);
  });
});

test('a row of limits has the standing of its source', () => {
  const rows = Object.values(ruleSets).flatMap((ruleSet) => ruleSet.rows);
  expect(rows.length).toBeGreaterThan(10);
  expect(rows.map(({ standing }) => standing)).toEqual(
    rows.map(({ source }) => sources[source as keyof typeof sources].standing),
  );
});
