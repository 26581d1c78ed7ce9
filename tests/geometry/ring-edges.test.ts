import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import { lineEdgesMoved, ringEdgesMoved, ringOutward } from '../../src/geometry/ring-edges.ts';

const square: Ring = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
];

describe('a wall of an outline moved parallel to itself', () => {
  it('goes outwards by a positive length, whichever way the corners run', () => {
    const wider = ringEdgesMoved(square, new Map([[0, 1]]));
    expect(wider).toEqual([
      [0, -1],
      [4, -1],
      [4, 4],
      [0, 4],
    ]);
    // Turned round, the top wall is the third edge.
    const turned = ringEdgesMoved([...square].reverse(), new Map([[2, 1]]));
    expect([...turned].reverse()).toEqual(wider);
    expect(ringOutward(square)[1]).toEqual([1, -0]);
  });

  it('leaves the direction of a skew neighbour as it was', () => {
    // The right wall leans by 1 in 2: one up is half to the left.
    const skew: Ring = [
      [0, 0],
      [4, 0],
      [6, 4],
      [0, 4],
    ];
    const [, corner] = ringEdgesMoved(skew, new Map([[0, 1]]));
    expect(corner?.[0]).toBeCloseTo(3.5, 9);
    expect(corner?.[1]).toBeCloseTo(-1, 9);
  });

  it('makes a niche where its neighbours run on in its own line', () => {
    const wall: Ring = [
      [0, 0],
      [1, 0],
      [3, 0],
      [4, 0],
      [4, 4],
      [0, 4],
    ];
    expect(ringEdgesMoved(wall, new Map([[1, 2]]))).toEqual([
      [0, 0],
      [1, 0],
      [1, -2],
      [3, -2],
      [3, 0],
      [4, 0],
      [4, 4],
      [0, 4],
    ]);
  });

  it('moves together with another wall of the same outline', () => {
    const grown = ringEdgesMoved(
      square,
      new Map([
        [0, 1],
        [1, 2],
      ]),
    );
    expect(grown).toEqual([
      [0, -1],
      [6, -1],
      [6, 4],
      [0, 4],
    ]);
  });
});

describe('a stretch of a line moved parallel to itself', () => {
  it('goes to the left of the way along the line, its neighbours growing or shrinking with it', () => {
    const line: readonly Point[] = [
      [0, 0],
      [4, 0],
      [4, 4],
    ];
    expect(lineEdgesMoved(line, new Map([[0, 1]]))).toEqual([
      [0, -1],
      [4, -1],
      [4, 4],
    ]);
    expect(lineEdgesMoved(line, new Map([[1, 1]]))).toEqual([
      [0, 0],
      [5, 0],
      [5, 4],
    ]);
  });
});
