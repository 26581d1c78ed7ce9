import { jointKinds, type RoomQuantities } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
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
}

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
    .map(([words, unit, of]) => ({ room, words, unit, before: before && of(before), now: now && of(now) }))
    .filter((pair) => (pair.before ?? 0) !== 0 || (pair.now ?? 0) !== 0);
}

/** What has come to a quantity; a room that is not there has none. */
export function quantityChange({ before, now }: QuantityPair): number {
  return (now ?? 0) - (before ?? 0);
}
