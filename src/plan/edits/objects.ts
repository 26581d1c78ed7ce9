import type { Point } from '../../geometry/point.ts';
import { type Box, boxOf, type Ring } from '../../geometry/ring.ts';
import type { PlanFile } from '../schema.ts';
import { FARTHEST_MM, pointSnapped, ringHasDistinct } from '../snap.ts';
import { type Change, changed, changedIfNew } from './fields.ts';
import { idsFree } from './ids.ts';

/** The drawn objects of a plan: found, measured, added, changed, removed. Edits take a file and give a new one that shares what did not change;
 *  one that changes nothing gives the file itself. Places in mm, snapped to 0.1 mm. */

export const objectLists = [
  'rooms',
  'doorways',
  'columns',
  'pipes',
  'joinery',
  'slabContacts',
  'structuralJoints',
  'sunZones',
  'drawnJoints',
  'noJoint',
  'keepClear',
] as const;

export type ObjectList = (typeof objectLists)[number];
export type ObjectOf<L extends ObjectList> = NonNullable<PlanFile[L]>[number];

/** A drawn object and the list that it stands in. */
export type PlanObject = { [L in ObjectList]: { readonly list: L; readonly object: ObjectOf<L> } }[ObjectList];

/** An object still to be given an id. */
export type NewObject = {
  [L in ObjectList]: { readonly list: L; readonly object: Omit<ObjectOf<L>, 'id'> };
}[ObjectList];

export type ObjectChange = { [L in ObjectList]: Change<Omit<ObjectOf<L>, 'id'>> }[ObjectList];

/** What the ids of each list begin with. */
const stems: Readonly<Record<ObjectList, string>> = {
  rooms: 'r',
  doorways: 'd',
  columns: 'c',
  pipes: 'p',
  joinery: 'j',
  slabContacts: 'k',
  structuralJoints: 's',
  sunZones: 'u',
  drawnJoints: 'x',
  noJoint: 'n',
  keepClear: 'q',
};

/** All drawn objects, in the order of the lists. */
export function objectsOf(file: PlanFile): readonly PlanObject[] {
  return objectLists.flatMap((list) => (file[list] ?? []).map((object) => ({ list, object }) as PlanObject));
}

/** The object with this id; null where the plan has none. */
export function objectFind(file: PlanFile, id: string): PlanObject | null {
  for (const list of objectLists) {
    const object = (file[list] ?? []).find((each) => each.id === id);
    if (object) return { list, object } as PlanObject;
  }
  return null;
}

/** The objects with these ids, in the order of the plan. */
export function objectsFound(file: PlanFile, ids: readonly string[]): readonly PlanObject[] {
  const wanted = new Set(ids);
  return objectsOf(file).filter(({ object }) => wanted.has(object.id));
}

/** The outline and then the holes; none where the object has no outline. */
export function objectRings({ object }: PlanObject): readonly Ring[] {
  if (!('outline' in object)) return [];
  return 'holes' in object && object.holes ? [object.outline, ...object.holes] : [object.outline];
}

/** Corners of outlines and holes, points of a line; of a pipe the four points where its circle reaches furthest left, right, up and down. */
export function objectPoints(found: PlanObject): readonly Point[] {
  const { object } = found;
  if ('line' in object) return object.line;
  if (!('centre' in object)) return objectRings(found).flat();
  const [x, y] = object.centre;
  const radius = object.diameterMm / 2;
  return [
    [x - radius, y],
    [x + radius, y],
    [x, y - radius],
    [x, y + radius],
  ];
}

/** The upright box round the objects, mm; null where there are none.
 *  Example: a pipe of 110 mm at [500, 500] -> [445, 445] to [555, 555] */
export function objectsBox(file: PlanFile, ids: readonly string[]): Box | null {
  const points = objectsFound(file, ids).flatMap(objectPoints);
  return points.length === 0 ? null : boxOf(points);
}

/** Adds an object and gives its id. Example: an empty plan, 'pipes', { centre: [500, 500], diameterMm: 110 } -> id p1 */
export function objectAdded<L extends ObjectList>(
  file: PlanFile,
  list: L,
  object: Omit<ObjectOf<L>, 'id'>,
): { readonly file: PlanFile; readonly id: string } {
  const added = objectsAdded(file, [{ list, object } as unknown as NewObject]);
  return { file: added.file, id: added.ids[0] as string };
}

