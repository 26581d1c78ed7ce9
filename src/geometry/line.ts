import { type Point, pointBetween, pointDistance } from './point.ts';

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
