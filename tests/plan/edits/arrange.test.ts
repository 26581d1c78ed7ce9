import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import { objectsAligned, objectsDistributed, objectsRepeated } from '../../../src/plan/edits/arrange.ts';
import { objectsCopied, objectsPasted } from '../../../src/plan/edits/copy.ts';
import { objectsBox, objectsRemoved } from '../../../src/plan/edits/objects.ts';
import { planEmpty } from '../../../src/plan/empty.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { planWrite } from '../../../src/plan/write.ts';
import { box, doorwayOf, house, houseIds } from './house.ts';

const columns: PlanFile = {
  ...planEmpty('Columns'),
  columns: [
    { id: 'c1', outline: box(0, 0, 300, 300) },
    { id: 'c2', outline: box(3300, 1000, 300, 300) },
    { id: 'c3', outline: box(500, 400, 300, 500) },
  ],
};
const ids = ['c1', 'c2', 'c3'];

function corners(file: PlanFile) {
  return file.columns?.map(({ outline }) => outline[0]);
}

describe('columns brought into line', () => {
  it.each([
    [
      'left',
      [
        [0, 0],
        [0, 1000],
        [0, 400],
      ],
    ],
    [
      'right',
      [
        [3300, 0],
        [3300, 1000],
        [3300, 400],
      ],
    ],
    [
      'top',
      [
        [0, 0],
        [3300, 0],
        [500, 0],
      ],
    ],
    [
      'bottom',
      [
        [0, 1000],
        [3300, 1000],
        [500, 800],
      ],
    ],
    [
      'middle-x',
      [
        [1650, 0],
        [1650, 1000],
        [1650, 400],
      ],
    ],
    [
      'middle-y',
      [
        [0, 500],
        [3300, 500],
        [500, 400],
      ],
    ],
  ] as const)('at the %s', (side, expected) => {
    expect(corners(objectsAligned(columns, ids, side))).toEqual(expected);
  });

  it('are in line already when one is chosen, or all are', () => {
    expect(objectsAligned(columns, ['c1'], 'right')).toBe(columns);
    const left = objectsAligned(columns, ids, 'left');
    expect(objectsAligned(left, ids, 'left')).toBe(left);
    expect(objectsAligned(columns, [], 'left')).toBe(columns);
  });

  it('of whole rooms take their doorways with them where the wall allows it', () => {
    const aligned = objectsAligned(house, ['r1', 'r3'], 'right');
    // r1 goes 4000 to the right: its wall to r2 is gone, so that doorway stays; the one below keeps to r3.
    expect(doorwayOf(aligned, 'd1')).toBe(doorwayOf(house, 'd1'));
    expect(doorwayOf(aligned, 'd2').line).toEqual([
      [4000, 3100],
      [4900, 3100],
    ]);
  });
});

describe('columns spaced evenly', () => {
  it('have equal gaps, the first and the last stay', () => {
    // 3600 - 3 x 300 = 2700, two gaps of 1350; down: boxes of 300, 500, 300 in 1300 leave two gaps of 100
    expect(corners(objectsDistributed(columns, ids, 'x'))).toEqual([
      [0, 0],
      [3300, 1000],
      [1650, 400],
    ]);
    expect(corners(objectsDistributed(columns, ids, 'y'))).toEqual([
      [0, 0],
      [3300, 1000],
      [500, 400],
    ]);
  });

  it('are as they were when there are only two', () => {
    expect(objectsDistributed(columns, ['c1', 'c2'], 'x')).toBe(columns);
  });
});

describe('a column repeated', () => {
  it('makes a grid by count and spacing, row by row, and stays the first itself', () => {
    const one = objectsRemoved(columns, ['c2', 'c3']);
    const grid = objectsRepeated(one, 'c1', { countX: 3, countY: 2, spacingXMm: 5000, spacingYMm: 4000 });
    expect(grid.ids).toEqual(['c2', 'c3', 'c4', 'c5', 'c6']);
    expect(corners(grid.file)).toEqual([
      [0, 0],
      [5000, 0],
      [10_000, 0],
      [0, 4000],
      [5000, 4000],
      [10_000, 4000],
    ]);
    expect(grid.file.columns?.[0]).toBe(one.columns?.[0]);
  });

  it('once is itself; so many that no plan holds them are none', () => {
    const once = { countX: 1, countY: 1, spacingXMm: 100, spacingYMm: 100 };
    expect(objectsRepeated(columns, 'c1', once)).toEqual({ file: columns, ids: [] });
    expect(objectsRepeated(columns, 'c1', { ...once, countX: 30_000 })).toEqual({ file: columns, ids: [] });
    expect(objectsRepeated(columns, 'c1', { ...once, countX: 1e9, countY: 1e9 })).toEqual({ file: columns, ids: [] });
    expect(objectsRepeated(columns, 'c9', { ...once, countX: 3 })).toEqual({ file: columns, ids: [] });
  });
});

describe('a copy', () => {
  const copyBeside = (ids: readonly string[], by: Point) => objectsPasted(house, objectsCopied(house, ids), by);

  it('has new ids and lies beside what it is a copy of', () => {
    const { file, ids: added } = copyBeside(['r1', 'c1'], [0, 10_000]);
    expect(added).toEqual(['r4', 'c2']);
    expect(file.rooms[3]).toEqual({ id: 'r4', name: 'Kitchen', outline: box(0, 10_000, 4000, 3000) });
    expect(file.columns?.[1]).toEqual({ id: 'c2', outline: box(1000, 11_000, 300, 300) });
    expect(file.doorways).toBe(house.doorways);
    expect(file.tileFields).toBe(house.tileFields);
  });

  it('goes to another plan', () => {
    const clip = JSON.parse(JSON.stringify(objectsCopied(house, ['p1', 'd1'])));
    const pasted = objectsPasted(planEmpty('Other'), clip, [100, 0]);
    expect(pasted.ids).toEqual(['d1', 'p1']);
    expect(pasted.file).toEqual({
      ...planEmpty('Other'),
      doorways: [
        {
          id: 'd1',
          line: [
            [4160, 1000],
            [4160, 1900],
          ],
          wallMm: 120,
        },
      ],
      pipes: [{ id: 'p1', centre: [600, 500], diameterMm: 110 }],
    });
  });

  it('that is removed again leaves the plan as it was', () => {
    const length = fc.integer({ min: -90_000, max: 90_000 });
    fc.assert(
      fc.property(fc.subarray(houseIds), length, length, (some, x, y) => {
        const copied = copyBeside(some, [x, y]);
        expect(copied.ids).toHaveLength(some.length);
        expect(objectsBox(copied.file, copied.ids)?.minX).toBe(
          some.length ? (objectsBox(house, some)?.minX ?? 0) + x : undefined,
        );
        expect(planWrite(objectsRemoved(copied.file, copied.ids))).toBe(planWrite(house));
      }),
    );
  });

  it('that would lie off the sheet is not made', () => {
    expect(copyBeside(['c1'], [1e7, 0])).toEqual({ file: house, ids: [] });
    expect(copyBeside([], [0, 0])).toEqual({ file: house, ids: [] });
  });
});
