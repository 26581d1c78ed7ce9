import { describe, expect, it } from 'vitest';
import { csvOf } from '../../src/documents/csv.ts';
import type { Table } from '../../src/documents/table.ts';
import { takeOffOf, takeoffBaysTable, takeoffRoomsTable, takeoffTable } from '../../src/documents/takeoff-tables.ts';
import { planRead } from '../../src/plan/read.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { planOf } from '../movement/grid-split.ts';
import { analysisOf, twoRooms, twoRoomsFields } from '../takeoff/order-fixture.ts';
import { demoText, paperSource, paperSourceOf } from './paper-fixture.ts';

/** A hall of 8 x 5 m and a study of 4 x 5 m with a joint of 5 m between them. */
function source(order: PlanFile['order'] = {}) {
  const plan = planOf(twoRoomsFields);
  return paperSource(plan, analysisOf(plan, twoRooms), { order });
}

/** The cells of the rows of an item, under some heads. */
function rowsOf({ columns, rows }: Table, item: string, heads: readonly string[]) {
  const at = (head: string) => columns.findIndex((column) => column.head === head);
  return rows.filter((row) => row[at('Item')] === item).map((row) => heads.map((head) => row[at(head)]));
}

describe('counts of one in the lists of the take-off', () => {
  it('are called alike in all rows of a line, so that a list is added up by them: a roll for each room, two for both', () => {
    // walls of 21 and of 13 m, each within a roll of 25 m
    const of = source();
    const table = takeoffRoomsTable(of, takeOffOf(of));
    expect(rowsOf(table, 'Edge strip', ['Order', 'Ordered in'])).toEqual([
      [1, 'rolls of 25 m'],
      [1, 'rolls of 25 m'],
      [2, 'rolls of 25 m'],
    ]);
  });

  it('are one load, and one bar where none is to spare', () => {
    const table = takeoffTable(takeOffOf(source({ profileBarM: 5, profileSpares: 0, loadM3: 6 })));
    expect(rowsOf(table, 'Screed', ['Order', 'Ordered in'])).toEqual([[1, 'load of 6 m\u00b3']]);
    expect(rowsOf(table, 'Joint profile, intermediate joints', ['Order', 'Ordered in'])).toEqual([[1, 'bar of 5 m']]);
  });

  it('are pieces in all rows of a line: one for each side of a joint that two pipes cross', () => {
    // half of the joint, and so one of its two sleeves, to each of its bays and rooms; none to spare
    const of = source({ sleevesPerJoint: 2, sleeveSpares: 0 });
    for (const table of [takeoffRoomsTable(of, takeOffOf(of)), takeoffBaysTable(of, takeOffOf(of))]) {
      expect(rowsOf(table, 'Sleeves on heating pipes', ['Net', 'Unit'])).toEqual([
        [1, 'pieces'],
        [1, 'pieces'],
        [2, 'pieces'],
      ]);
    }
  });

  it('are tiles one by one, where a box holds one', () => {
    const dwelling = paperSourceOf(demoText('1-dwelling'));
    const tiles = dwelling.file.tiles;
    if (tiles === undefined) throw new Error('the dwelling has no tiles');
    const boxed = paperSourceOf(demoText('1-dwelling'), { tiles: { ...tiles, tilesPerBox: 1 } });
    const [row] = rowsOf(takeoffTable(takeOffOf(boxed)), 'Tiles', ['Ordered in']);
    expect(row).toEqual(['boxes of 1 tile']);
  });
});

describe('prices in the table of the take-off', () => {
  it('have the digits that were typed, up to four; what they make costs two', () => {
    // 5 m of backer, nothing cut to waste: 5 x 0.1275 = 0.6375
    const order = { currency: 'EUR', backerAllowance: 0, prices: { backerM: 0.1275, stripRoll: 31.5 } };
    const table = takeoffTable(takeOffOf(source(order)));
    expect(rowsOf(table, 'Backer', ['Price', 'Price per', 'Cost'])).toEqual([[0.1275, 'm', 0.64]]);
    const decimals = (head: string) => table.columns.find((column) => column.head === head)?.decimals;
    expect([decimals('Price'), decimals('Cost')]).toEqual([4, 2]);
    expect(csvOf(table)).toContain('0.1275,m,0.64');
  });

  it.each([
    [7.5, 2],
    [0.125, 3],
    [0.00005, 4],
    [12, 2],
  ])('of which the longest is %d are printed with %d digits', (backerM, digits) => {
    const table = takeoffTable(takeOffOf(source({ prices: { backerM } })));
    expect(table.columns.find(({ head }) => head === 'Price')?.decimals).toBe(digits);
  });
});

describe('a currency', () => {
  it('of eight letters stands whole beside prices, and a longer one of a plan file is cut to eight', () => {
    const head = (currency: string) =>
      takeoffTable(takeOffOf(source({ currency, prices: { tile: 1 } }))).columns.find(
        (column) => column.head === 'Cost',
      );
    expect(head('Thalers8')?.unit).toBe('Thalers8');
    expect(head('Thalers of old')?.unit).toBe('Thalers\u2026');
  });

  it('of 10,000 letters keeps no plan file from being opened', () => {
    const text = JSON.stringify({ ...JSON.parse(demoText('1-dwelling')), order: { currency: 'x'.repeat(10_000) } });
    expect(planRead(text).kind).not.toBe('refused');
    expect(takeOffOf(paperSourceOf(text)).currency).toBe('xxxxxxx\u2026');
  });
});
