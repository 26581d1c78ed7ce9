import type { Point } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { ALIGN_MM, onGrid, STRAIGHTEN_DEG, STRAIGHTEN_MM } from '../geometry/tolerance.ts';

/** A region made square where builders meant it to be, corner for corner with the real one. */
export interface Straightened {
  readonly region: Region;
  /** The furthest that a corner moved, mm. */
  readonly movedMm: number;
  /** The same corners as they are, ring by ring. */
  readonly real: Region;
}

/** Walls that nearly follow an axis are laid on it, and corners that nearly line up are lined up, so that a joint from corner to corner
 *  is one line. The layout is found on the straightened region and carried back to the real corners. Regions share their lines. */
export function regionsStraighten(regions: readonly Region[]): Straightened[] {
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
    const straight = (ring: Ring): Ring =>
      ring.map(([px, py]) => {
        const p: Point = [xs[at] as number, ys[at] as number];
        at++;
        movedMm = Math.max(movedMm, Math.abs(p[0] - px), Math.abs(p[1] - py));
        return p;
      });
    const outline = straight(region.outline);
    const holes = region.holes.map(straight);
    return { region: { outline, holes }, movedMm, real: region };
  });
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
