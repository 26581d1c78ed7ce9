import { describe, expect, it } from 'vitest';
import { frameOf } from '../../src/bays/frame.ts';
import { cutRate, groutAlong, groutTurn, lineRate } from '../../src/bays/grout.ts';
import { boxNotched, notchesOf } from '../../src/bays/notched.ts';
import { partsOf } from '../../src/bays/parts.ts';
import { floorPlanOf } from '../../src/floor/floor.ts';
import type { Point } from '../../src/geometry/point.ts';
import { rules } from '../../src/plan/reference.ts';
import { analysed } from '../contract/analysed.ts';
import { box, type PlanJson, planJson, type TilesJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';

const tiles: TilesJson = { lengthMm: 600, widthMm: 300, groutMm: 3, origin: [100, 50] };

const hall = (rest: Partial<PlanJson>): PlanJson =>
  planJson('Hall', [{ id: 'r1', name: 'Hall', outline: box(1000, 1000, 5000, 4000) }], {
    layout: { aim: 'grout-lines' },
    ...rest,
  });

function groutOf(json: PlanJson) {
  const plan = planOf(json);
  const [placed] = partsOf(plan, floorPlanOf(plan).floor);
  if (!placed) throw new Error('the plan has no part');
  return placed.part.grout;
}

describe('the grout lines of a part', () => {
  it('begin where they cross it, counted from its own corner', () => {
    // Upright: 100 - 1.5 + 2 x 603 = 1304.5, 304.5 past the corner at 1000. Level: 50 - 1.5 + 4 x 303 = 1260.5.
    const grout = groutOf(hall({ tiles }));
    expect(groutAlong(grout, 0)).toEqual({ normal: [1, 0], firstMm: 304.5, spacingMm: 603 });
    expect(groutAlong(grout, 1)).toEqual({ normal: [0, 1], firstMm: 260.5, spacingMm: 303 });
  });

  it('run along the courses alone where those are shifted, and nowhere in a herringbone', () => {
    const half = groutOf(hall({ tiles: { ...tiles, bond: 'half' } }));
    expect([groutAlong(half, 0), groutAlong(half, 1)?.spacingMm]).toEqual([null, 303]);
    expect(groutOf(hall({ tiles: { ...tiles, bond: 'herringbone' } }))).toBeNull();
  });

  it('do not bear on a layout with another aim, without tiles, or on floor of two fields', () => {
    expect(groutOf(hall({ tiles, layout: { aim: 'least-joint' } }))).toBeNull();
    expect(groutOf(hall({}))).toBeNull();
    const rooms = [
      { id: 'r1', name: 'Hall', outline: box(0, 0, 5000, 4000) },
      { id: 'r2', name: 'Bay', outline: box(5000, 0, 2000, 4000) },
    ];
    expect(groutOf({ ...hall({ tiles, tileFields: [{ ...tiles, id: 't1', rooms: ['r2'] }] }), rooms })).toBeNull();
    expect(groutOf({ ...hall({ tiles }), rooms })).not.toBeNull();
  });

  it('turn with the frame, and a joint between them costs what the rule says', () => {
    const grout = groutOf(hall({ tiles }));
    if (grout === null) throw new Error('no grout');
    // Turned by a right angle what was level is upright.
    const turned = groutTurn(grout, frameOf(Math.PI / 2));
    expect(groutAlong(turned, 0)).toMatchObject({ firstMm: 260.5, spacingMm: 303 });
    const off = 1 + rules.offGroutPrice.value;
    // On the line, and as far off as half the grout of 3 mm and the slack of 1 mm; one tenth further it is off.
    expect([304.5, 302, 301.9, 600].map((at) => lineRate(grout, 0, at))).toEqual([1, 1, off, off]);
    const cut = (from: Point, to: Point) => cutRate(grout, { from, to });
    expect([cut([304.5, 0], [304.5, 4000]), cut([304.5, 0], [310, 4000])]).toEqual([1, off]);
    expect(groutAlong(groutTurn(grout, frameOf(0.3)), 0)).toBeNull();
  });
});

describe('a bay that corners of the floor reach into', () => {
  /** 6 x 4 m with what the given corners leave of its right side. */
  const region = (...right: Point[]) => ({ outline: [[0, 0], ...right, [0, 4000]] as Point[], holes: [] });
  const judged = (own: ReturnType<typeof region>, grossMm2: number) =>
    boxNotched(notchesOf(own, 150), { minX: 0, minY: 0, maxX: 6000, maxY: 4000 }, grossMm2);

  it('is as long and as wide as the whole where one reaches in by 100 mm', () => {
    const own = region([6000, 0], [6000, 2500], [5900, 2500], [5900, 4000]);
    expect(judged(own, 6000 * 4000 - 100 * 1500)).toBe('shallowly');
  });

  it('is none where one reaches in by 200 mm', () => {
    const own = region([6000, 0], [6000, 2500], [5800, 2500], [5800, 4000]);
    expect(judged(own, 6000 * 4000 - 200 * 1500)).toBe('deeply');
  });

  it('keeps its size beside what juts in from a side by 140 mm, and not by 160 mm', () => {
    const jutting = (by: number) =>
      region([6000, 0], [6000, 1000], [6000 - by, 1000], [6000 - by, 3000], [6000, 3000], [6000, 4000]);
    expect(judged(jutting(140), 6000 * 4000 - 140 * 2000)).toBe('shallowly');
    expect(judged(jutting(160), 6000 * 4000 - 160 * 2000)).toBe('deeply');
  });
});

describe('a joint from a corner with a grout line just before it', () => {
  it('steps aside by 96.5 mm into the line, which costs less than to cut tiles over 3.11 m', () => {
    // The line at 5 x 603 - 1.5 = 3013.5 lies 96.5 mm before the corner at 3110, the next one 506.5 mm beyond it.
    const outline: Point[] = [
      [0, 0],
      [6000, 0],
      [6000, 3110],
      [3110, 3110],
      [3110, 6000],
      [0, 6000],
    ];
    const plan = planJson('L', [{ id: 'r1', name: 'Room', outline }], {
      tiles: { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] },
      layout: { aim: 'grout-lines' },
    });
    const { bays, joints } = analysed(plan).analysis;
    expect(bays.map(({ within }) => within)).toEqual([true, true]);
    const inGrout = joints.filter(({ onGroutLine }) => onGroutLine).map(({ lengthM }) => lengthM);
    const aside = joints.filter(({ onGroutLine }) => !onGroutLine).map(({ lengthM }) => lengthM);
    expect(inGrout).toEqual([expect.closeTo(3.11, 3)]);
    expect(aside).toEqual([expect.closeTo(0.0965, 3)]);
  });
});
