import { describe, expect, it } from 'vitest';
import { box, planJson } from '../floors/plan-json.ts';
import { analysed } from './analysed.ts';

/** A key says which bay or joint it is across edits: design section 4, made from kind, sources and place. */

const rooms = [
  { id: 'a', name: 'Hall', outline: box(0, 0, 6000, 4000) },
  { id: 'b', name: 'Store', outline: box(0, 4120, 6000, 4000) },
];
const structuralJoints = [
  {
    id: 's',
    line: [
      [3000, -100],
      [3000, 8300],
    ],
    widthMm: 20,
  },
];
const base = { ...planJson('Keys', rooms), structuralJoints };

const jointKeysOf = (plan: object, room: string) => {
  const { bays, joints } = analysed(plan).analysis;
  const inRoom = new Set(bays.filter((bay) => bay.rooms.includes(room)).map(({ id }) => id));
  return joints.filter((joint) => joint.bays.every((bay) => inRoom.has(bay))).map(({ key }) => key);
};
const bayKeysOf = (plan: object) => analysed(plan).analysis.bays.map(({ key }) => key);

describe('keys', () => {
  it('of a joint of the building in one room stay when a joint is drawn in another', () => {
    const drawnJoints = [
      {
        id: 'x',
        line: [
          [0, 2000],
          [3000, 2000],
        ],
      },
    ];
    const before = jointKeysOf(base, 'b');
    expect(before).toHaveLength(1);
    expect(jointKeysOf({ ...base, drawnJoints }, 'b')).toEqual(before);
    expect(jointKeysOf({ ...base, drawnJoints }, 'a')).not.toContain(before[0]);
  });

  it('of a room that is one bay stay when a room is added elsewhere', () => {
    const [one] = rooms;
    const more = { id: 'far', name: 'Far', outline: box(20_000, 0, 9000, 6000) };
    expect(bayKeysOf(planJson('One', [one as (typeof rooms)[0]]))).toEqual(['bay:a']);
    expect(bayKeysOf(planJson('Two', [one as (typeof rooms)[0], more]))).toContain('bay:a');
  });

  it('are given once', () => {
    const { bays, joints } = analysed(base).analysis;
    const keys = [...bays, ...joints].map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
  });
});
