import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import { type Chance, createChance } from './chance.ts';

/** Random rectilinear floors: a block of cells from which corners, niches and a core are carved. */

export interface RectilinearFloor {
  readonly outline: Ring;
  readonly holes: readonly Ring[];
}

export interface RectilinearWish {
  readonly seed: number;
  /** Longest side of the block that is carved, mm. */
  readonly mostMm: number;
  readonly leastMm: number;
  /** Corners of the outer ring, 4 to 16, even. */
  readonly corners: number;
  readonly core: boolean;
  /** Corners lie on multiples of this. */
  readonly stepMm: number;
}

interface Cells {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly on: readonly (readonly boolean[])[];
}

export function rectilinearFloor(wish: RectilinearWish): RectilinearFloor {
  const chance = createChance(wish.seed);
  for (;;) {
    const floor = attempt(wish, chance);
    if (floor !== null) return floor;
  }
}

function attempt(wish: RectilinearWish, chance: Chance): RectilinearFloor | null {
  const xs = lines(chance, wish);
  const ys = lines(chance, wish);
  let cells: Cells = { xs, ys, on: ys.slice(1).map(() => xs.slice(1).map(() => true)) };
  for (let tries = 0; tries < 60; tries++) {
    const found = outlines(cells);
    if (found.length === 1 && (found[0]?.length ?? 0) === wish.corners) break;
    const carved = carve(cells, chance);
    const rings = outlines(carved);
    if (rings.length === 1 && (rings[0]?.length ?? 99) <= wish.corners && isOnePiece(carved)) cells = carved;
  }
  const [outline] = outlines(cells);
  if (outline === undefined || outline.length !== wish.corners) return null;
  if (!wish.core) return { outline, holes: [] };
  const inner = cells.on.flatMap((row, j) => row.flatMap((_, i) => (isDeep(cells, i, j) ? [[i, j] as const] : [])));
  if (inner.length === 0) return null;
  const [i, j] = chance.pick(inner);
  return { outline, holes: [cellRing(cells, i, j)] };
}

function lines(chance: Chance, { leastMm, mostMm, stepMm }: RectilinearWish): number[] {
  const count = chance.whole(3, 6);
  const total = chance.number(leastMm, mostMm);
  const weights = Array.from({ length: count }, () => chance.number(0.5, 1.5));
  const sum = weights.reduce((s, w) => s + w, 0);
  let at = 0;
  const result = [0];
  for (const w of weights) {
    at += Math.max(1, Math.round((total * w) / sum / stepMm)) * stepMm;
    result.push(at);
  }
  return result;
}

/** A random block of cells taken away. */
function carve(cells: Cells, chance: Chance): Cells {
  const i0 = chance.whole(0, cells.xs.length - 2);
  const j0 = chance.whole(0, cells.ys.length - 2);
  const i1 = i0 + chance.whole(0, 1);
  const j1 = j0 + chance.whole(0, 1);
  const on = cells.on.map((row, j) => row.map((v, i) => v && (i < i0 || i > i1 || j < j0 || j > j1)));
  return { ...cells, on };
}

function isOn({ on }: Cells, i: number, j: number): boolean {
  return on[j]?.[i] ?? false;
}

/** A cell with floor all round it: a core can stand there. */
function isDeep(cells: Cells, i: number, j: number): boolean {
  return [-1, 0, 1].every((di) => [-1, 0, 1].every((dj) => isOn(cells, i + di, j + dj)));
}

function isOnePiece(cells: Cells): boolean {
  const all = cells.on.flatMap((row, j) => row.flatMap((v, i) => (v ? [`${i} ${j}`] : [])));
  const [first] = all;
  if (first === undefined) return false;
  const seen = new Set([first]);
  const queue = [first];
  for (let key = queue.pop(); key !== undefined; key = queue.pop()) {
    const [i = 0, j = 0] = key.split(' ').map(Number);
    for (const [di, dj] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const next = `${i + di} ${j + dj}`;
      if (!isOn(cells, i + di, j + dj) || seen.has(next)) continue;
      seen.add(next);
      queue.push(next);
    }
  }
  return seen.size === all.length;
}

function cellRing({ xs, ys }: Cells, i: number, j: number): Ring {
  const x = (k: number) => xs[k] ?? 0;
  const y = (k: number) => ys[k] ?? 0;
  return [
    [x(i), y(j)],
    [x(i + 1), y(j)],
    [x(i + 1), y(j + 1)],
    [x(i), y(j + 1)],
  ];
}

/** Rings round the cells, corners only; none where two cells touch at a point alone. */
function outlines(cells: Cells): Ring[] {
  const next = new Map<string, string>();
  const add = (a: readonly [number, number], b: readonly [number, number]) => {
    const twice = next.has(a.join(' '));
    next.set(a.join(' '), b.join(' '));
    return twice;
  };
  let pinched = false;
  cells.on.forEach((row, j) => {
    row.forEach((v, i) => {
      if (!v) return;
      if (!isOn(cells, i, j - 1)) pinched = add([i, j], [i + 1, j]) || pinched;
      if (!isOn(cells, i + 1, j)) pinched = add([i + 1, j], [i + 1, j + 1]) || pinched;
      if (!isOn(cells, i, j + 1)) pinched = add([i + 1, j + 1], [i, j + 1]) || pinched;
      if (!isOn(cells, i - 1, j)) pinched = add([i, j + 1], [i, j]) || pinched;
    });
  });
  if (pinched) return [];
  const rings: Ring[] = [];
  while (next.size > 0) {
    const ring: Point[] = [];
    let key = [...next.keys()][0];
    while (key !== undefined && next.has(key)) {
      const [i = 0, j = 0] = key.split(' ').map(Number);
      ring.push([cells.xs[i] ?? 0, cells.ys[j] ?? 0]);
      const after: string | undefined = next.get(key);
      next.delete(key);
      key = after;
    }
    rings.push(withoutStraight(ring));
  }
  return rings;
}

function withoutStraight(ring: Ring): Ring {
  return ring.filter((p, k) => {
    const a = ring[(k + ring.length - 1) % ring.length] ?? p;
    const b = ring[(k + 1) % ring.length] ?? p;
    return !((a[0] === p[0] && p[0] === b[0]) || (a[1] === p[1] && p[1] === b[1]));
  });
}
