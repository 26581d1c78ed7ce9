import { type Point, pointDistance, vectorLength } from '../geometry/point.ts';
import type { Ring } from '../geometry/ring.ts';
import type { PartCut } from './part.ts';
import type { Straightened } from './straighten.ts';

/** Carries cuts from a straightened region back to the real one: ends at corners go to the real corners, ends on walls to the real walls, ends on
 *  other cuts to where those really run. */
export function cutsCarry({ region, real, corners, movedMm }: Straightened, cuts: readonly PartCut[]): PartCut[] {
  if (movedMm === 0) return [...cuts];
  const rings = [region.outline, ...region.holes];
  const realRings: RealRing[] = [real.outline, ...real.holes].map((ring, i) => ({ ring, corners: corners[i] ?? [] }));
  const places = cuts.map((cut) => [placeOf(rings, cut.from), placeOf(rings, cut.to)] as const);
  const first = cuts.map((cut, i) => {
    const [p, q] = places[i] as readonly [Place, Place];
    const axis = cut.from[0] === cut.to[0] ? 0 : 1;
    const anchor = cornerAt(realRings, p) ?? cornerAt(realRings, q);
    const at = anchor ? anchor[axis] : cut.from[axis];
    return { ...cut, from: endReal(realRings, p, cut.from, axis, at), to: endReal(realRings, q, cut.to, axis, at) };
  });
  // Cuts that meet in a place meet there in fact too: the first says where.
  const meetings = new Map<string, Point>();
  const meeting = (p: Point, i: number): Point => {
    const key = String(p);
    const known = meetings.get(key) ?? onOther(cuts, first, i, p, first[i] as PartCut);
    meetings.set(key, known);
    return known;
  };
  return first.map((cut, i) => {
    const [p, q] = places[i] as readonly [Place, Place];
    const source = cuts[i] as PartCut;
    return {
      ...cut,
      from: p.kind === 'free' ? meeting(source.from, i) : cut.from,
      to: q.kind === 'free' ? meeting(source.to, i) : cut.to,
    };
  });
}

type Place =
  | { readonly kind: 'corner'; readonly ring: number; readonly corner: number }
  | { readonly kind: 'wall'; readonly ring: number; readonly corner: number }
  | { readonly kind: 'free' };

function placeOf(rings: readonly Ring[], p: Point): Place {
  for (let r = 0; r < rings.length; r++) {
    const ring = rings[r] as Ring;
    const corner = ring.findIndex((q) => q[0] === p[0] && q[1] === p[1]);
    if (corner >= 0) return { kind: 'corner', ring: r, corner };
  }
  for (let r = 0; r < rings.length; r++) {
    const ring = rings[r] as Ring;
    for (let i = 0; i < ring.length; i++) {
      if (isOn(ring[i] as Point, ring[(i + 1) % ring.length] as Point, p)) return { kind: 'wall', ring: r, corner: i };
    }
  }
  return { kind: 'free' };
}

/** Whether p lies on the stretch a-b of the straightened outline; its coordinates were computed on it, so half a grid step is ample. */
function isOn(a: Point, b: Point, p: Point): boolean {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = vectorLength(dx, dy);
  if (length === 0) return false;
  const along = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length;
  const off = Math.abs(dx * (p[1] - a[1]) - dy * (p[0] - a[0])) / length;
  return along >= 0 && along <= length && off < ON_WALL_MM;
}

const ON_WALL_MM = 0.05;

interface RealRing {
  readonly ring: Ring;
  /** Number in the ring of each corner of the straightened one. */
  readonly corners: readonly number[];
}

function cornerAt(realRings: readonly RealRing[], place: Place): Point | null {
  if (place.kind !== 'corner') return null;
  const { ring, corners } = realRings[place.ring] as RealRing;
  return ring[corners[place.corner] as number] ?? null;
}

function endReal(realRings: readonly RealRing[], place: Place, p: Point, axis: 0 | 1, at: number): Point {
  if (place.kind === 'corner') return cornerAt(realRings, place) ?? p;
  const moved: Point = axis === 0 ? [at, p[1]] : [p[0], at];
  if (place.kind === 'free') return moved;
  const { ring, corners } = realRings[place.ring] as RealRing;
  const from = corners[place.corner] as number;
  const to = corners[(place.corner + 1) % corners.length] as number;
  const steps = (to - from + ring.length) % ring.length;
  let best: Point | null = null;
  for (let k = 0; k < steps; k++) {
    const a = ring[(from + k) % ring.length] as Point;
    const b = ring[(from + k + 1) % ring.length] as Point;
    if (at < Math.min(a[axis], b[axis]) || at > Math.max(a[axis], b[axis])) continue;
    const met = crossAxis(a, b, axis, at, moved);
    if (!best || pointDistance(met, p) < pointDistance(best, p)) best = met;
  }
  return best ?? crossAxis(ring[from] as Point, ring[to] as Point, axis, at, moved);
}

/** Where the line at `at` along the axis crosses the line through a and b; the fallback where it runs along it. */
function crossAxis(a: Point, b: Point, axis: 0 | 1, at: number, fallback: Point): Point {
  const run = b[axis] - a[axis];
  if (run === 0) return fallback;
  const other = axis === 0 ? 1 : 0;
  const share = Math.min(1, Math.max(0, (at - a[axis]) / run));
  const along = a[other] + (b[other] - a[other]) * share;
  const on = a[axis] + run * share;
  return axis === 0 ? [on, along] : [along, on];
}

/** A free end lies on another cut: it goes to where the two really meet. */
function onOther(cuts: readonly PartCut[], real: readonly PartCut[], own: number, p: Point, cut: PartCut): Point {
  const end = p === cuts[own]?.from ? cut.from : cut.to;
  const other = cuts.findIndex((c, i) => i !== own && isSquare(c, cuts[own] as PartCut) && isOn(c.from, c.to, p));
  const target = real[other];
  if (!target) return end;
  const axis = cuts[own]?.from[0] === cuts[own]?.to[0] ? 0 : 1;
  return crossAxis(target.from, target.to, axis, end[axis], end);
}

function isSquare(a: PartCut, b: PartCut): boolean {
  return (a.from[0] === a.to[0]) !== (b.from[0] === b.to[0]);
}
