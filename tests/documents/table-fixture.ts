import { registerTable } from '../../src/documents/register.ts';
import type { Cell, Table } from '../../src/documents/table.ts';
import { baysTable, findingsTable, jointsTable, quantitiesTable } from '../../src/documents/tables.ts';
import { cutsTable, tilesTable } from '../../src/documents/tile-tables.ts';
import { type demoNames, demoText, paperSourceOf } from './paper-fixture.ts';

const makers = [quantitiesTable, jointsTable, registerTable, baysTable, findingsTable, tilesTable, cutsTable];
const made = new Map<string, readonly Table[]>();

/** Tables of a demo, made once. */
export function demoTables(name: (typeof demoNames)[number]): readonly Table[] {
  const source = made.has(name) ? null : paperSourceOf(demoText(name));
  if (source !== null)
    made.set(
      name,
      makers.map((make) => make(source)),
    );
  return made.get(name) ?? [];
}

/** Names that somebody may give to a room, with what is left of each in any table: what cannot be held is a space or the sign for a broken character. */
export const hostileTexts: readonly (readonly [name: string, held: string])[] = [
  ['=1+1', '=1+1'],
  ['+1', '+1'],
  ['-2+3', '-2+3'],
  ['@sum(A1)', '@sum(A1)'],
  [' =1', ' =1'],
  ['\uff1d1+1', '\uff1d1+1'],
  ['=HYPERLINK("http://example.org","x")', '=HYPERLINK("http://example.org","x")'],
  ["=cmd|' /C calc'!A0", "=cmd|' /C calc'!A0"],
  ['</t></is></c><script>alert(1)</script>&amp;', '</t></is></c><script>alert(1)</script>&amp;'],
  ['a "quoted", name', 'a "quoted", name'],
  ["'='", "'='"],
  ['one\ntwo', 'one\ntwo'],
  [
    '\u05d7\u05d3\u05e8 \u0627\u0644\u063a\u0631\u0641\u0629',
    '\u05d7\u05d3\u05e8 \u0627\u0644\u063a\u0631\u0641\u0629',
  ],
  ['\u202egnp.exe', '\u202egnp.exe'],
  ['a\u0000b\u001bc\td\u007fe\u0085f', 'a b c d e f'],
  ['\ud800 alone \udc00', '\ufffd alone \ufffd'],
  ['\ufffe\uffff', '\ufffd\ufffd'],
  ['\ud83d\udd25 \u6c34', '\ud83d\udd25 \u6c34'],
  ['  kept  ', '  kept  '],
  ['007', '007'],
  ['1e5', '1e5'],
  ['TRUE', 'TRUE'],
  ['x'.repeat(10_000), 'x'.repeat(10_000)],
];

/** A text and a figure a row. */
export function pairsTable(rows: readonly (readonly Cell[])[], over: Partial<Table> = {}): Table {
  const columns = [
    { head: 'Name', unit: null, decimals: null },
    { head: 'Length', unit: 'm', decimals: 2 },
  ];
  return { name: 'pairs', title: 'Pairs', columns, rows, notes: [], ...over };
}
