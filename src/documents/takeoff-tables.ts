import type { Bay } from '../plan/analysis.ts';
import { orderingOf, priceDigits, priceLeastDigits } from '../plan/papers.ts';
import { type TakeOff, type TakeOffLine, type TakeOffOrder, takeOffUnit } from '../plan/take-off.ts';
import { figureShown } from '../takeoff/figures-rounded.ts';
import { orderOf } from '../takeoff/order.ts';
import type { DrawingRef } from './drawing.ts';
import { type PaperSource, perSource } from './paper-source.ts';
import { pourPlanOf } from './pour-plan.ts';
import { registerEntries } from './register-entries.ts';
import { sourceStanding, sourceWhere } from './source-words.ts';
import { type ColumnOf, columnByRow, columnFigure, columnText, type Table, tableOf } from './table.ts';
import type { TableSource } from './tables.ts';
import { figureText, namesOf, oneLine } from './words.ts';

/** The take-off as tables: what to order, and what of it falls to each room and each bay. Figures are those that are shown, so that they add up to the
 *  last digit wherever they are read. */

/** Made once for all that shows it. */
export const takeOffOf = perSource((source: PaperSource): TakeOff => {
  const { file, plan, analysis } = source;
  const takeOff = orderOf(plan, analysis, orderingOf(file), registerEntries(source));
  const loads = pourPlanOf(source).lots.reduce((sum, lot) => sum + lot.loads, 0);
  return { ...takeOff, lines: takeOff.lines.map((line) => screedByDays(line, loads)) };
});

/** Each day of the pour takes whole loads, so that together they may take more than the floor laid at once.
 *  @param loads of all days of the pour plan */
function screedByDays(line: TakeOffLine, loads: number): TakeOffLine {
  const { key, order, notes } = line;
  if (key !== 'screed:volume' || order === null || loads <= order.count) return line;
  return {
    ...line,
    order: { ...order, count: loads },
    notes: [...notes, 'Loads are whole for each day of the pour plan.'],
  };
}

/** Every line: net, allowance, and what to order; with prices where some are given. */
export function takeoffTable({ lines, currency, cost }: TakeOff): Table {
  type Row = TakeOffLine | 'total';
  const rows: readonly Row[] = cost === null ? lines : [...lines, 'total'];
  const words = (head: string, cell: (line: TakeOffLine) => string) =>
    columnText<Row>(head, (row) => (row === 'total' ? null : cell(row)));
  const amount = (head: string, cell: (line: TakeOffLine) => number) =>
    columnByRow(
      columnFigure<Row>(head, null, 2, (row) => (row === 'total' ? null : figureShown(cell(row), row.decimals))),
    );
  const money = oneLine(currency) || null;
  const priceDecimals = Math.max(priceLeastDigits, ...lines.map(({ price }) => priceDigits(price?.amount ?? 0)));
  const columns: readonly ColumnOf<Row>[] = [
    columnText('Item', (row) => (row === 'total' ? 'Total of what is priced' : row.item)),
    words('What', ({ spec }) => spec),
    words('Unit', unitOf),
    amount('Net', ({ net }) => net),
    amount('Allowance', ({ allowance }) => allowance.amount),
    amount('With allowance', ({ gross }) => gross),
    columnFigure<Row>('Order', null, 0, (row) => (row === 'total' ? null : (row.order?.count ?? null))),
    words('Ordered in', ({ order }) => orderWords(order, order?.count ?? 0)),
    ...(cost === null
      ? []
      : [
          columnFigure<Row>('Price', money, priceDecimals, (row) =>
            row === 'total' ? null : (row.price?.amount ?? null),
          ),
          words('Price per', ({ price }) => price?.per ?? ''),
          columnFigure<Row>('Cost', money, 2, (row) => (row === 'total' ? cost.total : row.cost)),
        ]),
    words('Allowed for', ({ allowance }) => allowance.words),
    words('Note', noteWords),
    words('Source', ({ sources }) => [...new Set(sources.map(sourceWords))].join('; ')),
  ];
  const table = tableOf<Row>(
    { name: 'take-off', title: 'Take-off', sums: cost === null ? 0 : 1, notes: takeoffNotes(lines, cost) },
    columns,
    rows,
    (row) => (row === 'total' ? [] : row.refs),
  );
  return { ...table, rowDecimals: rows.map((row) => (row === 'total' ? 0 : row.decimals)) };
}

/** One word for all figures of a line, wherever it stands: lists are added up by it. */
function unitOf({ unit, gross, decimals }: TakeOffLine): string {
  return takeOffUnit(figureShown(gross, decimals), unit);
}

/** @param count of all   Example: 1 -> "roll of 25 m" */
export function orderWords(order: Pick<TakeOffOrder, 'unit' | 'content'> | null, count: number): string {
  if (order === null) return '';
  const unit = takeOffUnit(count, order.unit);
  return order.content === '' ? unit : `${unit} of ${order.content}`;
}

