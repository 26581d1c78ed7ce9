import type { DrawingRef, LineItem } from '../../documents/drawing.ts';
import type { Point } from '../../geometry/point.ts';
import { type Box, boxOf } from '../../geometry/ring.ts';
import type { Result } from '../state/analysisStore.ts';
import { findingRefs, type Thing, thingRef } from '../state/thing.ts';
import { itemsOf, itemsPlace, type PlacedItem } from './hit.ts';

/** What is lit for a thing: its items on the drawing, else the line by which the plan knows it. A room that its bays cover
 *  and a doorway without a leaf have no item of their own. */
export function thingItems(thing: Thing, result: Result, items: readonly PlacedItem[]): readonly PlacedItem[] {
  const ref = thingRef(thing, result.analysis);
  return ref === null ? [] : refItems(ref, result, items);
}

/** What is lit with a finding: all that it is about. */
export function aboutItems(thing: Thing, result: Result, items: readonly PlacedItem[]): readonly PlacedItem[] {
  return findingRefs(thing, result.analysis).flatMap((ref) => refItems(ref, result, items));
}

function refItems(ref: DrawingRef, result: Result, items: readonly PlacedItem[]): readonly PlacedItem[] {
  const own = itemsOf(items, ref);
  if (own.length > 0) return own;
  const line = planLine(ref, result);
  return line === null
    ? []
    : itemsPlace([{ shape: 'line', layer: 'areas', style: 'room-outline', points: line, ref } satisfies LineItem]);
}

/** The box round them, mm; null where the thing has no place. A finding takes with it the joint, edge or object that it
 *  is about, so that what stands beside it covers neither. */
export function thingBox(thing: Thing, result: Result, items: readonly PlacedItem[]): Box | null {
  const about = findingRefs(thing, result.analysis).filter(({ kind }) => kind !== 'bay' && kind !== 'room');
  return boxRound([...thingItems(thing, result, items), ...about.flatMap((ref) => itemsOf(items, ref))]);
}

/** The box round all that is lit with the thing, bays and rooms that a finding is about included, mm. */
export function thingSceneBox(thing: Thing, result: Result, items: readonly PlacedItem[]): Box | null {
  return boxRound([...thingItems(thing, result, items), ...aboutItems(thing, result, items)]);
}

function boxRound(items: readonly PlacedItem[]): Box | null {
  if (items.length === 0) return null;
  return boxOf(
    items.flatMap(({ box }): Point[] => [
      [box.minX, box.minY],
      [box.maxX, box.maxY],
    ]),
  );
}

function planLine({ kind, id }: DrawingRef, { plan }: Result): readonly Point[] | null {
  if (kind === 'room') {
    const room = plan.rooms.find((each) => each.id === id);
    return room === undefined ? null : [...room.outline, ...room.outline.slice(0, 1)];
  }
  if (kind !== 'object') return null;
  const lined = [...plan.doorways, ...plan.structuralJoints].find((each) => each.id === id);
  return lined?.line ?? null;
}
