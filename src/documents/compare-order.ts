import type { Plan } from '../plan/plan.ts';
import type { TakeOffLine } from '../plan/take-off.ts';
import { figureShown } from '../takeoff/figures-rounded.ts';
import { nearestPairs, type Pair } from './compare-match.ts';
import type { PaperSource } from './paper-source.ts';
import { orderWords, takeOffOf } from './takeoff-tables.ts';

/** A line of the take-off that is another in one of two versions. */
export interface OrderChange {
  readonly item: string;
  /** Plural. */
  readonly unit: string;
  readonly decimals: number;
  /** Null: nothing of the kind is ordered in that version. */
  readonly before: OrderVersion | null;
  readonly now: OrderVersion | null;
}

export interface OrderVersion {
  /** Its dimensions and make. */
  readonly spec: string;
  /** As measured, to the decimals shown. */
  readonly net: number;
  /** With its allowance, to the decimals shown. */
  readonly gross: number;
  /** In packs, such as "3 rolls of 25 m"; empty where nothing is ordered so. */
  readonly order: string;
}

/** Lines that are ordered otherwise: those of now in their order, then those that went. Lines are known by their keys; where those hold a dimension that
 *  is another now, by what they are and where they lie. */
export function orderChanges(
  before: PaperSource,
  now: PaperSource,
  rooms: readonly Pair<Plan['rooms'][number]>[],
): readonly OrderChange[] {
  const [earlier, later] = [takeOffOf(before).lines, takeOffOf(now).lines];
  const partners = new Map(linePairs(earlier, later, rooms).map((pair) => [pair.now, pair.before]));
  const found = new Set(partners.values());
  const pairs = [
    ...later.map((line) => ({ before: partners.get(line) ?? null, now: line })),
    ...earlier.filter((line) => !found.has(line)).map((line) => ({ before: line, now: null })),
  ];
  return pairs.flatMap((pair): OrderChange[] => {
    const line = pair.now ?? pair.before;
    if (line === null) return [];
    const { item, unit, decimals } = line;
    const change = { item, unit, decimals, before: versionOf(pair.before), now: versionOf(pair.now) };
    return isSame(change) ? [] : [change];
  });
}

function linePairs(
  earlier: readonly TakeOffLine[],
  later: readonly TakeOffLine[],
  rooms: readonly Pair<Plan['rooms'][number]>[],
): readonly { readonly before: TakeOffLine; readonly now: TakeOffLine }[] {
  const byKey = new Map(earlier.map((line) => [line.key, line]));
  const sameKey = later.flatMap((line) => {
    const other = byKey.get(line.key);
    return other === undefined ? [] : [{ before: other, now: line }];
  });
  const found = new Set(sameKey.flatMap((pair) => [pair.before, pair.now]));
  const left = (lines: readonly TakeOffLine[]) => lines.filter((line) => !found.has(line));
  const newIds = new Map(rooms.flatMap((pair) => (pair.before && pair.now ? [[pair.before.id, pair.now.id]] : [])));
  const places = new Map([...earlier, ...later].map((line) => [line, earlier.indexOf(line) + later.indexOf(line)]));
  const near = nearestPairs(left(earlier), left(later), (a, b) => {
    if (a.group !== b.group || a.item !== b.item || a.unit !== b.unit) return null;
    const shared = sharedNet(a, b, newIds);
    if (shared === 0) return null;
    const isLayer = layerOf(a) === layerOf(b);
    // the same things in more of the rooms go first, then as they stand in the list
    return {
      rank: isLayer ? 0 : 1,
      awayMm: -shared,
      at: [
        [places.get(a) ?? 0, 0],
        [places.get(b) ?? 0, 0],
      ],
    };
  });
  return [
    ...sameKey,
    ...near.flatMap((pair) => (pair.before && pair.now ? [{ before: pair.before, now: pair.now }] : [])),
  ];
}

/** Of insulation the number of the layer, behind the thickness of all of them. Example: "insulation:50:2" -> "2" */
export function layerOf({ key, group }: TakeOffLine): string {
  return group === 'insulation' ? (key.split(':')[2] ?? '') : '';
}

/** What both lines have in the same rooms. */
function sharedNet(a: TakeOffLine, b: TakeOffLine, newIds: ReadonlyMap<string, string>): number {
  const [one, other] = [netByRoom(a, (room) => newIds.get(room) ?? ''), netByRoom(b, (room) => room)];
  return [...one].reduce((sum, [room, net]) => sum + Math.min(net, other.get(room) ?? 0), 0);
}

function netByRoom({ cells }: TakeOffLine, nowRoom: (room: string) => string): ReadonlyMap<string, number> {
  const byRoom = new Map<string, number>();
  for (const { room, amount } of cells) byRoom.set(nowRoom(room), (byRoom.get(nowRoom(room)) ?? 0) + amount);
  return byRoom;
}

function versionOf(line: TakeOffLine | null): OrderVersion | null {
  if (line === null) return null;
  const { spec, net, gross, decimals, order } = line;
  const words = order === null ? '' : `${order.count} ${orderWords(order, order.count)}`;
  return { spec, net: figureShown(net, decimals), gross: figureShown(gross, decimals), order: words };
}

function isSame({ before, now }: Pick<OrderChange, 'before' | 'now'>): boolean {
  if (before === null || now === null) return before === now;
  return (['spec', 'net', 'gross', 'order'] as const).every((field) => before[field] === now[field]);
}
