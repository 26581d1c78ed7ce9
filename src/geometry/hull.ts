import { type Point, vectorLength } from './point.ts';
import type { Ring } from './ring.ts';

/** Corners of the convex hull, clockwise on the sheet, without points along its sides. Fewer than three where all points lie on a line. */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (list: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const p of list) {
      while (out.length >= 2 && cross(out[out.length - 2] as Point, out[out.length - 1] as Point, p) <= 0) out.pop();
      out.push(p);
    }
    return out;
  };
  const lower = chain(sorted);
  const upper = chain(sorted.reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function cross(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

export interface Rectangle {
  readonly length: number;
  readonly width: number;
}

/** Among rectangles whose area is within this share of the least, the longest side counts: the safer reading where two fit alike. */
const NEAR_LEAST_AREA = 0.002;

/** Sides of the least-area rectangle round the points; of those within 0.2 % of the least area the one with the longest side.
 *  The unit is that of the points. A side of the least rectangle lies along a side of the hull (Freeman and Shapira, 1975). */
export function rectangleRound(points: readonly Point[]): Rectangle {
  const hull = hullOf(points);
  const tries: { area: number; length: number; width: number }[] = [];
  for (let i = 0; i < hull.length; i++) {
    const a = hull[i] as Point;
    const b = hull[(i + 1) % hull.length] as Point;
    const side = vectorLength(b[0] - a[0], b[1] - a[1]);
    if (side === 0) continue;
    const ux = (b[0] - a[0]) / side;
    const uy = (b[1] - a[1]) / side;
    let minU = Infinity;
    let maxU = -Infinity;
    let maxV = -Infinity;
    let minV = Infinity;
    for (let k = 0; k < hull.length; k++) {
      const p = hull[k] as Point;
      const u = (p[0] - a[0]) * ux + (p[1] - a[1]) * uy;
      const v = (p[1] - a[1]) * ux - (p[0] - a[0]) * uy;
      if (u < minU) minU = u;
      if (u > maxU) maxU = u;
      if (v < minV) minV = v;
      if (v > maxV) maxV = v;
    }
    const along = maxU - minU;
    const across = maxV - minV;
    tries.push({ area: along * across, length: Math.max(along, across), width: Math.min(along, across) });
  }
  const least = tries.reduce((m, t) => Math.min(m, t.area), Infinity);
  let best: Rectangle = { length: 0, width: 0 };
  for (const t of tries) {
    if (t.area <= least * (1 + NEAR_LEAST_AREA) && t.length > best.length) best = { length: t.length, width: t.width };
  }
  return best;
}

/** A stretch of a ring off its convex hull. */
export interface Pocket {
  /** Largest distance of its points from the hull side that closes it. */
  readonly depth: number;
  /** The corners off the hull, in the ring's order, with the hull corner before and after. */
  readonly points: readonly Point[];
}

/** The pockets of a ring that runs clockwise on the sheet. */
export function ringPockets(ring: Ring): Pocket[] {
  const hull = hullOf(ring);
  if (hull.length < 3 || hull.length === ring.length) return [];
  // No three corners of a hull stand on one upright line.
  const cornersAt = new Map<number, number[]>();
  for (const [x, y] of hull) cornersAt.set(x, [...(cornersAt.get(x) ?? []), y]);
  const isCorner = ring.map((p) => cornersAt.get(p[0])?.includes(p[1]) === true);
  const start = isCorner.indexOf(true);
  const pockets: Pocket[] = [];
  let run: Point[] = [];
  for (let k = 0; k <= ring.length; k++) {
    const i = (start + k) % ring.length;
    const point = ring[i] as Point;
    run.push(point);
    if (k === 0 || !isCorner[i]) continue;
    if (run.length > 2) pockets.push({ depth: depthOf(run), points: run });
    run = [point];
  }
  return pockets;
}

function depthOf(run: readonly Point[]): number {
  const a = run[0] as Point;
  const b = run[run.length - 1] as Point;
  const side = vectorLength(b[0] - a[0], b[1] - a[1]);
  if (side === 0) return 0;
  return run.reduce((depth, p) => Math.max(depth, Math.abs(cross(a, b, p)) / side), 0);
}

/** The sharpest turn into the ring's inside (a notch, not a corner) along a pocket, gathered over at most `within` of its length, in degrees,
 *  and where it is. The ring runs clockwise on the sheet; 0 where it never turns inwards. */
export function pocketTurn(pocket: Pocket, within: number): { readonly degrees: number; readonly at: Point } {
  const { points } = pocket;
  const turns: number[] = [];
  for (let i = 1; i + 1 < points.length; i++) {
    const [a, b, c] = [points[i - 1] as Point, points[i] as Point, points[i + 1] as Point];
    const ux = b[0] - a[0];
    const uy = b[1] - a[1];
    const vx = c[0] - b[0];
    const vy = c[1] - b[1];
    turns.push(-Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
  }
  let most = 0;
  let at = points[1] as Point;
  for (let i = 0; i < turns.length; i++) {
    let sum = 0;
    let length = 0;
    for (let j = i; j < turns.length; j++) {
      if (j > i) {
        const p = points[j] as Point;
        const q = points[j + 1] as Point;
        length += vectorLength(q[0] - p[0], q[1] - p[1]);
        if (length > within) break;
      }
      sum += turns[j] as number;
      if (sum > most) {
        most = sum;
        at = points[j + 1] as Point;
      }
    }
  }
  return { degrees: (most * 180) / Math.PI, at };
}