/** Adds objects and gives their ids, in the order of the objects. */
export function objectsAdded(
  file: PlanFile,
  objects: readonly NewObject[],
): { readonly file: PlanFile; readonly ids: readonly string[] } {
  if (objects.length === 0) return { file, ids: [] };
  const idNext = idsFree(file);
  const named = objects.map(({ list, object }) => {
    const withId = Object.assign({ id: '' }, object, { id: idNext(stems[list]) });
    return { list, object: objectPlaced(withId as AnyObject, pointSnapped) };
  });
  const grown = objectLists.flatMap((list) => {
    const more = named.filter((each) => each.list === list).map(({ object }) => object);
    return more.length === 0 ? [] : [[list, [...(file[list] ?? []), ...more]]];
  });
  return { file: { ...file, ...Object.fromEntries(grown) }, ids: named.map(({ object }) => object.id) };
}

/** Sets fields of an object; undefined takes a field out. The fields must be such as the object's list has. Outlines are set as they are given and
 *  doorways stay where they are: `ringSet` checks the one and lets the others follow.
 *  Example: 'r1', { name: 'Hall', zone: undefined } */
export function objectChanged(file: PlanFile, id: string, change: ObjectChange): PlanFile {
  const snapped = objectPlaced(change as AnyObject, pointSnapped);
  return objectsReplaced(file, [id], ({ object }) => changedIfNew(object, snapped));
}

/** Removes objects. A list that becomes empty is left out of the file, apart from the rooms; a tile field loses its removed rooms, and goes with
 *  the last of them. Example: the only column -> a file without `columns` */
export function objectsRemoved(file: PlanFile, ids: readonly string[]): PlanFile {
  const gone = new Set(ids);
  const lists = objectLists.flatMap((list) => {
    const before: readonly AnyObject[] = file[list] ?? [];
    const kept = before.filter(({ id }) => !gone.has(id));
    return kept.length === before.length ? [] : [[list, kept.length > 0 || list === 'rooms' ? kept : undefined]];
  });
  if (lists.length === 0) return file;
  return changed(file, { ...Object.fromEntries(lists), ...tileFieldsWithout(file, gone) });
}

function tileFieldsWithout({ tileFields }: PlanFile, gone: ReadonlySet<string>): Pick<PlanFile, 'tileFields'> {
  if (!tileFields?.some(({ rooms }) => rooms.some((room) => gone.has(room)))) return {};
  const kept = tileFields.flatMap((field) => {
    const rooms = field.rooms.filter((room) => !gone.has(room));
    if (rooms.length === field.rooms.length) return [field];
    return rooms.length === 0 ? [] : [{ ...field, rooms }];
  });
  return { tileFields: kept.length > 0 ? kept : undefined };
}

export type AnyObject = PlanObject['object'];

/** The file with each of these objects replaced by what `change` makes of it. */
export function objectsReplaced(
  file: PlanFile,
  ids: readonly string[],
  change: (found: PlanObject) => AnyObject,
): PlanFile {
  const wanted = new Set(ids);
  const lists = objectLists.flatMap((list) => {
    const before: readonly AnyObject[] = file[list] ?? [];
    const after = before.map((object) => (wanted.has(object.id) ? change({ list, object } as PlanObject) : object));
    return after.every((object, i) => object === before[i]) ? [] : [[list, after]];
  });
  return lists.length === 0 ? file : { ...file, ...Object.fromEntries(lists) };
}

/** The object with each of its points placed anew; the object itself where none goes anywhere. */
export function objectPlaced<T extends AnyObject>(object: T, place: (point: Point) => Point): T {
  const change: Record<string, unknown> = {};
  const points = (list: readonly Point[]) => pointsPlaced(list, place);
  if ('outline' in object && object.outline) change.outline = points(object.outline);
  if ('holes' in object && object.holes) change.holes = listKept(object.holes, object.holes.map(points));
  if ('line' in object && object.line) change.line = points(object.line);
  if ('centre' in object && object.centre) change.centre = points([object.centre])[0];
  const before = object as Readonly<Record<string, unknown>>;
  return Object.keys(change).every((key) => change[key] === before[key]) ? object : { ...object, ...change };
}

function pointsPlaced(points: readonly Point[], place: (point: Point) => Point): readonly Point[] {
  return listKept(
    points,
    points.map((point) => {
      const at = place(point);
      // -0 is not the 0 that a file holds
      return Object.is(at[0], point[0]) && Object.is(at[1], point[1]) ? point : at;
    }),
  );
}

/** The list as it was where the other holds the same things. */
function listKept<T>(before: readonly T[], after: readonly T[]): readonly T[] {
  return after.every((item, i) => item === before[i]) ? before : after;
}

/** Whether a plan file may hold the object: it lies on the sheet, and its outlines have three corners. */
export function objectFits(found: PlanObject): boolean {
  const onSheet = objectPoints(found).every(([x, y]) => Math.abs(x) <= FARTHEST_MM && Math.abs(y) <= FARTHEST_MM);
  return onSheet && objectRings(found).every((ring) => ringHasDistinct(ring, 3));
}
