import { describe, expect, test } from 'vitest';
import { resting } from '../../../src/app/tools/choose/resting.ts';
import type { Scene } from '../../../src/app/tools/stance.ts';
import { fieldHandle, fieldsOf } from '../../../src/app/tools/tiles/fields.ts';
import { setOutStart } from '../../../src/app/tools/tiles/set-out.ts';
import { boxOf } from '../../../src/geometry/ring.ts';
import { tileFieldAdded } from '../../../src/plan/edits/tiles.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { acted, drag, handAt, lead, longHall, resultOf, sceneOf, twoRooms, wordsOf } from './scene.ts';

/** The hall and the kitchen beside it with tiles of 600 x 600 and grout of 3 mm, set out from [1000, 1000]. */
const tiled: PlanFile = { ...twoRooms, tiles: { lengthMm: 600, widthMm: 600, origin: [1000, 1000] } };

const scene = (file: PlanFile, over: Partial<Scene> = {}) => sceneOf(file, { step: 'coverings', ...over });

describe('a set-out point under the open hand', () => {
  test('is dragged where coverings are laid, and nowhere else', () => {
    expect(resting().grabs(handAt([1010, 990]), scene(tiled))).toBe(true);
    expect(resting().grabs(handAt([1010, 990]), sceneOf(tiled, { step: 'joints' }))).toBe(false);
    expect(resting().grabs(handAt([1010, 990]), scene(twoRooms))).toBe(false);
    // Until the later parts of the screen are there.
    expect(resting().grabs(handAt([1010, 990]), scene(tiled, { tiles: null }))).toBe(false);
  });

  test('falls on a corner of a room, and one drag is one step', () => {
    const turn = acted(resting(), scene(tiled), drag([1010, 990], [40, 20]));
    expect(turn.step?.name).toBe('Move the set-out point');
    expect(turn.step?.file.tiles?.origin).toEqual([0, 0]);
    expect(turn.next).toBe('rest');
  });

  test('is taken by a corner of its tiles in the middle of the floor where it lies far off', () => {
    // Tiles of 603 with their grout, each course shifted by half of that.
    const far: PlanFile = { ...tiled, tiles: { lengthMm: 600, widthMm: 600, bond: 'half', origin: [61300, 61300] } };
    const [field] = fieldsOf(far);
    if (field === undefined) throw new Error('no room has tiles');
    const at = fieldHandle(field);
    const { minX, maxX, minY, maxY } = boxOf(field.rooms.flatMap(({ outline }) => outline));
    expect(Math.abs(at[0] - (minX + maxX) / 2)).toBeLessThanOrEqual(301.5);
    expect(Math.abs(at[1] - (minY + maxY) / 2)).toBeLessThanOrEqual(301.5);
    const courses = (61300 - at[1]) / 603;
    const tilesOn = (61300 - at[0] - courses * 301.5) / 603;
    for (const count of [courses, tilesOn]) expect(count).toBeCloseTo(Math.round(count), 9);
    expect(resting().grabs(handAt(at), scene(far))).toBe(true);
    const turn = acted(resting(), scene(far), drag(at, [at[0] + 40, at[1]], { loose: true }));
    expect(turn.step?.file.tiles?.origin?.[0]).toBeCloseTo(at[0] + 40, 0);
  });

  test('falls on a wall, so that a whole tile begins there, and on round steps along it', () => {
    const turn = acted(resting(), scene(tiled), drag([1000, 1000], [6020, 2043]));
    expect(turn.step?.file.tiles?.origin).toEqual([6000, 2050]);
  });

  test('falls where the cuts on both sides of the room are equal, and says how wide they are', () => {
    // The hall is 6000 x 4500. Across: a tile in the middle leaves (6000 - 600) / 2 = 2700 on each side, four tiles with grout and 285 mm beyond
    // the fifth grout line; a grout line in the middle leaves 3001.5, four and 586.5 mm. Down, 4500: 1950 and 138, or 2251.5 and 439.5.
    const led = acted(resting(), scene(tiled), lead([1000, 1000], [3010, 1500]));
    expect(led.preview?.tiles?.origin).toEqual([3001.5, 1500]);
    const stance = led.next === 'rest' ? resting() : led.next;
    expect(wordsOf(stance, scene(tiled))).toEqual(['Equal cuts of 587 mm in Hall']);
  });

  test('falls beside a joint, with the grout on it', () => {
    const long: PlanFile = { ...longHall, tiles: { lengthMm: 600, widthMm: 600, origin: [1000, 1000] } };
    const result = resultOf(long);
    expect(result.analysis.joints.map(({ line }) => line[0]?.[0])).toEqual([6000]);
    const turn = acted(resting(), scene(long, { result }), drag([1000, 1000], [6020, 1000]));
    expect(turn.step?.file.tiles?.origin).toEqual([6001.5, 1000]);
  });

  test('goes anywhere with the key that lets go of holds, and back with Escape', () => {
    const loose = acted(resting(), scene(tiled), drag([1000, 1000], [33, 21], { loose: true }));
    expect(loose.step?.file.tiles?.origin).toEqual([33, 21]);
    const back = acted(resting(), scene(tiled), [...lead([1000, 1000], [33, 21]), { kind: 'back' }]);
    expect(back).toEqual({ next: 'rest' });
  });

  test('follows a grid that is turned: only corners, and walls along it, catch', () => {
    const turned: PlanFile = { ...tiled, tiles: { lengthMm: 600, widthMm: 600, origin: [1000, 1000], angleDeg: 45 } };
    const besideWall = acted(resting(), scene(turned), drag([1000, 1000], [20, 2020]));
    // Counted along the grid the hand went 40 / sqrt 2 = 28 mm and across it 2000 / sqrt 2 = 1414 mm: 50 and 1400 in steps of 50 mm, which is
    // (50 - 1400) / sqrt 2 = -954.6 and (50 + 1400) / sqrt 2 = 1025.3 on the sheet.
    const [x = 0, y = 0] = besideWall.step?.file.tiles?.origin ?? [];
    expect([x, y]).toEqual([45.4, 2025.3]);
    const corner = acted(resting(), scene(turned), drag([1000, 1000], [20, 30]));
    expect(corner.step?.file.tiles?.origin).toEqual([0, 0]);
  });
});

