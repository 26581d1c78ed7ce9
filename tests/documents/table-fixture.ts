import { planTables } from '../../src/documents/plan-tables.ts';
import type { Cell, Table } from '../../src/documents/table.ts';
import { type demoNames, demoText, paperSourceOf } from './paper-fixture.ts';

const made = new Map<string, readonly Table[]>();

/** Tables of a demo, made once. */
export function demoTables(name: (typeof demoNames)[number]): readonly Table[] {
  const known = made.get(name);
  if (known !== undefined) return known;
  const source = paperSourceOf(demoText(name));
  const tables = planTables(source).map(({ make }) => make(source));
  made.set(name, tables);
  return tables;
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
