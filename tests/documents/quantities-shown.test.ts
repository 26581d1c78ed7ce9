import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { comparisonOf } from '../../src/documents/compare.ts';
import type { QuantityPair } from '../../src/documents/compare-quantities.ts';
import { compareQuantitiesTable } from '../../src/documents/compare-tables.ts';
import { csvOf } from '../../src/documents/csv.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { quantitiesTable } from '../../src/documents/tables.ts';
import { takeOffOf, takeoffRoomsTable } from '../../src/documents/takeoff-tables.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { storeyPlan } from '../floors/several-rooms.ts';
import { rectangle } from './compare-fixture.ts';
import { demoNames, demoText, hallAndStore, paperSourceOf } from './paper-fixture.ts';

/** Quantities as a reader adds them up: figure by figure as they stand on paper, in whole last digits. */

const folder = new URL('../../../shared/real-plans/', import.meta.url);
const real = existsSync(folder)
  ? readdirSync(folder).filter((name) => /^(?:westport_5|duplex_L[01]|resplan_0)\.json$/.test(name))
  : [];

type Floor = readonly [name: string, text: () => string];
const floors: readonly Floor[] = [
  ...demoNames.map((name): Floor => [name, () => demoText(name)]),
  ...real.map((name): Floor => [name, () => readFileSync(new URL(name, folder), 'utf8')]),
  ...Array.from({ length: 10 }, (_, i): Floor => {
    const plan = storeyPlan({ seed: i + 1, rooms: 3 + (i % 6), objects: true });
    return [`storey ${i + 1}`, () => JSON.stringify(plan)];
  }),
];

function units(figure: number | null, decimals: number): number {
  return Math.round(Number((figure ?? 0).toFixed(decimals)) * 10 ** decimals);
}

function sum(pairs: readonly QuantityPair[], side: 'before' | 'now'): number {
  return pairs.reduce((all, pair) => all + units(pair[side], pair.decimals), 0);
}

describe.each(floors)('the quantities of %s', (_, text) => {
  const before = paperSourceOf(text());
  const thicknessMm = before.plan.screed.thicknessMm + 3.3;
  const now = paperSourceOf(text(), { screed: { ...before.file.screed, thicknessMm } });

  it('in a comparison add up room by room to the whole as shown, before and now', () => {
    const { quantities } = comparisonOf(before, now);
    const all = quantities.filter(({ room }) => room === null);
    expect(all.length).toBeGreaterThan(3);
    // in all they are those of the analysis
    for (const [side, { analysis }] of [
      ['before', before],
      ['now', now],
    ] as const) {
      const shown = (words: string) => all.find((pair) => pair.words === words && pair.unit !== 'kg');
      for (const [words, figure] of [
        ['Edge strip', analysis.quantities.edgeStripM],
        ['Screed', analysis.quantities.screedM3],
        ['Insulation', analysis.quantities.insulationM2],
      ] as const)
        expect(shown(words)?.[side]).toBe(Number(figure.toFixed(shown(words)?.decimals)));
    }
    for (const whole of all) {
      const rooms = quantities.filter(
        ({ room, words, unit }) => room !== null && words === whole.words && unit === whole.unit,
      );
      for (const side of ['before', 'now'] as const)
        expect([whole.words, side, sum(rooms, side)]).toEqual([whole.words, side, units(whole[side], whole.decimals)]);
      expect(rooms.every(({ decimals }) => decimals === whole.decimals)).toBe(true);
    }
  });

  it('in a comparison have changes that are the difference of what stands beside them', () => {
    const { rows, rowDecimals } = compareQuantitiesTable(comparisonOf(before, now));
    for (const [i, [, , , was, is, change]] of rows.entries()) {
      const decimals = rowDecimals?.[i] ?? 2;
      expect(units(Number(change), decimals)).toBe(units(Number(is), decimals) - units(Number(was), decimals));
    }
  });

  it('in a comparison are those of the take-off of either version, room by room', () => {
    const { quantities } = comparisonOf(before, now);
    for (const [side, source] of [
      ['before', before],
      ['now', now],
    ] as const) {
      const { columns, rows } = takeoffRoomsTable(source, takeOffOf(source));
      const column = (head: string) => columns.findIndex((each) => each.head === head);
      for (const [item, unit] of [
        ['Screed', 'm3'],
        ['Screed, by weight', 'kg'],
      ] as const) {
        const listed = rows.filter((row) => row[column('Item')] === item).map((row) => row[column('Net')]);
        const told = quantities.filter(({ words, unit: own }) => words === 'Screed' && own === unit);
        const shown = told.map((pair) => pair[side]).filter((figure) => figure !== 0);
        // the take-off has the whole at the end
        expect(shown).toEqual([listed.at(-1), ...listed.slice(0, -1)]);
      }
    }
  });

  it('in their own list add up to the total, to the last digit that is written', () => {
    const table = quantitiesTable(before);
    const lines = csvOf(table)
      .split('\r\n')
      .slice(1, -1)
      .map((line) => line.match(/(?:"(?:[^"]|"")*"|[^,]*)(?:,|$)/gu)?.map((cell) => cell.replace(/,$/u, '')) ?? []);
    expect(lines.length).toBe(table.rows.length);
    table.columns.forEach(({ decimals }, i) => {
      if (decimals === null) return;
      const figures = lines.map((line) => units(Number(line[i]), 6));
      expect(figures.slice(0, -1).reduce((all, figure) => all + figure, 0)).toBe(figures.at(-1));
    });
    // and they are those of the analysis to a millionth
    const floor = table.columns.findIndex(({ head }) => head === 'Floor');
    before.analysis.quantities.rooms.forEach(({ floorM2 }, i) => {
      expect(Math.abs(Number(table.rows[i]?.[floor]) - floorM2)).toBeLessThan(1.1e-6);
    });
  });
});

describe('rooms that share the last digit', () => {
  // by hand: three rooms of 3.35 x 1 m are 3.35 m2 each and 10.05 m2 together; at 10 mm of screed 0.0335 m3 each, 0.1005 in all, shown as 0.10 m3. Two
  // rooms of 0.03 and one of 0.04 add up to it. At 20 mm it is 0.067 m3 each and 0.201, shown as 0.20: 0.07, 0.07 and 0.06
  const rooms = ['a', 'b', 'c'].map((id, i) => rectangle(id, [0, i * 2000], [3350, i * 2000 + 1000]));
  const floor = (thicknessMm: number, over: Partial<PlanFile> = {}) =>
    hallAndStore({ rooms, doorways: [], screed: { thicknessMm }, ...over });
  const screed = (source: PaperSource, other: PaperSource) =>
    comparisonOf(source, other).quantities.filter(({ words, unit }) => words === 'Screed' && unit === 'm3');

  it('have among them what the whole has', () => {
    const [whole, ...each] = screed(floor(10), floor(20));
    expect([whole?.before, whole?.now]).toEqual([0.1, 0.2]);
    expect(each.map(({ before }) => before).sort()).toEqual([0.03, 0.03, 0.04]);
    expect(each.map(({ now }) => now).sort()).toEqual([0.06, 0.07, 0.07]);
  });

  it('have the same figures where they are listed in another order and are called otherwise', () => {
    const renamed = [...rooms].reverse().map((room, i) => ({ ...room, id: `r${i}` }));
    const { counts } = comparisonOf(floor(10), floor(10, { rooms: renamed }));
    expect(counts.quantities).toBe(0);
    for (const { before, now } of comparisonOf(floor(10), floor(10, { rooms: renamed })).quantities)
      expect(now).toBe(before);
  });
});
