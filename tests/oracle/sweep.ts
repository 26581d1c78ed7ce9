import type { Point } from '../../src/geometry/point.ts';
import type { Region } from '../../src/geometry/ring.ts';

/** Overlay by slabs: the plane is cut upright at every corner and crossing, and between two cuts nothing crosses, so that
 *  what lies inside is plain arithmetic on heights. Slow, but it cannot fail, crossing outlines and coincident sides
 *  included: polygon libraries, the outside one that was tried first too, throw on some of the floors checked here. */

/** One side of a layer, from left to right. */
interface Side {
  readonly layer: number;
  readonly a: Point;
  readonly b: Point;
}

/** Trapezoids of the places where `keep` holds. A layer is a list of pieces; a place is inside it by the even-odd rule. */
export function sweep(
  layers: readonly (readonly Region[])[],
  keep: (inside: readonly boolean[]) => boolean,
): readonly Region[] {
  const sides = layers.flatMap((shape, layer) =>
    shape
      .flatMap((r) => [r.outline, ...r.holes])
      .flatMap((ring) =>
        ring.flatMap((p, i): Side[] => {
          const q = ring[(i + 1) % ring.length] ?? p;
          if (p[0] === q[0]) return [];
          return [p[0] < q[0] ? { layer, a: p, b: q } : { layer, a: q, b: p }];
        }),
      ),
  );
  const cuts = cutsOf(sides);
  const sorted = [...sides].sort((s, t) => s.a[0] - t.a[0]);
  const pieces: Region[] = [];
  let active: Side[] = [];
  let next = 0;
  for (let k = 0; k + 1 < cuts.length; k++) {
    const x0 = cuts[k] ?? 0;
    const x1 = cuts[k + 1] ?? 0;
    for (let side = sorted[next]; side !== undefined && side.a[0] < x1; side = sorted[++next]) active.push(side);
    active = active.filter((side) => side.b[0] > x0);
    pieces.push(...slab(active, layers.length, x0, x1, keep));
  }
  return pieces;
}

function cutsOf(sides: readonly Side[]): number[] {
  const xs = new Set(sides.flatMap(({ a, b }) => [a[0], b[0]]));
  const sorted = [...sides].sort((s, t) => s.a[0] - t.a[0]);
  sorted.forEach((one, i) => {
    for (let k = i + 1; k < sorted.length; k++) {
      const two = sorted[k];
      if (two === undefined || two.a[0] >= one.b[0]) break;
      const x = crossingAt(one, two);
      if (x !== null) xs.add(x);
    }
  });
  return [...xs].sort((a, b) => a - b);
}

/** Where two sides cross, strictly between their ends. */
function crossingAt(one: Side, two: Side): number | null {
  if (Math.max(one.a[1], one.b[1]) < Math.min(two.a[1], two.b[1])) return null;
  if (Math.max(two.a[1], two.b[1]) < Math.min(one.a[1], one.b[1])) return null;
  const from = Math.max(one.a[0], two.a[0]);
  const to = Math.min(one.b[0], two.b[0]);
  const before = heightAt(one, from) - heightAt(two, from);
  const after = heightAt(one, to) - heightAt(two, to);
  if (before * after >= 0) return null;
  const x = from + ((to - from) * before) / (before - after);
  return x > from && x < to ? x : null;
}

function heightAt({ a, b }: Side, x: number): number {
  return a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
}

function slab(
  active: readonly Side[],
  layers: number,
  x0: number,
  x1: number,
  keep: (inside: readonly boolean[]) => boolean,
): Region[] {
  const middle = (x0 + x1) / 2;
  const stack = active.map((side) => ({ side, y: heightAt(side, middle) })).sort((s, t) => s.y - t.y);
  const inside = Array.from({ length: layers }, () => false);
  const pieces: Region[] = [];
  let open: Side | null = null;
  for (const { side } of stack) {
    inside[side.layer] = !inside[side.layer];
    const kept = keep(inside);
    if (kept && open === null) open = side;
    if (kept || open === null) continue;
    const quad: Point[] = [
      [x0, heightAt(open, x0)],
      [x1, heightAt(open, x1)],
      [x1, heightAt(side, x1)],
      [x0, heightAt(side, x0)],
    ];
    pieces.push({ outline: quad, holes: [] });
    open = null;
  }
  return pieces;
}
