import type { Change, Comparison, FindingVersion, JointVersion, WhatBecame } from './compare.ts';
import { quantityChange, quantityIsChanged } from './compare-quantities.ts';
import { type ColumnOf, columnByRow, columnFigure, columnText, plain, type Table, tableOf } from './table.ts';
import { areaText, figureText, jointKindNames, movementText } from './words.ts';

/** The comparison of two versions as tables. What has not changed is counted and not listed. */

export const becameWords: Readonly<Record<WhatBecame, string>> = {
  same: 'as it was',
  moved: 'moved',
  changed: 'changed',
  appeared: 'new',
  went: 'gone',
};

export function comparisonTables(comparison: Comparison): readonly Table[] {
  return [
    compareJointsTable(comparison),
    compareBaysTable(comparison),
    compareQuantitiesTable(comparison),
    compareOrderTable(comparison),
    compareSettingsTable(comparison),
    compareFindingsTable(comparison),
  ];
}

export function compareJointsTable({ joints }: Comparison): Table {
  type Row = Comparison['joints'][number];
  const columns: readonly ColumnOf<Row>[] = [
    columnText('What', ({ what }) => becameWords[what]),
    columnText('Joint now', ({ now }) => now?.id ?? noneThere),
    columnText('Joint before', ({ before }) => before?.id ?? noneThere),
    columnText('Between', (row) => latest(row)?.name ?? null),
    columnText('Kind', (row) => (latest(row) ? jointKindNames[(latest(row) as JointVersion).kind] : null)),
    columnFigure('Moved', 'mm', 0, ({ movedMm }) => (movedMm > 0 ? movedMm : null)),
    columnFigure('Length before', 'm', 2, ({ before }) => before?.lengthM ?? null),
    columnFigure('Length now', 'm', 2, ({ now }) => now?.lengthM ?? null),
    columnFigure('Closes before', 'mm', 1, ({ before }) => before?.closingMm ?? null),
    columnFigure('Closes now', 'mm', 1, ({ now }) => now?.closingMm ?? null),
    columnText('Also', (row) => kinText(row, ['where', 'was', 'is now']) ?? alsoText(row)),
  ];
  const rows = joints.filter(({ what }) => what !== 'same');
  return tableOf(
    {
      name: 'compare-joints',
      title: 'Joints: what changed',
      notes: [
        unchangedText(joints.length - rows.length, 'joint'),
        'Moved: square to the joint; in a doorway or a neck also along it.',
      ],
    },
    columns,
    rows,
    ({ now }) => (now === null ? [] : [{ kind: 'joint', id: now.id }]),
  );
}

export function compareBaysTable({ bays }: Comparison): Table {
  type Row = Comparison['bays'][number];
  const columns: readonly ColumnOf<Row>[] = [
    columnText('What', ({ what }) => becameWords[what]),
    columnText('Bay now', ({ now }) => now?.id ?? noneThere),
    columnText('Bay before', ({ before }) => before?.id ?? noneThere),
    columnText('Rooms', (row) => latest(row)?.name ?? null),
    columnFigure('Area before', 'm2', 1, ({ before }) => before?.areaM2 ?? null),
    columnFigure('Area now', 'm2', 1, ({ now }) => now?.areaM2 ?? null),
    columnText('Sides before', ({ before }) => before && sidesText(before)),
    columnText('Sides now', ({ now }) => now && sidesText(now)),
    columnText('Within the limits before', ({ before }) => before && yesNo(before.within)),
    columnText('Within the limits now', ({ now }) => now && yesNo(now.within)),
    columnText('Also', (row) => kinText(row, ['floor of', 'before', 'now']) ?? elsewhereText(row)),
  ];
  const rows = bays.filter(({ what }) => what !== 'same');
  return tableOf(
    {
      name: 'compare-bays',
      title: 'Bays: what changed',
      notes: [
        unchangedText(bays.length - rows.length, 'bay'),
        'A bay is the same one where more than half of the floor of both lies in the other.',
      ],
    },
    columns,
    rows,
    ({ now }) => (now === null ? [] : [{ kind: 'bay', id: now.id }]),
  );
}

