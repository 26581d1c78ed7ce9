import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { SettingChange } from '../../src/documents/compare-changes.ts';
import { roomPairs } from '../../src/documents/compare-match.ts';
import { entriesTold, settingChanges } from '../../src/documents/compare-settings.ts';
import { untoldChanges } from '../../src/documents/compare-untold.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { planRead } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import { hallAndStore } from './paper-fixture.ts';

/** Every entry that the plan file can have, as its published schema lists them, is told where it is another: an entry that is new in the schema has to be
 *  told in words of its own, or these tests fail. */

interface Node {
  readonly type?: string;
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly items?: Node | false;
  readonly prefixItems?: readonly Node[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
}

const schema = JSON.parse(readFileSync(new URL('../../shared/plan.schema.json', import.meta.url), 'utf8')) as Node;

type Path = readonly string[];
/** Values of leaves that the schema alone does not tell. */
interface Leaf {
  readonly path: Path;
  readonly node: Node;
}

/** Of lists the first element stands for all. */
function leavesOf(node: Node, path: Path = []): readonly Leaf[] {
  if (node.properties)
    return Object.entries(node.properties).flatMap(([field, each]) => leavesOf(each, [...path, field]));
  if (node.items && 'properties' in node.items) return leavesOf(node.items, [...path, '0']);
  return [{ path, node }];
}

const leaves = leavesOf(schema);
const entryOf = (path: Path) => path.filter((field) => field !== '0').join('.');

const square = (x: number, mm = 1000) => [
  [x, 0],
  [x + mm, 0],
  [x + mm, mm],
  [x, mm],
];

/** Two values that the entry can have. */
function valuesOf({ path, node }: Leaf): readonly [unknown, unknown] {
  const field = path.at(-1) ?? '';
  const entry = entryOf(path);
  if (entry === 'rooms.outline')
    return [square(0, 6000), [...square(0, 6000).slice(0, 3), [3000, 6000], [3000, 5000], [0, 5000]]];
  // all others keep the box round them
  if (field === 'outline') return [square(500), [...square(500).slice(0, 3), [500, 1000], [700, 400]]];
  if (field === 'holes') return [[square(3000)], [[...square(3000).slice(0, 3), [3500, 500]]]];
  if (field === 'line')
    return path[0] === 'doorways'
      ? [
          [
            [1000, 6050],
            [1900, 6050],
          ],
          [
            [1010, 6050],
            [1900, 6050],
          ],
        ]
      : [
          [
            [0, 0],
            [2000, 1500],
            [4000, 6000],
          ],
          [
            [0, 0],
            [2000, 1600],
            [4000, 6000],
          ],
        ];
  if (node.prefixItems)
    return [
      [10, 20],
      [10, 21],
    ];
  if (entry === 'tileFields.rooms') return [['first rooms.id'], ['second room']];
  if (field === 'bond') return ['half', 'third'];
  if (node.enum) return [node.enum[0], node.enum[1]];
  if (node.type === 'boolean') return [false, true];
  if (node.type === 'string')
    return /2027-03-01/u.test(node.description ?? '')
      ? ['2027-03-01', '2027-03-02']
      : [`first ${entry}`, `second ${entry}`];
  if (node.type === 'array') return numbersOf(node.items || {}).map((value) => [value]) as [unknown, unknown];
  return numbersOf(node);
}

/** Whole ones, where the entry may be so great. */
function numbersOf({ minimum, exclusiveMinimum, maximum = 1, type }: Node): readonly [unknown, unknown] {
  if (type === 'string') return ['one', 'other'];
  const least = Math.max(0, minimum ?? exclusiveMinimum ?? 0);
  const step = maximum - least > 4 ? 1 : (maximum - least) / 4;
  return [least + step, least + 2 * step];
}

type Json = { [field: string]: unknown };

function planWith(over: ReadonlyMap<string, unknown>): Json {
  const plan: Json = {};
  for (const leaf of leaves) {
    const entry = entryOf(leaf.path);
    const value = over.has(entry) ? over.get(entry) : (leaf.node.const ?? valuesOf(leaf)[0]);
    if (value !== undefined) put(plan, leaf.path, value);
  }
  (plan.rooms as Json[]).push({ id: 'second room', name: 'Second', outline: square(20_000) });
  return plan;
}

function put(plan: Json, path: Path, value: unknown): void {
  let at: unknown = plan;
  path.slice(0, -1).forEach((field, i) => {
    const inside = at as Json;
    inside[field] ??= path[i + 1] === '0' ? [] : {};
    at = inside[field];
  });
  (at as Json)[path.at(-1) ?? ''] = value;
}

/** The analysis is that of another floor: entries have to be told whether or not a figure follows from them. */
const { analysis } = hallAndStore();

function sourceOf(plan: Json): PaperSource {
  const read = planRead(JSON.stringify(plan));
  if (read.kind === 'refused') throw new Error(JSON.stringify(read.problems));
  return { file: read.file, plan: planResolve(read.file), analysis, date: '2027-03-01' };
}

function told(before: PaperSource, now: PaperSource): readonly SettingChange[] {
  // one floor: each joint is what it was
  const joints = before.analysis.joints.map((joint) => ({ before: joint, now: joint }));
  return settingChanges(before, now, { rooms: roomPairs(before.plan, now.plan), joints });
}

const full = sourceOf(planWith(new Map()));
/** What says which thing is meant and nothing of the floor. */
const ids = leaves.filter(({ path }) => path.at(-1) === 'id').map(({ path }) => entryOf(path));
const meantForNothing = ['format', 'version', ...ids];
const changeable = leaves.filter(({ path }) => !meantForNothing.includes(entryOf(path)));
const cases = changeable.map((leaf) => [entryOf(leaf.path), leaf] as const);

describe('an entry of the plan', () => {
  it('is one that the schema has, and each that it has is told in words of its own', () => {
    expect(leaves.length).toBeGreaterThan(150);
    expect([...entriesTold].filter((entry) => !isOrHolds(entry))).toEqual([]);
    expect(leaves.map(({ path }) => entryOf(path)).filter((entry) => !isTold(entry))).toEqual([]);
  });

  it.each(cases)('that is another is told in words of its own: %s', (entry, leaf) => {
    const now = sourceOf(planWith(new Map([[entry, valuesOf(leaf)[1]]])));
    const changes = told(full, now);
    expect(changes.length).toBeGreaterThan(0);
    expect(changes.filter(({ words }) => words.startsWith('Other entry'))).toEqual([]);
    for (const { before, now: is } of changes) expect(before).not.toBe(is);
    // and the other way round the same is told the other way round
    const sorted = (rows: readonly (readonly unknown[])[]) => rows.map((row) => JSON.stringify(row)).sort();
    expect(sorted(told(now, full).map(({ words, before, now: is }) => [words, is, before]))).toEqual(
      sorted(changes.map(({ words, before, now: is }) => [words, before, is])),
    );
  });

  // one of the two may be the usual value, which leaving it out says as well
  it.each(cases.filter(([, { path }]) => mayBeLeftOut(path)))('that is taken out is told: %s', (entry, leaf) => {
    const without = sourceOf(planWith(new Map([[entry, undefined]])));
    const counts = valuesOf(leaf).map((value) => told(sourceOf(planWith(new Map([[entry, value]]))), without).length);
    expect(Math.max(...counts)).toBeGreaterThan(0);
  });

  it.each(Object.entries(schema.properties ?? {}).filter(([, { items }]) => items))(
    'that stands in a list is told where it comes or goes: %s',
    (list) => {
      const plan = planWith(new Map());
      // a room that is tiled by itself cannot go
      const without = sourceOf({ ...plan, [list]: list === 'rooms' ? [(plan.rooms as Json[])[0]] : [] });
      expect(told(full, without).length).toBeGreaterThan(0);
      expect(told(without, full).length).toBeGreaterThan(0);
    },
  );

  it('that no comparison knows yet is told by its path, in lists by the id', () => {
    const before = { ...full.file, moisture: { mostPercent: 1.8 } };
    const now = {
      ...full.file,
      moisture: { mostPercent: 2 },
      rooms: full.file.rooms.map((room, i) => (i === 1 ? { ...room, ceilingMm: 2500 } : room)),
    };
    expect(untoldChanges(before, now, entriesTold).map(({ words, before: was, now: is }) => [words, was, is])).toEqual([
      ['Other entry: rooms second room ceilingMm', null, '2500'],
      ['Other entry: moisture mostPercent', '1.8', '2'],
    ]);
  });

  it('is not told where a list is empty and was left out', () => {
    const lists = Object.keys(schema.properties ?? {}).filter(
      (list) => list !== 'rooms' && schema.properties?.[list]?.items,
    );
    const { rooms, ...file } = hallAndStore({ doorways: [] }).file;
    const bare = { ...file, rooms, papers: {}, order: {}, pour: {}, records: {} };
    const empty = {
      ...bare,
      ...Object.fromEntries(lists.map((list) => [list, []])),
      rooms: rooms.map((room) => ({ ...room, holes: [] })),
      papers: { revisions: [], basePoints: [], gridLines: [], joints: [] },
      order: { insulationLayersMm: [], prices: {} },
      pour: { days: [] },
      records: { testPoints: [] },
    };
    expect(lists.length).toBeGreaterThan(9);
    expect(told(sourceOf(bare), sourceOf(empty))).toEqual([]);
  });

  it('is not told where nothing is another: not of a plan and itself, of other ids or of lists in another order', () => {
    expect(told(full, full)).toEqual([]);
    const plan = planWith(new Map(ids.map((entry) => [entry, `other ${entry}`])));
    const renamed = {
      ...plan,
      tileFields: (plan.tileFields as Json[]).map((field) => ({ ...field, rooms: ['other rooms.id'] })),
    };
    expect(told(full, sourceOf(renamed)).filter(({ of }) => !of?.startsWith('Door'))).toEqual([]);
    const turned = JSON.parse(JSON.stringify(planWith(new Map()))) as Json;
    (turned.rooms as Json[]).reverse();
    expect(told(full, sourceOf(turned))).toEqual([]);
  });

  function isTold(entry: string): boolean {
    const fields = entry.split('.');
    return fields.some((_, i) => entriesTold.has(fields.slice(0, i + 1).join('.')));
  }

  function isOrHolds(entry: string): boolean {
    return leaves.some(({ path }) => `${entryOf(path)}.`.startsWith(`${entry}.`));
  }

  function mayBeLeftOut(path: Path): boolean {
    let at: Node | undefined = schema;
    for (const field of path.slice(0, -1)) at = field === '0' ? at?.items || undefined : at?.properties?.[field];
    return !(at?.required ?? []).includes(path.at(-1) ?? '');
  }
});
