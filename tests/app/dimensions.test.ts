import { describe, expect, test } from 'vitest';
import type { Dimension, DimensionScene } from '../../src/app/tools/dimensions/dimension.ts';
import { dimensionsOf } from '../../src/app/tools/dimensions/dimensions.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Joint } from '../../src/plan/analysis.ts';
import { planEmpty } from '../../src/plan/empty.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { box, house } from '../plan/edits/house.ts';

/** All expected lengths are differences of the coordinates below. */

function shown(file: PlanFile, kind: 'room' | 'object' | 'joint', key: string, more: Partial<DimensionScene> = {}) {
  return dimensionsOf({ file, result: null, joint: null, chosen: [{ kind, key }], ...more });
}

const lengths = (dimensions: readonly Dimension[]) =>
  Object.fromEntries(dimensions.map(({ key, lengthMm }) => [key, lengthMm]));

function edited(dimensions: readonly Dimension[], key: string, lengthMm: number) {
  const done = dimensions.find((each) => each.key === key)?.edit(lengthMm);
  if (done === undefined) throw new Error(`there is no dimension ${key}`);
  return done;
}

function planAfter(dimensions: readonly Dimension[], key: string, lengthMm: number): PlanFile {
  const done = edited(dimensions, key, lengthMm);
  if (done.kind === 'refused') throw new Error(done.words);
  return done.step.file;
}

describe('the sides of a room', () => {
  test('are measured on the outline and on its holes, and drawn on the floor', () => {
    const dimensions = shown(house, 'room', 'r3');
    expect(dimensions.map(({ name, lengthMm, aside }) => [name, lengthMm, aside?.map((n) => n + 0)])).toEqual([
      ['Side 1 of room r3', 8000, [0, 1]],
      ['Side 2 of room r3', 2800, [-1, 0]],
      ['Side 3 of room r3', 8000, [0, -1]],
      ['Side 4 of room r3', 2800, [1, 0]],
      ['Side 1 of hole 1 in room r3', 600, [0, -1]],
      ['Side 2 of hole 1 in room r3', 800, [1, 0]],
      ['Side 3 of hole 1 in room r3', 600, [0, 1]],
      ['Side 4 of hole 1 in room r3', 800, [-1, 0]],
    ]);
  });

  test('know how much floor there is beside them', () => {
    // Right of the shaft: 8000 - 6600; above it: 4000 - 3200; the room from wall to wall: 6000 - 3200.
    const depths = Object.fromEntries(shown(house, 'room', 'r3').map(({ key, depthMm }) => [key, depthMm]));
    expect(depths['side 1 1']).toBeCloseTo(1400);
    expect(depths['side 1 0']).toBeCloseTo(800);
    expect(depths['side 0 0']).toBeCloseTo(2800);
  });

  test('move the side that starts at their far corner, with the doorway in it', () => {
    const file = planAfter(shown(house, 'room', 'r1'), 'side 0 0', 3900);
    expect(file.rooms[0]?.outline).toEqual(box(0, 0, 3900, 3000));
    // The wall is 220 mm deep now, and the doorway still in its middle.
    expect(file.doorways?.[0]?.line[0]).toEqual([4010, 1000]);
  });

  test('say why an outline cannot be so', () => {
    expect(edited(shown(house, 'room', 'r1'), 'side 0 0', 0)).toEqual({
      kind: 'refused',
      words: 'Two corners would be one',
    });
  });

  test('of a curved wall are measured as far as anybody sets them', () => {
    const outline = Array.from({ length: 400 }, (_, i): Point => {
      const angle = (i * Math.PI) / 200;
      return [5000 * Math.cos(angle), 5000 * Math.sin(angle)];
    });
    expect(shown({ ...planEmpty('Drum'), rooms: [{ id: 'r1', outline }] }, 'room', 'r1').length).toBe(60);
  });
});

