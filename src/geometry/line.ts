import { type Point, pointBetween, pointDistance } from './point.ts';
import { segmentDistance } from './segment.ts';
import { STRAIGHT_MM } from './tolerance.ts';

/** The point halfway along a polyline; the origin where it has no points. Example: [0, 0], [4, 0], [4, 2] -> [3, 0]. */
export function lineMiddle(line: readonly Point[]): Point {
  const lengths = line.slice(1).map((point, i) => pointDistance(line[i] as Point, point));
  let left = lengths.reduce((sum, length) => sum + length, 0) / 2;
  for (const [i, length] of lengths.entries()) {
    if (left <= length && length > 0) return pointBetween(line[i] as Point, line[i + 1] as Point, left / length);
    left -= length;
  }
  return line[0] ?? [0, 0];
}

/** A polyline without the points that lie on the way between their neighbours. Points that were left out lie on it too, so that a curve of many short
 *  pieces does not wander off. */
export function lineStraight(points: readonly Point[]): Point[] {
  const out: Point[] = [];
  let left: Point[] = [];
  points.forEach((p, i) => {
    const a = out[out.length - 1];
    const b = points[i + 1];
    left.push(p);
    if (a && b && left.every((each) => segmentDistance(a, b, each) <= STRAIGHT_MM)) return;
    out.push(p);
    left = [];
  });
  return out;
}
