import { describe, expect, test } from 'vitest';
import { createAnalyser } from '../../../src/analysis/analyser.ts';
import type { Result } from '../../../src/app/state/analysisStore.ts';
import type { Thing } from '../../../src/app/state/thing.ts';
import { resting } from '../../../src/app/tools/choose/resting.ts';
import { first } from '../../../src/app/tools/draw/first.ts';
import { drawKinds } from '../../../src/app/tools/draw/kinds.ts';
import type { Act, Scene } from '../../../src/app/tools/stance.ts';
import { groutCatch } from '../../../src/app/tools/tiles/grout.ts';
import { jointOnGrout } from '../../../src/app/tools/tiles/joint-on-grout.ts';
import { setOutStart } from '../../../src/app/tools/tiles/set-out.ts';
import { drawingOf } from '../../../src/documents/drawing-list.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { tileFieldAdded } from '../../../src/plan/edits/tiles.ts';
import { planResolve } from '../../../src/plan/resolve.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { acted, emptyFile, handAt, sceneOf, twoRooms } from './scene.ts';

/** The hall and the kitchen beside it with tiles of 600 x 600 and grout of 3 mm, set out from [1000, 1000]. */
const tiled: PlanFile = { ...twoRooms, tiles: { lengthMm: 600, widthMm: 600, origin: [1000, 1000] } };

function resultOf(file: PlanFile): Result {
  const plan = planResolve(file);
  const analysis = createAnalyser().analyse(plan, {});
  if (analysis === null) throw new Error('cancelled');
  return { revision: 1, sheet: 1, file, plan, analysis, drawing: drawingOf(plan, analysis) };
}

const scene = (file: PlanFile, over: Partial<Scene> = {}) => sceneOf(file, { step: 'coverings', ...over });

