import { type Point, vectorLength } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { ALIGN_MM, FLATTEN_MM, onGrid, STRAIGHTEN_DEG, STRAIGHTEN_MM } from '../geometry/tolerance.ts';

/** A region made square where builders meant it to be, corner for corner with the real one. */
export interface Straightened {
  readonly region: Region;
  /** The furthest that a corner moved, mm. */
  readonly movedMm: number;
  readonly real: Region;
  /** Ring by ring, outline first: for each corner of the straightened region its number in the real ring. */
  readonly corners: readonly (readonly number[])[];
}

/** Walls that nearly follow an axis are laid on it, and corners that nearly line up are lined up, so that a joint from corner to corner
 *  is one line; piers and niches no deeper than `flatMm` are laid flat. The layout is found on the straightened region and carried back to the real
 *  corners. Regions share their lines. */
export function regionsStraighten(regions: readonly Region[], flatMm: number): Straightened[] {
  const corners = regions.flatMap((region) => [region.outline, ...region.holes].flatMap((ring) => [...ring]));
  const x = new Classes(corners.map((p) => p[0]));
  const y = new Classes(corners.map((p) => p[1]));
  const slope = Math.tan((STRAIGHTEN_DEG * Math.PI) / 180);
  let base = 0;
  for (const region of regions) {
    for (const ring of [region.outline, ...region.holes]) {
      ring.forEach((p, i) => {
        const k = (i + 1) % ring.length;
        const q = ring[k] as Point;
        const dx = Math.abs(q[0] - p[0]);
        const dy = Math.abs(q[1] - p[1]);
        if (dx <= Math.min(STRAIGHTEN_MM, slope * dy)) x.join(base + i, base + k, dy);
        if (dy <= Math.min(STRAIGHTEN_MM, slope * dx)) y.join(base + i, base + k, dx);
      });
      base += ring.length;
    }
  }
  const xs = x.settle();
  const ys = y.settle();
  let at = 0;
  return regions.map((region) => {
    let movedMm = 0;
    const corners: number[][] = [];
    const straight = (ring: Ring): Ring => {
      const all = ring.map(([px, py], i): Point => {
        const p: Point = [xs[at + i] as number, ys[at + i] as number];
        movedMm = Math.max(movedMm, Math.abs(p[0] - px), Math.abs(p[1] - py));
        return p;
      });
      const kept = ringFlat(
        all,
        ringFewer(all, (i) => x.isWall(at + i) || y.isWall(at + i)),
        flatMm,
      );
      at += ring.length;
      corners.push(kept);
      if (kept.length < ring.length) movedMm = Math.max(movedMm, FLATTEN_MM);
      return kept.map((i) => all[i] as Point);
    };
    const outline = straight(region.outline);
    const holes = region.holes.map(straight);
    return { region: { outline, holes }, movedMm, real: region, corners };
  });
}

/** Numbers of the corners that are enough to stand for a ring: all on walls that follow an axis, and of curves and skew walls those that
 *  leave none of the others further off than the tolerance. */
function ringFewer(ring: Ring, isFixed: (corner: number) => boolean): number[] {
  const fixed = ring.flatMap((_, i) => (isFixed(i) ? [i] : []));
  if (fixed.length < 2) fixed.splice(0, fixed.length, 0, farthestFrom(ring, 0));
  fixed.sort((a, b) => a - b);
  return fixed
    .flatMap((from, k) => {
      const to = fixed[k + 1] ?? (fixed[0] as number) + ring.length;
      return [from, ...betweenKept(ring, from, to)];
    })
    .map((i) => i % ring.length);
}