/** Of the whole floor all quantities, of rooms those that changed. */
export function compareQuantitiesTable({ quantities }: Comparison): Table {
  type Row = Comparison['quantities'][number];
  const columns: readonly ColumnOf<Row>[] = [
    columnText('Room', ({ room }) => room ?? 'In all'),
    columnText('Quantity', ({ words }) => words),
    columnText('Unit', ({ unit }) => unit),
    figureOrNone('Before', ({ before }) => before),
    figureOrNone('Now', ({ now }) => now),
    columnByRow(columnFigure('Change', null, 2, quantityChange)),
  ];
  const rows = quantities.filter((pair) => pair.room === null || quantityIsChanged(pair));
  const table = tableOf(
    {
      name: 'compare-quantities',
      title: 'Quantities before and now',
      notes: [
        'Net, no allowance. Of rooms only what changed; none: the room is not there. Small changes take more digits to be seen.',
        'All rooms add up to the whole, as in the take-off: for that a room may take a last digit more or less than before.',
      ],
    },
    columns,
    rows,
  );
  return { ...table, rowDecimals: rows.map(({ decimals }) => decimals) };
}

/** What is ordered otherwise than before. */
export function compareOrderTable({ orders }: Comparison): Table {
  type Row = Comparison['orders'][number];
  const columns: readonly ColumnOf<Row>[] = [
    columnText('Item', ({ item }) => item),
    columnText('What before', ({ before }) => before?.spec ?? noneThere),
    columnText('What now', ({ now }) => now?.spec ?? noneThere),
    columnText('Unit', ({ unit }) => unit),
    figureOrNone('Net before', ({ before }) => before?.net),
    figureOrNone('Net now', ({ now }) => now?.net),
    figureOrNone('With allowance before', ({ before }) => before?.gross),
    figureOrNone('With allowance now', ({ now }) => now?.gross),
    columnText('Order before', ({ before }) => (before === null ? noneThere : before.order)),
    columnText('Order now', ({ now }) => (now === null ? noneThere : now.order)),
  ];
  const notes =
    orders.length === 0
      ? ['All is ordered as before.']
      : ['What is ordered as before is left out. A line of which only a dimension is another stands once.'];
  const table = tableOf({ name: 'compare-order', title: 'Order before and now', notes }, columns, orders);
  return { ...table, rowDecimals: orders.map(({ decimals }) => decimals) };
}

/** What stands where there is no such thing: an empty cell could be one that was not filled in. */
const noneThere = 'none';

/** A column of figures to the digits of the row. */
function figureOrNone<Row>(head: string, cell: (row: Row) => number | null | undefined): ColumnOf<Row> {
  return { head, unit: null, decimals: 2, byRow: true, cell: (row) => cell(row) ?? noneThere };
}

export function compareSettingsTable({ settings }: Comparison): Table {
  type Row = Comparison['settings'][number];
  const columns: readonly ColumnOf<Row>[] = [
    columnText('Of', ({ of }) => of ?? 'Plan'),
    columnText('Setting', ({ words }) => words),
    columnText('Unit', ({ unit }) => unit),
    { head: 'Before', unit: null, decimals: null, cell: ({ before, unset }) => before ?? unset },
    { head: 'Now', unit: null, decimals: null, cell: ({ now, unset }) => now ?? unset },
  ];
  return tableOf({ name: 'compare-settings', title: 'Settings that changed' }, columns, settings);
}

export function compareFindingsTable({ findings: { came, went } }: Comparison): Table {
  type Row = FindingVersion & { readonly what: string };
  const rows: readonly Row[] = [
    ...came.map((finding) => ({ ...finding, what: becameWords.appeared })),
    ...went.map((finding) => ({ ...finding, what: becameWords.went })),
  ];
  const columns: readonly ColumnOf<Row>[] = [
    columnText('What', ({ what }) => what),
    columnText('Severity', ({ severity }) => severity),
    columnText('Finding', (row) => row.text),
  ];
  return tableOf({ name: 'compare-findings', title: 'Findings that came and went' }, columns, rows);
}

