import { ringCrossing } from '../../geometry/crossing.ts';
import { type Point, pointDistance } from '../../geometry/point.ts';
import { WELD_MM } from '../../geometry/tolerance.ts';
import type { PlanFile } from '../schema.ts';
import { pointSnapped, ringHasDistinct } from '../snap.ts';
import { doorwaysFollow } from './doorways-follow.ts';
import {
  type AnyObject,
  objectFind,
  objectFits,
  objectRings,
  objectsFound,
  objectsReplaced,
  type PlanObject,
} from './objects.ts';

/** Outlines, holes and lines of objects found and set, with what no outline may become. Places in mm. */

/** A corner of an object; also the edge that runs from it to the next corner. */
export interface RingCorner {
  readonly id: string;
  /** 0: the outline, or the line of an object that is one; 1 and on: the holes of a room. */
  readonly ring: number;
  readonly corner: number;
}

/** Why an outline is not set. `off-sheet`: further out than a plan reaches. */
export type EditRefusal =
  | 'crosses'
  | 'too-few-corners'
  | 'corners-meet'
  | 'not-a-rectangle'
  | 'no-such-corner'
  | 'off-sheet';

export type Edited =
  | { readonly kind: 'edited'; readonly file: PlanFile }
  | { readonly kind: 'refused'; readonly why: EditRefusal; readonly at?: Point };

export function refused(why: EditRefusal, at?: Point): Edited {
  return at === undefined ? { kind: 'refused', why } : { kind: 'refused', why, at };
}

/** The points of an outline, a hole or a line. */
export interface FoundRing {
  readonly list: PlanObject['list'];
  readonly points: readonly Point[];
  /** Whether an edge runs from the last point to the first. */
  readonly isClosed: boolean;
}

export function ringFind(file: PlanFile, { id, ring }: Omit<RingCorner, 'corner'>): FoundRing | null {
  const found = objectFind(file, id);
  if (found === null) return null;
  const { list, object } = found;
  if ('line' in object) return ring === 0 ? { list, points: object.line, isClosed: false } : null;
  const points = objectRings(found)[ring];
  return points ? { list, points, isClosed: true } : null;
}

export interface RingChange {
  readonly id: string;
  readonly ring: number;
  readonly points: readonly Point[];
}

/** Sets outlines and lines, all or none of them, and lets the doorways follow. Refused where one crosses itself that did not before, has fewer
 *  corners than it needs, or has corners closer than 1 mm that it did not have before. */
export function ringsSet(file: PlanFile, changes: readonly RingChange[]): Edited {
  const snapped = changes.map((change) => ({ ...change, points: change.points.map(pointSnapped) }));
  for (const change of snapped) {
    const before = ringFind(file, change);
    const refusal = before ? ringRefusal(before, change.points) : refused('no-such-corner');
    if (refusal) return refusal;
  }
  const ids = snapped.map(({ id }) => id);
  const after = objectsReplaced(file, ids, ({ object }) =>
    snapped.filter(({ id }) => id === object.id).reduce(objectReringed, object),
  );
  if (!objectsFound(after, ids).every(objectFits)) return refused('off-sheet');
  return { kind: 'edited', file: doorwaysFollow(file, after) };
}

function ringRefusal({ list, points: before, isClosed }: FoundRing, after: readonly Point[]): Edited | null {
  if (isClosed ? !ringHasDistinct(after, 3) : after.length < 2) return refused('too-few-corners');
  if (list === 'doorways' && after.length > 2) return refused('no-such-corner');
  const met = cornersMeet(after, isClosed);
  if (met && !cornersMeet(before, isClosed)) return refused('corners-meet', met);
  const crossing = isClosed ? ringCrossing(after) : null;
  if (crossing && !ringCrossing(before)) return refused('crosses', crossing);
  return null;
}

/** Corners closer than this are one corner, mm. */
export const CORNERS_MEET_MM = WELD_MM;

function cornersMeet(points: readonly Point[], isClosed: boolean): Point | null {
  const found = points.find((point, i) => {
    const next = points[i + 1] ?? (isClosed ? points[0] : undefined);
    return next !== undefined && pointDistance(point, next) < CORNERS_MEET_MM;
  });
  return found ?? null;
}

function objectReringed(object: AnyObject, { ring, points }: RingChange): AnyObject {
  if ('line' in object) return pointsSame(object.line, points) ? object : ({ ...object, line: points } as AnyObject);
  if (!('outline' in object)) return object;
  if (ring === 0) return pointsSame(object.outline, points) ? object : { ...object, outline: points };
  if (!('holes' in object) || object.holes === undefined) return object;
  const holes = object.holes.map((hole, i) => (i === ring - 1 && !pointsSame(hole, points) ? points : hole));
  return holes.every((hole, i) => hole === object.holes?.[i]) ? object : { ...object, holes };
}

function pointsSame(a: readonly Point[], b: readonly Point[]): boolean {
  return a.length === b.length && a.every(([x, y], i) => x === b[i]?.[0] && y === b[i]?.[1]);
}
