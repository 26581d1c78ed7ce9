import { COUNT_SLACK } from '../geometry/tolerance.ts';
import { roundedText } from '../plan/figure-words.ts';
import type { Ordering, PriceKey } from '../plan/papers.ts';
import type {
  TakeOffCell,
  TakeOffLine,
  TakeOffOrder,
  TakeOffPart,
  TakeOffPrice,
  TakeOffUnit,
} from '../plan/take-off.ts';
import { figureShown, figuresRounded } from './figures-rounded.ts';

/** A line as it is measured, nothing rounded yet. */
export interface OrderDraft
  extends Pick<
    TakeOffLine,
    'key' | 'group' | 'item' | 'spec' | 'net' | 'gross' | 'order' | 'refs' | 'notes' | 'sources'
  > {
  readonly unit: OrderUnit;
  /** Of what the allowance is. */
  readonly allowance: string;
  readonly parts?: readonly TakeOffPart[];
  readonly cells: readonly TakeOffCell[];
  /** What is paid for: so much of what the price is of, as shown; null where it cannot be told. */
  readonly paid?: { readonly key: PriceKey; readonly per: string; readonly amount: number | null };
}

export type OrderUnit = keyof typeof decimalsOf;

/** Lengths to the centimetre, areas and volumes to a hundredth, weight and pieces whole. */
const decimalsOf = { m: 2, 'm\u00b2': 2, 'm\u00b3': 2, l: 2, kg: 0, pieces: 0 } as const;

/** Money is told to the hundredth. */
export const costDecimals = 2;

export function orderLine(draft: OrderDraft, { prices }: Pick<Ordering, 'prices'>): TakeOffLine {
  const { allowance, parts = [], paid, cells, ...same } = draft;
  const decimals = decimalsOf[draft.unit];
  const amount = figureShown(draft.gross, decimals) - figureShown(draft.net, decimals);
  const price = paid === undefined ? null : priceOf(paid, prices);
  return {
    ...same,
    decimals,
    parts: partsRounded(parts, draft.net, decimals),
    allowance: { words: allowance, amount: figureShown(amount, decimals) },
    price,
    cost: costOf(price, paid?.amount ?? null, decimals),
    cells: cellsRounded(cells, draft.net, decimals),
  };
}

function costOf(price: TakeOffPrice | null, amount: number | null, decimals: number): number | null {
  if (price === null || amount === null) return null;
  return figureShown(price.amount * figureShown(amount, decimals), costDecimals);
}

function priceOf({ key, per }: NonNullable<OrderDraft['paid']>, prices: Ordering['prices']): TakeOffPrice | null {
  const amount = prices[key];
  return amount === undefined ? null : { amount, per };
}

function partsRounded(parts: readonly TakeOffPart[], net: number, decimals: number): readonly TakeOffPart[] {
  const given = parts.filter(({ amount }) => amount > 0);
  const amounts = figuresRounded(
    given.map(({ amount }) => amount),
    net,
    decimals,
  );
  return given.map((part, i) => ({ ...part, amount: amounts[i] as number }));
}

/** One cell a bay and room, in the order in which they first come. Rooms are shared out first, so that a room of many bays is off by less than a last
 *  digit as well; then the bays within each. */
function cellsRounded(cells: readonly TakeOffCell[], net: number, decimals: number): readonly TakeOffCell[] {
  const rooms = [...new Set(cells.map(({ room }) => room))];
  const sums = new Map<string, TakeOffCell>();
  for (const cell of cells) {
    // the name of a bay has no space in it
    const key = `${cell.bay} ${cell.room}`;
    sums.set(key, { ...cell, amount: cell.amount + (sums.get(key)?.amount ?? 0) });
  }
  const inRooms = new Map(rooms.map((room) => [room, [] as TakeOffCell[]]));
  for (const cell of sums.values()) inRooms.get(cell.room)?.push(cell);
  const ofRooms = figuresRounded([...inRooms.values()].map(cellsSum), net, decimals);
  const rounded = new Map<TakeOffCell, number>();
  for (const [i, own] of [...inRooms.values()].entries()) {
    const ofBays = figuresRounded(own.map(amountOf), ofRooms[i] as number, decimals);
    for (const [k, cell] of own.entries()) rounded.set(cell, ofBays[k] as number);
  }
  return [...sums.values()]
    .map((cell) => ({ ...cell, amount: rounded.get(cell) as number }))
    .filter(({ amount }) => amount > 0);
}

function amountOf({ amount }: TakeOffCell): number {
  return amount;
}

export function cellsSum(cells: readonly TakeOffCell[]): number {
  return cells.reduce((sum, { amount }) => sum + amount, 0);
}

/** Packs of an amount; null where the pack is so small that they cannot be counted. Example: 7.0000000001 in packs of 3.5 -> 2 */
export function packCount(amount: number, content: number): number | null {
  const count = Math.ceil(amount / content - COUNT_SLACK);
  return Number.isSafeInteger(count) ? Math.max(0, count) : null;
}

export function orderOfCount(
  count: number | null,
  unit: TakeOffUnit,
  content: string,
  rooms: TakeOffOrder['rooms'] = [],
): TakeOffOrder | null {
  return count === null ? null : { count, unit, content, rooms };
}

/** Example: 0.05, "cut to waste" -> "5 % cut to waste" */
export function shareWords(share: number, what: string): string {
  return share === 0 ? 'none' : `${roundedText(share * 100, 1)} % ${what}`;
}

export function figureWords(value: number, unit: string): string {
  return `${roundedText(value, 2)} ${unit}`;
}
