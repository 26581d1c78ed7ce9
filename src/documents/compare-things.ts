import type { Point } from '../geometry/point.ts';
import { boxOf } from '../geometry/ring.ts';
import type { Plan } from '../plan/plan.ts';
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

/** Things that came or went, or lie elsewhere, by their ids. */
export function thingChanges(before: Plan, now: Plan): readonly SettingChange[] {
  return (Object.keys(kinds) as Things[]).flatMap((kind) => {
    const [earlier, later] = [thingsOf(before[kind]), thingsOf(now[kind])];
    return [...new Set([...later.keys(), ...earlier.keys()])].flatMap((id): SettingChange[] => {
      const [one, other] = [earlier.get(id), later.get(id)];
      const [was, is] = [placeText(one), placeText(other)];
      const name = oneLine(other?.name ?? one?.name ?? '') || oneLine(id);
      return was === is ? [] : [{ of: name, words: kinds[kind], unit: 'mm', before: was, now: is }];
    });
  });
}

function thingsOf(things: readonly Thing[]): ReadonlyMap<string, Thing> {
  return new Map(things.map((thing) => [thing.id, thing]));
}

/** The corners of the upright box round it; null: it is not there. Example: "1200, 300 to 1800, 900" */
function placeText(thing: Thing | undefined): string | null {
  if (thing === undefined) return null;
  const { centre, line, outline } = thing;
  if (centre !== undefined) return pointText(centre);
  const { minX, minY, maxX, maxY } = boxOf(outline ?? line ?? []);
  return `${pointText([minX, minY])} to ${pointText([maxX, maxY])}`;
}

function pointText([x, y]: Point): string {
  return `${Math.round(x) + 0}, ${Math.round(y) + 0}`;
}
