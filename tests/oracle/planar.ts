import type { Point } from '../../src/geometry/point.ts';
import type { Region, Ring } from '../../src/geometry/ring.ts';
import { sweep } from './sweep.ts';

/** The checker's own plane arithmetic, in mm. Nothing here is shared with the code that it checks. */

/** Disjoint pieces of plane. */
export type Shape = readonly Region[];
export type Segment = readonly [Point, Point];

export interface Bounds {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export function at<T>(list: readonly T[], index: number): T {
  const value = list[((index % list.length) + list.length) % list.length];
  if (value === undefined) throw new Error(`nothing at ${index} of ${list.length}`);
  return value;
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

export function cross(o: Point, a: Point, b: Point): number {
  return (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);
}

/** Shoelace sum about the ring's first corner; positive where x to y turns along the ring. */
export function signedArea(ring: Ring): number {
  const o = at(ring, 0);
  let sum = 0;
  for (let i = 1; i + 1 < ring.length; i++) sum += cross(o, at(ring, i), at(ring, i + 1));
  return sum / 2;
}

export function area(shape: Shape): number {
  return shape.reduce(
    (sum, { outline, holes }) =>
      sum + Math.abs(signedArea(outline)) - holes.reduce((h, hole) => h + Math.abs(signedArea(hole)), 0),
    0,
  );
}

export function segments(ring: Ring): Segment[] {
  return ring.map((p, i) => [p, at(ring, i + 1)] as const);
}

export function lineSegments(line: readonly Point[]): Segment[] {
  return line.slice(1).map((p, i) => [at(line, i), p] as const);
}

export function lineLength(line: readonly Point[]): number {
  return lineSegments(line).reduce((sum, [a, b]) => sum + distance(a, b), 0);
}

export function ringLength(ring: Ring): number {
  return segments(ring).reduce((sum, [a, b]) => sum + distance(a, b), 0);
}

export function rings(region: Region): Ring[] {
  return [region.outline, ...region.holes];
}

export function between(a: Point, b: Point, share: number): Point {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** Distance from a point to a stretch of line. */
export function distanceToSegment(p: Point, [a, b]: Segment): number {
  const length2 = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
  if (length2 === 0) return distance(p, a);
  const t = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length2;
  return distance(p, between(a, b, Math.min(1, Math.max(0, t))));
}

export function distanceToSegments(p: Point, list: readonly Segment[]): number {
  let least = Infinity;
  for (const segment of list) least = Math.min(least, distanceToSegment(p, segment));
  return least;
}

export function inRing(ring: Ring, [x, y]: Point): boolean {
  let inside = false;
  for (const [a, b] of segments(ring)) {
    if (a[1] > y === b[1] > y) continue;
    if (x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
  }
  return inside;
}

export function inShape(shape: Shape, p: Point): boolean {
  return shape.some((r) => inRing(r.outline, p) && !r.holes.some((h) => inRing(h, p)));
}

export function boundsOf(points: readonly Point[]): Bounds {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { x0: least(xs), y0: least(ys), x1: most(xs), y1: most(ys) };
}

export function boundsOfShape(shape: Shape): Bounds {
  return boundsOf(shape.flatMap((r) => r.outline));
}

export function boundsApart(a: Bounds, b: Bounds, gap: number): boolean {
  return a.x1 + gap < b.x0 || b.x1 + gap < a.x0 || a.y1 + gap < b.y0 || b.y1 + gap < a.y0;
}

function least(values: readonly number[]): number {
  return values.reduce((m, v) => Math.min(m, v), Infinity);
}

function most(values: readonly number[]): number {
  return values.reduce((m, v) => Math.max(m, v), -Infinity);
}

export function shapeMeet(a: Shape, b: Shape): Shape {
  if (a.length === 0 || b.length === 0 || boundsApart(boundsOfShape(a), boundsOfShape(b), 0)) return [];
  return sweep([a, b], ([inA, inB]) => Boolean(inA && inB));
}

/** What is left of a shape once every one of `others` is taken away. */
export function shapeLess(a: Shape, others: readonly Shape[]): Shape {
  if (a.length === 0) return a;
  const bounds = boundsOfShape(a);
  const near = others.filter((other) => other.length > 0 && !boundsApart(bounds, boundsOfShape(other), 0));
  return near.length === 0 ? a : sweep([a, ...near], ([inA, ...rest]) => Boolean(inA) && !rest.includes(true));
}

/** Area centroid of disjoint pieces. */
export function centroid(shape: Shape): Point {
  const o = at(at(shape, 0).outline, 0);
  let total = 0;
  let sx = 0;
  let sy = 0;
  const add = (ring: Ring, sign: number) => {
    const turn = Math.sign(signedArea(ring)) * sign;
    for (const [a, b] of segments(ring)) {
      const w = cross(o, a, b) * turn;
      total += w;
      sx += w * (a[0] + b[0] - 2 * o[0]);
      sy += w * (a[1] + b[1] - 2 * o[1]);
    }
  };
  for (const region of shape) {
    add(region.outline, 1);
    for (const hole of region.holes) add(hole, -1);
  }
  return [o[0] + sx / (3 * total), o[1] + sy / (3 * total)];
}

export function circle([x, y]: Point, diameterMm: number): Ring {
  return Array.from({ length: 48 }, (_, i) => {
    const a = (i * Math.PI) / 24;
    return [x + (diameterMm / 2) * Math.cos(a), y + (diameterMm / 2) * Math.sin(a)] as const;
  });
}

export function hull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Point[]) => {
    const chain: Point[] = [];
    for (const p of list) {
      while (chain.length >= 2 && cross(at(chain, -2), at(chain, -1), p) <= 0) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}
