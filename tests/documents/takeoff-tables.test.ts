import { describe, expect, it } from 'vitest';
import { csvOf } from '../../src/documents/csv.ts';
import { cellDecimals, type Table } from '../../src/documents/table.ts';
import { takeOffOf, takeoffBaysTable, takeoffRoomsTable, takeoffTable } from '../../src/documents/takeoff-tables.ts';
import { analysisOf, planOf } from './fixture.ts';
import { demoNames, demoText, paperSource, paperSourceOf } from './paper-fixture.ts';
import { gridSource } from './pour-fixture.ts';

/** Cells of a column, row by row. */
function column({ columns, rows }: Table, head: string) {
  const at = columns.findIndex((each) => each.head === head);
  if (at < 0) throw new Error(`no column ${head}`);
  return rows.map((row) => row[at] ?? null);
}

/** A figure in last digits, as a reader adds it. */
function lastDigits(value: unknown, decimals: number): number {
  return Math.round(Number(value) * 10 ** decimals);
}

describe.each(demoNames)('the tables of the take-off of %s', (name) => {
  const source = paperSourceOf(demoText(name));
  const takeOff = takeOffOf(source);
  const whole = takeoffTable(takeOff);
  const decimals = whole.rowDecimals ?? [];

  it('have net and allowance add up to the whole in the figures that stand there', () => {
    const [net, allowance, gross] = ['Net', 'Allowance', 'With allowance'].map((head) => column(whole, head));
    for (const [row, digits] of decimals.entries()) {
      const [a, b, c] = [net, allowance, gross].map((cells) => lastDigits(cells?.[row], digits)) as [
        number,
        number,
        number,
      ];
      expect(a + b).toBe(c);
    }
  });

  it.each([
    ['rooms', takeoffRoomsTable(source, takeOff), 'Room', 'All rooms'],
    ['bays', takeoffBaysTable(source, takeOff), 'Bay', 'All bays'],
  ] as const)('have the %s of each line add up to it in the figures that stand there', (_, table, head, all) => {
    const [names, nets] = [column(table, head), column(table, 'Net')];
    let sum = 0;
    const totals: number[] = [];
    for (const [row, name] of names.entries()) {
      const digits = lastDigits(nets[row], table.rowDecimals?.[row] ?? 0);
      if (name !== all) sum += digits;
      else {
        expect(sum).toBe(digits);
        totals.push(digits);
        sum = 0;
      }
    }
    expect(totals).toEqual(column(whole, 'Net').map((net, row) => lastDigits(net, decimals[row] ?? 0)));
  });

  it('say what each allowance is, and mark each line, room and bay on the drawing', () => {
    expect(column(whole, 'Allowed for').every((words) => words !== '')).toBe(true);
    for (const table of [whole, takeoffRoomsTable(source, takeOff), takeoffBaysTable(source, takeOff)]) {
      expect(table.refs).toHaveLength(table.rows.length);
      expect(table.refs?.every((refs) => refs.length > 0)).toBe(true);
      expect(table.rowDecimals).toHaveLength(table.rows.length);
    }
  });

  it('have the rolls of the rooms add up to those ordered', () => {
    const table = takeoffRoomsTable(source, takeOff);
    const [rooms, rolls] = [column(table, 'Room id'), column(table, 'Order')];
    const of = (isAll: boolean) =>
      rolls.reduce<number>((sum, count, row) => sum + ((rooms[row] === null) === isAll ? Number(count) : 0), 0);
    expect(of(false)).toBe(of(true));
  });
});

it('says where each line comes from and how far that can be relied on', () => {
  const table = takeoffTable(takeOffOf(paperSourceOf(demoText('1-dwelling'))));
  const by = (item: string) => column(table, 'Source')[column(table, 'Item').indexOf(item)];
  expect(by('Backer')).toBe('Common practice');
  expect(by('Sleeves on heating pipes')).toMatch(/^EN 1264-4: published, as restated in trade literature; /u);
  expect(by('Membrane over the insulation')).toMatch(/^EN 1264-4, recalled: from memory/u);
});

