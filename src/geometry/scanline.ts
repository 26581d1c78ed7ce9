import type { Point } from './point.ts';
import type { Ring } from './ring.ts';

/** A stretch of a line, from < to. */
export type Interval = readonly [from: number, to: number];

/** The stretches of the upright (axis 0) or level (axis 1) line at `at` that run strictly inside the rings (even-odd): where the
 *  line follows an edge it is not inside. Exact at corners on the line. */
export function lineInside(rings: readonly Ring[], axis: 0 | 1, at: number): Interval[] {
  const cut = new LineCut(axis, at);
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) cut.add(ring[i] as Point, ring[(i + 1) % ring.length] as Point);
  }
  return cut.inside();
}

/** The same from edges alone, where those of the rings that the line does not reach may be left out. */
export function edgesInside(edges: readonly (readonly [Point, Point])[], axis: 0 | 1, at: number): Interval[] {
  const cut = new LineCut(axis, at);
  for (const [p, q] of edges) cut.add(p, q);
  return cut.inside();
}

/** Where edges meet a line, just before it and just beyond it. */
class LineCut {
  private readonly before: number[] = [];
  private readonly after: number[] = [];
  /** Whether an edge ends on the line: only then do the two sides of it differ. */
  private hasCorner = false;

  constructor(
    private readonly axis: 0 | 1,
    private readonly at: number,
  ) {}

  add(p: Point, q: Point): void {
    const { axis, at } = this;
    const low = Math.min(p[axis], q[axis]);
    const high = Math.max(p[axis], q[axis]);
    if (low === high || at < low || at > high) return;
    const other = axis === 0 ? 1 : 0;
    const run = q[axis] - p[axis];
    const along =
      at === p[axis] ? p[other] : at === q[axis] ? q[other] : p[other] + ((q[other] - p[other]) * (at - p[axis])) / run;
    if (low < at) this.before.push(along);
    if (at < high) this.after.push(along);
    if (low === at || at === high) this.hasCorner = true;
  }

  inside(): Interval[] {
    const before = intervalsOf(this.before);
    return this.hasCorner ? intervalsMeet(before, intervalsOf(this.after)) : before;
  }
}

function intervalsOf(places: number[]): Interval[] {
  // Most lines come over the outline twice.
  if (places.length === 2) {
    const [p, q] = places as [number, number];
    return p < q ? [[p, q]] : q < p ? [[q, p]] : [];
  }
  places.sort((a, b) => a - b);
  const out: Interval[] = [];
  for (let i = 0; i + 1 < places.length; i += 2) {
    const from = places[i] as number;
    const to = places[i + 1] as number;
    const last = out[out.length - 1];
    if (last && last[1] === from) out[out.length - 1] = [last[0], to];
    else if (to > from) out.push([from, to]);
  }
  return out;
}

/** The stretch that shares most with another; null where none shares any. */
export function intervalSharing(stretches: readonly Interval[], [low, high]: Interval): Interval | null {
  const shared = ([a, b]: Interval) => Math.min(b, high) - Math.max(a, low);
  const [best] = [...stretches].sort((p, q) => shared(q) - shared(p));
  return best && shared(best) > 0 ? best : null;
}

/** Where both lists of intervals, each in rising order, have a stretch in common. */
export function intervalsMeet(a: readonly Interval[], b: readonly Interval[]): Interval[] {
  const out: Interval[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    const p = a[i] as Interval;
    const q = b[j] as Interval;
    const from = Math.max(p[0], q[0]);
    const to = Math.min(p[1], q[1]);
    if (to > from) out.push([from, to]);
    if (p[1] < q[1]) i++;
    else j++;
  }
  return out;
}
