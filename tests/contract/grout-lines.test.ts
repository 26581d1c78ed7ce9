import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import { mirrored, planPlaced, turned } from '../floors/placed.ts';
import { type PlanJson, planJson, type TilesJson } from '../floors/plan-json.ts';
import { rectilinearFloor } from '../floors/rectilinear.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { analysed, freeJointM } from './analysed.ts';

const tiles: TilesJson = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] };

function floor(outline: readonly Point[], own: TilesJson | null = tiles, aim = 'grout-lines'): PlanJson {
  const plan = planJson('Floor', [{ id: 'r1', name: 'Room', outline }]);
  return { ...plan, ...(own ? { tiles: own } : {}), layout: { aim: aim as 'grout-lines' } };
}

const box = (width: number, height: number): readonly Point[] => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

/** x of upright joints and y of level ones. */
function places({ joints }: Analysis): number[] {
  return joints
    .map(({ line: [a, b] }) => (a && b && Math.abs(a[0] - b[0]) < 1 ? a[0] : (a?.[1] ?? 0)))
    .sort((p, q) => p - q);
}

const isWithin = ({ bays }: Analysis) => bays.every(({ within }) => within);
const isInGrout = ({ joints }: Analysis) => joints.every(({ onGroutLine }) => onGroutLine === true);

