import { expect, it } from 'vitest';
import { setOutTable } from '../../src/documents/setting-out-table.ts';
import { settingOutFacts } from '../../src/documents/setting-out-words.ts';
import { tablePrinted } from '../../src/documents/table.ts';
import { hallSource, rowOf } from './setting-out-fixture.ts';

it('the list has names in full where a sheet cuts them short', () => {
  const name = 'Living, dining and kitchen with the reading corner on the garden side';
  const source = hallSource(
    {},
    {
      rooms: [
        {
          id: 'r1',
          name,
          outline: [
            [0, 0],
            [9000, 0],
            [9000, 6000],
            [0, 6000],
          ],
        },
      ],
    },
  );
  expect(rowOf(setOutTable(source), 0).From).toMatch(
    new RegExp(`^${name}, (upper|lower) wall from its left end$`, 'u'),
  );
  const [, origin = ''] = settingOutFacts(source).find(([head]) => head === 'Origin') ?? [];
  expect(origin).not.toContain(name);
  expect(origin).toMatch(/^Living, dining .*\u2026.*, (upper|lower) wall/u);
  const point = { name: 'Brass stud in the threshold of the door to the garden', at: [0, 6000] as [number, number] };
  const based = setOutTable(hallSource({ basePoints: [point, { name: '2', at: [9000, 6000] }] }));
  expect(rowOf(based, 0).From).toBe(`Base point ${point.name}`);
});

it('names of points and lines are cut, kept in one line and never make the list long', () => {
  const hostile = `=1+1\n\u202e<b>${'x'.repeat(10_000)}`;
  const basePoints: { name: string; at: [number, number] }[] = [
    { name: hostile, at: [0, 6000] },
    { name: hostile, at: [9000, 6000] },
  ];
  const { rows, notes } = setOutTable(hallSource({ basePoints }));
  for (const text of [...rows.flat(), ...notes]) {
    expect(String(text)).not.toMatch(/[\p{Cc}\u202e]/u);
    expect(String(text).length).toBeLessThan(400);
  }
});

it('figures stay in their order behind a name that is written to the left, and a name that nobody sees is none', () => {
  const { notes } = setOutTable(
    hallSource({
      basePoints: [
        { name: '\u05e0\u05e7\u05d5\u05d3\u05d4', at: [0, 6000] },
        { name: '\u200b', at: [9000, 6000] },
      ],
    }),
  );
  // a mark of the other direction stands between the name and what follows; the second point has its number
  expect(notes.join('\n')).toContain('base point \u05e0\u05e7\u05d5\u05d3\u05d4\u200e to 2, 9000 mm');
});

it('the list as a file says row by row which way x and y run, and on paper once below it', () => {
  const points = { basePoints: [9000, 0].map((x, i) => ({ name: `P${i + 1}`, at: [x, 6000] as [number, number] })) };
  const table = setOutTable(hallSource(points));
  const ways = 'x along the line from P1 to P2, y square to it to the right, seen from P1';
  expect(rowOf(table, 0)['x and y']).toBe(ways);
  expect(tablePrinted(table).columns.map(({ head }) => head)).not.toContain('x and y');
  expect(tablePrinted(table).rows.map(({ length }) => length)).toEqual(table.rows.map(({ length }) => length - 1));
  expect(table.notes.join(' ')).toContain(ways);
});