/** The comparison in a few lines: what of, and what became of it. On screen as well. */
export function comparisonSummary({
  joints,
  bays,
  counts,
}: Comparison): readonly (readonly [of: string, text: string])[] {
  const { settings, quantities, orders, findingsCame, findingsWent } = counts;
  return [
    ['Joints', changesText(joints, 'joint')],
    ['Bays', changesText(bays, 'bay')],
    ['Settings', `${countedText(settings)} changed`],
    ['Quantities', `${countedText(quantities)} of the whole floor changed`],
    ['Order', orders === 0 ? 'as before' : `${orders} ${orders === 1 ? 'line' : 'lines'} changed`],
    ['Findings', `${countedText(findingsCame)} new, ${countedText(findingsWent)} gone`],
  ];
}

function countedText(count: number): string {
  return count === 0 ? 'none' : String(count);
}

/** Examples: "3 joints moved, 1 new"; "no joint changed" */
export function changesText(changes: readonly { readonly what: WhatBecame }[], one: 'joint' | 'bay'): string {
  const parts = (['moved', 'changed', 'appeared', 'went'] as const).flatMap((what) => {
    const count = changes.filter((change) => change.what === what).length;
    return count === 0 ? [] : [{ count, words: becameWords[what] }];
  });
  if (parts.length === 0) return `no ${one} changed`;
  return parts
    .map(({ count, words }, i) => (i > 0 ? `${count} ${words}` : `${count} ${count === 1 ? one : `${one}s`} ${words}`))
    .join(', ');
}

function unchangedText(count: number, one: string): string {
  if (count === 0) return `No ${one} is as it was.`;
  return count === 1 ? `1 ${one} is as it was.` : `${count} ${one}s are as they were.`;
}

/** Where one that came or went lies in the other version. Examples: "where J1 was"; "floor of B2, B3 now" */
function kinText(
  { before, kin }: Pick<Change<unknown>, 'before' | 'kin'>,
  [start, was, is]: readonly [start: string, was: string, is: string],
): string | null {
  return kin.length === 0 ? null : `${start} ${kin.join(', ')} ${before === null ? was : is}`;
}

/** Example: "8.0 m\u00b2 of it elsewhere" */
function elsewhereText({ what, elsewhereM2 }: Pick<Change<unknown>, 'what' | 'elsewhereM2'>): string | null {
  const text = areaText(elsewhereM2);
  return what !== 'changed' || text === areaText(0) ? null : plain(`${text} of it elsewhere`);
}

/** What else of a joint is another now. Example: "kind was: Joint drawn by hand; opens 0.4 mm, was 0.2 mm" */
function alsoText({ before, now }: Change<JointVersion>): string | null {
  if (before === null || now === null) return null;
  const figures = (
    [
      ['profile', before.profileMm, now.profileMm],
      ['opens', before.openingMm, now.openingMm],
      ['slides', before.slidingMm, now.slidingMm],
    ] as const
  ).flatMap(([words, was, is]) =>
    movementText(was) === movementText(is) ? [] : [`${words} ${movementText(is)}, was ${movementText(was)}`],
  );
  const kind = before.kind === now.kind ? [] : [`kind was: ${jointKindNames[before.kind]}`];
  const parts = [...kind, ...figures];
  return parts.length === 0 ? null : parts.join('; ');
}

function latest<T>({ before, now }: Change<T>): T | null {
  return now ?? before;
}

function sidesText({ lengthM, widthM }: { readonly lengthM: number; readonly widthM: number }): string {
  return `${figureText(lengthM, 2)} \u00d7 ${figureText(widthM, 2)} m`;
}

function yesNo(is: boolean): string {
  return is ? 'yes' : 'no';
}
