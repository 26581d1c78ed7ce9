import type { Point } from '../geometry/point.ts';
import { boxOf } from '../geometry/ring.ts';
import type { Plan } from '../plan/plan.ts';
import type { Pair } from './compare-match.ts';
import type { SettingChange } from './compare-settings.ts';
import { oneLine } from './words.ts';

/** What stands on the floor, runs through it or is drawn by hand. */
interface Thing {
  readonly id: string;
  readonly name?: string;
  readonly centre?: Point;
  readonly line?: readonly Point[];
  readonly outline?: readonly Point[];
}

type Things = 'doorways' | 'columns' | 'pipes' | 'joinery' | 'slabContacts' | 'structuralJoints' | 'drawnJoints';

const kinds: Readonly<Record<Things, string>> = {
  doorways: 'Doorway, from and to',
  columns: 'Column, from and to',
  pipes: 'Pipe through the screed, at',
  joinery: 'Joinery, from and to',
  slabContacts: 'Floor on the bare slab, from and to',
  structuralJoints: 'Joint of the building, from and to',
  drawnJoints: 'Joint drawn by hand, from and to',
};

/** Rooms and things that came or went, or lie elsewhere. One that stands where one of its kind stood is that one, whatever its id is now; of the others
 *  the id tells. */
export function thingChanges(
  before: Plan,
  now: Plan,
  rooms: readonly Pair<Plan['rooms'][number]>[],
): readonly SettingChange[] {
  return [
    ...rooms.flatMap((pair) => placeChange('Room, from and to', pair)),
    ...(Object.keys(kinds) as Things[]).flatMap((kind) => {
      const [earlier, later] = [thingsElsewhere(before[kind], now[kind]), thingsElsewhere(now[kind], before[kind])];
      return [...new Set([...later.keys(), ...earlier.keys()])].flatMap((id) =>
        placeChange(kinds[kind], { before: earlier.get(id) ?? null, now: later.get(id) ?? null }),
      );
    }),
  ];
}

function placeChange(words: string, { before, now }: Pair<Thing>): readonly SettingChange[] {
  const [was, is] = [placeText(before), placeText(now)];
  const name = oneLine(now?.name ?? before?.name ?? '') || oneLine(now?.id ?? before?.id ?? '');
  return was === is ? [] : [{ of: name, words, unit: 'mm', before: was, now: is, unset: 'none' }];
}

/** By their ids, without those that stand where one of the others stands. */
function thingsElsewhere(things: readonly Thing[], others: readonly Thing[]): ReadonlyMap<string, Thing> {
  const places = new Set(others.map(cornersText));
  return new Map(things.filter((thing) => !places.has(cornersText(thing))).map((thing) => [thing.id, thing]));
}

function cornersText({ centre, line, outline }: Thing): string {
  const corners = (centre === undefined ? (outline ?? line ?? []) : [centre]).map(pointText);
  return corners.sort().join(' ');
}

/** The corners of the upright box round it; null: it is not there. Example: "1200, 300 to 1800, 900" */
function placeText(thing: Thing | null): string | null {
  if (thing === null) return null;
  const { centre, line, outline } = thing;
  if (centre !== undefined) return pointText(centre);
  const { minX, minY, maxX, maxY } = boxOf(outline ?? line ?? []);
  return `${pointText([minX, minY])} to ${pointText([maxX, maxY])}`;
}

function pointText([x, y]: Point): string {
  return `${Math.round(x) + 0}, ${Math.round(y) + 0}`;
}
