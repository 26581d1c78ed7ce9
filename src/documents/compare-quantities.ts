import { jointKinds, type RoomQuantities } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { figureShown } from '../takeoff/figures-rounded.ts';
import type { Pair } from './compare-match.ts';
import type { PaperSource } from './paper-source.ts';
import { jointKindNames, oneLine } from './words.ts';

/** One net quantity of the whole floor or of a room in both versions. */
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

type Shown = Pick<QuantityPair, 'before' | 'now' | 'decimals'>;
type Quantity = readonly [words: string, unit: string, of: (quantities: RoomQuantities) => number];

const quantities: readonly Quantity[] = [
  ['Floor', 'm2', ({ floorM2 }) => floorM2],
  ['Edge strip', 'm', ({ edgeStripM }) => edgeStripM],
  ...jointKinds.map((kind): Quantity => [jointKindNames[kind], 'm', ({ jointM }) => jointM[kind]]),
  ['Sealant', 'l', ({ sealantLitres }) => sealantLitres],
  ['Screed', 'm3', ({ screedM3 }) => screedM3],
  ['Screed', 'kg', ({ screedKg }) => screedKg],
  ['Insulation', 'm2', ({ insulationM2 }) => insulationM2],
  ['Held to the slab', 'm2', ({ slabContactM2 }) => slabContactM2],
];

/** Those that are nothing in both versions are left out. */
export function quantityPairs(
  before: PaperSource,
  now: PaperSource,
  rooms: readonly Pair<Plan['rooms'][number]>[],
): readonly QuantityPair[] {
  const [earlier, later] = [before.analysis.quantities, now.analysis.quantities];
  const ofRoom = (of: typeof earlier, id: string | undefined) => of.rooms.find(({ room }) => room === id) ?? null;
  return [
    ...pairsOf(null, earlier, later),
    ...rooms.flatMap((pair) =>
      pairsOf(
        oneLine((pair.now ?? pair.before)?.name ?? ''),
        ofRoom(earlier, pair.before?.id),
        ofRoom(later, pair.now?.id),
      ),
    ),
  ];
}

function pairsOf(
  room: string | null,
  before: RoomQuantities | null,
  now: RoomQuantities | null,
): readonly QuantityPair[] {
  return quantities
    .map(([words, unit, of]) => {
      const pair = { before: before && of(before), now: now && of(now) };
      return { room, words, unit, ...pair, decimals: decimalsOf(unit, pair) };
    })
    .filter((pair) => (pair.before ?? 0) !== 0 || (pair.now ?? 0) !== 0);
}

const usualDecimals = 2;
/** What changes by less than half of the fourth digit has not changed: clipping rounds, and no one measures so. */
const mostDecimals = 4;

/** Kilograms are whole. Half of one is a fifth of a litre: what shows in kg shows in m3, and the other way round but for less than that. */
function decimalsOf(unit: string, pair: Pick<QuantityPair, 'before' | 'now'>): number {
  if (unit === 'kg') return 0;
  const shows = [usualDecimals, mostDecimals - 1, mostDecimals].find(
    (decimals) => quantityChange({ ...pair, decimals }) !== 0,
  );
  return shows ?? usualDecimals;
}

/** What has come to a quantity, as it is shown: the figures before and now differ by it to their last digit. A room that is not there has none. */
export function quantityChange(pair: Shown): number {
  const { before, now } = quantityShown(pair);
  return figureShown((now ?? 0) - (before ?? 0), pair.decimals);
}

/** The figures as they are shown. */
export function quantityShown({ before, now, decimals }: Shown): Pick<QuantityPair, 'before' | 'now'> {
  const shown = (value: number | null) => (value === null ? null : figureShown(value, decimals));
  return { before: shown(before), now: shown(now) };
}

export function quantityIsChanged(pair: QuantityPair): boolean {
  return quantityChange(pair) !== 0;
}
