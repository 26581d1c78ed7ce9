import type { Point } from '../geometry/point.ts';
import type { Region } from '../geometry/ring.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import { type Lattice, latticeOf } from './lattice.ts';
import { leafJudge } from './leaf.ts';
import { candidateLines } from './lines.ts';
import type { Part, PartCut } from './part.ts';

/** A layout of a region and what it costs. */
export interface Layout {
  readonly cuts: readonly PartCut[];
  /** Joint length in mm, with the prices of what it had to break. */
  readonly cost: number;
  readonly uneven: number;
}

/** The shortest layout whose cuts run straight through what they split, over the candidate lines of the region.
 *
 *  Dynamic programming over grid rectangles: a rectangle is a bay, or is cut in two along a grid line. A region of n by m lines has
 *  n^2 m^2 / 4 rectangles and each tries n + m cuts. Ties go to the more even bays. */
export function regionGuillotine(
  region: Region,
  part: Part,
  options: { readonly lines: number; readonly marginMm: number },
): Layout {
  const lines = candidateLines(region, part, options.lines);
  const lattice = latticeOf(region, part, lines);
  const table = tableFill(lattice, leafJudge(region, part, lattice, options.marginMm));
  const cuts: PartCut[] = [];
  cutsCollect(table, lattice, 0, lines.x.length - 1, 0, lines.y.length - 1, cuts);
  const top = table.at(0, lines.x.length - 1, 0, lines.y.length - 1);
  return { cuts, cost: table.cost[top] as number, uneven: table.uneven[top] as number };
}

interface Table {
  readonly cost: Float64Array;
  readonly uneven: Float64Array;
  /** 0: a bay; k > 0: cut along upright line k; k < 0: along level line -k. */
  readonly cut: Int16Array;
  at(i1: number, i2: number, j1: number, j2: number): number;
}

function tableFill(lattice: Lattice, judge: ReturnType<typeof leafJudge>): Table {
  const n = lattice.x.length;
  const m = lattice.y.length;
  const columns = pairNumbers(n);
  const rows = pairNumbers(m);
  const height = (m * (m - 1)) / 2;
  const at = (i1: number, i2: number, j1: number, j2: number) =>
    ((columns[i1] as number) + i2) * height + (rows[j1] as number) + j2;
  const size = ((n * (n - 1)) / 2) * height;
  const table: Table = { cost: new Float64Array(size), uneven: new Float64Array(size), cut: new Int16Array(size), at };
  for (let di = 1; di < n; di++) {
    for (let i1 = 0; i1 + di < n; i1++) {
      for (let dj = 1; dj < m; dj++) {
        for (let j1 = 0; j1 + dj < m; j1++) rectangleFill(table, lattice, judge, i1, i1 + di, j1, j1 + dj);
      }
    }
  }
  return table;
}

/** One rectangle: empty rows and columns of cells fall away first; a bay that breaks nothing needs no cut; floor that falls apart is
 *  parted where it costs nothing; else the best cut, or the bay with what it breaks. */
function rectangleFill(
  table: Table,
  lattice: Lattice,
  judge: ReturnType<typeof leafJudge>,
  i1: number,
  i2: number,
  j1: number,
  j2: number,
): void {
  const here = table.at(i1, i2, j1, j2);
  const { x, y } = lattice;
  const area = lattice.area(i1, i2, j1, j2);
  if (area < EMPTY_MM2) return;
  const full = area > ((x[i2] as number) - (x[i1] as number)) * ((y[j2] as number) - (y[j1] as number)) - EMPTY_MM2;
  if (!full) {
    const inner = trimmed(table, lattice, i1, i2, j1, j2);
    if (inner >= 0) {
      table.cost[here] = table.cost[inner] as number;
      table.uneven[here] = table.uneven[inner] as number;
      table.cut[here] = table.cut[inner] as number;
      return;
    }
    if (
      cutsTry(table, lattice, 0, i1, i2, j1, j2, here, true) ||
      cutsTry(table, lattice, 1, i1, i2, j1, j2, here, true)
    )
      return;
  }
  const leaf = judge(i1, i2, j1, j2);
  table.cost[here] = leaf.price;
  table.uneven[here] = leaf.uneven;
  if (leaf.price === 0) return;
  cutsTry(table, lattice, 0, i1, i2, j1, j2, here, false);
  cutsTry(table, lattice, 1, i1, i2, j1, j2, here, false);
}

