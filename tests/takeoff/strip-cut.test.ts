import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { type StripCutting, stripCut } from '../../src/takeoff/strip-cut.ts';
import { type StripRun, stripRuns } from '../../src/takeoff/strip-runs.ts';
import { rectangle } from '../movement/grid-split.ts';

/** All expected figures are worked out by hand beside them. Overlap 100 mm unless said. */

const overlapMm = 100;

function cut(runs: readonly StripRun[], rollMm: number, lapMm = overlapMm): StripCutting {
  const cutting = stripCut(runs, { rollMm, overlapMm: lapMm });
  if (cutting === null) throw new Error('not cut');
  return cutting;
}

function wall(lengthMm: number, ...cornersMm: number[]): StripRun {
  return { lengthMm, cornersMm, closes: false };
}

const ends = ({ pieces }: StripCutting) => pieces.map(({ fromMm, toMm }) => [fromMm, toMm]);

describe('edge strip cut from rolls', () => {
  it('covers a wall of 30 m with rolls of 25 m by one roll and 5.1 m of a second', () => {
    const cutting = cut([wall(30_000)], 25_000);
    // the second piece begins 100 mm before the first ends
    expect(ends(cutting)).toEqual([
      [0, 25_000],
      [24_900, 30_000],
    ]);
    expect(cutting.rolls).toBe(2);
  });

  it('uses off-cuts on: walls of 14, 9 and 2 m come from one roll of 25 m', () => {
    expect(cut([wall(2000), wall(14_000), wall(9000)], 25_000).rolls).toBe(1);
  });

  it('is cut back before a corner: the piece that would end 50 mm before it ends 100 mm before it', () => {
    expect(ends(cut([wall(8000, 5000)], 4950))).toEqual([
      [0, 4900],
      [4800, 8000],
    ]);
  });

  it('is cut back where the next piece would begin 50 mm behind a corner', () => {
    // 5150 - 100 = 5050
    expect(ends(cut([wall(8000, 5000)], 5150))[0]).toEqual([0, 4900]);
  });

  it('goes round a corner where both ends are 100 mm clear of it', () => {
    expect(ends(cut([wall(8000, 5000)], 5200))).toEqual([
      [0, 5200],
      [5100, 8000],
    ]);
  });

  it('closes round a room with an overlap: 32 m of walls take 32.1 m, and 0.1 m more at each of three splices', () => {
    // 10 x 6 m; it begins in the middle of a side of 10 m less half the overlap: corners at 5050, 11050, 21050, 27050
    const room: StripRun = { lengthMm: 32_000, cornersMm: [5050, 11_050, 21_050, 27_050], closes: true };
    expect(ends(cut([room], 10_000))).toEqual([
      [0, 10_000],
      [9900, 19_900],
      [19_800, 29_800],
      [29_700, 32_100],
    ]);
  });

  it('says where sides are too short to keep overlaps clear of corners: a column of 200 mm', () => {
    // the middle of a side of 200 mm is 100 mm from its corners: the ends, 50 mm to either side of it, are 50 mm clear
    const column = (sideMm: number): StripRun => {
      const first = (sideMm + overlapMm) / 2;
      return { lengthMm: 4 * sideMm, cornersMm: [0, 1, 2, 3].map((n) => first + n * sideMm), closes: true };
    };
    expect(cut([column(200)], 25_000).nearCorners).toBe(1);
    // 300 mm: 150 - 50 = 100 mm
    expect(cut([column(300)], 25_000).nearCorners).toBe(0);
  });

  it('is not laid with an overlap of half a roll or more, nor from rolls of a hair', () => {
    expect(stripCut([wall(5000)], { rollMm: 200, overlapMm })).toBeNull();
    expect(stripCut([wall(5000)], { rollMm: 1e-300, overlapMm: 0 })).toBeNull();
  });
});

describe('runs of edge strip', () => {
  const line = (...points: Point[]) => ({ line: points });

  const edges = [line([0, 0], [4000, 0]), line([4000, 0], [9000, 0], [9000, 3000])];

  it('go on from bay to bay along a wall', () => {
    expect(stripRuns(edges, [], overlapMm)).toEqual([{ lengthMm: 12_000, cornersMm: [9000], closes: false }]);
  });

  it('end at a joint of the building, where the strip is cut with the screed', () => {
    const runs = stripRuns(edges, [line([4000, 3000], [4000, 0])], overlapMm);
    expect(runs.map(({ lengthMm }) => lengthMm)).toEqual([4000, 8000]);
  });

  it('close round a column that stands on a joint, from the middle of its longest side', () => {
    const [a, b, c, d] = rectangle(0, 0, 600, 300) as [Point, Point, Point, Point];
    const left: Point = [300, 0];
    const right: Point = [300, 300];
    const run = stripRuns([line(left, a, d, right), line(right, c, b, left)], [], overlapMm);
    // 2 x (600 + 300); from 50 mm before the middle of a long side the first corner is 350 mm off, the next 300 and then 600 mm
    expect(run).toEqual([{ lengthMm: 1800, cornersMm: [350, 650, 1250, 1550], closes: true }]);
  });

  it('have no corner in a curve of small turns', () => {
    const curve = Array.from({ length: 13 }, (_, i): Point => {
      const turn = (i * Math.PI) / 24;
      return [3000 * Math.cos(turn), 3000 * Math.sin(turn)];
    });
    expect(stripRuns([{ line: curve }], [], overlapMm)[0]?.cornersMm).toEqual([]);
  });
});

