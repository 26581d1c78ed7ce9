import { describe, expect, test } from 'vitest';
import type { Thing } from '../../../src/app/state/thing.ts';
import { resting } from '../../../src/app/tools/choose/resting.ts';
import { first } from '../../../src/app/tools/draw/first.ts';
import { drawKinds } from '../../../src/app/tools/draw/kinds.ts';
import { groutCatch } from '../../../src/app/tools/tiles/grout.ts';
import { groutCatches } from '../../../src/app/tools/tiles/grout-catches.ts';
import { jointOnGrout } from '../../../src/app/tools/tiles/joint-on-grout.ts';
import type { Point } from '../../../src/geometry/point.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import {
  acted,
  handAt,
  hoverAt,
  lead,
  length,
  longHall,
  pressAt,
  resultOf,
  sceneOf,
  twoRooms,
  wordsOf,
} from './scene.ts';

describe('grout lines', () => {
  test('are found next to a place without a walk through all of them', () => {
    const near = groutCatch({ ...twoRooms, tiles: { lengthMm: 600, widthMm: 600, origin: [1000, 1000] } });
    // Grout centres at 998.5 + 603 k; 3410.5 and 1601.5 are nearest.
    const [upright, level] = near([3400, 1590]);
    expect([upright?.at[0], level?.at[1]]).toEqual([3410.5, 1601.5]);
    expect(near([-5000, 0])).toEqual([]);
  });

  test('of shifted courses run along them alone, and a herringbone has none', () => {
    const of = (bond: string) =>
      groutCatch({ ...twoRooms, tiles: { lengthMm: 600, widthMm: 600, bond } })([2000, 2000]);
    expect(of('half').map(({ way }) => way.map(Math.abs))).toEqual([[1, 0]]);
    expect(of('herringbone')).toEqual([]);
  });

  test('of a turned grid are found square to it', () => {
    const file: PlanFile = { ...twoRooms, tiles: { lengthMm: 600, widthMm: 600, origin: [0, 0], angleDeg: 45 } };
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

  const long: PlanFile = { ...longHall, tiles: { lengthMm: 600, widthMm: 600 } };
  const result = resultOf(long);
  const thing: Thing = { kind: 'joint', key: result.analysis.joints[0]?.key ?? '' };
  const joining = sceneOf(long, { result, chosen: [thing], step: 'joints' });
  const things = { things: [thing] };

  test('catch a joint that is dragged, with a guide that says so; Shift lets go of them', () => {
    const led = acted(resting(), joining, lead([6000, 2500], [6410, 2500], things));
    // Between the grout lines at 603 k - 1.5, 6028.5 and 6631.5, it falls on a round step.
    expect(led.preview?.drawnJoints?.[0]?.line[0]?.[0]).toBe(6400);
    const near = acted(resting(), joining, lead([6000, 2500], [6600, 2500], things));
    expect(near.preview?.drawnJoints?.[0]?.line.map(([x]) => x)).toEqual([6631.5, 6631.5]);
    expect(wordsOf(near.next === 'rest' ? resting() : near.next, joining)).toEqual(['Grout line']);
    const loose = acted(resting(), joining, [
      { kind: 'down', hand: handAt([6000, 2500], things) },
      { kind: 'drop', hand: handAt([6600, 2500], { ...things, loose: true }) },
    ]);
    expect(loose.step?.file.drawnJoints?.[0]?.line[0]?.[0]).toBe(6600);
  });

  test('catch a joint that is drawn, and leave its ends on the walls', () => {
    const grout = groutCatches(long);
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

describe('grout lines askew to the sheet', () => {
  const turned = (deg: number): ((p: Point) => Point) => {
    const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
    return ([x, y]) => [x * c - y * s, x * s + y * c];
  };
  const drawingIn = (file: PlanFile) => {
    const scene = sceneOf(file, { step: 'joints' });
    return { ...scene, catches: { ...scene.catches, grout: groutCatches(file) } };
  };
  const begun = (file: PlanFile, ...at: Point) => {
    const { next } = acted(first(drawKinds.drawnJoint), drawingIn(file), [hoverAt(...at)]);
    return next === 'rest' ? null : { at: next.hand, words: wordsOf(next, drawingIn(file)) };
  };
  /** Grout lines at 45 degrees: x + y and y - x are (603 k - 1.5) times the root of two. */
  const diamond: PlanFile = { ...longHall, tiles: { lengthMm: 600, widthMm: 600, origin: [0, 0], angleDeg: 45 } };
  const root = Math.SQRT2;

  test('catch the first point of a joint on a wall, which stays on the wall', () => {
    const on = begun(diamond, 2530, 14);
    // x + y = (603 x 3 - 1.5) root 2 = 2556.2; the next line the other way meets the wall at 2560.4.
    expect(on?.at?.[0]).toBeCloseTo(1807.5 * root, 6);
    expect(on?.at?.[1]).toBe(0);
    expect(on?.words).toEqual(['Grout line']);
    // Halfway between two there is none within reach: a round step.
    expect(begun(diamond, 2130, 14)?.at).toEqual([2150, 0]);
  });

  test('catch it on a wall that is askew as they are', () => {
    const turn = turned(30);
    const [room] = longHall.rooms;
    const outline = (room?.outline ?? []).map(turn);
    const file: PlanFile = {
      ...longHall,
      rooms: [{ id: 'r1', name: 'Hall', outline }],
      tiles: { lengthMm: 600, widthMm: 600, origin: [0, 0], angleDeg: 30 },
    };
    const on = begun(file, ...turn([3030, 12]));
    const [x, y] = turn([603 * 5 - 1.5, 0]);
    expect(on?.at?.[0]).toBeCloseTo(x, 6);
    expect(on?.at?.[1]).toBeCloseTo(y, 6);
    // From there the run keeps to the grout line, to the wall across; a typed length goes along it, too.
    const scene = drawingIn(file);
    const toWall = [pressAt(...turn([3030, 12])), pressAt(...turn([3040, 4990]))];
    const line = acted(first(drawKinds.drawnJoint), scene, toWall).step?.file.drawnJoints?.[0]?.line;
    const [endX, endY] = turn([603 * 5 - 1.5, 5000]);
    expect(line?.[1]?.[0]).toBeCloseTo(endX, 0);
    expect(line?.[1]?.[1]).toBeCloseTo(endY, 0);
    const typed = acted(first(drawKinds.drawnJoint), scene, [
      pressAt(...turn([3030, 12])),
      hoverAt(...turn([3040, 2000])),
      length(1000),
      { kind: 'enter' },
    ]);
    const [typedX, typedY] = turn([603 * 5 - 1.5, 1000]);
    expect(typed.step?.file.drawnJoints?.[0]?.line[1]?.[0]).toBeCloseTo(typedX, 0);
    expect(typed.step?.file.drawnJoints?.[0]?.line[1]?.[1]).toBeCloseTo(typedY, 0);
  });

  test('catch it in the middle of the floor, and where two of them cross', () => {
    // x + y = 4221 root 2 - 1.5 root 2 near [3000, 2966]; y - x is 34, far from -1.5 root 2 = -2.1 by 36 / root 2 = 25 mm: both are within reach.
    const crossing = begun(diamond, 3000, 2966);
    expect(crossing?.at?.[0]).toBeCloseTo(((4219.5 + 1.5) * root) / 2, 6);
    expect(crossing?.at?.[1]).toBeCloseTo(((4219.5 - 1.5) * root) / 2, 6);
    // A quarter of a tile along the line only that line is near.
    const one = begun(diamond, 2800, 3160);
    expect((one?.at?.[0] ?? 0) + (one?.at?.[1] ?? 0)).toBeCloseTo(4219.5 * root, 6);
    expect((one?.at?.[1] ?? 0) - (one?.at?.[0] ?? 0)).toBeCloseTo(360, 6);
  });

  test('leave the hand alone with the key that lets go of holds', () => {
    const { next } = acted(first(drawKinds.drawnJoint), drawingIn(diamond), [
      { kind: 'hover', hand: handAt([2530, 14], { loose: true }) },
    ]);
    expect(next === 'rest' ? null : next.hand).toEqual([2530, 14]);
  });
});