describe('what stands on the floor', () => {
  test('has its clear distances to the walls round it', () => {
    // Column 1000 to 1300 in a kitchen of 4000 x 3000.
    expect(lengths(shown(house, 'object', 'c1'))).toEqual({
      'to the left': 1000,
      'to the right': 2700,
      upwards: 1000,
      downwards: 1700,
    });
  });

  test('is measured from the faces of a column, and from those of a pipe as wide as it is', () => {
    // Pipe about [500, 500], 110 wide: 445 to 555. The column is beside neither of its faces.
    expect(lengths(shown(house, 'object', 'p1'))).toEqual({
      'to the left': 445,
      'to the right': 3445,
      upwards: 445,
      downwards: 2445,
    });
    const beside: PlanFile = { ...house, pipes: [{ id: 'p1', centre: [500, 1100], diameterMm: 110 }] };
    expect(lengths(shown(beside, 'object', 'p1'))['to the right']).toBe(445);
  });

  test('keeps the least distance over its whole face, not the one at its middle', () => {
    // A pier 500 deep stands over against the lower 100 mm of the face alone.
    const outline: readonly Point[] = [
      [0, 0],
      [4000, 0],
      [4000, 1200],
      [3500, 1200],
      [3500, 3000],
      [0, 3000],
    ];
    const file: PlanFile = { ...house, rooms: [{ id: 'r1', outline }] };
    const right = shown(file, 'object', 'c1').find(({ key }) => key === 'to the right');
    expect(right?.lengthMm).toBe(2200);
    expect(right?.from).toEqual([1300, 1250]);
  });

  test('is measured to the nearest place of a skew wall', () => {
    // The wall runs from [4000, 0] to [3000, 3000]: at y 1300, the foot of the face, it stands at 4000 - 1300 / 3.
    const outline: readonly Point[] = [
      [0, 0],
      [4000, 0],
      [3000, 3000],
      [0, 3000],
    ];
    const right = shown({ ...house, rooms: [{ id: 'r1', outline }] }, 'object', 'c1')[1];
    expect(right?.lengthMm).toBeCloseTo(4000 - 1300 / 3 - 1300, 6);
    expect(right?.to[1]).toBe(1300);
  });

  test('has no distance where it touches, stands in the wall, or is on no floor', () => {
    const at = (x: number) =>
      shown({ ...house, columns: [{ id: 'c1', outline: box(x, 1000, 300, 300) }] }, 'object', 'c1');
    const keys = (x: number) => at(x).map(({ key }) => key);
    expect(keys(0)).not.toContain('to the left');
    expect(keys(-50)).not.toContain('to the left');
    expect(at(-9000)).toEqual([]);
  });

  test('moves until a typed distance holds', () => {
    const file = planAfter(shown(house, 'object', 'c1'), 'to the right', 2000);
    expect(file.columns?.[0]?.outline).toEqual(box(1700, 1000, 300, 300));
    expect(lengths(shown(file, 'object', 'c1'))['to the right']).toBe(2000);
    expect(planAfter(shown(house, 'object', 'c1'), 'upwards', 0).columns?.[0]?.outline).toEqual(box(1000, 0, 300, 300));
  });

  test('does not move through the opposite wall', () => {
    expect(edited(shown(house, 'object', 'c1'), 'to the left', 4001)).toEqual({
      kind: 'refused',
      words: 'The floor ends there',
      mostMm: 4000,
    });
  });
});

describe('a doorway', () => {
  test('has the distances of its jambs from the ends of its wall, and its width', () => {
    // The wall between r1 and r2 runs from y 0 to 3000, the doorway from 1000 to 1900.
    expect(lengths(shown(house, 'object', 'd1'))).toEqual({ start: 1000, width: 900, end: 1100 });
    expect(shown(house, 'object', 'd1')[0]?.name).toBe('From doorway d1 upwards to the end of its wall');
  });

  test('slides to a typed distance, from either end', () => {
    const dimensions = shown(house, 'object', 'd1');
    expect(planAfter(dimensions, 'start', 300).doorways?.[0]?.line).toEqual([
      [4060, 300],
      [4060, 1200],
    ]);
    expect(planAfter(dimensions, 'end', 0).doorways?.[0]?.line).toEqual([
      [4060, 2100],
      [4060, 3000],
    ]);
  });

  test('is made so wide, as far as its wall goes', () => {
    const dimensions = shown(house, 'object', 'd1');
    expect(planAfter(dimensions, 'width', 1000).doorways?.[0]?.line).toEqual([
      [4060, 950],
      [4060, 1950],
    ]);
    expect(edited(dimensions, 'width', 3001)).toEqual({ kind: 'refused', words: 'The wall ends there', mostMm: 3000 });
    expect(edited(dimensions, 'start', 2101)).toEqual({ kind: 'refused', words: 'The wall ends there', mostMm: 2100 });
  });
});

