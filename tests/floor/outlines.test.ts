import { describe, expect, it } from 'vitest';
import { floorPlanOf } from '../../src/floor/floor.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { FindingFact } from '../../src/plan/finding.ts';
import { findingDescribe } from '../../src/plan/finding-words.ts';
import { box, planJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';

const hall = { id: 'r1', name: 'Hall', outline: box(0, 0, 9000, 6000) };

/** Two sides that cross in its middle, 1 m square. */
const bowTie = (x: number, y: number): readonly Point[] => [
  [x, y],
  [x + 1000, y + 1000],
  [x + 1000, y],
  [x, y + 1000],
];

function found(rest: object, room: object = {}, code: FindingFact['code'] = 'outline-crossing'): FindingFact[] {
  const plan = planOf({ ...planJson('Test', [{ ...hall, ...room }]), ...rest });
  return floorPlanOf(plan).findings.filter((finding) => finding.code === code);
}

const told = (facts: readonly FindingFact[]) =>
  facts.map((fact) => [findingDescribe(fact).message, fact.at, fact.refs.join(' ')]);

describe('an outline that crosses itself is named with the place of the crossing', () => {
  const outline = bowTie(2000, 2000);
  const at = [2500, 2500];

  it.each([
    ['column c1', { columns: [{ id: 'c1', outline }] }, 'c1'],
    ['Bar', { joinery: [{ id: 'j1', name: 'Bar', outline }] }, 'j1'],
    ['Stair', { joinery: [{ id: 'j2', name: 'Stair', outline, under: 'built-off-slab' }] }, 'j2'],
    ['slab contact k1', { slabContacts: [{ id: 'k1', outline }] }, 'k1'],
    ['sun zone u1', { sunZones: [{ id: 'u1', outline, highestC: 50 }] }, 'u1'],
    ['keep-clear area q1', { keepClear: [{ id: 'q1', outline }] }, 'q1'],
  ])('of %s', (name, rest, id) => {
    expect(told(found(rest))).toEqual([[`The outline of ${name} crosses itself.`, at, id]]);
  });

  it('of a hole of a room', () => {
    expect(told(found({}, { holes: [outline] }))).toEqual([
      ['The outline of a hole of Hall crosses itself.', at, 'r1'],
    ]);
  });

  it('of a room, though it only overshoots a corner by 100 mm', () => {
    const outline: readonly Point[] = [
      [0, 0],
      [9000, 0],
      [9000, 6000],
      [100, 6000],
      [100, -100],
      [0, -100],
    ];
    expect(found({}, { outline })).toMatchObject([{ name: 'Hall', at: [100, 0] }]);
  });

  it('where it crosses at one of its own corners, and not where it touches itself before', () => {
    // touches itself at 1000, 1000 and crosses at 5000, 1000
    const bow: readonly Point[] = [
      [0, 0],
      [1000, 1000],
      [2000, 0],
      [4000, 0],
      [5000, 1000],
      [6000, 2000],
      [6000, 0],
      [5000, 1000],
      [4000, 2000],
      [2000, 2000],
      [1000, 1000],
      [0, 2000],
    ];
    expect(found({ keepClear: [{ id: 'q1', outline: bow }] })).toMatchObject([{ at: [5000, 1000] }]);
  });
});

describe('an outline that crosses nowhere is not said to', () => {
  it.each<[string, readonly Point[]]>([
    [
      'an L',
      [
        [0, 0],
        [3000, 0],
        [3000, 1000],
        [1000, 1000],
        [1000, 3000],
        [0, 3000],
      ],
    ],
    [
      'two lobes that touch at a corner',
      [
        [0, 0],
        [1000, 1000],
        [2000, 0],
        [2000, 2000],
        [1000, 1000],
        [0, 2000],
      ],
    ],
    [
      'a line drawn out and back',
      [
        [0, 0],
        [2000, 0],
        [2000, 1000],
        [4000, 1000],
        [2000, 1000],
        [2000, 2000],
        [0, 2000],
      ],
    ],
  ])('%s', (_, outline) => {
    expect(found({ slabContacts: [{ id: 'k1', outline }], columns: [{ id: 'c1', outline }] })).toEqual([]);
  });

  it('a curve of twenty thousand points', () => {
    const outline = Array.from({ length: 20_000 }, (_, i): Point => {
      const turn = (i / 20_000) * 2 * Math.PI;
      const radius = 40_000 * (1 + 0.3 * Math.sin(12 * turn));
      return [radius * Math.cos(turn), radius * Math.sin(turn)];
    });
    expect(found({ sunZones: [{ id: 'u1', outline, highestC: 50 }] })).toEqual([]);
  });
});

describe('a hole', () => {
  const holes = (hole: readonly Point[]) => found({}, { holes: [hole] }, 'hole-off-room');

  it('inside its room, or along its wall, is as it should be', () => {
    expect(holes(box(1000, 1000, 1000, 1000))).toEqual([]);
    expect(holes(box(0, 1000, 1000, 1000))).toEqual([]);
  });

  it('outside its room is named', () => {
    expect(told(holes(box(10_000, 1000, 1000, 1000)))).toEqual([
      ['A hole of Hall lies outside the room; it takes no floor.', [10_500, 1500], 'r1'],
    ]);
  });

  it('that reaches out of its room is named with the area outside: 0.4 of 1 m2', () => {
    const [finding] = holes(box(8400, 1000, 1000, 1000));
    expect(told(finding ? [finding] : [])).toEqual([
      ['A hole of Hall lies outside the room over 0.4 m\u00b2.', [9200, 1500], 'r1'],
    ]);
  });
});
