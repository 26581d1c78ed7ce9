import type { Point } from '../geometry/point.ts';

/** An outline or an open line. */
interface Crossable {
  readonly points: readonly Point[];
  readonly isRing: boolean;
}

interface Stretch {
  /** Number of the outline or line that it is part of. */
  readonly line: number;
  readonly a: Point;
  readonly b: Point;
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
}

/** So many pairs of stretches are looked at for each stretch, on average, and at least for so many stretches. A floor of 25,000 rooms looks at 2,
 *  a hall under a close grid of joints at some hundred: more is a thicket, whether or not it crosses. */
const MOST_LOOKS = 500;
const FEWEST_STRETCHES = 1000;

/** The number of the outline or line at which they are found to cross more often than `most` times, each itself and one another, or to lie
 *  side by side too closely for that to be told; null where they do not. Meeting at a point or running along is no crossing.
 *  Stops as soon as it knows, so that a scribble costs no more than a plan.
 *  Steps: the stretches from left to right; each against those that still reach it, kept in bands of y. */
export function crossingsExceed(most: number, lines: readonly Crossable[]): number | null {
  const stretches = lines.flatMap(stretchesOf).sort((s, t) => s.minX - t.minX);
  if (stretches.length * stretches.length < most) return null;
  const heights = stretches.reduce((sum, s) => sum + s.maxY - s.minY, 0);
  const band = Math.max(heights / Math.max(1, stretches.length), 1);
  const bands = new Map<number, Stretch[]>();
  let crossings = 0;
  let looks = MOST_LOOKS * Math.max(stretches.length, FEWEST_STRETCHES);
  for (const stretch of stretches) {
    const first = Math.floor(stretch.minY / band);
    for (let k = first; k * band <= stretch.maxY; k++) {
      const reached = (bands.get(k) ?? []).filter((other) => other.maxX > stretch.minX);
      looks -= reached.length;
      if (looks < 0) return stretch.line;
      for (const other of reached) {
        // a pair that shares several bands counts in the first of them
        const shared = Math.max(first, Math.floor(other.minY / band));
        if (shared === k && stretchesCross(stretch, other) && ++crossings > most) return stretch.line;
      }
      reached.push(stretch);
      bands.set(k, reached);
    }
  }
  return null;
}

function stretchesOf({ points, isRing }: Crossable, line: number): readonly Stretch[] {
  const count = isRing ? points.length : points.length - 1;
  return Array.from({ length: count }, (_, i) => {
    const a = points[i] as Point;
    const b = points[(i + 1) % points.length] as Point;
    return {
      line,
      a,
      b,
      minX: Math.min(a[0], b[0]),
      maxX: Math.max(a[0], b[0]),
      minY: Math.min(a[1], b[1]),
      maxY: Math.max(a[1], b[1]),
    };
  });
}

function stretchesCross(s: Stretch, t: Stretch): boolean {
  if (s.maxY <= t.minY || t.maxY <= s.minY) return false;
  return side(s, t.a) * side(s, t.b) < 0 && side(t, s.a) * side(t, s.b) < 0;
}

/** Above or below nought by the side of the stretch that the point is on. */
function side({ a, b }: Stretch, point: Point): number {
  return Math.sign((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]));
}
