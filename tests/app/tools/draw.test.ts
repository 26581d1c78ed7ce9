import { describe, expect, test } from 'vitest';
import { first } from '../../../src/app/tools/draw/first.ts';
import { drawKinds } from '../../../src/app/tools/draw/kinds.ts';
import { firstWishes } from '../../../src/app/tools/wishes.ts';
import { acted, emptyFile, handAt, hoverAt, length, pressAt, sceneOf, twoRooms } from './scene.ts';

const room = first(drawKinds.room);
const sheet = sceneOf(emptyFile);
const outlineOf = (turn: ReturnType<typeof acted>) => turn.step?.file.rooms.at(-1)?.outline;

describe('a room', () => {
  test('is drawn run by run with typed lengths, and closed by Enter', () => {
    const turn = acted(room, sheet, [
      pressAt(0, 0),
      hoverAt(900, 20),
      length(4000),
      hoverAt(4010, 900),
      length(3000),
      hoverAt(900, 3010),
      length(4000),
      { kind: 'enter' },
    ]);
    expect(outlineOf(turn)).toEqual([
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ]);
    expect(turn.step?.name).toBe('Draw a room');
  });

  test('is closed by its first corner', () => {
    const turn = acted(room, sheet, [
      pressAt(0, 0),
      pressAt(4000, 0),
      pressAt(4000, 3000),
      pressAt(0, 3000),
      pressAt(20, 10),
    ]);
    expect(outlineOf(turn)).toHaveLength(4);
  });

  test('takes a direction with a length: 30 degrees up from the right', () => {
    const turn = acted(room, sheet, [pressAt(0, 0), length(2000, 30), length(1000, 180), { kind: 'enter' }]);
    // 2000 cos 30 = 1732.05, 2000 sin 30 = 1000, up is less y.
    expect(outlineOf(turn)).toEqual([
      [0, 0],
      [1732.1, -1000],
      [732.1, -1000],
    ]);
  });

  test('is a rectangle by two typed sides, on the side of its corner where the hand is', () => {
    const right = acted(room, sheet, [pressAt(1000, 1000), { kind: 'sides', sidesMm: [4000, 3000] }]);
    expect(outlineOf(right)?.[2]).toEqual([5000, 4000]);
    const left = acted(room, sheet, [pressAt(1000, 1000), hoverAt(500, 400), { kind: 'sides', sidesMm: [4000, 3000] }]);
    expect(outlineOf(left)?.[0]).toEqual([-3000, -2000]);
  });

  test('is a rectangle by a drag where rectangles are wished', () => {
    const scene = sceneOf(emptyFile, { wishes: { ...firstWishes, outline: 'rectangle' } });
    const turn = acted(room, scene, [
      { kind: 'down', hand: handAt([0, 0]) },
      { kind: 'drag', hand: handAt([2010, 1490]) },
      { kind: 'drop', hand: handAt([2010, 1490]) },
    ]);
    expect(outlineOf(turn)?.[2]).toEqual([2000, 1500]);
  });

  test('begins beside its neighbour, a wall away, where no place is pointed at', () => {
    const turn = acted(room, sceneOf(twoRooms), [{ kind: 'sides', sidesMm: [1000, 2000] }]);
    // The kitchen ends at x = 9620; 120 mm of wall.
    expect(outlineOf(turn)?.[0]).toEqual([9740, 0]);
  });

  test('may not cross itself: the run is refused and nothing is lost', () => {
    const acts = [pressAt(0, 0), pressAt(4000, 0), pressAt(4000, 3000)];
    const scene = sceneOf(emptyFile, { wishes: { ...firstWishes, square: false } });
    const crossing = acted(room, scene, [...acts, pressAt(2000, -1000)]);
    expect(crossing.refused).toContain('may not cross itself');
    const after = acted(room, scene, [...acts, pressAt(2000, -1000), pressAt(0, 3000), { kind: 'enter' }]);
    expect(outlineOf(after)).toHaveLength(4);
  });

  test('may not cross itself with its last run', () => {
    const scene = sceneOf(emptyFile, { wishes: { ...firstWishes, square: false } });
    const turn = acted(room, scene, [
      pressAt(0, 0),
      pressAt(4000, 0),
      pressAt(4000, 3000),
      pressAt(5000, 1000),
      { kind: 'enter' },
    ]);
    expect(turn.refused).toContain('would cross');
    expect(turn.step).toBeUndefined();
  });

  test('needs three corners', () => {
    const turn = acted(room, sheet, [pressAt(0, 0), pressAt(4000, 0), { kind: 'enter' }]);
    expect(turn.refused).toBe('An outline needs three corners.');
  });

  test('steps back a corner with each Escape, and is given up with the last', () => {
    const back = { kind: 'back' } as const;
    const two = acted(room, sheet, [pressAt(0, 0), pressAt(4000, 0), back]);
    expect(two.next === 'rest' ? null : two.next.typed?.sides).toBe(true);
    const none = acted(room, sheet, [pressAt(0, 0), pressAt(4000, 0), back, back]);
    expect(none.next === 'rest' ? null : none.next.underway).toBe(false);
    expect(acted(room, sheet, [pressAt(0, 0), back, back]).next).toBe('rest');
  });

  test('keeps no corner in the middle of a straight run', () => {
    const turn = acted(room, sheet, [
      pressAt(0, 0),
      pressAt(2000, 0),
      pressAt(4000, 0),
      pressAt(4000, 3000),
      pressAt(0, 3000),
      { kind: 'enter' },
    ]);
    expect(outlineOf(turn)).toHaveLength(4);
  });
});

describe('arrow keys', () => {
  test('lead the hand, and Enter sets a corner where they led it', () => {
    const right = { kind: 'steer', by: [100, 0] } as const;
    const down = { kind: 'steer', by: [0, 100] } as const;
    const enter = { kind: 'enter' } as const;
    const turn = acted(room, sheet, [enter, right, right, enter, down, enter, enter]);
    expect(outlineOf(turn)).toEqual([
      [0, 0],
      [200, 0],
      [200, 100],
    ]);
  });
});

describe('a hole', () => {
  test('belongs to the room that it is drawn in', () => {
    const hole = first(drawKinds.hole);
    const turn = acted(hole, sceneOf(twoRooms), [
      { kind: 'place', at: [7000, 1000] },
      { kind: 'sides', sidesMm: [500, 400] },
    ]);
    expect(turn.step?.file.rooms[1]?.holes).toEqual([
      [
        [7000, 1000],
        [7500, 1000],
        [7500, 1400],
        [7000, 1400],
      ],
    ]);
  });

  test('is refused outside of rooms', () => {
    const hole = first(drawKinds.hole);
    const turn = acted(hole, sceneOf(twoRooms), [
      { kind: 'place', at: [5800, 1000] },
      { kind: 'sides', sidesMm: [500, 400] },
    ]);
    expect(turn.refused).toContain('within one room');
  });
});

describe('a joint of one’s own', () => {
  const joint = first(drawKinds.drawnJoint);

  test('that begins on a wall ends on the next', () => {
    const turn = acted(joint, sceneOf(twoRooms), [pressAt(3020, 20), pressAt(3020, 4480)]);
    expect(turn.step?.file.drawnJoints).toEqual([
      {
        id: 'x1',
        line: [
          [3000, 0],
          [3000, 4500],
        ],
      },
    ]);
  });

  test('that begins in the middle of the floor goes on until Enter', () => {
    const turn = acted(joint, sceneOf(twoRooms), [pressAt(3000, 2000), pressAt(4000, 2000), pressAt(4000, 4490)]);
    expect(turn.step).toBeUndefined();
  });
});
