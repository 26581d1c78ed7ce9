import { describe, expect, it } from 'vitest';
import { floorPlanOf } from '../../src/floor/floor.ts';
import type { Point } from '../../src/geometry/point.ts';
import { findingDescribe } from '../../src/plan/finding-words.ts';
import { box, planJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';

const open = [
  { id: 'r1', name: 'Hall', outline: box(0, 0, 4000, 4000) },
  { id: 'r2', name: 'Bath', outline: box(4000, 0, 4000, 4000) },
];

/** What is said of a joint that was taken away, with the ids that it names. */
function told(line: readonly Point[], rest: object, rooms: readonly object[] = open): [string, string][] {
  const plan = planOf({ ...planJson('Test', []), rooms, noJoint: [{ id: 'n1', line }], ...rest });
  return floorPlanOf(plan)
    .findings.filter(({ code }) => code === 'no-joint-stands')
    .map((fact) => [findingDescribe(fact).message, fact.refs.join(' ')]);
}

const upright = (x: number, from = 0, to = 4000): readonly Point[] => [
  [x, from],
  [x, to],
];

describe('a joint that was taken away and stands all the same is told of with what keeps it', () => {
  it('a drawn joint', () => {
    expect(told(upright(2000), { drawnJoints: [{ id: 'x1', line: upright(2000) }] })).toEqual([
      ['The joint taken away at n1 stands all the same: drawn joint x1 keeps it.', 'n1 x1'],
    ]);
  });

  it('a structural joint', () => {
    expect(told(upright(2000, 1000, 3000), { structuralJoints: [{ id: 's1', line: upright(2000) }] })).toEqual([
      ['The joint taken away at n1 stands all the same: structural joint s1 keeps it.', 'n1 s1'],
    ]);
  });

  it('a doorway', () => {
    const rooms = [
      { id: 'r1', name: 'Hall', outline: box(0, 0, 4000, 4000) },
      { id: 'r2', name: 'Bath', outline: box(4120, 0, 4000, 4000) },
    ];
    const doorways = [{ id: 'd1', line: upright(4060, 1000, 1900), wallMm: 120 }];
    expect(told(upright(4060, 1000, 1900), { doorways }, rooms)).toEqual([
      ['The joint taken away at n1 stands all the same: doorway d1 keeps it.', 'n1 d1'],
    ]);
  });

  it('a change of heating', () => {
    const rooms = open.map((room, i) => ({ ...room, zone: String(i) }));
    expect(told(upright(4000), {}, rooms)).toEqual([
      [
        'The joint taken away at n1 stands all the same: the change of heating between Hall and Bath keeps it.',
        'n1 r1 r2',
      ],
    ]);
  });

  it('two of them along one line', () => {
    const drawnJoints = [
      { id: 'x2', line: upright(2000, 0, 2000) },
      { id: 'x10', line: upright(2100, 2000, 4000) },
    ];
    const across = {
      id: 'x3',
      line: [
        [0, 2000],
        [4000, 2000],
      ],
    };
    expect(told(upright(2000), { drawnJoints: [...drawnJoints, across] })).toEqual([
      ['The joint taken away at n1 stands all the same: drawn joint x2 and drawn joint x10 keep it.', 'n1 x2 x10'],
    ]);
  });
});

describe('a joint that was taken away is not said to stand', () => {
  it('for a joint that crosses it, one that ends at it, or one in the next row', () => {
    const drawnJoints = [
      {
        id: 'x1',
        line: [
          [0, 2000],
          [8000, 2000],
        ],
      },
      { id: 'x2', line: upright(1600) },
    ];
    expect(told(upright(2000), { drawnJoints })).toEqual([]);
  });

  it('where rooms that are heated alike meet', () => {
    expect(told(upright(4000), {})).toEqual([]);
  });
});
