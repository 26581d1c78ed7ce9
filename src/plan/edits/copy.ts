import type { Point } from '../../geometry/point.ts';
import { MOST_PLAN_POINTS } from '../plan-size.ts';
import type { PlanFile } from '../schema.ts';
import { pointMoved } from './move.ts';
import {
  type NewObject,
  objectFits,
  objectPlaced,
  objectPoints,
  objectsAdded,
  objectsFound,
  objectsOf,
  type PlanObject,
} from './objects.ts';

/** Objects as they were when they were copied: plain data that may go to another plan. */
export type PlanClip = readonly PlanObject[];

/** The objects that were added, in the order of what they are copies of. */
export interface Pasted {
  readonly file: PlanFile;
  readonly ids: readonly string[];
}

/** The objects with these ids, in the order of the plan. */
export function objectsCopied(file: PlanFile, ids: readonly string[]): PlanClip {
  return objectsFound(file, ids);
}

/** Adds what was copied under new ids, moved by so much, mm. A copy of a room belongs to no tile field. Nothing is added where something would lie
 *  off the sheet, or the plan would have more points than are read.
 *  Example: a clip of room r1 into the plan it is from, by [0, 5000] -> ids ['r2'] */
export function objectsPasted(file: PlanFile, clip: PlanClip, by: Point): Pasted {
  return clipsAdded(file, clip, [by]);
}

/** Adds a copy of the clip at each move. */
export function clipsAdded(file: PlanFile, clip: PlanClip, moves: readonly Point[]): Pasted {
  const points = pointCount(clip) * moves.length;
  if (points === 0 || points + pointCount(objectsOf(file)) > MOST_PLAN_POINTS) return { file, ids: [] };
  const copies = moves.flatMap((by) =>
    clip.map(({ list, object }) => ({ list, object: objectPlaced(object, pointMoved(by)) }) as PlanObject),
  );
  return copies.every(objectFits) ? objectsAdded(file, copies as readonly NewObject[]) : { file, ids: [] };
}

function pointCount(objects: readonly PlanObject[]): number {
  return objects.reduce((sum, found) => sum + objectPoints(found).length, 0);
}