const drag = (from: Point, to: Point, over: Partial<ReturnType<typeof handAt>> = {}): readonly Act[] => [
  { kind: 'down', hand: handAt(from, over) },
  { kind: 'drag', hand: handAt(to, over) },
  { kind: 'drop', hand: handAt(to, over) },
];
const words = (stance: ReturnType<typeof resting>, at: Scene) =>
  stance.sketch(at).marks.flatMap((mark) => (mark.mark === 'words' ? [mark.text] : []));

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

  test('falls on a wall, so that a whole tile begins there, and on round steps along it', () => {
    const turn = acted(resting(), scene(tiled), drag([1000, 1000], [6020, 2043]));
    expect(turn.step?.file.tiles?.origin).toEqual([6000, 2050]);
  });

  test('falls where the cuts on both sides of the room are equal, and says how wide they are', () => {
    // The hall is 6000 x 4500. Across: a tile in the middle leaves (6000 - 600) / 2 = 2700 on each side, four tiles with grout and 285 mm beyond
    // the fifth grout line; a grout line in the middle leaves 3001.5, four and 586.5 mm. Down, 4500: 1950 and 138, or 2251.5 and 439.5.
    const [, dragged] = drag([1000, 1000], [3010, 1500]);
    const led = acted(resting(), scene(tiled), [{ kind: 'down', hand: handAt([1000, 1000]) }, dragged as Act]);
    expect(led.preview?.tiles?.origin).toEqual([3001.5, 1500]);
    const stance = led.next === 'rest' ? resting() : led.next;
    expect(words(stance, scene(tiled))).toEqual(['Equal cuts of 587 mm in Hall']);
  });

  test('falls beside a joint, with the grout on it', () => {
    const long: PlanFile = {
      ...emptyFile,
      rooms: [
        {
          id: 'r1',
          name: 'Hall',
          outline: [
            [0, 0],
            [12000, 0],
            [12000, 5000],
            [0, 5000],
          ],
        },
      ],
      tiles: { lengthMm: 600, widthMm: 600, origin: [1000, 1000] },
    };
    const result = resultOf(long);
    expect(result.analysis.joints.map(({ line }) => line[0]?.[0])).toEqual([6000]);
    const turn = acted(resting(), scene(long, { result }), drag([1000, 1000], [6020, 1000]));
    expect(turn.step?.file.tiles?.origin).toEqual([6001.5, 1000]);
  });

  test('goes anywhere with the key that lets go of holds, and back with Escape', () => {
    const loose = acted(resting(), scene(tiled), drag([1000, 1000], [33, 21], { loose: true }));
    expect(loose.step?.file.tiles?.origin).toEqual([33, 21]);
    const back = acted(resting(), scene(tiled), [...drag([1000, 1000], [33, 21]).slice(0, 2), { kind: 'back' }]);
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
    const turn = acted(start(), scene(tiled), [...drag([1000, 1000], [500, 500]).slice(0, 2), { kind: 'back' }]);
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

describe('grout lines', () => {
  test('are found next to a place without a walk through all of them', () => {
    const near = groutCatch(tiled);
    // Tiles from 1000: grout centres at 998.5 + 603 k; 3410.5 and 1601.5 are nearest.
    const [upright, level] = near([3400, 1590]);
    expect([upright?.at[0], level?.at[1]]).toEqual([3410.5, 1601.5]);
    expect(near([-5000, 0])).toEqual([]);
  });

  test('of shifted courses run along them alone, and a herringbone has none', () => {
    const of = (bond: string) => groutCatch({ ...tiled, tiles: { lengthMm: 600, widthMm: 600, bond } })([2000, 2000]);
    expect(of('half').map(({ way }) => way.map(Math.abs))).toEqual([[1, 0]]);
    expect(of('herringbone')).toEqual([]);
  });

  test('of a turned grid are found square to it', () => {
    const file: PlanFile = { ...tiled, tiles: { lengthMm: 600, widthMm: 600, origin: [0, 0], angleDeg: 45 } };
    const line: readonly Point[] = [
      [2000, 2000],
      [3000, 3000],
    ];
    // The joint runs along the courses: of the two directions only theirs is left.
    const [only, ...more] = groutCatch(file, line)([2500, 2510]);
    expect(more).toEqual([]);
    expect((only?.way[0] ?? 0) - (only?.way[1] ?? 1)).toBeCloseTo(0, 9);
    // Its distance from the origin, square to it, is -1.5 + 603 k.
    const away = ((only?.at[1] ?? 0) - (only?.at[0] ?? 0)) / Math.SQRT2;
    expect(away).toBeCloseTo(-1.5, 6);
  });

  const long: PlanFile = {
    ...emptyFile,
    rooms: [
      {
        id: 'r1',
        name: 'Hall',
        outline: [
          [0, 0],
          [12000, 0],
          [12000, 5000],
          [0, 5000],
        ],
      },
    ],
    tiles: { lengthMm: 600, widthMm: 600 },
  };
  const result = resultOf(long);
  const thing: Thing = { kind: 'joint', key: result.analysis.joints[0]?.key ?? '' };
  const joining = sceneOf(long, { result, chosen: [thing], step: 'joints' });
  const things = { things: [thing] };

  test('catch a joint that is dragged, with a guide that says so; Shift lets go of them', () => {
    const led = acted(resting(), joining, drag([6000, 2500], [6410, 2500], things).slice(0, 2));
    // Between the grout lines at 603 k - 1.5, 6028.5 and 6631.5, it falls on a round step.
    expect(led.preview?.drawnJoints?.[0]?.line[0]?.[0]).toBe(6400);
    const near = acted(resting(), joining, drag([6000, 2500], [6600, 2500], things).slice(0, 2));
    expect(near.preview?.drawnJoints?.[0]?.line.map(([x]) => x)).toEqual([6631.5, 6631.5]);
    expect(words(near.next === 'rest' ? resting() : near.next, joining)).toEqual(['Grout line']);
    const loose = acted(resting(), joining, [
      { kind: 'down', hand: handAt([6000, 2500], things) },
      { kind: 'drop', hand: handAt([6600, 2500], { ...things, loose: true }) },
    ]);
    expect(loose.step?.file.drawnJoints?.[0]?.line[0]?.[0]).toBe(6600);
  });

  test('catch a joint that is drawn, and leave its ends on the walls', () => {
    const grout = groutCatch(long);
    const drawing = { ...joining, catches: { ...joining.catches, grout } };
    const turn = acted(first(drawKinds.drawnJoint), drawing, [
      { kind: 'press', hand: handAt([3000, 12]) },
      { kind: 'press', hand: handAt([3010, 4985]) },
    ]);
    // 3013.5 = 603 x 5 - 1.5; the grout beside the walls at y -1.5 and 5425.5 does not catch.
    expect(turn.step?.file.drawnJoints?.[0]?.line).toEqual([
      [3013.5, 0],
      [3013.5, 5000],
    ]);
  });

  test('take a joint that misses them at one press, from wall to wall', () => {
    const [joint] = result.analysis.joints;
    // The found joint halves the hall at x = 6000; the nearest grout line is 6028.5.
    expect([joint?.onGroutLine, Math.round(joint?.offGroutMm ?? 0)]).toEqual([false, 29]);
    const moved = joint && jointOnGrout(joint, { file: long, result });
    expect(moved?.name).toBe('Move joint J1 to the grout line');
    const after = resultOf(moved?.file ?? long).analysis.joints;
    expect(after.map(({ kind, onGroutLine, cutsTiles }) => [kind, onGroutLine, cutsTiles])).toEqual([
      ['drawn', true, 0],
    ]);
  });
});
