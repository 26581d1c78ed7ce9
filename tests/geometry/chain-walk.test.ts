import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgesWalk } from '../../src/geometry/chain-walk.ts';

type Edge = readonly [number, number];

const edges = fc.uniqueArray(
  fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })).filter(([a, b]) => a !== b),
  { maxLength: 15, selector: (edge) => edge.toSorted().join() },
);
const name = (edge: Edge) => edge.toSorted().join();
const steps = (walk: readonly number[]): Edge[] => walk.slice(1).map((b, i) => [walk[i] ?? b, b]);
const degree = (list: readonly Edge[], point: number) => list.filter((edge) => edge.includes(point)).length;

describe('edges joined into walks', () => {
  it('are each walked once', () => {
    fc.assert(
      fc.property(edges, (list) => {
        const walked = edgesWalk(list).flatMap(steps).map(name);
        expect(walked.toSorted()).toEqual(list.map(name).toSorted());
      }),
    );
  });

  it('go on until they end, fork, stop or close', () => {
    fc.assert(
      fc.property(edges, fc.integer({ min: 0, max: 9 }), (list, stop) => {
        for (const walk of edgesWalk(list, (point) => point === stop)) {
          for (const inner of walk.slice(1, -1)) {
            expect(inner).not.toBe(stop);
            expect(degree(list, inner)).toBe(2);
          }
          const ends = [walk[0] ?? -1, walk.at(-1) ?? -1];
          const closes = ends[0] === ends[1];
          if (!closes) for (const end of ends) expect(end === stop || degree(list, end) !== 2).toBe(true);
        }
      }),
    );
  });
});

describe('walks', () => {
  it('run through a row of edges in either direction', () => {
    expect(
      edgesWalk([
        [1, 2],
        [3, 2],
        [3, 4],
      ]),
    ).toEqual([[1, 2, 3, 4]]);
  });

  it('that close repeat their first point', () => {
    expect(
      edgesWalk([
        [1, 2],
        [2, 3],
        [3, 1],
      ]),
    ).toEqual([[1, 2, 3, 1]]);
  });

  it('part at a fork and at a stop', () => {
    const star: Edge[] = [
      [0, 1],
      [0, 2],
      [0, 3],
    ];
    expect(edgesWalk(star)).toHaveLength(3);
    const row: Edge[] = [
      [1, 2],
      [2, 3],
    ];
    expect(edgesWalk(row, (point) => point === 2)).toEqual([
      [1, 2],
      [2, 3],
    ]);
  });

  it('are none without edges', () => {
    expect(edgesWalk([])).toEqual([]);
  });
});
