import type { Point } from '../../geometry/point.ts';
import { type Box, boxOf } from '../../geometry/ring.ts';
import { MOST_PLAN_POINTS } from '../plan-size.ts';
import type { PlanFile } from '../schema.ts';
import { clipsAdded, objectsCopied, type Pasted } from './copy.ts';
import { objectsPlaced, pointMoved } from './move.ts';
import { objectPoints, objectsFound } from './objects.ts';

/** Objects brought into line, spaced evenly and repeated, by the upright boxes round them, mm. */

export type AlignSide = 'left' | 'right' | 'top' | 'bottom' | 'middle-x' | 'middle-y';

/** Moves objects to one side of the box round all of them, or their middles to its middle ('middle-x': to one upright line).
 *  Example: columns from x 0 and from x 300, 'left' -> both from x 0 */
export function objectsAligned(file: PlanFile, ids: readonly string[], side: AlignSide): PlanFile {
  const boxes = boxesOf(file, ids);
  const around = boxOf(
    [...boxes.values()].flatMap(({ minX, minY, maxX, maxY }): Point[] => [
      [minX, minY],
      [maxX, maxY],
    ]),
  );
  return boxesMoved(file, new Map([...boxes].map(([id, box]) => [id, alignShift(box, around, side)])));
}

function alignShift(box: Box, around: Box, side: AlignSide): Point {
  switch (side) {
    case 'left':
      return [around.minX - box.minX, 0];
    case 'right':
      return [around.maxX - box.maxX, 0];
    case 'top':
      return [0, around.minY - box.minY];
    case 'bottom':
      return [0, around.maxY - box.maxY];
    case 'middle-x':
      return [(around.minX + around.maxX - box.minX - box.maxX) / 2, 0];
    case 'middle-y':
      return [0, (around.minY + around.maxY - box.minY - box.maxY) / 2];
  }
}

/** Spaces objects so that the gaps between their boxes are equal; the first and the last stay.
 *  Example: columns of 300 mm from x 0, 500 and 3300, 'x' -> the one between from x 1650, with gaps of 1350 mm */
export function objectsDistributed(file: PlanFile, ids: readonly string[], axis: 'x' | 'y'): PlanFile {
  const spans = [...boxesOf(file, ids)]
    .map(([id, box]) => ({ id, ...spanOf(box, axis) }))
    .sort((a, b) => a.from + a.to - b.from - b.to);
  const [first, last] = [spans[0], spans[spans.length - 1]];
  if (!first || !last || spans.length < 3) return file;
  const taken = spans.reduce((sum, { from, to }) => sum + to - from, 0);
  const gap = (last.to - first.from - taken) / (spans.length - 1);
  let next = first.from;
  const shifts = spans.map(({ id, from, to }): [string, Point] => {
    const by = next - from;
    next += to - from + gap;
    return [id, axis === 'x' ? [by, 0] : [0, by]];
  });
  return boxesMoved(file, new Map(shifts));
}

function spanOf(box: Box, axis: 'x' | 'y'): { readonly from: number; readonly to: number } {
  return axis === 'x' ? { from: box.minX, to: box.maxX } : { from: box.minY, to: box.maxY };
}

export interface Repeat {
  /** So many in all along x, the first one among them; at least 1. */
  readonly countX: number;
  readonly countY: number;
  /** From centre to centre, to the right. */
  readonly spacingXMm: number;
  /** From centre to centre, down the sheet. */
  readonly spacingYMm: number;
}

/** Repeats an object in a row or a grid; it stays where it is and is the first. Gives the ids of the others, row by row.
 *  Example: column c1, { countX: 3, countY: 1, spacingXMm: 5000, spacingYMm: 0 } -> c2 and c3, 5 and 10 m to the right */
export function objectsRepeated(file: PlanFile, id: string, repeat: Repeat): Pasted {
  const { countX, countY, spacingXMm, spacingYMm } = repeat;
  if (countX * countY > MOST_PLAN_POINTS) return { file, ids: [] };
  const moves = Array.from({ length: countY }, (_, row) =>
    Array.from({ length: countX }, (_, column): Point => [column * spacingXMm, row * spacingYMm]),
  ).flat();
  return clipsAdded(file, objectsCopied(file, [id]), moves.slice(1));
}

function boxesOf(file: PlanFile, ids: readonly string[]): ReadonlyMap<string, Box> {
  return new Map(objectsFound(file, ids).map((found) => [found.object.id, boxOf(objectPoints(found))]));
}

function boxesMoved(file: PlanFile, shifts: ReadonlyMap<string, Point>): PlanFile {
  return objectsPlaced(file, [...shifts.keys()], ({ object }) => pointMoved(shifts.get(object.id) ?? [0, 0]));
}
