import { describe, expect, test } from 'vitest';
import type { Thing } from '../../../src/app/state/thing.ts';
import { catchesWithJoints } from '../../../src/app/tools/catch-lines.ts';
import { handlesOf } from '../../../src/app/tools/choose/handles.ts';
import { joiningLine } from '../../../src/app/tools/choose/joint-lines.ts';
import { resting } from '../../../src/app/tools/choose/resting.ts';
import { first } from '../../../src/app/tools/draw/first.ts';
import { drawKinds } from '../../../src/app/tools/draw/kinds.ts';
import type { Act } from '../../../src/app/tools/stance.ts';
import { firstWishes } from '../../../src/app/tools/wishes.ts';
import type { Point } from '../../../src/geometry/point.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { acted, drag, handAt, longHall, pressAt, resultOf, sceneOf, twoRooms } from './scene.ts';

const hall: Thing = { kind: 'room', key: 'r1' };
const column: Thing = { kind: 'object', key: 'c1' };
const withColumn: PlanFile = {
  ...twoRooms,
  columns: [
    {
      id: 'c1',
      outline: [
        [2000, 2000],
        [2300, 2000],
        [2300, 2300],
        [2000, 2300],
      ],
    },
  ],
};

describe('choosing', () => {
  test('a press chooses what lies there, and lets go of it where nothing does', () => {
    const scene = sceneOf(twoRooms);
    const on = acted(resting(), scene, [{ kind: 'press', hand: handAt([100, 100], { things: [hall] }) }]);
    expect(on.choose).toEqual([hall]);
    const off = acted(resting(), { ...scene, chosen: [hall] }, [{ kind: 'press', hand: handAt([-900, 100]) }]);
    expect(off.choose).toEqual([]);
  });

  test('with the adding key a press adds, and takes away again; so does a finger that rests', () => {
    const scene = sceneOf(withColumn, { chosen: [hall] });
    const press = (things: readonly Thing[], kind: 'press' | 'hold') =>
      acted(resting(), scene, [{ kind, hand: handAt([0, 0], { things, loose: kind === 'press' }) }]).choose;
    expect(press([column], 'press')).toEqual([hall, column]);
    expect(press([hall], 'press')).toEqual([]);
    expect(press([column], 'hold')).toEqual([hall, column]);
  });

  test('a box chooses what lies wholly in it', () => {
    const scene = sceneOf(withColumn);
    const [down, ...rest] = drag([-100, -100], [6050, 4600]);
    const turn = acted(resting(), scene, [{ ...down, hand: handAt([-100, -100], { loose: true }) } as Act, ...rest]);
    expect(turn.choose).toEqual([hall, column]);
  });

  test('a drag on what is not chosen is no drag of a tool: the board moves', () => {
    expect(resting().grabs(handAt([100, 100], { things: [hall] }), sceneOf(twoRooms))).toBe(false);
    expect(resting().grabs(handAt([2100, 2100], { things: [column] }), sceneOf(withColumn, { chosen: [column] }))).toBe(
      true,
    );
  });
});

describe('moving', () => {
  test('a column is caught in line with others by its corner, and one drag is one step', () => {
    const scene = sceneOf(withColumn, { chosen: [column] });
    // Taken near its upper left corner, brought near the left wall: that corner falls on the wall.
    const turn = acted(resting(), scene, drag([2070, 2070], [100, 2582], { things: [column] }));
    expect(turn.step?.name).toBe('Move column c1');
    expect(turn.step?.file.columns?.[0]?.outline[0]).toEqual([0, 2500]);
  });

  test('a straight drag moves a thing straight, whatever place it had', () => {
    const skewed: PlanFile = { ...twoRooms, pipes: [{ id: 'p1', centre: [1234.5, 1000], diameterMm: 110 }] };
    const pipe: Thing = { kind: 'object', key: 'p1' };
    const turn = acted(
      resting(),
      sceneOf(skewed, { chosen: [pipe] }),
      drag([1234, 1000], [1234, 2010], { things: [pipe] }),
    );
    expect(turn.step?.file.pipes?.[0]?.centre).toEqual([1234.5, 2000]);
  });

  test('Escape in a drag puts it back: no step, no preview', () => {
    const scene = sceneOf(withColumn, { chosen: [column] });
    const turn = acted(resting(), scene, [
      ...drag([2100, 2080], [500, 500], { things: [column] }).slice(0, 3),
      { kind: 'back' },
    ]);
    expect(turn).toEqual({ next: 'rest' });
  });

  test('arrow keys move what is chosen', () => {
    const scene = sceneOf(withColumn, { chosen: [column] });
    const turn = acted(resting(), scene, [{ kind: 'steer', by: [10, -1] }]);
    expect(turn.step?.file.columns?.[0]?.outline[0]).toEqual([2010, 1999]);
  });
});

