import { jointKinds, type RoomQuantities } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import type { TakeOffLine } from '../plan/take-off.ts';
import { figureShown, figuresRounded } from '../takeoff/figures-rounded.ts';
import type { Pair } from './compare-match.ts';
import { layerOf } from './compare-order.ts';
import type { PaperSource } from './paper-source.ts';
import { takeOffOf } from './takeoff-tables.ts';
import { jointKindNames, oneLine } from './words.ts';

/** One net quantity of the whole floor or of a room in both versions, as it is shown: rooms add up to the whole. */
export interface QuantityPair {
  /** Name of the room; null: in all. */
  readonly room: string | null;
  readonly words: string;
  readonly unit: string;
  /** Null: the room is not in that version. */
  readonly before: number | null;
  readonly now: number | null;
  /** Digits that it takes to see a change: more than usual where the change is small. */
  readonly decimals: number;
}

interface Quantity {
  readonly words: string;
  readonly unit: string;
  readonly of: (quantities: RoomQuantities) => number;
  /** Lines of the take-off that have the same figure; null: none has. */
  readonly isOf: ((line: TakeOffLine) => boolean) | null;
}

const quantities: readonly Quantity[] = [
  { words: 'Floor', unit: 'm2', of: ({ floorM2 }) => floorM2, isOf: null },
  { words: 'Edge strip', unit: 'm', of: ({ edgeStripM }) => edgeStripM, isOf: ({ group }) => group === 'edge-strip' },
  ...jointKinds.map(
    (kind): Quantity => ({
      words: jointKindNames[kind],
      unit: 'm',
      of: ({ jointM }) => jointM[kind],
      isOf: ({ key }) => key.startsWith(`profile:${kind}:`),
    }),
  ),
  { words: 'Sealant', unit: 'l', of: ({ sealantLitres }) => sealantLitres, isOf: ({ group }) => group === 'sealant' },
  { words: 'Screed', unit: 'm3', of: ({ screedM3 }) => screedM3, isOf: ({ key }) => key === 'screed:volume' },
  { words: 'Screed', unit: 'kg', of: ({ screedKg }) => screedKg, isOf: ({ key }) => key === 'screed:weight' },
  { words: 'Insulation', unit: 'm2', of: ({ insulationM2 }) => insulationM2, isOf: isOnSlab },
  { words: 'Held to the slab', unit: 'm2', of: ({ slabContactM2 }) => slabContactM2, isOf: null },
];

/** All layers lie under the same floor: the lowest has its area. */
function isOnSlab(line: TakeOffLine): boolean {
  return line.group === 'insulation' && ['', '1'].includes(layerOf(line));
}

/** In all, then room by room; those that are nothing in both versions are left out. */
export function quantityPairs(
  before: PaperSource,
  now: PaperSource,
  rooms: readonly Pair<Plan['rooms'][number]>[],
): readonly QuantityPair[] {
  const version = (source: PaperSource, side: 'before' | 'now') => ({
    source,
    rooms: rooms.map((pair) => pair[side]?.id ?? null),
  });
  const versions = [version(before, 'before'), version(now, 'now')] as const;
  const figures = quantities.map((quantity) => ({ quantity, ...figuresTold(quantity, ...versions) }));
  return [null, ...rooms].flatMap((pair, i) =>
    figures.flatMap(({ quantity: { words, unit }, was, is, decimals }): QuantityPair[] => {
      const room = pair && oneLine((pair.now ?? pair.before)?.name ?? '');
      const told = { room, words, unit, before: was[i] ?? null, now: is[i] ?? null, decimals };
      return (told.before ?? 0) === 0 && (told.now ?? 0) === 0 ? [] : [told];
    }),
  );
}

interface Version {
  readonly source: PaperSource;
  /** Ids of the rooms in the order in which they are told; null: not in this version. */
  readonly rooms: readonly (string | null)[];
}

/** Of the whole, then of the rooms; null: the room is not there. */
type Figures = readonly (number | null)[];

interface Told {
  readonly was: Figures;
  readonly is: Figures;
  readonly decimals: number;
}

