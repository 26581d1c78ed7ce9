import ExcelJs from 'exceljs';
import { unzipSync, zipSync } from 'fflate/browser';
import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Cell, cellDecimals, cellHeld, columnHead, type Table } from '../../src/documents/table.ts';
import { cautionLines } from '../../src/documents/words.ts';
import { tablesXlsx } from '../../src/documents/xlsx.ts';
import { office, officeSheets } from './office.ts';
import { demoNames } from './paper-fixture.ts';
import { demoTables, hostileTexts, pairsTable } from './table-fixture.ts';

const about = { title: 'Reading rooms', date: '2027-03-01', cautions: cautionLines };

async function opened(bytes: Uint8Array): Promise<ExcelJs.Workbook> {
  const book = new ExcelJs.Workbook();
  // its types ask for a Buffer of an older Node
  await book.xlsx.load(bytes.slice().buffer as unknown as Parameters<typeof book.xlsx.load>[0]);
  return book;
}

async function sheetOf(book: ExcelJs.Workbook, name: string): Promise<ExcelJs.Worksheet> {
  const sheet = book.getWorksheet(name);
  if (sheet === undefined) throw new Error(`no sheet ${name}`);
  return sheet;
}

/** What differs between a cell that was read and a cell of a table, in words; null: nothing. */
function cellFault(read: ExcelJs.Cell, cell: Cell): string | null {
  const held = cellHeld(cell);
  const wished = held === '' ? null : held;
  if (read.value !== wished) return `${read.address}: ${JSON.stringify(read.value)}, not ${JSON.stringify(wished)}`;
  const type = wished === null ? 'Null' : typeof wished === 'number' ? 'Number' : 'String';
  return read.type === ExcelJs.ValueType[type] ? null : `${read.address} is no ${type}`;
}

