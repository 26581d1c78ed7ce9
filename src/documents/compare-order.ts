import type { TakeOffLine } from '../plan/take-off.ts';
import { figureShown } from '../takeoff/figures-rounded.ts';
import type { PaperSource } from './paper-source.ts';
import { orderWords, takeOffOf } from './takeoff-tables.ts';

/** A line of the take-off that is another in one of two versions. */
export interface OrderChange {
  readonly item: string;
  readonly spec: string;
  /** Plural. */
  readonly unit: string;
  readonly decimals: number;
  readonly before: OrderVersion | null;
  readonly now: OrderVersion | null;
}

export interface OrderVersion {
  /** With its allowance, to the decimals shown. */
  readonly gross: number;
  /** In packs, such as "3 rolls of 25 m"; empty where nothing is ordered so. */
  readonly order: string;
}

/** Lines by their keys: those of now in their order, then those that went. */
export function orderChanges(before: PaperSource, now: PaperSource): readonly OrderChange[] {
  const lines = ({ lines: all }: ReturnType<typeof takeOffOf>) => new Map(all.map((line) => [line.key, line]));
  const [earlier, later] = [lines(takeOffOf(before)), lines(takeOffOf(now))];
  return [...new Set([...later.keys(), ...earlier.keys()])].flatMap((key): OrderChange[] => {
    const [one, other] = [earlier.get(key), later.get(key)];
    const line = other ?? one;
    if (line === undefined) return [];
    const { item, spec, unit, decimals } = line;
    const change = { item, spec, unit, decimals, before: versionOf(one), now: versionOf(other) };
    const isSame = change.before?.gross === change.now?.gross && change.before?.order === change.now?.order;
    return isSame ? [] : [change];
  });
}

function versionOf(line: TakeOffLine | undefined): OrderVersion | null {
  if (line === undefined) return null;
  const { gross, decimals, order } = line;
  const words = order === null ? '' : `${order.count} ${orderWords(order, order.count)}`;
  return { gross: figureShown(gross, decimals), order: words };
}
