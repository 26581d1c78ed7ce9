import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ClipError, regionsIntersect, regionsSubtract, regionsUnion } from '../../src/geometry/clip.ts';
import type { Region } from '../../src/geometry/ring.ts';
import { ringSignedArea } from '../../src/geometry/ring.ts';
// biome-ignore lint/correctness/useImportExtensions: the rule takes the declarations beside the file for the file itself
import { jtsArea } from './jts.mjs';
import { areaOf, moved, onGrid, rectangle, region, shapes, turn, ways } from './shapes.ts';

describe.each(ways)('two pieces of floor, %s', (_, move) => {
  it('share, lose and join the same area as an outside library finds', () => {
    fc.assert(
      fc.property(shapes, shapes, (one, two) => {
        const a = [moved(one, move)];
        const b = [moved(two, move)];
        expect(areaOf(regionsIntersect(a, b))).toBeCloseTo(jtsArea('intersect', a, b), 0);
        expect(areaOf(regionsSubtract(a, b))).toBeCloseTo(jtsArea('subtract', a, b), 0);
        expect(areaOf(regionsUnion(a, b))).toBeCloseTo(jtsArea('union', a, b), 0);
      }),
      { numRuns: 40 },
    );
  });

  it('lose no floor: what is shared and what is left add up to the whole', () => {
    fc.assert(
      fc.property(shapes, fc.array(shapes, { minLength: 1, maxLength: 4 }), (one, others) => {
        const a = [moved(one, move)];
        const b = others.map((other) => moved(other, move));
        const whole = areaOf(regionsUnion(a, b));
        const rest = areaOf(regionsSubtract(b, a));
        expect(areaOf(regionsIntersect(a, b)) + areaOf(regionsSubtract(a, b))).toBeCloseTo(areaOf(a), 0);
        expect(areaOf(a) + rest).toBeCloseTo(whole, 0);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a strip cut from a 6 x 4 m room with an overshooting cutter', () => {
  it('leaves the room in two or three parts that add up, at every angle', () => {
    const room = [region(rectangle(0, 0, 6000, 4000))];
    for (let step = 0; step < 360; step++) {
      const cutter = [moved(region(rectangle(-9000, -50, 18000, 100)), turn(step / 2))];
      const centred = [moved(cutter[0] as Region, ([x, y]) => onGrid(x + 3000, y + 2000))];
      const strip = regionsIntersect(room, centred);
      const parts = regionsSubtract(room, centred);
      expect(strip).toHaveLength(1);
      expect(parts).toHaveLength(2);
      expect(areaOf(strip) + areaOf(parts)).toBeCloseTo(24e6, 0);
    }
  });
});

describe('two rooms', () => {
  const left = region(rectangle(0, 0, 4000, 3000));

  it('that share a whole side become one floor with four corners', () => {
    const floor = regionsUnion([left], [region(rectangle(4000, 0, 2000, 3000))]);
    expect(floor).toHaveLength(1);
    expect(floor[0]?.outline).toHaveLength(4);
    expect(areaOf(floor)).toBe(18e6);
  });

  it('that only touch share nothing', () => {
    expect(regionsIntersect([left], [region(rectangle(4000, 0, 2000, 3000))])).toEqual([]);
    expect(regionsIntersect([left], [region(rectangle(4000, 3000, 2000, 3000))])).toEqual([]);
  });

  it('that lie 0.1 mm apart stay two', () => {
    expect(regionsUnion([left], [region(rectangle(4000.1, 0, 2000, 3000))])).toHaveLength(2);
  });

  it('that lie one over the other are counted once', () => {
    expect(areaOf(regionsUnion([left, left], [left]))).toBe(12e6);
    expect(areaOf(regionsSubtract([left, left], [region(rectangle(0, 0, 1000, 3000))]))).toBe(9e6);
  });
});

describe('the corners of a result', () => {
  const room = region(rectangle(1000, 1000, 4000, 3000));

  it('are not repeated at the end of a ring', () => {
    const [rest] = regionsSubtract([room], [region(rectangle(2000, 2000, 500, 500))]);
    expect(rest?.outline).toHaveLength(4);
    expect(rest?.holes).toHaveLength(1);
    expect(rest?.holes[0]).toHaveLength(4);
  });

  it('run clockwise on the sheet round the floor and the other way round its holes', () => {
    const [rest] = regionsSubtract([room], [region(rectangle(2000, 2000, 500, 500))]);
    expect(ringSignedArea(rest?.outline ?? [])).toBe(12e6);
    expect(ringSignedArea(rest?.holes[0] ?? [])).toBe(-250_000);
  });

  it('lie where they were drawn, to the tenth of a millimetre', () => {
    const drawn = rectangle(0.3, 0.7, 1234.5, 999.9).map(([x, y]) => onGrid(x, y));
    const [same] = regionsUnion([region(drawn)]);
    expect(new Set(same?.outline.map(String))).toEqual(new Set(drawn.map(String)));
  });
});

describe('rings that real plans bring', () => {
  it('a ring with no area takes no part', () => {
    const line = region([
      [0, 0],
      [1000, 0],
      [500, 0],
    ]);
    expect(regionsIntersect([line], [region(rectangle(0, 0, 500, 500))])).toEqual([]);
    expect(areaOf(regionsUnion([line], [region(rectangle(0, 0, 500, 500))]))).toBe(250_000);
  });

  it('nothing taken from nothing is nothing', () => {
    expect(regionsUnion([])).toEqual([]);
    expect(regionsSubtract([], [region(rectangle(0, 0, 500, 500))])).toEqual([]);
    expect(areaOf(regionsSubtract([region(rectangle(0, 0, 500, 500))], []))).toBe(250_000);
  });

  it('a corner that is no place is refused by name and not read as floor', () => {
    const broken = region([
      [0, 0],
      [Number.NaN, 1000],
      [1000, 1000],
    ]);
    expect(() => regionsUnion([broken], [region(rectangle(0, 0, 500, 500))])).toThrow(ClipError);
  });

  it('a crossing outline is read as the floor that it runs round', () => {
    const bow = region([
      [0, 0],
      [2000, 2000],
      [2000, 0],
      [0, 2000],
    ]);
    expect(areaOf(regionsUnion([bow]))).toBeCloseTo(2e6, 3);
    expect(areaOf(regionsIntersect([bow], [region(rectangle(0, 0, 1000, 2000))]))).toBeCloseTo(1e6, 3);
  });
});