describe('corners and sides', () => {
  test('the chosen thing has a handle on each corner and side; several things have none', () => {
    expect(handlesOf(sceneOf(twoRooms, { chosen: [hall] }))).toHaveLength(8);
    expect(handlesOf(sceneOf(withColumn, { chosen: [hall, column] }))).toHaveLength(0);
  });

  test('a thing that is small under the hand is moved, not pulled out of shape', () => {
    const scene = sceneOf(withColumn, { chosen: [column] });
    const finger = (at: Point) => handAt(at, { things: [column], reachMm: 200 });
    const turn = acted(resting(), scene, [
      { kind: 'down', hand: finger([2010, 2010]) },
      { kind: 'drop', hand: finger([3010, 3010]) },
    ]);
    expect(turn.step?.name).toBe('Move column c1');
  });

  test('a corner is dragged, and caught in line with the others', () => {
    const scene = sceneOf(twoRooms, { chosen: [hall] });
    const turn = acted(resting(), scene, drag([0, 4500], [30, 5010], { things: [hall] }));
    expect(turn.step?.file.rooms[0]?.outline[3]).toEqual([0, 5000]);
  });

  test('a corner that would make the outline cross itself is refused, with the reason', () => {
    const scene = sceneOf(twoRooms, { chosen: [hall] });
    const turn = acted(resting(), scene, drag([0, 0], [7000, 3000], { things: [hall] }));
    expect(turn.refused).toBe('The outline would cross itself');
    expect(turn.step).toBeUndefined();
  });

  test('a side takes the other face of its wall along', () => {
    const scene = sceneOf(twoRooms, { chosen: [hall] });
    const turn = acted(resting(), scene, drag([6000, 2250], [6500, 2260], { things: [hall] }));
    const [one, two] = turn.step?.file.rooms ?? [];
    expect(one?.outline[1]).toEqual([6500, 0]);
    // The wall stays 120 mm deep.
    expect(two?.outline[0]).toEqual([6620, 0]);
  });

  test('a side is taken anywhere along it', () => {
    const scene = sceneOf(twoRooms, { chosen: [hall] });
    const turn = acted(resting(), scene, drag([1000, 4500], [1000, 5000], { things: [hall] }));
    expect(turn.step?.file.rooms[0]?.outline[3]).toEqual([0, 5000]);
  });

  test('a side moves alone where walls are not to move whole', () => {
    const wishes = { ...firstWishes, wholeWall: false };
    const scene = sceneOf(twoRooms, { chosen: [hall], wishes });
    const turn = acted(resting(), scene, drag([6000, 2250], [5500, 2260], { things: [hall] }));
    expect(turn.step?.file.rooms.map(({ outline }) => outline[0])).toEqual([
      [0, 0],
      [6120, 0],
    ]);
    expect(turn.step?.file.rooms[0]?.outline[1]).toEqual([5500, 0]);
  });

  test('with the adding key a new corner is drawn out of a side', () => {
    const scene = sceneOf(twoRooms, { chosen: [hall] });
    const [, ...rest] = drag([3000, 4500], [3000, 5500]);
    const turn = acted(resting(), scene, [{ kind: 'down', hand: handAt([3000, 4500], { loose: true }) }, ...rest]);
    expect(turn.step?.file.rooms[0]?.outline).toContainEqual([3000, 5500]);
  });
});