/** The place in the table of the same floor in a smaller rectangle, without empty outer rows and columns; -1 where there are none. */
function trimmed(table: Table, lattice: Lattice, i1: number, i2: number, j1: number, j2: number): number {
  const full = lattice.area(i1, i2, j1, j2) - EMPTY_MM2;
  if (i2 - i1 > 1 && lattice.area(i1 + 1, i2, j1, j2) > full) return table.at(i1 + 1, i2, j1, j2);
  if (i2 - i1 > 1 && lattice.area(i1, i2 - 1, j1, j2) > full) return table.at(i1, i2 - 1, j1, j2);
  if (j2 - j1 > 1 && lattice.area(i1, i2, j1 + 1, j2) > full) return table.at(i1, i2, j1 + 1, j2);
  if (j2 - j1 > 1 && lattice.area(i1, i2, j1, j2 - 1) > full) return table.at(i1, i2, j1, j2 - 1);
  return -1;
}

/** Floor under this is none, mm2. */
const EMPTY_MM2 = 1;

/** Tries every cut along one axis against what the table holds for the rectangle; with `free` only cuts that cross no floor.
 *  @returns whether a free cut was taken */
function cutsTry(
  table: Table,
  lattice: Lattice,
  axis: 0 | 1,
  i1: number,
  i2: number,
  j1: number,
  j2: number,
  here: number,
  free: boolean,
): boolean {
  const { cost, uneven } = table;
  const lo = axis === 0 ? i1 : j1;
  const hi = axis === 0 ? i2 : j2;
  const from = axis === 0 ? j1 : i1;
  const to = axis === 0 ? j2 : i2;
  for (let k = lo + 1; k < hi; k++) {
    const line = lattice.cost[axis][k] as Float64Array;
    const price = (line[to] as number) - (line[from] as number);
    if (free && price > EQUAL_LENGTH_MM) continue;
    const bars = lattice.barred[axis][k] as Float64Array;
    if ((bars[to] as number) - (bars[from] as number) > EQUAL_LENGTH_MM) continue;
    const a = axis === 0 ? table.at(i1, k, j1, j2) : table.at(i1, i2, j1, k);
    const b = axis === 0 ? table.at(k, i2, j1, j2) : table.at(i1, i2, k, j2);
    const c = price + (cost[a] as number) + (cost[b] as number);
    const e = (uneven[a] as number) + (uneven[b] as number);
    const best = cost[here] as number;
    if (free || c < best - EQUAL_LENGTH_MM || (c <= best + EQUAL_LENGTH_MM && e < (uneven[here] as number))) {
      cost[here] = c;
      uneven[here] = e;
      table.cut[here] = axis === 0 ? k : -k;
      if (free) return true;
    }
  }
  return false;
}

/** Number of the pair (a, b), a < b, is numbers[a] + b. */
function pairNumbers(count: number): number[] {
  const numbers: number[] = [];
  for (let a = 0, base = 0; a < count; a++) {
    numbers.push(base - a - 1);
    base += count - a - 1;
  }
  return numbers;
}

function cutsCollect(
  table: Table,
  lattice: Lattice,
  i1: number,
  i2: number,
  j1: number,
  j2: number,
  cuts: PartCut[],
): void {
  const pick = table.cut[table.at(i1, i2, j1, j2)] as number;
  if (pick === 0) return;
  const axis = pick > 0 ? 0 : 1;
  const k = Math.abs(pick);
  const at = (axis === 0 ? lattice.x[k] : lattice.y[k]) as number;
  const across = axis === 0 ? lattice.y : lattice.x;
  const [from, to] = axis === 0 ? [j1, j2] : [i1, i2];
  for (const [a, b] of lattice.chords[axis][k] ?? []) {
    const low = Math.max(a, across[from] as number);
    const high = Math.min(b, across[to] as number);
    if (high - low <= EQUAL_LENGTH_MM) continue;
    const ends: [Point, Point] =
      axis === 0
        ? [
            [at, low],
            [at, high],
          ]
        : [
            [low, at],
            [high, at],
          ];
    cuts.push({ kind: 'field', from: ends[0], to: ends[1] });
  }
  if (axis === 0) {
    cutsCollect(table, lattice, i1, k, j1, j2, cuts);
    cutsCollect(table, lattice, k, i2, j1, j2, cuts);
  } else {
    cutsCollect(table, lattice, i1, i2, j1, k, cuts);
    cutsCollect(table, lattice, i1, i2, k, j2, cuts);
  }
}