/** Example: "Of it: walls 168.01, columns 2.70." and what else is to be said */
function noteWords({ parts, decimals, notes }: TakeOffLine): string {
  const each = parts.map(({ name, amount }) => `${name} ${figureText(amount, decimals)}`);
  return [...(each.length === 0 ? [] : [`Of it: ${each.join(', ')}.`]), ...notes].join(' ');
}

/** Example: "EN 1264-4: published, as restated in trade literature" */
function sourceWords(key: string): string {
  const [where, standing] = [sourceWhere(key), sourceStanding(key)];
  return where.toLowerCase() === standing ? where : `${where}: ${standing}`;
}

function takeoffNotes(lines: TakeOff['lines'], cost: TakeOff['cost']): readonly string[] {
  const unpriced = lines.filter(({ key }) => cost?.unpriced.includes(key)).map(({ item, spec }) => `${item}, ${spec}`);
  return [
    'Net is as measured on the plan. What is allowed for stands with each line and can be changed.',
    ...(unpriced.length === 0 ? [] : [`Not priced, and not in the total: ${unpriced.join('; ')}.`]),
  ];
}

/** What of each line falls to each room, and in all. Edge strip is ordered room by room. */
export function takeoffRoomsTable({ plan, analysis }: TableSource, { lines }: TakeOff): Table {
  const names = namesOf(plan, analysis);
  const ids = plan.rooms.map(({ id }) => id);
  const rows = lines.flatMap((line) => lineShares(line, ids, 'room'));
  const rolls = new Map(
    lines.map((line) => [line, new Map(line.order?.rooms.map(({ room, count }) => [room, count]))]),
  );
  const rollsOf = ({ line, id }: LineShare) =>
    line.order?.rooms.length ? (id === null ? line.order.count : (rolls.get(line)?.get(id) ?? null)) : null;
  const about = {
    name: 'take-off-rooms',
    title: 'Take-off by rooms',
    notes: ['Net. The rooms of a line add up to it.'],
  };
  return shareTable(about, 'room', rows, [
    columnText('Room id', ({ id }) => id),
    columnText('Room', ({ id }) => (id === null ? 'All rooms' : names.room(id))),
    ...shareFigures,
    columnFigure('Order', null, 0, rollsOf),
    columnText('Ordered in', (share) => {
      const { order } = share.line;
      return rollsOf(share) === null ? null : orderWords(order, order?.count ?? 0);
    }),
  ]);
}

/** What of each line falls to each bay, and in all: half of a joint to each of its bays. */
export function takeoffBaysTable({ plan, analysis }: TableSource, { lines }: TakeOff): Table {
  const names = namesOf(plan, analysis);
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const rows = lines.flatMap((line) => lineShares(line, [...bays.keys()], 'bay'));
  const nameOf = (bay: Bay | undefined) => bay && names.bay(bay);
  const about = {
    name: 'take-off-bays',
    title: 'Take-off by bays',
    notes: ['Net. The bays of a line add up to it; half of a joint falls to each of its bays.'],
  };
  return shareTable(about, 'bay', rows, [
    columnText('Bay', ({ id }) => id ?? 'All bays'),
    columnText('Room', ({ id }) => nameOf(bays.get(id ?? '')) ?? null),
    ...shareFigures,
  ]);
}

/** What of a line falls to a room or bay; null: the line in all. */
interface LineShare {
  readonly line: TakeOffLine;
  readonly id: string | null;
  readonly net: number;
}

const shareFigures: readonly ColumnOf<LineShare>[] = [
  columnText('Unit', ({ line }) => unitOf(line)),
  columnByRow(columnFigure('Net', null, 2, ({ net }) => net)),
];

/** In the order of the ids, those that it has nothing of left out, and the whole at the end. */
function lineShares(line: TakeOffLine, ids: readonly string[], of: 'room' | 'bay'): readonly LineShare[] {
  const sums = new Map<string, number>();
  for (const cell of line.cells) sums.set(cell[of], (sums.get(cell[of]) ?? 0) + cell.amount);
  const shares = ids.flatMap((id) => {
    const sum = sums.get(id);
    return sum === undefined ? [] : [{ line, id, net: figureShown(sum, line.decimals) }];
  });
  return [...shares, { line, id: null, net: figureShown(line.net, line.decimals) }];
}

function shareTable(
  about: Pick<Table, 'name' | 'title' | 'notes'>,
  kind: 'room' | 'bay',
  rows: readonly LineShare[],
  columns: readonly ColumnOf<LineShare>[],
): Table {
  const items = [
    columnText<LineShare>('Item', ({ line }) => line.item),
    columnText<LineShare>('What', ({ line }) => line.spec),
  ];
  const refsOf = ({ line, id }: LineShare): readonly DrawingRef[] => (id === null ? line.refs : [{ kind, id }]);
  const table = tableOf(about, [...items, ...columns], rows, refsOf);
  return { ...table, rowDecimals: rows.map(({ line }) => line.decimals) };
}
