import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Chain, chainsNode, type Noded } from '../../src/geometry/noding.ts';
import type { Point } from '../../src/geometry/point.ts';
import { segmentDistance } from '../../src/geometry/segment.ts';
import { WELD_GRID } from '../../src/geometry/tolerance.ts';
import { turfMeetings } from './turf.ts';

const line = (...points: Point[]): Chain => ({ points, closed: false });
const ring = (...points: Point[]): Chain => ({ points, closed: true });
const placesOf = ({ x, y }: Noded): Point[] => x.map((_, i) => [x[i] ?? 0, y[i] ?? 0]);
const at = (places: readonly Point[], i: number): Point => places[i] ?? [Number.NaN, Number.NaN];
const walkOf = (noded: Noded, chain: number): Point[] => {
  const places = placesOf(noded);
  return (noded.walks[chain] ?? []).map((p) => at(places, p));
};

function segmentsOf(noded: Noded): [number, number][] {
  const seen = new Map<string, [number, number]>();
  for (const walk of noded.walks) {
    walk.slice(1).forEach((b, i) => {
      const a = walk[i] ?? b;
      seen.set([a, b].sort((p, q) => p - q).join(), [a, b]);
    });
  }
  return [...seen.values()];
}

/** A point stands off a segment by the weld, but in triangles with sides of little more than a weld, where it is the height. */
const leastOff = (WELD_GRID * Math.sqrt(3)) / 2 - 1e-6;

/** A chain that is one point bounds nothing: the segments that pass it stay as they are. */
function standOff(noded: Noded) {
  const places = placesOf(noded);
  const segments = segmentsOf(noded);
  const ends = [...new Set(segments.flat())];
  for (const [a, b] of segments) {
    for (const r of ends) {
      if (r === a || r === b) continue;
      expect(segmentDistance(at(places, a), at(places, b), at(places, r))).toBeGreaterThan(leastOff);
    }
  }
}

const chainsWithin = (most: number) =>
  fc.array(
    fc.record({
      points: fc.array(fc.tuple(fc.integer({ min: 0, max: most }), fc.integer({ min: 0, max: most })), {
        minLength: 2,
        maxLength: 5,
      }),
      closed: fc.boolean(),
    }),
    { minLength: 1, maxLength: 5 },
  );

/** In grid steps: a room with sides on a lattice that fall together, lines in 30 mm that touch and nearly touch all the time, and
 *  lines in 6 mm, where hardly any point stands off another by more than two welds. */
const chains = fc.oneof(
  chainsWithin(20).map((list) =>
    list.map((chain) => ({ ...chain, points: chain.points.map(([x, y]): Point => [x * 500, y * 500]) })),
  ),
  chainsWithin(300),
  chainsWithin(60),
);

const ways: readonly (readonly [string, (p: Point) => Point])[] = [
  ['as drawn', (p) => p],
  ['turned', ([x, y]) => [-y, x]],
  ['turned by an odd angle', ([x, y]) => [Math.round(x * 0.8 - y * 0.6), Math.round(x * 0.6 + y * 0.8)]],
  ['mirrored', ([x, y]) => [-x, y]],
  ['moved far away', ([x, y]) => [x + 87_654_321, y - 99_000_001]],
];

describe.each(ways)('lines made to meet, %s', (_, move) => {
  const each = (check: (noded: Noded, given: readonly Chain[]) => void) =>
    fc.assert(
      fc.property(chains, (list) => {
        const given = list.map((chain) => ({ ...chain, points: chain.points.map(move) }));
        check(chainsNode(given), given);
      }),
      { numRuns: 25 },
    );

  it('leave no two points closer than the weld', () => {
    each((noded) => {
      const places = placesOf(noded);
      places.forEach((p, i) => {
        for (const q of places.slice(i + 1))
          expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeGreaterThanOrEqual(WELD_GRID);
      });
    });
  });

  it('meet at shared ends and nowhere else, says an outside library', () => {
    each((noded) => {
      const places = placesOf(noded);
      const segments = segmentsOf(noded);
      segments.forEach(([a, b], i) => {
        for (const [c, d] of segments.slice(i + 1)) {
          if ([a, b].some((p) => p === c || p === d)) continue;
          expect(turfMeetings([at(places, a), at(places, b)], [at(places, c), at(places, d)])).toEqual([]);
        }
      });
    });
  });

  it('have no end of one on the way of another', () => {
    each(standOff);
  });

  it('come by every point that was drawn, within the weld', () => {
    each((noded, given) => {
      given.forEach(({ points }, chain) => {
        const walk = walkOf(noded, chain);
        for (const p of points)
          expect(Math.min(...walk.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1])))).toBeLessThan(WELD_GRID);
      });
    });
  });

  it('come out the same each time, and stay as they are when made to meet again', () => {
    each((noded, given) => {
      expect(chainsNode(given)).toEqual(noded);
      const again = chainsNode(given.map((chain, i) => ({ points: walkOf(noded, i), closed: chain.closed })));
      expect(again.walks.map((_, i) => walkOf(again, i))).toEqual(noded.walks.map((_, i) => walkOf(noded, i)));
    });
  });
});

