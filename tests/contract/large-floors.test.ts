import { describe, expect, it } from 'vitest';
import { planJson } from '../floors/plan-json.ts';
import { analysed, freeJointM } from './analysed.ts';

/** Halls without columns, many bays long and wide. Their joint cannot be less than this, m: a bay of at most 40 m2 has at least 4 times the
 *  root of 40 of perimeter for each 40 m2 (of all rectangles of an area the square has the shortest, Euclid VI.27), the bays' perimeters
 *  together count every joint twice and the walls once. */
function leastConceivableM(longM: number, wideM: number): number {
  return (((longM * wideM) / 40) * 4 * Math.sqrt(40) - 2 * (longM + wideM)) / 2;
}

/** Bays do not come in squares of 40 m2 exactly: equal parts of a side leave so much. */
const most = 1.04;

describe('a large floor without columns', () => {
  for (const [longM, wideM] of [
    [40, 40],
    [60, 60],
    [77, 63],
    [137, 91],
  ] as const) {
    it(`of ${longM} x ${wideM} m is within its limits with next to no joint more than any layout must have`, () => {
      const outline = [
        [0, 0],
        [longM * 1000, 0],
        [longM * 1000, wideM * 1000],
        [0, wideM * 1000],
      ] as const;
      const { analysis } = analysed(
        planJson('Hall', [{ id: 'r1', name: 'Hall', outline: outline.map(([x, y]) => [x, y]) }]),
      );
      expect(analysis.bays.every((bay) => bay.within)).toBe(true);
      expect(analysis.findings.filter(({ code }) => code.startsWith('layout-'))).toEqual([]);
      expect(freeJointM(analysis) / leastConceivableM(longM, wideM)).toBeLessThan(most);
      expect(freeJointM(analysis) / leastConceivableM(longM, wideM)).toBeGreaterThanOrEqual(1);
    });
  }
});
