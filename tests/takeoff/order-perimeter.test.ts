import { describe, expect, it } from 'vitest';
import { takeoffTable } from '../../src/documents/takeoff-tables.ts';
import { lineOf, lineText, takeOffOfTwoRooms, twoRoomsFields } from './order-fixture.ts';

/** Walls of 21 m round the hall and 13 m round the study. The perimeter joint is as wide as the edge strip, 10 mm, and half as deep but at least 6 mm
 *  (sources.json#sealant-depth): 0.06 l a metre. Cartridges of 310 ml and 15 % are common practice, no source. */
describe('the perimeter joint of the covering', () => {
  it('runs along all walls of stone and ceramic: 34 m', () => {
    const line = lineOf(takeOffOfTwoRooms(), 'perimeter:10');
    expect(line.spec).toBe('10 mm wide, 6 mm deep');
    expect(lineText(line)).toMatch(/^34\.00 \+ 0\.00 = 34\.00 m/u);
    expect(line.parts).toEqual([{ name: 'walls', amount: 34 }]);
    expect(line.notes.join(' ')).toContain('Assumed to be filled all round');
  });

  // 34 x 0.06 = 2.04 l; with 15 % 2.346 l, which is 7.6 cartridges
  it('takes 2.04 l of sealant in 8 cartridges', () => {
    expect(lineText(lineOf(takeOffOfTwoRooms(), 'perimeter-sealant:10'))).toBe(
      '2.04 + 0.31 = 2.35 l: 8 cartridges of 310 ml',
    );
  });

  // 16 mm wide is 8 mm deep: 34 x 0.128 = 4.352 l
  it('is as wide as the edge strip, and half as deep where that is more than 6 mm', () => {
    const all = takeOffOfTwoRooms({ fields: { edgeStrip: { thicknessMm: 16 } } });
    expect(lineOf(all, 'perimeter:16').spec).toBe('16 mm wide, 8 mm deep');
    expect(lineOf(all, 'perimeter-sealant:16').net).toBeCloseTo(4.352, 9);
  });

  // 17 m and 1.02 l
  it('is half of that where a skirting covers the other half', () => {
    const all = takeOffOfTwoRooms({ order: { perimeterShare: 0.5 } });
    expect(lineOf(all, 'perimeter:10').net).toBeCloseTo(17, 9);
    expect(lineOf(all, 'perimeter-sealant:10').net).toBeCloseTo(1.02, 9);
    expect(lineOf(all, 'perimeter:10').notes.join(' ')).toContain('50 % of its length is filled, as entered.');
  });

  it('is left out where none of it is filled, and where no room has stone or ceramic', () => {
    const rooms = (twoRoomsFields.rooms ?? []).map((room) => ({ ...room, covering: 'timber' as const }));
    for (const over of [{ order: { perimeterShare: 0 } }, { fields: { rooms } }])
      expect(takeOffOfTwoRooms(over).lines.filter(({ group }) => group === 'perimeter')).toEqual([]);
  });

  it('leaves out the rooms with another covering: the study of timber has none, the hall 21 m', () => {
    const rooms = (twoRoomsFields.rooms ?? []).map((room) =>
      room.id === 'study' ? { ...room, covering: 'timber' as const } : room,
    );
    const line = lineOf(takeOffOfTwoRooms({ fields: { rooms } }), 'perimeter:10');
    expect(line.net).toBeCloseTo(21, 9);
    expect(new Set(line.cells.map(({ room }) => room))).toEqual(new Set(['hall']));
  });

  // eight cartridges at 5.00
  it('costs what its cartridges cost, and its length nothing', () => {
    const all = takeOffOfTwoRooms({ order: { currency: 'EUR', prices: { sealantCartridge: 5 } } });
    expect(lineOf(all, 'perimeter-sealant:10').cost).toBe(40);
    expect(all.cost?.unpriced).not.toContain('perimeter:10');
  });

  it('stands in the take-off with its source in words', () => {
    const row = takeoffTable(takeOffOfTwoRooms()).rows.find(([item]) => item === 'Perimeter joint of the covering');
    expect(row?.at(-1)).toContain('Common practice');
  });
});

describe('sleeves for which none are entered', () => {
  it('are told to be assumed, flow and return of one circuit across each joint', () => {
    expect(lineOf(takeOffOfTwoRooms(), 'sleeves').notes).toContain(
      'Assumed: flow and return of one circuit across the one joint within heated floor for which none are entered; count them on the heating plan.',
    );
  });

  it('are told by their number where another is taken', () => {
    expect(lineOf(takeOffOfTwoRooms({ order: { sleevesPerJoint: 4 } }), 'sleeves').notes.join(' ')).toContain(
      'Assumed: 4 pipes across the one joint',
    );
  });
});