interface Digits {
  /** The usual ones, and more where it takes more to see a change. */
  readonly decimals: readonly [usual: number, ...more: readonly number[]];
  /** What changes by less has not changed: clipping rounds, and no one measures so. */
  readonly leastChange: number;
}

const digitsOfUnit: Readonly<Record<string, Digits>> = { kg: { decimals: [0], leastChange: 0.05 } };
const usualDigits: Digits = { decimals: [2, 3, 4], leastChange: 0.000_05 };

/** One quantity with the same digits everywhere, so that rooms add up: the fewest with which the greatest change is seen. */
function figuresTold(quantity: Quantity, before: Version, now: Version): Told {
  const { decimals: digits, leastChange } = digitsOfUnit[quantity.unit] ?? usualDigits;
  const [measured, measuredNow] = [figuresMeasured(quantity, before), figuresMeasured(quantity, now)];
  const changes = measured.map((was, i) => Math.abs((measuredNow[i] ?? 0) - (was ?? 0)));
  const greatest = Math.max(...changes);
  if (greatest < leastChange) {
    // the same figures are shared out alike, in whichever order the rooms are listed
    const was = figuresShown(quantity, before, digits[0]);
    return { was, is: measuredNow.map((is, i) => (is === null ? null : (was[i] ?? 0))), decimals: digits[0] };
  }
  const told = digits.map((decimals): Told => {
    return { was: figuresShown(quantity, before, decimals), is: figuresShown(quantity, now, decimals), decimals };
  });
  const isSeen = ({ was, is }: Told) =>
    changes.some((change, i) => change === greatest && (was[i] ?? 0) !== (is[i] ?? 0));
  const [usual] = told as [Told, ...Told[]];
  return told.find(isSeen) ?? usual;
}

function figuresMeasured({ of }: Quantity, { source, rooms }: Version): Figures {
  const { quantities: whole } = source.analysis;
  const byRoom = new Map(whole.rooms.map((room) => [room.room, of(room)]));
  return [of(whole), ...rooms.map((id) => (id === null ? null : (byRoom.get(id) ?? 0)))];
}

function figuresShown(quantity: Quantity, { source, rooms }: Version, decimals: number): Figures {
  const { whole, byRoom } = orderedFigures(quantity, source, decimals) ?? sharedFigures(quantity, source, decimals);
  return [whole, ...rooms.map((id) => (id === null ? null : (byRoom.get(id) ?? 0)))];
}

interface Shown {
  readonly whole: number;
  readonly byRoom: ReadonlyMap<string, number>;
}

function sharedFigures({ of }: Quantity, { analysis }: PaperSource, decimals: number): Shown {
  const { quantities: whole } = analysis;
  const shares = figuresRounded(whole.rooms.map(of), of(whole), decimals);
  return {
    whole: figureShown(of(whole), decimals),
    byRoom: new Map(whole.rooms.map(({ room }, i) => [room, shares[i] ?? 0])),
  };
}

/** As the take-off has them, so that both papers say the same: the whole is what its lines add up to. Null: the take-off has no such figures. */
function orderedFigures({ isOf }: Quantity, source: PaperSource, decimals: number): Shown | null {
  const lines = isOf === null ? [] : takeOffOf(source).lines.filter(isOf);
  if (lines.length === 0 || lines.some((line) => line.decimals !== decimals)) return null;
  const byRoom = new Map<string, number>();
  for (const { room, amount } of lines.flatMap(({ cells }) => cells)) {
    byRoom.set(room, figureShown((byRoom.get(room) ?? 0) + amount, decimals));
  }
  return {
    whole: figureShown(
      [...byRoom.values()].reduce((sum, amount) => sum + amount, 0),
      decimals,
    ),
    byRoom,
  };
}

/** What has come to a quantity: the figures before and now differ by it to their last digit. A room that is not there has none. */
export function quantityChange({ before, now, decimals }: Pick<QuantityPair, 'before' | 'now' | 'decimals'>): number {
  return figureShown((now ?? 0) - (before ?? 0), decimals);
}

export function quantityIsChanged(pair: QuantityPair): boolean {
  return quantityChange(pair) !== 0;
}
