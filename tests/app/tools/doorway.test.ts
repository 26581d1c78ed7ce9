import { expect, test } from 'vitest';
import { resting } from '../../../src/app/tools/choose/resting.ts';
import { doorway } from '../../../src/app/tools/place/doorway.ts';
import { placeKinds, placing } from '../../../src/app/tools/place/placing.ts';
import { firstWishes } from '../../../src/app/tools/wishes.ts';
import { doorwayOver } from '../../../src/plan/edits/doorways.ts';
import { acted, handAt, hoverAt, length, pressAt, sceneOf, twoRooms } from './scene.ts';

const scene = sceneOf(twoRooms);
const lineOf = (turn: ReturnType<typeof acted>) =>
  [...(turn.step?.file.doorways?.[0]?.line ?? [])].sort((a, b) => a[1] - b[1]);

test('a press on a wall sets a doorway of the usual width in the middle of its depth', () => {
  const turn = acted(doorway(), scene, [pressAt(6060, 1000)]);
  // The hand at 1000 less half of 875, to the step of 50, is 550.
  expect(lineOf(turn)).toEqual([
    [6060, 550],
    [6060, 1425],
  ]);
  expect(turn.step?.file.doorways?.[0]?.wallMm).toBe(120);
});

test('a doorway is caught in the middle of the wall, and in its corners', () => {
  expect(lineOf(acted(doorway(), scene, [pressAt(6060, 2280)]))[0]).toEqual([6060, 1812.5]);
  expect(lineOf(acted(doorway(), scene, [pressAt(6060, 420)]))[0]).toEqual([6060, 0]);
});

test('a typed width is that of the doorway under the hand', () => {
  const turn = acted(doorway(), scene, [hoverAt(6060, 2250), length(1000)]);
  expect(lineOf(turn)).toEqual([
    [6060, 1750],
    [6060, 2750],
  ]);
});

test('a drag sets a doorway from jamb to jamb', () => {
  const turn = acted(doorway(), scene, [
    { kind: 'down', hand: handAt([6060, 1010]) },
    { kind: 'drag', hand: handAt([6060, 2190]) },
    { kind: 'drop', hand: handAt([6060, 2190]) },
  ]);
  expect(lineOf(turn)).toEqual([
    [6060, 1000],
    [6060, 2200],
  ]);
});

test('where no wall has a room on either side a doorway is refused with the reason', () => {
  const turn = acted(doorway(), scene, [pressAt(3000, 0)]);
  expect(turn.refused).toContain('joins two rooms');
  expect(turn.step).toBeUndefined();
});

test('a doorway without a leaf says so in the plan', () => {
  const wishes = { ...firstWishes, doorway: { widthMm: 2000, leaf: false } };
  const turn = acted(doorway(), sceneOf(twoRooms, { wishes }), [pressAt(6060, 2250)]);
  expect(turn.step?.file.doorways?.[0]).toMatchObject({ leaf: false });
});

test('a chosen doorway slides along its wall', () => {
  const set = acted(doorway(), scene, [pressAt(6060, 2250)]);
  const file = set.step?.file ?? twoRooms;
  const thing = { kind: 'object', key: 'd1' } as const;
  const hand = (y: number) => handAt([6060, y], { things: [thing] });
  const turn = acted(resting(), sceneOf(file, { chosen: [thing] }), [
    { kind: 'down', hand: hand(2250) },
    { kind: 'drag', hand: hand(3500) },
    { kind: 'drop', hand: hand(3500) },
  ]);
  // 3500 less half of 875, to the step of 50, is 3050.
  expect(lineOf(turn)[0]).toEqual([6060, 3050]);
});

test('columns are placed one by one or as a grid, by count and spacing', () => {
  const one = acted(placing(placeKinds.column), scene, [{ kind: 'place', at: [1000, 2000] }]);
  expect(one.step?.file.columns?.[0]?.outline).toEqual([
    [850, 1850],
    [1150, 1850],
    [1150, 2150],
    [850, 2150],
  ]);
  const wishes = {
    ...firstWishes,
    column: { ...firstWishes.column, countX: 3, countY: 2, spacingXMm: 1500, spacingYMm: 1000 },
  };
  const grid = acted(placing(placeKinds.column), sceneOf(twoRooms, { wishes }), [{ kind: 'place', at: [1000, 2000] }]);
  expect(grid.step?.file.columns).toHaveLength(6);
  expect(grid.step?.file.columns?.[5]?.outline[0]).toEqual([1000 + 2 * 1500 - 150, 2000 + 1000 - 150]);
  expect(grid.step?.name).toBe('Place 6 columns');
});

test('a round column is a ring whose corners lie on the circle', () => {
  const wishes = { ...firstWishes, column: { ...firstWishes.column, shape: 'round' as const, widthMm: 400 } };
  const turn = acted(placing(placeKinds.column), sceneOf(twoRooms, { wishes }), [{ kind: 'place', at: [0, 0] }]);
  for (const [x, y] of turn.step?.file.columns?.[0]?.outline ?? []) expect(Math.hypot(x, y)).toBeCloseTo(200, 0);
});

test('a pipe is placed by its middle', () => {
  const turn = acted(placing(placeKinds.pipe), scene, [pressAt(1510, 1490)]);
  expect(turn.step?.file.pipes).toEqual([{ id: 'p1', centre: [1500, 1500], diameterMm: 110 }]);
});

test('two doorways do not lie over one another; their jambs may touch', () => {
  const set = acted(doorway(), scene, [pressAt(6060, 1000)]);
  const file = set.step?.file ?? twoRooms;
  // The first stands from 550 to 1425.
  const over = acted(doorway(), sceneOf(file), [pressAt(6060, 1500)]);
  expect(over.refused).toBe('Another doorway stands here.');
  expect(over.step).toBeUndefined();
  expect(
    doorwayOver(file, {
      line: [
        [6060, 1425],
        [6060, 2300],
      ],
      wallMm: 120,
    }),
  ).toBeNull();
  expect(
    doorwayOver(file, {
      line: [
        [6060, 2300],
        [6060, 1420],
      ],
      wallMm: 120,
    }),
  ).toBe('d1');
  expect(
    doorwayOver(
      file,
      {
        line: [
          [6060, 600],
          [6060, 1475],
        ],
        wallMm: 120,
      },
      'd1',
    ),
  ).toBeNull();
});