describe('joints', () => {
  test('a joint that the tool found is dragged: it becomes a drawn one, from wall to wall', () => {
    const result = resultOf(longHall);
    const [joint] = result.analysis.joints;
    expect(joint?.kind).toBe('field');
    const thing: Thing = { kind: 'joint', key: joint?.key ?? '' };
    const scene = sceneOf(longHall, { result, chosen: [thing], step: 'joints' });
    const turn = acted(resting(), scene, drag([6000, 2500], [6490, 2600], { things: [thing] }));
    const line = [...(turn.step?.file.drawnJoints?.[0]?.line ?? [])].sort((a, b) => a[1] - b[1]);
    expect(line).toEqual([
      [6500, 0],
      [6500, 5000],
    ]);
    const after = resultOf(turn.step?.file ?? longHall).analysis;
    expect(after.joints.map(({ kind }) => kind)).toEqual(['drawn']);
    expect(after.bays.map(({ areaM2 }) => areaM2).sort()).toEqual([27.5, 32.5]);
  });

  test('arrow keys move a joint square to itself, and go on with the drawn one that it becomes', () => {
    const result = resultOf(longHall);
    const thing: Thing = { kind: 'joint', key: result.analysis.joints[0]?.key ?? '' };
    const right = { kind: 'steer', by: [10, 0] } as const;
    const first = acted(resting(), sceneOf(longHall, { result, chosen: [thing], step: 'joints' }), [right]);
    const file = first.step?.file ?? longHall;
    const scene = sceneOf(file, { result, chosen: first.choose ?? [], step: 'joints' });
    const second = acted(resting(), scene, [right, { kind: 'steer', by: [0, 10] }]);
    // Along itself it does not move.
    expect(second.step).toBeUndefined();
    const after = acted(resting(), scene, [right]).step?.file.drawnJoints;
    expect(after?.map(({ line }) => line.map(([x]) => x))).toEqual([[6020, 6020]]);
  });

  test('a joint that is drawn on to a found one keeps it, and cuts', () => {
    // 12 x 5 m: the found joint halves it at x = 6000; the drawn one goes from the left wall to it.
    const result = resultOf(longHall);
    const scene = sceneOf(longHall, { result, step: 'joints' });
    const catches = catchesWithJoints(scene.catches, result.analysis.joints);
    const turn = acted(first(drawKinds.drawnJoint), { ...scene, catches }, [pressAt(20, 2510), pressAt(5980, 2510)]);
    expect(turn.step?.file.drawnJoints).toHaveLength(2);
    const after = resultOf(turn.step?.file ?? longHall).analysis;
    // The drawn 6 m and the kept 5 m both part floor from floor.
    const drawn = after.joints.filter(({ kind }) => kind === 'drawn');
    expect(drawn.reduce((sum, { lengthM }) => sum + lengthM, 0)).toBeCloseTo(11, 6);
    expect(after.findings.filter(({ code }) => code.startsWith('drawn-joint'))).toEqual([]);
  });

  test('a joint ends at the walls of the bays that it runs through', () => {
    const bays = [
      {
        outline: [
          [0, 0],
          [4000, 0],
          [4000, 3000],
          [0, 3000],
        ],
        holes: [],
      },
      {
        outline: [
          [4000, 0],
          [8000, 0],
          [8000, 5000],
          [4000, 5000],
        ],
        holes: [],
      },
    ] as unknown as Parameters<typeof joiningLine>[1];
    expect(
      joiningLine(
        [
          [1000, 100],
          [1000, 2900],
        ],
        bays,
      ),
    ).toEqual([
      [1000, 0],
      [1000, 3000],
    ]);
    // Brought into the deeper bay it reaches that bay's far wall.
    expect(
      joiningLine(
        [
          [5000, 100],
          [5000, 2900],
        ],
        bays,
      ),
    ).toEqual([
      [5000, 0],
      [5000, 5000],
    ]);
    expect(
      joiningLine(
        [
          [9000, 100],
          [9000, 2900],
        ],
        bays,
      ),
    ).toBeNull();
  });
});
