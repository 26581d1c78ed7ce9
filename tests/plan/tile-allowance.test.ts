import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import { analysed } from '../contract/analysed.ts';
import { box } from '../floors/plan-json.ts';

/** 10 % where tiles run with the walls, 15 % where they run askew to them, 20 % in a herringbone: usual, no source. */

function turned(ring: Ring, degrees: number): Ring {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return ring.map(([x, y]): Point => [x * c - y * s, x * s + y * c]);
}

const rectangle = box(0, 0, 6000, 4000);
const tiles = { lengthMm: 600, widthMm: 300 };

function allowanceOf(outline: Ring, angleDeg: number, more: object = {}): number | undefined {
  return planResolve({
    ...{ format: 'screed-bays/plan', version: 1, name: '' },
    rooms: [{ id: 'r1', outline }],
    tiles: { ...tiles, angleDeg, ...more },
  }).tiles?.allowance;
}

describe('the usual allowance', () => {
  it.each([
    [0, 0, 0.1],
    [0, 90, 0.1],
    [0, 20, 0.15],
    [0, 45, 0.15],
    [20, 20, 0.1],
    [20, -70, 0.1],
    [20, 380, 0.1],
    [20, 0, 0.15],
    [20, 65, 0.15],
    // walls are out of square by a little
    [20, 21.5, 0.1],
    [89.5, 0, 0.1],
    [0.5, 90, 0.1],
    [20, 23, 0.15],
  ])('of a room turned by %d degrees with its tiles turned by %d is %d', (roomDeg, angleDeg, allowance) => {
    expect(allowanceOf(turned(rectangle, roomDeg), angleDeg)).toBe(allowance);
  });

  it('goes by the longer walls: a corner that is cut off makes no room askew', () => {
    // 2 * 6000 + 2 * 4000 less 2 * 1000 each way run with the sheet, 4 * 1414 at 45 degrees
    const chamfered: Ring = [
      [1000, 0],
      [5000, 0],
      [6000, 1000],
      [6000, 3000],
      [5000, 4000],
      [1000, 4000],
      [0, 3000],
      [0, 1000],
    ];
    expect([0, 45].map((angleDeg) => allowanceOf(chamfered, angleDeg))).toEqual([0.1, 0.15]);
  });

  it('is that of straight tiles where they run with one room of several, and of each field by its own rooms', () => {
    const rooms = [
      { id: 'r1', outline: rectangle },
      { id: 'r2', outline: turned(box(0, 9000, 6000, 4000), 30) },
    ];
    const file = { format: 'screed-bays/plan', version: 1, name: '', rooms } as const;
    const usual = (angleDeg: number) => planResolve({ ...file, tiles: { ...tiles, angleDeg } }).tiles?.allowance;
    expect([0, 30, 15].map(usual)).toEqual([0.1, 0.1, 0.15]);
    const fields = planResolve({
      ...file,
      tiles: { ...tiles, angleDeg: 30 },
      tileFields: [
        { id: 't1', rooms: ['r2'], ...tiles, angleDeg: 0 },
        { id: 't2', rooms: [], ...tiles, allowance: 0.05 },
      ],
    });
    expect(fields.tileFields.map(({ allowance }) => allowance)).toEqual([0.15, 0.05]);
    expect(fields.tiles?.allowance).toBe(0.15);
  });

  it('of a herringbone does not ask for walls, and what is entered stands', () => {
    expect(allowanceOf(rectangle, 45, { bond: 'herringbone' })).toBe(0.2);
    expect(allowanceOf(rectangle, 45, { allowance: 0.07 })).toBe(0.07);
    expect(allowanceOf(rectangle, 45, { allowance: 0 })).toBe(0);
  });

  it('orders as many tiles for a floor that is turned with its tiles', () => {
    const orderOf = (angleDeg: number) =>
      analysed({
        ...{ format: 'screed-bays/plan', version: 1, name: '' },
        rooms: [{ id: 'r1', outline: turned(rectangle, angleDeg) }],
        tiles: { ...tiles, angleDeg },
      }).analysis.tiles?.fields[0]?.order;
    expect(orderOf(20)).toBe(orderOf(0));
  });
});
