import type { Ring } from '../geometry/ring.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlanObjects } from '../plan/resolve.ts';
import { changesOf, entriesOf, type Setting, type SettingChange } from './compare-changes.ts';
import type { Pair } from './compare-match.ts';
import { type Drawn, holeChanges, placeChanges, placeKey } from './compare-places.ts';
import { doorwayNames } from './doorway-places.ts';
import type { PaperSource } from './paper-source.ts';
import { pipeOutline } from './set-out-things.ts';
import { oneLine } from './words.ts';

/** What stands on the floor, runs through it, lies on it or is drawn by hand. */
interface Thing extends Drawn {
  readonly id: string;
  readonly name?: string;
}

interface Kind {
  readonly entries: readonly string[];
  readonly changes: (before: PaperSource, now: PaperSource) => readonly SettingChange[];
}

const underNames: Readonly<Record<Plan['joinery'][number]['under'], string>> = {
  insulated: 'insulation and screed',
  'no-insulation': 'screed on the slab, no insulation',
  'built-off-slab': 'built off the slab',
};

const kinds: readonly Kind[] = [
  kindOf('doorways', 'line', 'Doorway', [
    ['doorways.wallMm', 'Depth of the opening', 'mm', ({ wallMm }) => wallMm],
    ['doorways.leaf', 'Leaf', null, ({ leaf }) => (leaf ? 'yes' : 'no')],
  ]),
  kindOf('columns', 'outline', 'Column', []),
  kindOf('pipes', 'centre', 'Pipe through the screed', [
    ['pipes.diameterMm', 'Diameter of the pipe', 'mm', ({ diameterMm }) => diameterMm],
  ]),
  kindOf('joinery', 'outline', 'Joinery', [
    ['joinery.name', 'Name', null, ({ name }) => name],
    ['joinery.under', 'Below the joinery', null, ({ under }) => underNames[under]],
    ['joinery.fixedThrough', 'Bolted through to the slab', null, ({ fixedThrough }) => (fixedThrough ? 'yes' : 'no')],
  ]),
  kindOf('slabContacts', 'outline', 'Floor on the bare slab', []),
  kindOf('structuralJoints', 'line', 'Joint of the building', [
    ['structuralJoints.widthMm', 'Width of the joint of the building', 'mm', ({ widthMm }) => widthMm],
  ]),
  kindOf('sunZones', 'outline', 'Sunlit floor', [
    ['sunZones.highestC', 'Highest temperature in the sun', '\u00b0C', ({ highestC }) => highestC],
  ]),
  kindOf('keepClear', 'outline', 'Area to keep clear of joints', []),
  kindOf('drawnJoints', 'line', 'Joint drawn by hand', []),
  kindOf('noJoint', 'line', 'Joint taken away', []),
];

/** Entries of the plan file that are told here. */
export const thingEntries: readonly string[] = [
  ...['rooms.id', 'rooms.outline', 'rooms.holes'],
  ...kinds.flatMap(({ entries }) => entries),
];

/** Rooms and things that came or went, are drawn elsewhere or otherwise, or have another setting. One that is drawn where one of its kind was is that one,
 *  whatever its id is now; of the others the id tells. */
export function thingChanges(
  before: PaperSource,
  now: PaperSource,
  rooms: readonly Pair<Plan['rooms'][number]>[],
): readonly SettingChange[] {
  return [...rooms.flatMap(roomChanges), ...kinds.flatMap(({ changes }) => changes(before, now))];
}

function roomChanges(pair: Pair<Plan['rooms'][number]>): readonly SettingChange[] {
  const of = nameOf(pair);
  const places = placeChanges({ of, words: 'Room' }, pair);
  const { before, now } = pair;
  if (before === null || now === null) return places;
  return [...places, ...holeChanges({ of, words: 'Hole in the room' }, before.holes, now.holes)];
}

/** Where columns, joinery and pipes stood that went, were moved or are of another outline now. */
export function outlinesLeft(before: Plan, now: Plan): readonly Ring[] {
  const left = <T extends Thing>(were: readonly T[], are: readonly T[], outlineOf: (thing: T) => Ring) =>
    thingPairs(were, are).flatMap((pair) => {
      if (pair.before === null) return [];
      const outline = outlineOf(pair.before);
      const isSame = pair.now !== null && placeKey({ outline }) === placeKey({ outline: outlineOf(pair.now) });
      return isSame ? [] : [outline];
    });
  return [
    ...left(before.columns, now.columns, ({ outline }) => outline),
    ...left(before.joinery, now.joinery, ({ outline }) => outline),
    ...left(before.pipes, now.pipes, pipeOutline),
  ];
}

/** @param place what of the plan file tells where it is */
function kindOf<K extends keyof PlanObjects>(
  kind: K,
  place: keyof Plan[K][number] & keyof Drawn,
  words: string,
  settings: readonly Setting<Plan[K][number]>[],
): Kind {
  return {
    entries: [`${kind}.id`, `${kind}.${place}`, ...entriesOf(settings)],
    changes: (before, now) => {
      const names = kind === 'doorways' ? new Map([...doorwayNames(before), ...doorwayNames(now)]) : null;
      return thingPairs<Plan[K][number]>(before.plan[kind], now.plan[kind]).flatMap((pair) => {
        const of = names?.get((pair.now ?? pair.before)?.id ?? '') ?? nameOf(pair);
        return [...placeChanges({ of, words }, pair), ...changesOf(of, settings, pair)];
      });
    },
  };
}

function nameOf({ before, now }: Pair<Thing>): string {
  return oneLine(now?.name ?? before?.name ?? '') || oneLine(now?.id ?? before?.id ?? '');
}

/** Those of now in their order, then those that went. */
function thingPairs<T extends Thing>(before: readonly T[], now: readonly T[]): readonly Pair<T>[] {
  const keys = new Map([...before, ...now].map((thing) => [thing, placeKey(thing)]));
  const partners = new Map<T, T>();
  const found = new Set<T>();
  const place = (thing: T) => keys.get(thing) ?? '';
  for (const keyOf of [(thing: T) => `${thing.id} ${place(thing)}`, place, ({ id }: T) => id]) {
    const left = new Map<string, T[]>();
    for (const thing of before.filter((each) => !found.has(each))) {
      left.set(keyOf(thing), [...(left.get(keyOf(thing)) ?? []), thing]);
    }
    for (const thing of now.filter((each) => !partners.has(each))) {
      const partner = left.get(keyOf(thing))?.shift();
      if (partner === undefined) continue;
      partners.set(thing, partner);
      found.add(partner);
    }
  }
  return [
    ...now.map((thing) => ({ before: partners.get(thing) ?? null, now: thing })),
    ...before.filter((thing) => !found.has(thing)).map((thing) => ({ before: thing, now: null })),
  ];
}
