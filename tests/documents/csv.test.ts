import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvOf } from '../../src/documents/csv.ts';
import { planTables } from '../../src/documents/plan-tables.ts';
import { type Cell, plain, type Table } from '../../src/documents/table.ts';
import { baysTable, findingsTable, jointsTable, quantitiesTable } from '../../src/documents/tables.ts';
import { cutsTable, tilesTable } from '../../src/documents/tile-tables.ts';
import { cutSizesText, toCutText } from '../../src/documents/tile-words.ts';
import { jointKinds } from '../../src/plan/analysis.ts';
import { analysisOf, planOf, room } from './fixture.ts';
import { paperSource } from './paper-fixture.ts';
import { fieldReport, jointedReport, tiledAnalysis, tiledPlan, wallCut } from './tile-fixture.ts';

/** A reader of RFC 4180, written from its grammar. */
function read(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    let cell = '';
    if (text[at] === '"') {
      for (at++; text[at] !== '"' || text[at + 1] === '"'; at++) {
        if (at >= text.length) throw new Error('a quote is never closed');
        if (text[at] === '"') at++;
        cell += text[at];
      }
      at++;
    } else {
      while (at < text.length && text[at] !== ',' && text[at] !== '\r') {
        if (text[at] === '"' || text[at] === '\n') throw new Error('a quote or line feed outside quotes');
        cell += text[at++];
      }
    }
    row.push(cell);
    if (text[at] === ',') at++;
    else if (text.startsWith('\r\n', at)) {
      rows.push(row);
      row = [];
      at += 2;
    } else throw new Error(`neither comma nor line end at ${at}`);
  }
  return rows;
}

/** Rows as CSV, without their head. */
function csvText(rows: readonly (readonly Cell[])[]): string {
  const columns = (rows[0] ?? []).map((_, i) => ({ head: `Column ${i}`, unit: null, decimals: null }));
  const table: Table = { name: 'rows', title: 'Rows', columns, rows, notes: [] };
  return csvOf(table).replace(/^.*\r\n/u, '');
}

function column(rows: readonly string[][], head: string): string[] {
  const at = (rows[0] ?? []).indexOf(head);
  expect(at, head).toBeGreaterThanOrEqual(0);
  return rows.slice(1).map((row) => row[at] ?? '');
}