describe('two lines', () => {
  it('that cross share the crossing', () => {
    const noded = chainsNode([line([0, 0], [1000, 1000]), line([0, 1000], [1000, 0])]);
    expect(walkOf(noded, 0)).toEqual([
      [0, 0],
      [500, 500],
      [1000, 1000],
    ]);
    expect(walkOf(noded, 1)).toContainEqual([500, 500]);
  });

  it('of which one ends on the other share that end', () => {
    const noded = chainsNode([line([0, 0], [1000, 0]), line([400, 700], [400, 0])]);
    expect(walkOf(noded, 0)).toEqual([
      [0, 0],
      [400, 0],
      [1000, 0],
    ]);
  });

  it('of which one ends 0.9 mm short of the other are made to meet, at 1 mm they are not', () => {
    expect(walkOf(chainsNode([line([0, 0], [1000, 0]), line([400, 700], [400, 9])]), 0)).toHaveLength(3);
    expect(walkOf(chainsNode([line([0, 0], [1000, 0]), line([400, 700], [400, 10])]), 0)).toHaveLength(2);
  });

  it('that lie on one another share the stretch', () => {
    const noded = chainsNode([line([0, 0], [600, 0]), line([200, 0], [1000, 0])]);
    expect(segmentsOf(noded)).toHaveLength(3);
  });
});

describe('points that stand little more than a weld apart', () => {
  it('do not part the ways between them for ever', () => {
    const crowd = [
      line([202, 117], [74, 228], [0, 0]),
      line([121, 144], [248, 203], [0, 40], [34, 148], [297, 166]),
      line([158, 115], [195, 258]),
    ];
    const noded = chainsNode(crowd);
    standOff(noded);
    // from end to end no way comes by a point twice
    for (const chain of [0, 2]) expect(new Set(noded.walks[chain]).size).toBe(noded.walks[chain]?.length);
  });

  it('part a segment one after the other where they lie on either side of it', () => {
    // The upper two are 16 apart, further than the segment is long: it runs by one of them, and so keeps clear of the other.
    const noded = chainsNode([line([0, 0], [12, 0]), line([6, 8], [6, 90]), line([6, -8], [6, -90])]);
    standOff(noded);
    expect(walkOf(noded, 0)).toEqual([
      [0, 0],
      [6, 8],
      [12, 0],
    ]);
  });
});

describe('what is hardly a line', () => {
  it('leaves a line that passes it as it is', () => {
    const noded = chainsNode([line([40, 204], [18, 210], [0, 0], [0, 0]), line([36, 214], [27, 215])]);
    expect(walkOf(noded, 0)).toEqual([
      [40, 204],
      [18, 210],
      [0, 0],
    ]);
    expect(walkOf(noded, 1)).toEqual([[36, 214]]);
  });

  it('is no walk where it has no points, and one point where all weld', () => {
    expect(chainsNode([])).toEqual({ x: [], y: [], walks: [] });
    expect(chainsNode([line()]).walks).toEqual([[]]);
    expect(chainsNode([ring([0, 0], [3, 3], [5, 0])])).toMatchObject({ x: [0], y: [0], walks: [[0]] });
  });

  it('keeps the place of the first comer', () => {
    const noded = chainsNode([line([100, 100], [900, 100]), line([107, 103], [500, 800])]);
    expect(walkOf(noded, 1)[0]).toEqual([100, 100]);
  });
});
