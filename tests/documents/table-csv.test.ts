import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvOf } from '../../src/documents/csv.ts';
import { cellHeld, columnHead, type Table } from '../../src/documents/table.ts';
import { demoNames } from './paper-fixture.ts';
import { demoTables, hostileTexts, pairsTable } from './table-fixture.ts';

/** Rows as a second parser reads them. */
function parsed(table: Table): readonly (readonly string[])[] {
  const { data, errors } = Papa.parse<string[]>(csvOf(table).replace(/\r\n$/u, ''), {
    delimiter: ',',
    newline: '\r\n',
  });
  expect(errors).toEqual([]);
  return data;
}

describe('CSV read by a second parser', () => {
  it.each(demoNames)('gives back every cell of every table of %s', { timeout: 60_000 }, (name) => {
    for (const table of demoTables(name)) {
      const [heads, ...rows] = parsed(table);
      expect(heads).toEqual(table.columns.map(columnHead));
      expect(rows.length).toBe(table.rows.length);
      const read = rows.map((row, i) =>
        row.map((cell, k) =>
          typeof cellHeld(table.rows[i]?.[k] ?? null) === 'number' ? Number(cell) : cell.replace(/^'/u, ''),
        ),
      );
      const held = table.rows.map((row) =>
        row.map((cell) =>
          typeof cell === 'string' ? String(cellHeld(cell)).replace(/^'/u, '') : (cellHeld(cell) ?? ''),
        ),
      );
      expect(read).toEqual(held);
      expect(rows.flat().length).toBe(table.rows.length * table.columns.length);
    }
  });

  it('keeps hostile names, and an apostrophe before those that a spreadsheet would work out', () => {
    const [, ...rows] = parsed(pairsTable(hostileTexts.map(([name]) => [name, 1])));
    const found = rows.map(([name]) => name);
    const isFormula = (held: string) => /^\s*[=+\-@\uff1d]/u.test(held);
    expect(found).toEqual(hostileTexts.map(([, held]) => (isFormula(held) ? `'${held}` : held)));
    expect(rows.map(([, figure]) => figure)).toEqual(hostileTexts.map(() => '1'));
  });

  it('is well-formed UTF-8', () => {
    const text = csvOf(pairsTable(hostileTexts.map(([name]) => [name, 1])));
    expect(new TextDecoder('utf-8', { fatal: true }).decode(new TextEncoder().encode(text))).toBe(text);
  });
});