describe('the aim grout-lines', () => {
  it('moves the joint of 15 m from 7.5 m to a grout line, at 603 k - 1.5, with both bays within 8 m', () => {
    // 12 x 603 - 1.5 = 7234.5 leaves 7765.5, 13 x 603 - 1.5 = 7837.5 leaves 7162.5: both keep 8 m and 5 m x 8 m.
    const { analysis } = analysed(floor(box(15_000, 5000)));
    expect([7234.5, 7837.5]).toContain(places(analysis)[0]);
    expect(analysis.joints).toHaveLength(1);
    expect(isWithin(analysis) && isInGrout(analysis)).toBe(true);
  });

  it('spends a second joint of 5 m where one in grout would leave a bay over 8 m', () => {
    // Of 16 m only 8000 itself keeps both bays, and the grout lines beside it lie at 7837.5 and 8440.5. Off the grout: 5 + 2 x 5 = 15 m; two in grout: 10 m.
    const { analysis } = analysed(floor(box(16_000, 5000)));
    expect(freeJointM(analysis)).toBeCloseTo(10, 6);
    expect(isWithin(analysis) && isInGrout(analysis)).toBe(true);
    expect(freeJointM(analysed(floor(box(16_000, 5000), tiles, 'least-joint')).analysis)).toBeCloseTo(5, 6);
  });

  it('leaves a corner that turns in by no more than an allowed pocket', () => {
    // The corner at 2950 lies 63.5 mm before the grout line at 5 x 603 - 1.5 = 3013.5; a pocket of 150 mm is none.
    const outline: readonly Point[] = [
      [0, 0],
      [6000, 0],
      [6000, 4000],
      [2950, 4000],
      [2950, 7000],
      [0, 7000],
    ];
    const { analysis } = analysed(floor(outline));
    expect(isWithin(analysis) && isInGrout(analysis)).toBe(true);
  });

  it('stays at a corner that is further from every grout line, and says why', () => {
    // From x = 3313 and y = 3313 the nearest grout lines lie 301 mm and 299.5 mm away.
    const outline: readonly Point[] = [
      [0, 0],
      [6000, 0],
      [6000, 3315],
      [3315, 3315],
      [3315, 6000],
      [0, 6000],
    ];
    const { analysis } = analysed(floor(outline));
    expect(isWithin(analysis)).toBe(true);
    expect(analysis.joints.map(({ onGroutLine, whyOff }) => [onGroutLine, whyOff])).toEqual([[false, 'corner']]);
  });

  it('brings the joint across a neck into the grout line in the passage, where there is one', () => {
    // Two rooms of 4 x 4 m with an opening of 1.2 m in the wall of 150 mm between them, from 4,000 to 4,150. Grout lines at first + 603 k - 1.5:
    // from 400 on 4,016.5 lies 16.5 mm inside the opening; from 600 on 3,613.5 and 4,216.5 lie in the rooms,
    // and the joint stays at the mouth that is nearer to one of them.
    const outline: readonly Point[] = [
      [0, 0],
      [4000, 0],
      [4000, 1400],
      [4150, 1400],
      [4150, 0],
      [8150, 0],
      [8150, 4000],
      [4150, 4000],
      [4150, 2600],
      [4000, 2600],
      [4000, 4000],
      [0, 4000],
    ];
    const necks = [400, 600].map((first) => {
      const { plan, analysis } = analysed(floor(outline, { ...tiles, origin: [first, 0] }));
      expect(analysisFaults(plan, analysis)).toEqual([]);
      return analysis.joints.map(({ kind, line, whyOff }) => [kind, line[0]?.[0], whyOff]);
    });
    expect(necks[0]).toEqual([['neck', 4016.5, null]]);
    expect(necks[1]).toEqual([['neck', 4150, 'neck']]);
  });

  it('takes the end of a passage whose joint goes into grout, whichever way the floor lies', () => {
    // A hall of 12 x 4 m and a wing of 4 x 3 m at both ends of a passage of 2 x 1.5 m, with mouths at y = 4,000 and 6,000. Grout lines at
    // first + 603 k - 1.5: from 564.5 on 5,990 lies 10 mm from the second mouth, and 4,181 further from the first than a pocket of 150 mm; from 403.5 on 4,020 lies 20 mm
    // from the first, and 5,829 too far from the second.
    const outline: readonly Point[] = [
      [0, 0],
      [12_000, 0],
      [12_000, 4000],
      [3500, 4000],
      [3500, 6000],
      [5000, 6000],
      [5000, 9000],
      [1000, 9000],
      [1000, 6000],
      [2000, 6000],
      [2000, 4000],
      [0, 4000],
    ];
    for (const first of [564.5, 403.5]) {
      const plan = floor(outline, { ...tiles, origin: [0, first] });
      for (const place of [turned(0), turned(90), mirrored]) {
        const necks = analysed(planPlaced(plan, place)).analysis.joints.filter(({ kind }) => kind === 'neck');
        expect(necks.map(({ onGroutLine }) => onGroutLine)).toEqual([true]);
      }
    }
  });

  it('parts a hall in bays of whole tiles, none of them a strip', () => {
    // 14 bays in a row, at most 12 x 603 = 7,236 mm wide, may be 40 / 7.236 = 5.528 m high, 9 tiles or 5,427 mm, so that they stand in 19 rows: 13 + 18
    // joints of 100 m are 3,100 m. No layout has less than half of its bays' outline less that of the hall, at best in squares of 40 m2.
    const { analysis } = analysed(floor(box(100_000, 100_000)));
    const squaresM = (100 * 100) / Math.sqrt(40);
    expect(isWithin(analysis) && isInGrout(analysis)).toBe(true);
    expect(freeJointM(analysis)).toBeGreaterThan((4 * squaresM - 400) / 2);
    expect(freeJointM(analysis)).toBeLessThanOrEqual(3100);
    expect(Math.min(...analysis.bays.map(({ widthM }) => widthM))).toBeGreaterThan(3);
  });

  it('parts a hall of columns in whole tiles where no tile line follows their rows both ways', () => {
    // Columns of 600 mm every 8 by 5 m: 19 tiles of 405 mm are 7,695 mm, and 20 are over 8 m, so that no joint in grout meets one row after the other
    // that way. Joints at the rows 5 m apart, 12 or 13 tiles, and across them by 7.597 m at most, the width at which 5,265 mm make 40 m2, 18 tiles:
    // 12 joints of 40 m and 5 of 65 m.
    const columns = [1, 2, 3, 4].flatMap((i) =>
      Array.from({ length: 12 }, (_, k) => ({
        id: `c${i}-${k}`,
        outline: box(600, 600).map(([x, y]): Point => [x + 8000 * i - 300, y + 5000 * (k + 1) - 300]),
      })),
    );
    const own = { lengthMm: 400, widthMm: 400, groutMm: 5, origin: [0, 0] as const };
    const { plan, analysis } = analysed({ ...floor(box(40_000, 65_000), own), columns });
    expect(isWithin(analysis) && isInGrout(analysis)).toBe(true);
    expect(freeJointM(analysis)).toBeLessThanOrEqual(12 * 40 + 5 * 65);
    expect(Math.min(...analysis.bays.map(({ widthM }) => widthM))).toBeGreaterThan(0.6);
    expect(analysisFaults(plan, analysis)).toEqual([]);
  });

  it('lays the joints of round rooms, and of rooms a little askew to the tiles, in grout', () => {
    // A round room of 10 m: a cross in the grout at 8 x 603 - 1.5 = 4,822.5 both ways, 177.5 mm off its middle, is 4 x sqrt(5000^2 - 177.5^2) = 19.99 m.
    const round = Array.from({ length: 48 }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / 48;
      return [5000 + 5000 * Math.cos(angle), 5000 + 5000 * Math.sin(angle)];
    });
    // Walls 3 degrees off the grid, about 12 x 7 m: joints across at 7 x 603 - 1.5 = 4,219.5 and 13 x 603 - 1.5 = 7,837.5, 7 m each, leave bays of at most
    // 4.2 x 7 m.
    const askew: readonly Point[] = [
      [0, 0],
      [12_000, 600],
      [11_500, 7600],
      [300, 7000],
    ];
    for (const { outline, mostM } of [
      { outline: round, mostM: 20 },
      { outline: askew, mostM: 14.1 },
    ]) {
      const { plan, analysis } = analysed(floor(outline));
      expect(isWithin(analysis) && isInGrout(analysis)).toBe(true);
      expect(freeJointM(analysis)).toBeLessThanOrEqual(mostM);
      expect(analysisFaults(plan, analysis)).toEqual([]);
    }
  });

  it('follows the courses of a half bond, and says of a joint across them that no grout runs there', () => {
    const half = { ...tiles, bond: 'half' };
    const along = analysed(floor(box(5000, 15_000), half)).analysis;
    expect(along.joints).toHaveLength(1);
    expect(isWithin(along) && isInGrout(along)).toBe(true);
    const across = analysed(floor(box(15_000, 5000), half)).analysis;
    expect(across.joints.map(({ bondLets, whyOff }) => [bondLets, whyOff])).toEqual([[false, 'bond']]);
    expect(freeJointM(across)).toBeCloseTo(5, 6);
  });

  it('lays a floor with a herringbone, or without tiles, as for least joint', () => {
    const outline = box(17_000, 9000);
    const least = analysed(floor(outline, null, 'least-joint')).analysis;
    for (const own of [null, { ...tiles, widthMm: 150, bond: 'herringbone' }]) {
      expect(places(analysed(floor(outline, own)).analysis)).toEqual(places(least));
    }
  });

  it('changes no bay or joint of a floor that goes for another aim', () => {
    const outline = box(17_000, 9000);
    for (const aim of ['least-joint', 'even-bays']) {
      const [with_, without] = [analysed(floor(outline, tiles, aim)), analysed(floor(outline, null, aim))];
      expect(with_.analysis.bays).toEqual(without.analysis.bays);
      expect(places(with_.analysis)).toEqual(places(without.analysis));
    }
  });

  it('lays a floor the same way when it is turned with its tiles', () => {
    const plan = floor(box(15_000, 9000));
    const before = analysed(plan).analysis;
    for (const degrees of [90, 17, 211]) {
      const after = analysed(planPlaced(plan, turned(degrees))).analysis;
      expect(freeJointM(after)).toBeCloseTo(freeJointM(before), 2);
      expect(isInGrout(after)).toBe(isInGrout(before));
    }
  });

  it('breaks no limit that the floor keeps for least joint, and never puts less of a floor in grout', () => {
    let [on, all] = [0, 0];
    for (let seed = 1; seed <= 12; seed++) {
      const wish = {
        seed: 9000 + seed,
        leastMm: 6000,
        mostMm: 14_000,
        corners: 4 + 2 * (seed % 5),
        core: false,
        stepMm: 100,
      };
      const base = planJson('Floor', [{ id: 'r1', name: 'Room', ...rectilinearFloor(wish) }]);
      const plan = { ...base, tiles: { ...tiles, origin: [37 * seed, 53 * seed] as const } };
      const least = analysed({ ...plan, layout: { ...plan.layout, aim: 'least-joint' } }).analysis;
      const { plan: resolved, analysis } = analysed({ ...plan, layout: { ...plan.layout, aim: 'grout-lines' } });
      expect(analysisFaults(resolved, analysis)).toEqual([]);
      const over = (each: Analysis) => each.bays.filter(({ within }) => !within).length;
      expect(over(analysis)).toBeLessThanOrEqual(over(least));
      const inGrout = ({ joints }: Analysis) =>
        joints
          .filter(({ kind, onGroutLine }) => kind === 'field' && onGroutLine)
          .reduce((sum, j) => sum + j.lengthM, 0);
      const cost = (each: Analysis) => 3 * freeJointM(each) - 2 * inGrout(each);
      expect(cost(analysis)).toBeLessThanOrEqual(cost(least) + 0.01);
      on += inGrout(analysis);
      all += freeJointM(analysis);
    }
    expect(on / all).toBeGreaterThan(0.5);
  });
});
