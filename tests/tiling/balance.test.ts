import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import { tiledFields } from '../../src/plan/tile-grid.ts';
import { cutsBalanced, evenCuts } from '../../src/tiling/balance.ts';
import { box, planJson, type TilesJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';
import { tiledBay } from './one-bay.ts';

const square: TilesJson = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] };

function fieldOf(outlines: readonly Ring[], tiles: Partial<TilesJson> = {}) {
  const rooms = outlines.map((outline, i) => ({ id: `r${i}`, name: `Room ${i}`, outline }));
  const [field] = tiledFields(planOf(planJson('Floor', rooms, { tiles: { ...square, ...tiles } })));
  if (field === undefined) throw new Error('no tiles');
  return field;
}

describe('equal cuts at both ends of a room', () => {
  it('have a tile in the middle, or a grout line where that leaves more', () => {
    const { grid } = fieldOf([box(0, 0, 3000, 3000)]);
    // A tile in the middle leaves 1200 = 603 + 3 + 594 on either side; a grout line there leaves cuts of 292.5.
    expect(evenCuts(grid, 0, [0, 3000])).toEqual([
      { atMm: 1200, cutMm: 594 },
      { atMm: 1501.5, cutMm: 292.5 },
    ]);
    // 1806 = 3 x 600 + 2 x 3: whole tiles.
    expect(evenCuts(grid, 0, [0, 1806])[0]).toEqual({ atMm: 603, cutMm: 600 });
  });
});

describe('balanced cuts', () => {
  it('move the set-out point no further than needed', () => {
    // 1200 less two tiles of 603.
    expect(cutsBalanced(fieldOf([box(0, 0, 3000, 3000)]))).toEqual([-6, -6]);
    expect(cutsBalanced(fieldOf([box(0, 0, 3000, 3000)], { origin: [-6, -6] }))).toEqual([-6, -6]);
  });

  it('are equal at opposite walls of a room, in straight courses and in courses shifted by half a tile or a third', () => {
    for (const bond of ['straight', 'half', 'third'] as const) {
      const outline = box(0, 0, 4370, 2910);
      const tiles: TilesJson = { ...square, lengthMm: 450, widthMm: 300, bond };
      const origin = cutsBalanced(fieldOf([outline], tiles)) as Point;
      const { cuts } = tiledBay({ outline, holes: [] }, { ...tiles, origin }).report;
      const at = (end: number, axis: 0 | 1) =>
        cuts.find(({ line }) => line.every((p) => p[axis] === end))?.sizesMm ?? [];
      for (const [axis, end] of [
        [0, 4370],
        [1, 2910],
      ] as const) {
        expect(at(0, axis).length).toBeGreaterThan(0);
        const [first, last] = [at(0, axis), at(end, axis)];
        // The plan holds places to 0.1 mm.
        for (const [i, mm] of first.entries()) expect(Math.abs(mm - (last[i] ?? 0))).toBeLessThan(0.2);
      }
    }
  });

  it('of several rooms are those of the one whose cuts leave the least to pay for at all walls', () => {
    // Equal cuts of 586.5 in the large room leave 219.5 and 377.5 in the small one: all four ends cut, one under half. Whole tiles in the small
    // one, from 7000 - 12 x 603, leave 364 and 206 in the large one: two ends cut, one under half.
    expect(cutsBalanced(fieldOf([box(0, 0, 6000, 1806), box(7000, 0, 1806, 1806)]))).toEqual([-236, 0]);
    // With the small room away the large one counts: 3001.5 - 5 x 603.
    expect(cutsBalanced(fieldOf([box(0, 0, 6000, 1806)]))).toEqual([-13.5, 0]);
  });

  it('are along the grid where that is turned', () => {
    const turn = ([x, y]: Point): Point => [(x - y) * Math.SQRT1_2, (x + y) * Math.SQRT1_2];
    const [x, y] = cutsBalanced(fieldOf([box(0, 0, 3000, 3000).map(turn)], { angleDeg: 45 })) as Point;
    const [wantedX, wantedY] = turn([-6, -6]);
    expect(Math.abs(x - wantedX)).toBeLessThan(0.1);
    expect(Math.abs(y - wantedY)).toBeLessThan(0.1);
  });

  it('are nowhere in a herringbone, nor where no room lies square to the grid', () => {
    expect(cutsBalanced(fieldOf([box(0, 0, 3000, 3000)], { bond: 'herringbone', widthMm: 300 }))).toBeNull();
    expect(cutsBalanced(fieldOf([box(0, 0, 3000, 3000)], { angleDeg: 45 }))).toBeNull();
  });
});