describe('loads of screed', () => {
  /** Three bays of 1 m3, no allowance, loads of 1.5 m3. */
  const screed = (mostM3PerDay: number) => {
    const order = { screedAllowance: 0, loadM3: 1.5 };
    const table = takeoffTable(takeOffOf(gridSource(3, 1, { order, pour: { mostM3PerDay } })));
    const row = column(table, 'Item').indexOf('Screed');
    return ['Order', 'Ordered in', 'Note'].map((head) => column(table, head)[row]);
  };

  it('are as many as the days of the pour plan take, each day whole loads', () => {
    // by hand: 2 m3 on the first day take 2 loads, 1 m3 on the second takes 1; 3 m3 at once would take 2
    const note = expect.stringMatching(/Loads are whole for each day of the pour plan\.$/u);
    expect(screed(2)).toEqual([3, 'loads of 1.5 m\u00b3', note]);
  });

  it('are those of the whole floor where it is laid in one day', () => {
    expect(screed(3)).toEqual([2, 'loads of 1.5 m\u00b3', expect.not.stringContaining('each day')]);
  });
});

describe('prices in the table of the take-off', () => {
  const source = (order: object) => ({
    ...paperSource(planOf(), analysisOf()),
    file: { ...paperSource(planOf(), analysisOf()).file, order },
  });

  it('have no column where none is given', () => {
    expect(takeoffTable(takeOffOf(source({}))).columns.map(({ head }) => head)).not.toContain('Price');
  });

  it('have columns in the currency that is entered, a total, and a note on what is not priced', () => {
    // one joint in the hall of 4 m and one in the doorway of 0.9 m: 2 + 1 and 1 + 1 bars, 5 x 7.50 = 37.50
    const table = takeoffTable(takeOffOf(source({ currency: 'EUR', prices: { profileBar: 7.5 } })));
    const cost = table.columns.find(({ head }) => head === 'Cost');
    expect(cost).toMatchObject({ unit: 'EUR', decimals: 2 });
    expect(column(table, 'Cost').at(-1)).toBe(37.5);
    expect(column(table, 'Item').at(-1)).toBe('Total of what is priced');
    expect(table.notes.join(' ')).toMatch(/^.*Not priced, and not in the total: Edge strip, .*Screed, CT-C25-F4/u);
  });
});

describe('figures in the table of the take-off', () => {
  it('have the digits of their row: kilograms whole, metres to the centimetre, prices to the hundredth', () => {
    const table = takeoffTable(
      takeOffOf({ ...paperSource(planOf(), analysisOf(), { order: { prices: { tile: 2 } } }) }),
    );
    const digits = (unit: string, head: string) => {
      const at = table.columns.findIndex((each) => each.head === head);
      return cellDecimals(
        table,
        table.columns[at] ?? { head, unit, decimals: null },
        column(table, 'Unit').indexOf(unit),
      );
    };
    expect(digits('kg', 'Net')).toBe(0);
    expect(digits('m', 'Net')).toBe(2);
    expect(digits('kg', 'Order')).toBe(0);
    expect(digits('kg', 'Cost')).toBe(2);
    expect(digits('kg', 'Item')).toBeNull();
  });
});

it('keeps hostile names of rooms and currencies harmless in a file of rows', () => {
  const [hall, ...rest] = planOf().rooms;
  if (hall === undefined) throw new Error('no room');
  const plan = planOf({ rooms: [{ ...hall, name: '=HYPERLINK("x")\u202e\n' }, ...rest] });
  const source = paperSource(plan, analysisOf(), { order: { currency: '=1+1\r\n', prices: { tile: 1 } } });
  const takeOff = takeOffOf(source);
  const text = csvOf(takeoffRoomsTable(source, takeOff));
  expect(text).toContain(`"'=HYPERLINK(""x"")"`);
  expect(text).not.toContain('\u202e');
  expect(csvOf(takeoffTable(takeOff)).split('\r\n')[0]).toContain('Price (=1+1)');
});
