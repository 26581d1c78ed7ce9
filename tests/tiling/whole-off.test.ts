import { describe, expect, it } from 'vitest';
import { csvOf } from '../../src/documents/csv.ts';
import { cutsTable } from '../../src/documents/tile-tables.ts';
import { wholeOff } from '../../src/tiling/whole-off.ts';
import { analysed } from '../contract/analysed.ts';
import { sheetWords } from '../documents/set-out-fixture.ts';
import { box, planJson, type TilesJson } from '../floors/plan-json.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';

/** Half bond, tiles of 600 x 300 with 4 of grout: even courses begin at the left wall, 0-600, 604-1204 and 1208-1508, of which the wall leaves 300; odd
 *  ones are shifted by 302: up to 298, 302-902 and 906-1506, 2 before the wall. Four courses: 4 * 304 - 4 = 1212. */
const tiles: TilesJson = { lengthMm: 600, widthMm: 300, groutMm: 4, origin: [0, 0], bond: 'half' };
const room = (widthMm: number, more: Partial<TilesJson> = {}) => {
  const rooms = [{ id: 'r1', name: 'Room', outline: box(0, 0, widthMm, 1212) }];
  return analysed(
    planJson('', rooms, { tiles: { ...tiles, ...more }, edgeStrip: { thicknessMm: 10, usableTravel: 0.5 } }),
  );
};

describe('whole tiles that end at a wall', () => {
  const { plan, analysis } = room(1508);
  const cuts = analysis.tiles?.fields[0]?.cuts ?? [];
  const at = (x: number) => cuts.find(({ line: [a, b] }) => a[0] === x && b[0] === x);

  it('are told beside the cuts of the courses between', () => {
    expect(analysisFaults(plan, analysis)).toEqual([]);
    expect([at(0)?.sizesMm, at(0)?.wholeOffMm]).toEqual([[298], 0]);
    expect([at(1508)?.sizesMm, at(1508)?.wholeOffMm]).toEqual([[300], 2]);
  });

  it('stand so on the set-out sheet', () => {
    expect(sheetWords(plan, analysis)).toContain(
      'Left whole / 298, right whole 2 off the wall / 300, upper whole, lower whole.',
    );
  });

  it('are cut to what the open joint leaves, less what the grout before the wall gives already', () => {
    // 600 - 10 and 298 - 10; 600 - (10 - 2) and 300 - 10
    const table = csvOf(cutsTable({ plan, analysis }));
    for (const text of ['whole / 298 mm', '590 mm / 288 mm', 'whole / 300 mm', '592 mm / 290 mm'])
      expect(table).toContain(`,${text},`);
  });

  it('are none where they end further off than their grout, or where every course is cut', () => {
    // to 1600: even courses leave 392, odd ones begin one at 1510 and leave 90
    const off = room(1600).analysis.tiles?.fields[0]?.cuts.map(({ line: [a, b], wholeOffMm }) => [
      a[0] + b[0],
      wholeOffMm,
    ]);
    expect(off).toContainEqual([3200, null]);
  });

  it('are not asked for askew and in a herringbone', () => {
    for (const more of [{ angleDeg: 45 }, { bond: 'herringbone' as const }]) {
      const found = room(1508, more).analysis.tiles?.fields[0]?.cuts ?? [];
      expect(found.map(({ wholeOffMm }) => wholeOffMm)).toEqual(found.map(() => null));
    }
  });

  it('count beside the stretch only', () => {
    const run = { minX: 0, maxX: 600, minY: 0, maxY: 300 };
    expect(wholeOff([603, 0], [603, 300], [run], 3)).toBe(3);
    expect(wholeOff([-2, 0], [-2, 300], [run], 3)).toBe(2);
    expect(wholeOff([0, 302], [600, 302], [run], 3)).toBe(2);
    expect(wholeOff([603, 300], [603, 900], [run], 3)).toBeNull();
    expect(wholeOff([605, 0], [605, 300], [run], 3)).toBeNull();
    expect(wholeOff([0, 0], [600, 300], [run], 3)).toBeNull();
  });
});
