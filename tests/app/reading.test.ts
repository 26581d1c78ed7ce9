import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readingName, readingOf } from '../../src/app/canvas/reading.ts';
import type { PlanFile } from '../../src/plan/schema.ts';

const flat = JSON.parse(readFileSync('tests/app/fixtures/flat.json', 'utf8')) as PlanFile;

const room = (id: string, x: number, y: number, width = 3000, height = 3000): PlanFile['rooms'][number] => ({
  id,
  name: `Room ${id}`,
  outline: [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ],
});

const plan = (part: Partial<PlanFile>): PlanFile => ({
  format: 'screed-bays/plan',
  version: 1,
  name: 'Test',
  rooms: [],
  ...part,
});

const names = (file: PlanFile) => readingOf(file).map(readingName);
const keys = (file: PlanFile) => readingOf(file).map(({ thing }) => thing.key);

describe('the order in which the things of a plan are read', () => {
  test('goes row by row, also where the rooms of a row do not begin at the same height', () => {
    const rooms = [room('d', 3100, 3400), room('b', 3100, 200), room('c', 0, 3100), room('a', 0, 0)];
    expect(keys(plan({ rooms }))).toEqual(['a', 'b', 'c', 'd']);
  });

  test('reads what stands in a room after it, and what stands in none last', () => {
    const pipes = [
      { id: 'out', centre: [9000, 0], diameterMm: 50 },
      { id: 'in b', centre: [4000, 1000], diameterMm: 50 },
      { id: 'in a', centre: [1000, 1000], diameterMm: 50 },
    ] as const;
    const file = plan({ rooms: [room('a', 0, 0), room('b', 3100, 0)], pipes });
    expect(keys(file)).toEqual(['a', 'in a', 'b', 'in b', 'out']);
  });

  test('has each thing of the plan once', () => {
    const all = keys(flat);
    expect(new Set(all).size).toBe(all.length);
    expect(all.length).toBe(12);
  });

  test('holds for 1,000 rooms and 3,000 things', () => {
    const rooms = Array.from({ length: 1000 }, (_, i) => room(`r${i}`, (i % 40) * 3200, Math.floor(i / 40) * 3200));
    const pipes = Array.from({ length: 3000 }, (_, i) => ({
      id: `p${i}`,
      centre: [(i % 120) * 1060 + 500, Math.floor(i / 120) * 3200 + 500] as const,
      diameterMm: 50,
    }));
    expect(readingOf(plan({ rooms, pipes })).length).toBe(4000);
  });
});

describe('what is said of a thing', () => {
  test('is its name, what it is, where it stands and its size', () => {
    expect(names(flat)).toContain('Hall, room, 3.7 by 1.3 m');
    expect(names(flat)).toContain('Doorway between Living room and Hall, 900 mm');
    expect(names(flat)).toContain('Column c1 in Living room, 300 by 300 mm');
    expect(names(flat)).toContain('Pipe p1 in Bath, 110 mm across');
  });

  test('leaves out what is not known: a joint without a width, a thing in no room, a room without a name', () => {
    const file = plan({
      rooms: [{ ...room('a', 0, 0), name: '' }],
      structuralJoints: [
        {
          id: 's1',
          line: [
            [0, 9000],
            [2500, 9000],
          ],
        },
      ],
      keepClear: [{ id: 'q1', outline: room('', 8000, 8000, 1000, 2000).outline }],
      doorways: [
        {
          id: 'd1',
          line: [
            [500, 0],
            [1300, 0],
          ],
        },
      ],
    });
    expect(names(file)).toEqual([
      'a, room, 3.0 by 3.0 m',
      'Doorway d1 in a, 800 mm',
      'Area to keep clear q1, 1.0 by 2.0 m',
      'Joint of the building s1, 2.50 m long',
    ]);
  });
});
