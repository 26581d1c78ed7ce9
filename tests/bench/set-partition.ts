import loadHighs from 'highs';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import type { LimitsJson } from '../floors/plan-json.ts';
import type { RectilinearFloor } from '../floors/rectilinear.ts';

/** The outside reference for least joint: every floor is cut into rectangles of a lattice so that each cell lies in
 *  exactly one and their perimeters together are least, as a whole-number programme that a general solver proves.
 *
 *  With pockets of 50 mm refused and no feature of a floor that small, a bay within the limits is a rectangle, so that
 *  rectangles of the lattice that lie on the floor are all the bays there are. */

export interface Reference {
  /** Joint, m; null where no layout of the lattice keeps the limits, or none was found in the time. */
  readonly jointM: number | null;
  readonly proven: boolean;
  readonly columns: number;
}

export const latticeMm = 500;

interface Rectangle {
  readonly i0: number;
  readonly j0: number;
  readonly i1: number;
  readonly j1: number;
  readonly perimeterMm: number;
}

export async function referenceLayout(floor: RectilinearFloor, limits: LimitsJson, timeS: number): Promise<Reference> {
  const rings = [floor.outline, ...floor.holes];
  const xs = latticeLines(rings.flat().map((p) => p[0]));
  const ys = latticeLines(rings.flat().map((p) => p[1]));
  const on = ys
    .slice(1)
    .map((y, j) => xs.slice(1).map((x, i) => isFloor(rings, [(x + (xs[i] ?? 0)) / 2, (y + (ys[j] ?? 0)) / 2])));
  const columns = rectangles(xs, ys, on, limits);
  const highs = await loadHighs();
  const solution = highs.solve(programme(columns, on), {
    output_flag: false,
    time_limit: timeS,
    mip_rel_gap: 0,
    mip_abs_gap: 0.5,
  });
  if (
    solution.Status !== 'Optimal' &&
    !(solution.Status === 'Time limit reached' && Number.isFinite(solution.ObjectiveValue))
  )
    return { jointM: null, proven: solution.Status === 'Infeasible', columns: columns.length };
  const floorMm = rings.reduce((sum, ring) => sum + ringPerimeter(ring), 0);
  const jointM = Math.round((solution.ObjectiveValue - floorMm) / 2) / 1000;
  return { jointM, proven: solution.Status === 'Optimal', columns: columns.length };
}

/** All corner coordinates, and between them equal steps of at most half a metre. */
export function latticeLines(coordinates: readonly number[]): number[] {
  const sorted = [...new Set(coordinates)].sort((a, b) => a - b);
  return sorted.flatMap((to, k) => {
    const from = sorted[k - 1];
    if (from === undefined) return [to];
    const count = Math.ceil((to - from) / latticeMm);
    return Array.from({ length: count }, (_, n) => from + ((to - from) * (n + 1)) / count);
  });
}

function ringPerimeter(ring: Ring): number {
  return ring.reduce((sum, p, k) => {
    const q = ring[(k + 1) % ring.length] ?? p;
    return sum + Math.hypot(q[0] - p[0], q[1] - p[1]);
  }, 0);
}

function isFloor(rings: readonly Ring[], [x, y]: Point): boolean {
  let crossings = 0;
  for (const ring of rings) {
    ring.forEach((a, k) => {
      const b = ring[(k + 1) % ring.length] ?? a;
      if (a[1] > y !== b[1] > y && x < a[0]) crossings++;
    });
  }
  return crossings % 2 === 1;
}

/** Rectangles of the lattice that lie on the floor and keep the limits. */
function rectangles(
  xs: readonly number[],
  ys: readonly number[],
  on: readonly (readonly boolean[])[],
  limits: LimitsJson,
): Rectangle[] {
  const found: Rectangle[] = [];
  for (let j0 = 0; j0 + 1 < ys.length; j0++) {
    for (let i0 = 0; i0 + 1 < xs.length; i0++) {
      let right = xs.length - 1;
      for (let j1 = j0 + 1; j1 < ys.length; j1++) {
        let reach = i0;
        while (reach < right && on[j1 - 1]?.[reach]) reach++;
        right = reach;
        const depth = (ys[j1] ?? 0) - (ys[j0] ?? 0);
        if (right === i0 || depth > limits.lengthM * 1000) break;
        for (let i1 = i0 + 1; i1 <= right; i1++) {
          const width = (xs[i1] ?? 0) - (xs[i0] ?? 0);
          if (keepsLimits(width, depth, limits)) found.push({ i0, j0, i1, j1, perimeterMm: 2 * (width + depth) });
        }
      }
    }
  }
  return found;
}

function keepsLimits(width: number, depth: number, { areaM2, lengthM, aspect, aspectFromM = 5 }: LimitsJson): boolean {
  const long = Math.max(width, depth) / 1000;
  const short = Math.min(width, depth) / 1000;
  const slack = 1 + 1e-9;
  if (long > lengthM * slack || long * short > areaM2 * slack) return false;
  return long <= aspectFromM * slack || long / short <= aspect * slack;
}

/** Exact cover, written by differences: a rectangle adds +1 and -1 at its four corners, and those sums must be the
 *  floor's own corner pattern. The same programme as one row for each cell, with four entries in a column whatever its size. */
function programme(columns: readonly Rectangle[], on: readonly (readonly boolean[])[]): string {
  const rows = new Map<string, string[]>();
  const put = (i: number, j: number, sign: string, n: number) => {
    const key = `${i} ${j}`;
    const row = rows.get(key);
    if (row === undefined) rows.set(key, [`${sign} x${n}`]);
    else row.push(`${sign} x${n}`);
  };
  columns.forEach(({ i0, j0, i1, j1 }, n) => {
    put(i0, j0, '+', n);
    put(i1, j1, '+', n);
    put(i1, j0, '-', n);
    put(i0, j1, '-', n);
  });
  const cell = (i: number, j: number) => (on[j]?.[i] ? 1 : 0);
  const right = (i: number, j: number) => cell(i, j) - cell(i - 1, j) - cell(i, j - 1) + cell(i - 1, j - 1);
  for (let j = 0; j <= on.length; j++) {
    for (let i = 0; i <= (on[0]?.length ?? 0); i++) {
      if (right(i, j) !== 0 && !rows.has(`${i} ${j}`))
        return 'Minimize\n obj: x0\nSubject To\n c: x0 >= 2\nBounds\n x0 <= 1\nEnd\n';
    }
  }
  const cost = columns.map((c, n) => `+ ${c.perimeterMm} x${n}`).join('\n');
  const body = [...rows].map(([key, terms], r) => {
    const [i = 0, j = 0] = key.split(' ').map(Number);
    return ` c${r}: ${terms.join(' ')} = ${right(i, j)}`;
  });
  return `Minimize\n obj: ${cost}\nSubject To\n${body.join('\n')}\nBinary\n${columns.map((_, n) => `x${n}`).join('\n')}\nEnd\n`;
}
