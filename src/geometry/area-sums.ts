import type { Point } from './point.ts';
import type { Ring } from './ring.ts';

/** Area of rings left of and above every crossing of upright lines x and level lines y, mm2, at i * y.length + j: the area in any grid
 *  rectangle is a sum of four. What lies beyond the first lines does not count. Lines rise; outlines run clockwise on the sheet, holes the
 *  other way. By Green's theorem over the edges. */
export function areaSums(rings: readonly Ring[], x: readonly number[], y: readonly number[]): Float64Array {
  const rows = y.length;
  const base = y[0] as number;
  const sums = new Float64Array(x.length * rows);
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k++) {
      const p = ring[k] as Point;
      const q = ring[(k + 1) % ring.length] as Point;
      if (p[0] === q[0]) continue;
      const sign = p[0] < q[0] ? -1 : 1;
      const [a, b] = p[0] < q[0] ? [p, q] : [q, p];
      const slope = (b[1] - a[1]) / (b[0] - a[0]);
      for (let i = 1; i < x.length; i++) {
        const from = Math.max(a[0], x[i - 1] as number);
        const to = Math.min(b[0], x[i] as number);
        if (to <= from) continue;
        const y0 = a[1] + slope * (from - a[0]);
        const y1 = a[1] + slope * (to - a[0]);
        const above = meanBelow(y0, y1, base);
        for (let j = 1; j < rows; j++) {
          const at = i * rows + j;
          sums[at] = (sums[at] as number) + sign * (to - from) * (meanBelow(y0, y1, y[j] as number) - above);
        }
      }
    }
  }
  for (let i = 1; i < x.length; i++) {
    for (let j = 1; j < rows; j++)
      sums[i * rows + j] = (sums[i * rows + j] as number) + (sums[(i - 1) * rows + j] as number);
  }
  return sums;
}

/** Mean of min(v, cap) while v goes evenly from v0 to v1. */
function meanBelow(v0: number, v1: number, cap: number): number {
  const low = Math.min(v0, v1);
  const high = Math.max(v0, v1);
  if (high <= cap) return (low + high) / 2;
  if (low >= cap) return cap;
  const share = (cap - low) / (high - low);
  return (share * (low + cap)) / 2 + (1 - share) * cap;
}