describe('a table', () => {
  it('gives back every text and number that went in', () => {
    const cell = fc.oneof(fc.string({ unit: 'grapheme' }), fc.constantFrom('a,b', '"', 'x\r\ny', ''), fc.integer());
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1 }), (rows) => {
        const back = read(csvText(rows));
        expect(back.map((row) => row.map((each) => each.replace(/^'/u, '')))).toEqual(
          rows.map((row) => row.map((each) => String(each).replace(/^'/u, ''))),
        );
      }),
      { seed: 4 },
    );
  });

  it.each(['=1+1', '+1', '-1', '@sum', '\r=1', '\n=1', ' =1', '\uff1d1', '=a,"b"'])('defuses %j', (text) => {
    expect(read(csvText([[text]]))).toEqual([[`'${text}`]]);
  });

  it('has a space for every control character but line ends, also where one hides a formula', () => {
    expect(csvText([['a\u0000b\u001bc\td\u007fe\u0085f']])).toBe('a b c d e f\r\n');
    expect(csvText([['\u0000=1', '\t=1']])).toBe("' =1,' =1\r\n");
    expect(csvText([['x\r\ny']])).toBe('"x\r\ny"\r\n');
  });

  it('leaves numbers numbers, a negative one too, and writes no noise of floating point', () => {
    expect(csvText([[-1.5, 0.1 + 0.2, -0, 1e-9, 12345678.9, Number.NaN, Number.POSITIVE_INFINITY]])).toBe(
      '-1.5,0.3,0,0,12345678.9,,\r\n',
    );
  });
});

describe('quantities', () => {
  const rows = read(csvOf(quantitiesTable({ plan: planOf(), analysis: analysisOf() })));

  it('have a row for each room and one for the whole, with units in the heads', () => {
    expect(column(rows, 'Room')).toEqual(['Hall', 'Kitchen', 'Total']);
    expect(column(rows, 'Edge strip (m)')).toEqual(['41.2', '0', '41.2']);
    expect(column(rows, 'Screed (kg)').at(-1)).toBe('8080.5');
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  });

  it('have a column for each kind of joint, with the words of the trade', () => {
    expect(rows[0]?.filter((head) => /joint/iu.test(head))).toHaveLength(jointKinds.length);
    expect(column(rows, 'Intermediate movement joint (m)').at(-1)).toBe('4');
    expect(rows.flat().join()).not.toMatch(/field/iu);
  });

  it('keep a room called like a formula harmless', () => {
    const rooms = [room('r1', '=cmd|x', planOf().rooms[0]?.outline ?? [])];
    expect(column(read(csvOf(quantitiesTable({ plan: planOf({ rooms }), analysis: analysisOf() }))), 'Room')[0]).toBe(
      "'=cmd|x",
    );
  });
});

describe('lists', () => {
  it('name each joint by its rooms, its kind in words and its movement with units', () => {
    const rows = read(csvOf(jointsTable({ plan: planOf(), analysis: analysisOf() })));
    expect(column(rows, 'Joint')).toEqual(['J1', 'J2']);
    expect(column(rows, 'Between')).toEqual(['Hall', 'Hall – Kitchen']);
    expect(column(rows, 'Kind')).toEqual(['Intermediate movement joint', 'Doorway joint']);
    expect(column(rows, 'Closing, worst case (mm)')).toEqual(['2.1', '2.1']);
  });

  it('hold each bay with its area, sides and still point', () => {
    const rows = read(csvOf(baysTable({ plan: planOf(), analysis: analysisOf() })));
    expect(column(rows, 'Area (m2)')[0]).toBe('28');
    expect(column(rows, 'Still point x (mm)')).toEqual(['2000', '6500', '6560']);
    expect(column(rows, 'Within the limits')).toEqual(['yes', 'yes', 'yes']);
  });
});

describe('findings', () => {
  const rows = read(csvOf(findingsTable({ plan: planOf(), analysis: analysisOf() })));

  it('are numbered as their pins on the drawing, with their place', () => {
    const { findings } = analysisOf();
    expect(column(rows, 'Number')).toEqual(findings.map((_, i) => String(i + 1)));
    expect(column(rows, 'Place x (mm)')).toEqual(findings.map(({ at }) => (at === null ? '' : String(at[0]))));
  });

  it('tell how far their source can be relied on', () => {
    const of = (source: string) => {
      const findings = analysisOf()
        .findings.slice(0, 1)
        .map((each) => ({ ...each, source }));
      const [, row] = read(csvOf(findingsTable({ plan: planOf(), analysis: analysisOf({ findings }) })));
      return row?.slice(6, 8);
    };
    // the standings of shared/trade-facts: EN 1264-4 was seen in texts that restate it, the German leaflet not at all
    expect(of('strip-travel')).toEqual(['EN 1264-4', 'published, as restated in trade literature']);
    expect(of('ca-leaflet')?.[1]).toBe('from memory: check against the document');
    expect(of('Data sheet 7')).toEqual(['Data sheet 7', 'entered by the user']);
  });
});

describe('lists of tiles', () => {
  it('tell of each joint how far it lies off the grout lines, and what the tiles do there', () => {
    const rows = read(csvOf(jointsTable({ plan: tiledPlan(), analysis: tiledAnalysis() })));
    expect(column(rows, 'On grout line')).toEqual(['no', 'no']);
    expect(column(rows, 'Off grout line (mm)')).toEqual(['219.5', '159.5']);
    expect(column(rows, 'Tiles cut')).toEqual(['7', '2']);
    expect(column(rows, 'Tiles at the joint')).toEqual(['7 tiles cut along it', '2 tiles cut along it']);
    const untiled = read(csvOf(jointsTable({ plan: planOf(), analysis: analysisOf() })));
    for (const head of ['On grout line', 'Off grout line (mm)', 'Tiles cut', 'Tiles at the joint'])
      expect(column(untiled, head)).toEqual(['', '']);
  });

  it('have a row a field, with what to order', () => {
    const rows = read(csvOf(tilesTable({ plan: tiledPlan(), analysis: tiledAnalysis() })));
    expect(column(rows, 'Field')).toEqual(['Tiles of the floor']);
    expect(column(rows, 'Rooms')).toEqual(['Hall, Kitchen']);
    expect(column(rows, 'Cut tiles')).toEqual(['60']);
    // 90 whole and so many pieces, less 20 from off-cuts, are the 130 to lay.
    expect(column(rows, 'Cut pieces')).toEqual(['60']);
    expect(column(rows, 'Allowance (%)')).toEqual(['10']);
    expect(column(rows, 'Tiles to order')).toEqual(['143']);
    expect(column(rows, 'Boxes')).toEqual(['36']);
  });

  it('have a row a wall with its cut, what comes off it, and how narrow it is', () => {
    const rows = read(csvOf(cutsTable({ plan: tiledPlan(), analysis: tiledAnalysis() })));
    expect(column(rows, 'Cut')).toEqual(['whole tiles', '558 mm', '98 mm', '250 mm', '382 mm', '30 mm']);
    expect(column(rows, 'Smallest cut (mm)')).toEqual(['', '558', '98', '250', '382', '30']);
    expect(column(rows, 'Narrow')).toEqual(['', '', 'under a third', 'under half', '', 'under a third']);
    expect(column(rows, 'Along').slice(-2)).toEqual(['Joint', 'Jamb']);
    // the edge strip of 10 mm at a wall and a jamb, half of the sealant of 8 mm at a joint
    expect(column(rows, 'Comes off for the open joint (mm)').slice(-2)).toEqual(['4', '10']);
    // whole 600 - 10, 558 - 10, 98 - 10, 250 - 10, 382 - 4, 30 - 10
    expect(column(rows, 'To cut')).toEqual(['590 mm', '548 mm', '88 mm', '240 mm', '378 mm', '20 mm']);
  });

  it('count what falls into the perimeter joint among the pieces only, so that they add up', () => {
    const rows = read(csvOf(tilesTable({ plan: tiledPlan(), analysis: tiledAnalysis([jointedReport]) })));
    const heads = [
      'Whole tiles',
      'Cut pieces',
      'Pieces into the perimeter joint',
      'Cuts from off-cuts',
      'Tiles to lay',
    ];
    expect(heads.flatMap((head) => column(rows, head))).toEqual(['90', '60', '6', '20', '124']);
    const narrow = ['Cut tiles', 'Cuts under half', 'Slivers, under a third', 'Smallest cut (mm)'];
    expect(narrow.flatMap((head) => column(rows, head))).toEqual(['54', '7', '5', '96']);
  });

  it('tell lengths on a turned floor to 0.1 mm', () => {
    const line = [
      [1000.00004, 20.26],
      [4000, 1111.9099],
    ] as const;
    const cuts = [wallCut('B2', 'r1', line, [357.98704], { wholeMm: 600.01296 })];
    const sawn = { cut: 1, underHalf: 0, slivers: 0, smallestCutMm: 357.98704 };
    const analysis = tiledAnalysis([fieldReport({ cuts, sawn })]);
    const [heads = [], cells = []] = read(csvOf(cutsTable({ plan: tiledPlan(), analysis })));
    const lengths = cells.filter((_, i) => /\(mm\)$/u.test(heads[i] ?? ''));
    expect(lengths).toEqual(['1000', '20.3', '4000', '1111.9', '358', '600', '10']);
    expect(column(read(csvOf(tilesTable({ plan: tiledPlan(), analysis }))), 'Smallest cut (mm)')).toEqual(['358']);
  });

  it('leave out what is no wider than the joint that it falls into', () => {
    const cut = { along: 'wall', isAskew: false, tiles: 4, wholeMm: 600, wholeOffMm: null } as const;
    expect(toCutText({ ...cut, sizesMm: [10] }, 10)).toBe('left out: falls into the joint');
    // of 9 and 310 mm one is left out, 310 - 10 = 300
    expect(plain(toCutText({ ...cut, sizesMm: [9, 310] }, 10))).toBe('300 mm; left out up to 10 mm');
    expect(plain(toCutText({ ...cut, isAskew: true, sizesMm: [2, 560] }, 10))).toBe(
      'up to 550 mm; left out up to 10 mm',
    );
    expect(toCutText({ ...cut, along: 'pipe', sizesMm: [90] }, 10)).toMatch(/^drilled/u);
  });

  it('take less off whole tiles at a joint in grout, which end before its middle, and half of its profile at a joint of the building', () => {
    const at = (object: string, tiles: number) =>
      wallCut(
        'B1',
        null,
        [
          [4000, 0],
          [4000, 4000],
        ],
        [600],
        { along: 'joint', object, tiles, wholeOffMm: tiles === 0 ? 1.5 : null },
      );
    const analysis = tiledAnalysis([fieldReport({ cuts: [at('J1', 0), at('J2', 3)] })]);
    const joints = analysis.joints.map((each) =>
      each.id === 'J2' ? { ...each, kind: 'structural' as const, profileMm: 30 } : each,
    );
    // whole tiles end half a grout of 3 before the middle of the joint: 8 / 2 - 1.5, and 30 / 2
    const rows = read(csvOf(cutsTable({ plan: tiledPlan(), analysis: { ...analysis, joints } })));
    expect(column(rows, 'Comes off for the open joint (mm)')).toEqual(['2.5', '15']);
  });

  it('write the sizes of shifted courses out, and the least and the greatest of an askew wall', () => {
    expect(cutSizesText({ sizesMm: [150, 451.4], isAskew: false, wholeOffMm: null })).toBe('150 / 451\u00a0mm');
    expect(cutSizesText({ sizesMm: [20, 560], isAskew: true, wholeOffMm: null })).toBe('20 to 560\u00a0mm');
    expect(cutSizesText({ sizesMm: [20, 120, 220, 320], isAskew: false, wholeOffMm: null })).toBe('20 to 320\u00a0mm');
    expect(cutSizesText({ sizesMm: [199.8, 200.2], isAskew: false, wholeOffMm: null })).toBe('200\u00a0mm');
  });
});

describe('documents', () => {
  it('call each file of a table by the name of the table', () => {
    const source = paperSource(tiledPlan(), tiledAnalysis());
    for (const { name, make } of planTables(source)) expect(make(source).name).toBe(name);
  });
});
