import { type Point, pointBetween } from './point.ts';
import type { Box } from './ring.ts';

/** The part of a segment in a box, its own ends where they lie in it; null where none does. */
export function segmentWithin(a: Point, b: Point, box: Box): readonly [Point, Point] | null {
  let [from, to] = [0, 1];
  const bounds = [
    [a[0], b[0], box.minX, box.maxX],
    [a[1], b[1], box.minY, box.maxY],
  ] as const;
  for (const [start, end, least, most] of bounds) {
    const run = end - start;
    if (run === 0) {
      if (start < least || start > most) return null;
      continue;
    }
    const [enter, leave] = [(least - start) / run, (most - start) / run];
    from = Math.max(from, Math.min(enter, leave));
    to = Math.min(to, Math.max(enter, leave));
  }
  if (from > to) return null;
  return [from === 0 ? a : pointBetween(a, b, from), to === 1 ? b : pointBetween(a, b, to)];
}