/** The corners without piers and niches: stretches that leave a wall's line and come back to it without going further off than `flatMm`. */
function ringFlat(ring: Ring, corners: readonly number[], flatMm: number): number[] {
  const kept = [...corners];
  for (let i = 0; i < kept.length && kept.length > 4; i++) {
    const from = ring[kept[i] as number] as Point;
    for (let steps = Math.min(MOST_FLAT, kept.length - 2); steps >= 2; steps--) {
      const inner = Array.from({ length: steps - 1 }, (_, k) => (i + 1 + k) % kept.length);
      const to = ring[kept[(i + steps) % kept.length] as number] as Point;
      const axis = from[0] === to[0] ? 0 : from[1] === to[1] ? 1 : null;
      if (axis === null) continue;
      const other = axis === 0 ? 1 : 0;
      const [low, high] = [Math.min(from[other], to[other]), Math.max(from[other], to[other])];
      const fits = inner.every((k) => {
        const p = ring[kept[k] as number] as Point;
        return Math.abs(p[axis] - from[axis]) <= flatMm && p[other] >= low && p[other] <= high;
      });
      if (!fits || high === low) continue;
      const gone = new Set(inner.map((k) => kept[k]));
      kept.splice(0, kept.length, ...kept.filter((k) => !gone.has(k)));
      i = -1;
      break;
    }
  }
  return kept;
}

/** Corners of a pier or niche with its ends on the wall, at most. */
const MOST_FLAT = 5;

function farthestFrom(ring: Ring, start: number): number {
  let best = start;
  let most = 0;
  ring.forEach((p, i) => {
    const d = vectorLength(p[0] - (ring[start] as Point)[0], p[1] - (ring[start] as Point)[1]);
    if (d > most) {
      most = d;
      best = i;
    }
  });
  return best;
}

/** Corners to keep between two others, by the farthest point (Ramer 1972, Douglas and Peucker 1973). */
function betweenKept(ring: Ring, from: number, to: number): number[] {
  const a = ring[from % ring.length] as Point;
  const b = ring[to % ring.length] as Point;
  let most = FLATTEN_MM;
  let at = -1;
  for (let i = from + 1; i < to; i++) {
    const off = segmentDistance(a, b, ring[i % ring.length] as Point);
    if (off > most) {
      most = off;
      at = i;
    }
  }
  return at < 0 ? [] : [...betweenKept(ring, from, at), at, ...betweenKept(ring, at, to)];
}

/** Coordinates that belong together along one axis. */
class Classes {
  private readonly parent: number[];
  private readonly wall: boolean[];
  private readonly weight: number[];

  constructor(private readonly values: readonly number[]) {
    this.parent = values.map((_, i) => i);
    this.wall = values.map(() => false);
    this.weight = values.map(() => 0);
  }

  join(a: number, b: number, length: number): void {
    this.wall[a] = true;
    this.wall[b] = true;
    this.weight[a] = (this.weight[a] ?? 0) + length;
    this.weight[b] = (this.weight[b] ?? 0) + length;
    this.parent[this.root(a)] = this.root(b);
  }

  isWall(i: number): boolean {
    return this.wall[i] === true;
  }

  private root(i: number): number {
    let at = i;
    while (this.parent[at] !== at) at = this.parent[at] as number;
    return at;
  }

  /** For each corner its coordinate: that of its wall, and of the walls that line up with it; its own where it stands on none. */
  settle(): number[] {
    const groups = new Map<number, { sum: number; weight: number; members: number[] }>();
    this.values.forEach((value, i) => {
      if (!this.wall[i]) return;
      const key = this.root(i);
      const group = groups.get(key) ?? { sum: 0, weight: 0, members: [] };
      const weight = this.weight[i] as number;
      group.sum += value * weight;
      group.weight += weight;
      group.members.push(i);
      groups.set(key, group);
    });
    const sorted = [...groups.values()].sort((a, b) => a.sum / a.weight - b.sum / b.weight);
    const out = this.values.map(onGrid);
    for (let i = 0; i < sorted.length; ) {
      const start = (sorted[i] as { sum: number; weight: number }).sum / (sorted[i] as { weight: number }).weight;
      let sum = 0;
      let weight = 0;
      let j = i;
      for (; j < sorted.length; j++) {
        const group = sorted[j] as { sum: number; weight: number };
        if (group.sum / group.weight - start > ALIGN_MM) break;
        sum += group.sum;
        weight += group.weight;
      }
      const value = sum / weight;
      for (; i < j; i++) for (const m of sorted[i]?.members ?? []) out[m] = onGrid(value);
    }
    return out;
  }
}
