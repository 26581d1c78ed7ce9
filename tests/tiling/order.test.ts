import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CutPiece } from '../../src/tiling/cut-pieces.ts';
import { tileOrder } from '../../src/tiling/order.ts';
import { planJson, type TilesJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';

function gridOf(tiles: Partial<TilesJson> = {}) {
  const { tiles: grid } = planOf(planJson('', [], { tiles: { lengthMm: 600, widthMm: 300, groutMm: 3, ...tiles } }));
  if (grid === null) throw new Error('no tiles');
  return grid;
}

/** A piece cut across its length (or its width) to a size, of a tile of its own unless told. */
function piece(key: string, sizeMm: readonly [number, number], isPlain = true): CutPiece {
  const leastShare = Math.min(sizeMm[0] / 600, sizeMm[1] / 300);
  return {
    ...{ key, areaMm2: sizeMm[0] * sizeMm[1], sides: [] },
    ...{ leastMm: Math.min(...sizeMm), leastShare, sizeMm, isPlain, isInJoint: false },
  };
}

/** By trying all: the fewest tiles that sizes come from, at most two from each. */
function fewest(sizes: readonly number[], mostMm: number): number {
  const [first, ...rest] = sizes;
  if (first === undefined) return 0;
  const alone = 1 + fewest(rest, mostMm);
  const paired = rest.flatMap((other, i) =>
    first + other <= mostMm ? [1 + fewest([...rest.slice(0, i), ...rest.slice(i + 1)], mostMm)] : [],
  );
  return Math.min(alone, ...paired);
}

describe('tiles to be sawn', () => {
  it('are as few as trying all ways to use off-cuts again leaves, each way of cutting by itself', () => {
    const sizes = (mostMm: number) => fc.array(fc.integer({ min: 5, max: mostMm - 5 }), { maxLength: 6 });
    fc.assert(
      fc.property(sizes(600), sizes(300), (along, across) => {
        const pieces = [
          ...along.map((mm, i) => piece(`a${i}`, [mm, 300])),
          ...across.map((mm, i) => piece(`b${i}`, [600, mm])),
        ];
        const { laid, fromOffCuts } = tileOrder(gridOf(), 7, pieces);
        expect(laid).toBe(7 + fewest(along, 597) + fewest(across, 297));
        expect(fromOffCuts).toBe(pieces.length + 7 - laid);
      }),
      { numRuns: 150 },
    );
  });

  it('leave 3 mm for the saw: 300 and 297 come from one tile of 600, 300 and 298 do not', () => {
    const laid = (a: number, b: number) => tileOrder(gridOf(), 0, [piece('a', [a, 300]), piece('b', [b, 300])]).laid;
    expect([laid(300, 297), laid(300, 298)]).toEqual([1, 2]);
  });

  it('are one each for what is notched, askew or cut both ways, and one for the pieces of a tile that a joint parts', () => {
    expect(tileOrder(gridOf(), 0, [piece('a', [100, 100], false), piece('b', [100, 300])])).toMatchObject({ laid: 2 });
    expect(tileOrder(gridOf(), 0, [piece('a', [400, 300]), piece('a', [197, 300])])).toMatchObject({
      laid: 1,
      fromOffCuts: 1,
    });
  });
});

describe('an order', () => {
  it('is what is laid and the allowance, to whole tiles and whole boxes, whatever rounding adds', () => {
    const order = (whole: number, allowance: number, tilesPerBox = 6) => {
      const { order: tiles, boxes } = tileOrder(gridOf({ allowance, tilesPerBox }), whole, []);
      return [tiles, boxes];
    };
    expect(order(100, 0.1)).toEqual([110, 19]);
    expect(order(101, 0.1)).toEqual([112, 19]);
    expect(order(20, 0.15)).toEqual([23, 4]);
    expect(order(60, 0.2)).toEqual([72, 12]);
    expect(order(7, 0)).toEqual([7, 2]);
    expect(order(0, 0.1)).toEqual([0, 0]);
    for (let whole = 10; whole <= 3000; whole += 10) expect(order(whole, 0.1)[0]).toBe(whole + whole / 10);
  });
});