describe('strip cut for any walls', () => {
  /** Walls with sides long enough to keep overlaps clear of corners, 300 mm, and some that are shorter. */
  const runsOf = (leastMm: number) =>
    fc.array(
      fc
        .record({
          sides: fc.array(fc.integer({ min: leastMm, max: 15_000 }), { minLength: 1, maxLength: 8 }),
          closes: fc.boolean(),
        })
        .map(({ sides, closes }): StripRun => {
          const at = sides.map((_, i) => sides.slice(0, i + 1).reduce((sum, side) => sum + side, 0));
          const [lengthMm, first] = [at.at(-1) ?? 0, ((sides.at(-1) ?? 0) + overlapMm) / 2];
          // a run that closes begins half an overlap before the middle of its last side
          return closes && sides.length > 1
            ? { lengthMm, cornersMm: [0, ...at.slice(0, -1)].map((corner) => corner + first), closes }
            : { lengthMm, cornersMm: at.slice(0, -1), closes: false };
        }),
      { minLength: 1, maxLength: 12 },
    );
  const rolls = fc.integer({ min: 1000, max: 50_000 });
  const needMm = ({ lengthMm, closes }: StripRun) => lengthMm + (closes ? overlapMm : 0);

  it('covers every wall from end to end, pieces over each other by the overlap', () => {
    fc.assert(
      fc.property(runsOf(10), rolls, (runs, rollMm) => {
        const { pieces } = cut(runs, rollMm);
        for (const [run, wanted] of runs.entries()) {
          const own = pieces.filter((piece) => piece.run === run);
          expect(own[0]?.fromMm).toBe(0);
          expect(own.at(-1)?.toMm).toBe(needMm(wanted));
          for (const [i, { fromMm }] of own.slice(1).entries()) {
            expect((own[i]?.toMm ?? 0) - fromMm).toBeCloseTo(overlapMm, 6);
          }
        }
      }),
    );
  });

  it('never cuts more from a roll than is on it, and opens no roll in vain', () => {
    fc.assert(
      fc.property(runsOf(10), rolls, (runs, rollMm) => {
        const cutting = cut(runs, rollMm);
        const used = new Map<number, number>();
        for (const { roll, fromMm, toMm } of cutting.pieces) used.set(roll, (used.get(roll) ?? 0) + toMm - fromMm);
        expect(used.size).toBe(cutting.rolls);
        // a piece may want for 1 mm
        for (const mm of used.values()) expect(mm).toBeLessThanOrEqual(rollMm + cutting.pieces.length);
        const laidMm = cutting.pieces.reduce((sum, { fromMm, toMm }) => sum + toMm - fromMm, 0);
        expect(cutting.rolls * rollMm).toBeGreaterThanOrEqual(laidMm - cutting.pieces.length);
      }),
    );
  });

  it('never ends a piece nearer to a corner than the overlap where the sides leave room for that', () => {
    fc.assert(
      fc.property(runsOf(310), rolls, (runs, rollMm) => {
        const cutting = cut(runs, rollMm);
        expect(cutting.nearCorners).toBe(0);
        for (const { run, toMm } of cutting.pieces) {
          const { lengthMm, cornersMm, closes } = runs[run] as StripRun;
          if (!closes && toMm === lengthMm) continue;
          const around = closes ? [-lengthMm, 0, lengthMm].flatMap((by) => cornersMm.map((at) => at + by)) : cornersMm;
          for (const at of around) {
            // this piece ends at one side of the overlap, the next begins at the other
            expect(Math.abs(at - toMm)).toBeGreaterThanOrEqual(overlapMm - 1.001);
            expect(Math.abs(at - (toMm - overlapMm))).toBeGreaterThanOrEqual(overlapMm - 1.001);
            expect(at > toMm - overlapMm && at < toMm).toBe(false);
          }
        }
      }),
    );
  });

  it('takes no more rolls where they are longer', () => {
    fc.assert(
      fc.property(runsOf(310), rolls, fc.integer({ min: 0, max: 20_000 }), (runs, rollMm, moreMm) => {
        expect(cut(runs, rollMm + moreMm).rolls).toBeLessThanOrEqual(cut(runs, rollMm).rolls);
      }),
    );
  });
});