describe('the tool for set-out points', () => {
  const start = () => setOutStart(scene(tiled));

  test('places the point by a press, caught as in a drag, and keeps it in hand', () => {
    const turn = acted(start(), scene(tiled), [{ kind: 'press', hand: handAt([30, 30]) }]);
    expect(turn.step?.file.tiles?.origin).toEqual([0, 0]);
    expect(turn.next === 'rest' ? null : [turn.next.tool, turn.next.hand]).toEqual(['setOut', [0, 0]]);
  });

  test('is led by arrow keys and takes a typed place', () => {
    expect(acted(start(), scene(tiled), [{ kind: 'steer', by: [0, -100] }]).step?.file.tiles?.origin).toEqual([
      1000, 900,
    ]);
    expect(acted(start(), scene(tiled), [{ kind: 'place', at: [120.5, 7] }]).step?.file.tiles?.origin).toEqual([
      120.5, 7,
    ]);
    expect(acted(start(), scene(tiled), [{ kind: 'place', at: [1000, 1000] }]).refused).toBeDefined();
  });

  test('is put down by Escape; Escape in its drag only puts the point back', () => {
    expect(acted(start(), scene(tiled), [{ kind: 'back' }]).next).toBe('rest');
    const turn = acted(start(), scene(tiled), [...lead([1000, 1000], [500, 500]), { kind: 'back' }]);
    expect(turn.next === 'rest' ? null : turn.next.tool).toBe('setOut');
    expect([turn.preview, turn.step]).toEqual([undefined, undefined]);
  });

  test('moves the point of the field under the hand', () => {
    const { file, id } = tileFieldAdded(tiled, ['r2']);
    const turn = acted(setOutStart(scene(file)), scene(file), [{ kind: 'press', hand: handAt([6140, 20]) }]);
    expect(turn.step?.name).toBe(`Move the set-out point of field ${id}`);
    expect(turn.step?.file.tileFields?.[0]?.origin).toEqual([6120, 0]);
    expect(turn.step?.file.tiles).toBe(file.tiles);
    const off = acted(setOutStart(scene(file)), scene(file), [{ kind: 'press', hand: handAt([-5000, 0]) }]);
    expect(off.refused).toBe('No tiles lie there.');
  });

  test('says so where nothing is laid', () => {
    const bare = setOutStart(scene(twoRooms));
    expect(bare.hint).toContain('No room has tiles yet');
    expect(acted(bare, scene(twoRooms), [{ kind: 'press', hand: handAt([30, 30]) }]).step).toBeUndefined();
  });
});