describe.each(demoNames)('the workbook of %s, opened by a second library', (name) => {
  let book: ExcelJs.Workbook;
  beforeAll(async () => {
    book = await opened(await tablesXlsx(demoTables(name), about));
  }, 60_000);

  it('has a sheet about the others, and one for each table', () => {
    expect(book.worksheets.map((sheet) => sheet.name)).toEqual([
      'About',
      ...demoTables(name).map((table) => table.name),
    ]);
    const first = book.worksheets[0]?.getColumn(1).values ?? [];
    expect(first).toEqual(expect.arrayContaining([about.title, about.date, ...cautionLines]));
  });

  it('has every cell of every table, numbers as numbers and text as text', async () => {
    let cells = 0;
    for (const table of demoTables(name)) {
      const sheet = await sheetOf(book, table.name);
      const faults = table.rows.flatMap((row, i) =>
        row.flatMap((cell, k) => cellFault(sheet.getCell(i + 2, k + 1), cell) ?? []),
      );
      expect(faults).toEqual([]);
      cells += table.rows.length * table.columns.length;
    }
    expect(cells).toBeGreaterThan(500);
  });

  it('has bold heads with the units, which stay in sight and are printed on every page', async () => {
    for (const table of demoTables(name)) {
      const sheet = await sheetOf(book, table.name);
      const heads = table.columns.map((_, k) => sheet.getCell(1, k + 1));
      expect(heads.map(({ value }) => value)).toEqual(table.columns.map(columnHead));
      expect(heads.every(({ font }) => font.bold === true)).toBe(true);
      expect(sheet.views[0]).toMatchObject({ state: 'frozen', ySplit: 1 });
      expect(sheet.pageSetup).toMatchObject({ fitToPage: true, fitToHeight: 0, printTitlesRow: '1:1' });
      // 9 is A4 and 8 is A3 (ECMA-376, paperSize)
      expect([8, 9]).toContain(sheet.pageSetup.paperSize);
      if (table.rows.length > 0) expect(sheet.autoFilter).toBeTruthy();
      // a sum is no item of a list: sorted, it would stand among them
      const sorted = table.rows.length - (table.name === 'quantities' ? 1 : 0);
      if (table.rows.length > 0) expect(String(sheet.autoFilter)).toMatch(new RegExp(`^A1:[A-Z]+${sorted + 1}$`, 'u'));
    }
  });

  it('shows as many digits as the column has, or the row where it has a unit of its own', async () => {
    for (const table of demoTables(name)) {
      const sheet = await sheetOf(book, table.name);
      const faults = table.columns.flatMap((column, k) =>
        table.rows.flatMap((row, i) => {
          const decimals = cellDecimals(table, column, i);
          if (decimals === null || typeof row[k] !== 'number') return [];
          const { numFmt } = sheet.getCell(i + 2, k + 1);
          const format = decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}`;
          return numFmt === format ? [] : [`${column.head}: ${numFmt}`];
        }),
      );
      expect(faults).toEqual([]);
    }
  });

  it('has columns in which every figure and every word of a head can be read', async () => {
    for (const table of demoTables(name)) {
      const sheet = await sheetOf(book, table.name);
      for (const [k, column] of table.columns.entries()) {
        const words = columnHead(column).split(' ');
        const figures = table.rows.flatMap((row, i) => {
          const cell = row[k];
          return typeof cell === 'number' ? [cell.toFixed(cellDecimals(table, column, i) ?? 6)] : [];
        });
        // widths are told in digits; a letter is as wide as a digit or so
        const widest = Math.max(...[...words, ...figures].map((text) => text.length));
        expect(sheet.getColumn(k + 1).width, columnHead(column)).toBeGreaterThanOrEqual(Math.min(widest, 20));
        // three to the width of A4 lying: 277 mm of 1.85 mm a digit
        expect(sheet.getColumn(k + 1).width).toBeLessThan(50);
      }
    }
  });

  it('has what holds for a table under it', async () => {
    for (const table of demoTables(name)) {
      const sheet = await sheetOf(book, table.name);
      // beside the first column where that is printed twice
      const column = sheet.pageSetup.fitToWidth === 2 ? 2 : 1;
      const under = table.notes.map((_, i) => sheet.getCell(table.rows.length + 3 + i, column).value);
      expect(under).toEqual(table.notes);
    }
  });
});

describe('a workbook', () => {
  it('holds hostile names as text', async () => {
    const table = pairsTable(hostileTexts.map(([name]) => [name, 1.5]));
    const book = await opened(await tablesXlsx([table], { ...about, title: '=1+1</t>&A' }));
    const sheet = await sheetOf(book, 'pairs');
    for (const [i, [, held]] of hostileTexts.entries()) {
      const { type, value } = sheet.getCell(i + 2, 1);
      expect(value).toBe(held);
      expect(type).toBe(ExcelJs.ValueType.String);
    }
    expect(book.worksheets[0]?.getCell(1, 1).value).toBe('=1+1</t>&A');
  });

  it('marks what looks like a formula, so that it stays text when the cell is edited', async () => {
    const xml = sheetXml(
      await tablesXlsx(
        [
          pairsTable([
            ['=1+1', 1],
            ['plain', 2],
          ]),
        ],
        about,
      ),
      2,
    );
    const look = (cell: string) => new RegExp(`r="${cell}" s="(\\d+)"`, 'u').exec(xml)?.[1];
    expect(look('A2')).not.toBe(look('A3'));
    expect(xml).not.toContain('<f>');
  });

  it('keeps a name that looks like a character told by its number', async () => {
    // ECMA-376 22.9.2.19: _x0041_ is read as A, and _x005F_ as the line that begins it
    const xml = sheetXml(await tablesXlsx([pairsTable([['_x0041_', 1]])], about), 2);
    expect(xml).toContain('>_x005F_x0041_<');
  });

  it('cuts a text that is longer than a cell can hold, and never in the middle of a character', async () => {
    // 32,767 characters: the limit of the file format's readers
    const texts = ['y'.repeat(40_000), '\ud83d\udd25'.repeat(20_000), 'z'.repeat(32_767)];
    const book = await opened(await tablesXlsx([pairsTable(texts.map((text) => [text, null]))], about));
    const found = texts.map((_, i) => String(book.getWorksheet('pairs')?.getCell(i + 2, 1).value));
    expect(found.map((text) => text.length)).toEqual([32_767, 32_767, 32_767]);
    expect(found.map((text) => text.at(-1))).toEqual(['\u2026', '\u2026', 'z']);
    expect(found.filter((text) => /\p{Cs}/u.test(text))).toEqual([]);
  });

  it('has no number where there is none', async () => {
    const rows = [
      ['a', null],
      ['b', Number.NaN],
      ['c', Number.POSITIVE_INFINITY],
      ['d', -0],
      ['e', 0.1 + 0.2],
    ];
    const book = await opened(await tablesXlsx([pairsTable(rows)], about));
    const found = rows.map((_, i) => book.getWorksheet('pairs')?.getCell(i + 2, 2).value);
    expect(found).toEqual([null, null, null, 0, 0.3]);
  });

  it('has names of sheets that every reader takes, no two alike', async () => {
    const names = ['a/b:c*d?e[f]g\\h', "'quoted'", 'n'.repeat(40), 'N'.repeat(40), 'History', '', 'About', 'about'];
    const book = await opened(
      await tablesXlsx(
        names.map((name) => pairsTable([], { name })),
        about,
      ),
    );
    const found = book.worksheets.map(({ name }) => name);
    expect(found).toHaveLength(names.length + 1);
    expect(new Set(found.map((name) => name.toLowerCase())).size).toBe(found.length);
    // what spreadsheet programs refuse: []:*?/\, an apostrophe at an end, more than 31 characters, none, the name History
    for (const name of found) expect(name).toMatch(/^(?!')(?!history$)[^[\]:*?/\\]{1,31}(?<!')$/iu);
    expect(found[1]).toBe('a-b-c-d-e-f-g-h');
  });

  it('is the same bytes again, in the browser too, and bears no time', async () => {
    const tables = demoTables('1-dwelling');
    const bytes = await tablesXlsx(tables, about);
    expect(await tablesXlsx(tables, about)).toEqual(bytes);
    const parts = unzipSync(bytes);
    // the build of the zip for browsers
    expect(zipSync(parts, { level: 4, mtime: '1980-01-01T00:00:00' })).toEqual(bytes);
    // MS-DOS date of 1 January 1980: (year - 1980) * 512 + month * 32 + day = 33, at time 0 (ZIP specification 4.4.6)
    expect([...bytes.slice(10, 14)]).toEqual([0, 0, 33, 0]);
    const text = Object.values(parts).map((part) => new TextDecoder().decode(part));
    expect(text.join('')).not.toMatch(/dcterms|\d\d:\d\d:\d\d/u);
  });

  it('prints wide tables on the largest sheet, over two where they would be too small to read', async () => {
    const wide = (count: number): Table => ({
      ...pairsTable([]),
      columns: Array.from({ length: count }, (_, i) => ({ head: `Column${i}`, unit: null, decimals: null })),
      rows: [Array.from({ length: count }, () => 'twenty digits of text')],
    });
    const setUp = async (count: number) => {
      const book = await opened(await tablesXlsx([wide(count)], about));
      const { paperSize, orientation, fitToWidth } = book.getWorksheet('pairs')?.pageSetup ?? {};
      return [paperSize, orientation, fitToWidth];
    };
    expect(await setUp(3)).toEqual([9, 'portrait', 1]);
    expect(await setUp(8)).toEqual([9, 'landscape', 1]);
    expect(await setUp(12)).toEqual([8, 'landscape', 1]);
    expect(await setUp(30)).toEqual([8, 'landscape', 2]);
  });
});

function sheetXml(bytes: Uint8Array, number: number): string {
  return new TextDecoder().decode(unzipSync(bytes)[`xl/worksheets/sheet${number}.xml`]);
}

/** On a build machine it must be there. */
const skipsOffice = office === null && !process.env.CI;

describe.skipIf(skipsOffice)('the workbook, opened by LibreOffice', () => {
  const hostile = pairsTable([...hostileTexts.map(([name]) => [name, 1]), ['_x0041_ stays', 1]]);
  let books: ReadonlyMap<string, ReadonlyMap<string, string>>;
  beforeAll(async () => {
    const tables = [...demoNames.map((name) => [name, demoTables(name)] as const), ['hostile', [hostile]] as const];
    const made = tables.map(async ([name, own]) => [name, await tablesXlsx(own, about)] as const);
    books = await officeSheets(new Map(await Promise.all(made)));
  }, 180_000);

  it.each(demoNames)('has the figures and texts of every table of %s', (name) => {
    const sheets = books.get(name) ?? new Map<string, string>();
    expect(sheets.size).toBe(demoTables(name).length + 1);
    for (const table of demoTables(name)) {
      const { data } = Papa.parse<string[]>(sheets.get(table.name) ?? '');
      const rows = data.slice(1, table.rows.length + 1);
      expect(data[0]).toEqual(table.columns.map(columnHead));
      for (const [k, { decimals, head }] of table.columns.entries()) {
        const cells = table.rows.map((row) => cellHeld(row[k] ?? null));
        const read = rows.map((row) => row[k] ?? '');
        const texts = (of: readonly (Cell | string)[]) => of.map((cell) => cell ?? '');
        if (decimals === null) expect(texts(read)).toEqual(texts(cells));
        else {
          const sum = (of: readonly (Cell | string)[]) => of.reduce<number>((total, cell) => total + Number(cell), 0);
          expect(sum(read), head).toBeCloseTo(sum(cells), 5);
        }
      }
    }
  });

  it('shows hostile names and works none of them out', () => {
    const { data } = Papa.parse<string[]>(books.get('hostile')?.get('pairs') ?? '');
    const found = data.slice(1, hostile.rows.length + 1).map(([name]) => name);
    expect(found).toEqual([...hostileTexts.map(([, held]) => held), '_x0041_ stays']);
  });
});
