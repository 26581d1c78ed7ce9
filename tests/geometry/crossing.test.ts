import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ringCrossing, runCrosses } from '../../src/geometry/crossing.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import { segmentsMeet } from '../../src/geometry/segment.ts';

const rectangle: Ring = [
  [0, 0],
  [4000, 0],
  [4000, 3000],
  [0, 3000],
];
const bowTie: Ring = [
  [0, 0],
  [4, 0],
  [0, 4],
  [4, 4],
];

describe('an outline', () => {
  it('that goes round once crosses nowhere, in either direction', () => {
    expect(ringCrossing(rectangle)).toBeNull();
    expect(ringCrossing([...rectangle].reverse())).toBeNull();
  });

  it('that crosses itself does so at the place where two walls cross', () => {
    expect(ringCrossing(bowTie)).toEqual([2, 2]);
  });

  it('that comes back to one of its walls or corners touches itself there', () => {
    const toWall: Ring = [...rectangle, [1000, 0]];
    expect(ringCrossing(toWall)).toEqual([1000, 0]);
    const twoSquares: Ring = [
      [0, 0],
      [2, 0],
      [2, 2],
      [4, 2],
      [4, 4],
      [2, 4],
      [2, 2],
      [0, 2],
    ];
    expect(ringCrossing(twoSquares)).toEqual([2, 2]);
  });

  it('that runs back along its own wall is told where it turns', () => {
    expect(
      ringCrossing([
        [0, 0],
        [6000, 0],
        [4000, 0],
        [4000, 3000],
        [0, 3000],
      ]),
    ).toEqual([6000, 0]);
  });

  it('with a corner given twice running, or one in the middle of a wall, does not cross', () => {
    expect(
      ringCrossing([
        [0, 0],
        [2000, 0],
        [4000, 0],
        [4000, 0],
        [4000, 3000],
        [0, 3000],
        [0, 0],
      ]),
    ).toBeNull();
  });

  it('crosses where any two walls that are not neighbours meet', () => {
    const place = fc.integer({ min: 0, max: 12 });
    const corners = fc.uniqueArray(fc.tuple(place, place), { minLength: 4, maxLength: 7, selector: String });
    fc.assert(
      fc.property(corners, (ring: Ring) => {
        const at = (i: number) => ring[i % ring.length] as Point;
        const meets = ring.some((a, i) =>
          ring.some((c, j) => {
            const apart = j > i + 1 && !(i === 0 && j === ring.length - 1);
            return apart && segmentsMeet(a, at(i + 1), c, at(j + 1));
          }),
        );
        if (meets) expect(ringCrossing(ring)).not.toBeNull();
      }),
      { numRuns: 500 },
    );
  });
});

describe('an outline that is being drawn', () => {
  const drawn: readonly Point[] = [
    [0, 0],
    [4, 0],
    [4, 4],
  ];

  it('may go on where nothing is in the way, and may close', () => {
    expect(runCrosses(drawn, [0, 4])).toBeNull();
    expect(runCrosses([...drawn, [0, 4]], [0, 0])).toBeNull();
    expect(runCrosses([], [0, 0])).toBeNull();
    expect(runCrosses([[0, 0]], [5, 5])).toBeNull();
    expect(runCrosses(drawn, [4, 4])).toBeNull();
  });

  it('crosses where its next wall would cut one that is drawn', () => {
    expect(runCrosses(drawn, [2, -1])).toEqual([2.4, 0]);
  });

  it('does not run back along the wall just drawn, nor close along the first', () => {
    expect(runCrosses(drawn, [4, 2])).toEqual([4, 4]);
    expect(
      runCrosses(
        [
          [0, 0],
          [4, 0],
          [4, 4],
          [8, 4],
          [8, 0],
        ],
        [0, 0],
      ),
    ).not.toBeNull();
    expect(runCrosses(drawn.slice(0, 2), [0, 0])).toEqual([4, 0]);
  });

  it('does not come to a wall, nor to a corner other than the first', () => {
    expect(runCrosses([...drawn, [2, 4]], [2, 0])).toEqual([2, 0]);
    expect(runCrosses([...drawn, [2, 6]], [4, 0])).not.toBeNull();
  });
});