describe('a joint', () => {
  const file: PlanFile = {
    ...planEmpty('Hall'),
    rooms: [{ id: 'r1', name: 'Hall', outline: box(0, 0, 9000, 4000) }],
    drawnJoints: [
      {
        id: 'x1',
        line: [
          [6000, 0],
          [6000, 4000],
        ],
      },
    ],
  };
  const found = {
    id: 'J1',
    key: 'k1',
    kind: 'field',
    run: 'a',
    sources: [],
    line: [
      [2000, 0],
      [2000, 4000],
    ],
  };
  const drawn = {
    id: 'J2',
    key: 'k2',
    kind: 'drawn',
    run: 'b',
    sources: ['x1'],
    line: [
      [6000, 0],
      [6000, 4000],
    ],
  };
  const bays = [box(0, 0, 2000, 4000), box(2000, 0, 4000, 4000), box(6000, 0, 3000, 4000)].map((outline) => ({
    outline,
    holes: [],
  }));
  const lettered = (items: readonly unknown[]) =>
    ({ file, analysis: { joints: [found, drawn] as unknown as Joint[], bays }, drawing: { items } }) as never;
  const result = lettered([]);

  test('has its distance to the next wall or joint on either side', () => {
    const expected = { 'to the left': 4000, 'to the right': 3000 };
    expect(lengths(shown(file, 'joint', 'k2', { result }))).toEqual(expected);
    expect(lengths(shown(file, 'object', 'x1', { result }))).toEqual(expected);
    expect(lengths(shown(file, 'joint', 'k1', { result }))).toEqual({ 'to the left': 2000, 'to the right': 4000 });
  });

  test('has the line of its distance off the words that stand beside it', () => {
    const words = (at: Point) => ({ shape: 'label', seat: { kind: 'inside', at, region: {} } });
    const atY = (of: never) =>
      Object.fromEntries(shown(file, 'joint', 'k2', { result: of }).map(({ key, from }) => [key, from[1]]));
    // A quarter of 4000 from either end of the joint; words to the right of it are in the way of the line to the right alone.
    expect(atY(result)).toEqual({ 'to the left': 1000, 'to the right': 1000 });
    expect(atY(lettered([words([7500, 1200])]))).toEqual({ 'to the left': 1000, 'to the right': 3000 });
  });

  test('that is drawn moves to a typed distance', () => {
    const done = planAfter(shown(file, 'object', 'x1', { result }), 'to the right', 2500);
    expect(done.drawnJoints).toEqual([
      {
        id: 'x1',
        line: [
          [6500, 0],
          [6500, 4000],
        ],
      },
    ]);
  });

  test('that was found becomes a drawn one there, which is chosen then', () => {
    const done = edited(shown(file, 'joint', 'k1', { result }), 'to the left', 2500);
    if (done.kind === 'refused') throw new Error(done.words);
    expect(done.step.file.drawnJoints?.[1]).toEqual({
      id: 'x2',
      line: [
        [2500, 0],
        [2500, 4000],
      ],
    });
    expect(done.choose).toEqual([{ kind: 'object', key: 'x2' }]);
  });

  test('does not pass the next one', () => {
    expect(edited(shown(file, 'joint', 'k1', { result }), 'to the left', 6000)).toEqual({
      kind: 'refused',
      words: 'The next wall or joint stands there',
      mostMm: 6000,
    });
  });
});

test('several chosen things have none', () => {
  const chosen = [
    { kind: 'room', key: 'r1' },
    { kind: 'room', key: 'r2' },
  ] as const;
  expect(dimensionsOf({ file: house, result: null, joint: null, chosen })).toEqual([]);
});
