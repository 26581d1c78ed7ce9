import type { Point } from '../geometry/point.ts';
import type { Region } from '../geometry/ring.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import { type Lattice, latticeOf } from './lattice.ts';
import { type LeafJudge, leafJudge } from './leaf.ts';
import { candidateLines, type LineChoice } from './lines.ts';
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
export function regionGuillotine(region: Region, part: Part, choice: LineChoice, marginMm: number): Layout {
  const lines = candidateLines(region, part, choice);
  const lattice = latticeOf(region, part, lines);
  const table = new Table(lattice);
  table.fill(leafJudge(region, part, lattice, marginMm));
  return table.layout();
}

/** Floor under this is none, mm2. */
const EMPTY_MM2 = 1;

/** Room for one table, used again by the next: a search fills hundreds. Nothing in it is read before it is written. */
let scratch = scratchOf(4096);

function scratchOf(size: number) {
  return { cost: new Float64Array(size), uneven: new Float64Array(size), cut: new Int16Array(size) };
}

/** What the best layout of every grid rectangle costs. Empty rows and columns of cells fall away first; a bay that breaks nothing needs no
 *  cut; floor that falls apart is parted where it costs nothing; else the best cut, or the bay with what it breaks. Rectangle (i1, i2, j1, j2) stands at column pair (i1, i2), row pair (j1, j2). */
class Table {
  private readonly n: number;
  private readonly m: number;
  /** Place of the pairs (a, b), a < b, at a * count + b; columns already times the number of row pairs. */
  private readonly columns: Int32Array;
  private readonly rows: Int32Array;
  private readonly cost: Float64Array;
  private readonly uneven: Float64Array;
  /** 0: a bay; k > 0: cut along upright line k; k < 0: along level line -k. */
  private readonly cut: Int16Array;

  constructor(private readonly lattice: Lattice) {
    this.n = lattice.x.length;
    this.m = lattice.y.length;
    const rowPairs = (this.m * (this.m - 1)) / 2;
    this.columns = pairPlaces(this.n, rowPairs);
    this.rows = pairPlaces(this.m, 1);
    const size = ((this.n * (this.n - 1)) / 2) * rowPairs;
    if (scratch.cost.length < size) scratch = scratchOf(size);
    this.cost = scratch.cost.fill(0, 0, size);
    this.uneven = scratch.uneven.fill(0, 0, size);
    this.cut = scratch.cut.fill(0, 0, size);
  }

  fill(judge: LeafJudge): void {
    for (let di = 1; di < this.n; di++) {
      for (let i1 = 0; i1 + di < this.n; i1++) this.column(judge, i1, i1 + di);
    }
  }

  /** All rectangles between two upright lines, the lower first. */
  private column(judge: LeafJudge, i1: number, i2: number): void {
    const { lattice, m } = this;
    const { gross, net } = lattice.strip(i1, i2);
    const width = (lattice.x[i2] as number) - (lattice.x[i1] as number);
    const base = this.columns[i1 * this.n + i2] as number;
    for (let dj = 1; dj < m; dj++) {
      for (let j1 = 0, j2 = dj; j2 < m; j1++, j2++) {
        const area = (gross[j2] as number) - (gross[j1] as number);
        if (area < EMPTY_MM2) continue;
        const height = (lattice.y[j2] as number) - (lattice.y[j1] as number);
        const here = base + (this.rows[j1 * m + j2] as number);
        if (area < width * height - EMPTY_MM2) {
          if (this.trim(here, area - EMPTY_MM2, i1, i2, j1, j2) || this.part(i1, i2, j1, j2, here)) continue;
          const leaf = judge.piece(i1, i2, j1, j2);
          this.cost[here] = leaf.price;
          this.uneven[here] = leaf.uneven;
        } else {
          const own = (net[j2] as number) - (net[j1] as number);
          this.cost[here] = judge.full(i1, i2, j1, j2, own);
          this.uneven[here] = (own / 1e6) ** 2;
        }
        if (this.cost[here] === 0) continue;
        this.cutsTry(0, i1, i2, j1, j2, here, i1 * this.n, here - base);
        this.cutsTry(1, j1, j2, i1, i2, here, j1 * m, base);
      }
    }
  }

  layout(): Layout {
    const cuts: PartCut[] = [];
    this.collect(0, this.n - 1, 0, this.m - 1, cuts);
    const top = this.at(0, this.n - 1, 0, this.m - 1);
    return { cuts, cost: this.cost[top] as number, uneven: this.uneven[top] as number };
  }

  private at(i1: number, i2: number, j1: number, j2: number): number {
    return (this.columns[i1 * this.n + i2] as number) + (this.rows[j1 * this.m + j2] as number);
  }

  /** Takes over the layout of the same floor in a smaller rectangle, without an empty outer row or column.
   *  @returns whether there is one */
  private trim(here: number, full: number, i1: number, i2: number, j1: number, j2: number): boolean {
    const { lattice } = this;
    let inner = -1;
    if (i2 - i1 > 1 && lattice.area(i1 + 1, i2, j1, j2) > full) inner = this.at(i1 + 1, i2, j1, j2);
    else if (i2 - i1 > 1 && lattice.area(i1, i2 - 1, j1, j2) > full) inner = this.at(i1, i2 - 1, j1, j2);
    else if (j2 - j1 > 1 && lattice.area(i1, i2, j1 + 1, j2) > full) inner = this.at(i1, i2, j1 + 1, j2);
    else if (j2 - j1 > 1 && lattice.area(i1, i2, j1, j2 - 1) > full) inner = this.at(i1, i2, j1, j2 - 1);
    if (inner < 0) return false;
    this.cost[here] = this.cost[inner] as number;
    this.uneven[here] = this.uneven[inner] as number;
    this.cut[here] = this.cut[inner] as number;
    return true;
  }

  /** Parts floor that falls apart along a line that crosses none of it.
   *  @returns whether there is such a line */
  private part(i1: number, i2: number, j1: number, j2: number, here: number): boolean {
    const [upright, level] = this.lattice.cost;
    for (let k = i1 + 1; k < i2; k++) {
      if ((upright[k * this.m + j2] as number) - (upright[k * this.m + j1] as number) > EQUAL_LENGTH_MM) continue;
      this.take(here, this.at(i1, k, j1, j2), this.at(k, i2, j1, j2), k);
      return true;
    }
    for (let k = j1 + 1; k < j2; k++) {
      if ((level[k * this.n + i2] as number) - (level[k * this.n + i1] as number) > EQUAL_LENGTH_MM) continue;
      this.take(here, this.at(i1, i2, j1, k), this.at(i1, i2, k, j2), -k);
      return true;
    }
    return false;
  }

  private take(here: number, a: number, b: number, cut: number): void {
    this.cost[here] = (this.cost[a] as number) + (this.cost[b] as number);
    this.uneven[here] = (this.uneven[a] as number) + (this.uneven[b] as number);
    this.cut[here] = cut;
  }

  /** Tries every cut between lines lo and hi of an axis, from line `from` to line `to` of the other, against what the table holds.
   *  @param own place of line lo in the pairs of the axis   @param fixed place of the pair across */
  private cutsTry(
    axis: 0 | 1,
    lo: number,
    hi: number,
    from: number,
    to: number,
    here: number,
    own: number,
    fixed: number,
  ): void {
    const { cost, uneven } = this;
    const pairs = axis === 0 ? this.columns : this.rows;
    const count = axis === 0 ? this.n : this.m;
    const across = axis === 0 ? this.m : this.n;
    const price = this.lattice.cost[axis];
    const barred = this.lattice.barred[axis];
    let best = cost[here] as number;
    let even = uneven[here] as number;
    let pick = 0;
    for (let k = lo + 1; k < hi; k++) {
      const at = k * across;
      const a = (pairs[own + k] as number) + fixed;
      const b = (pairs[k * count + hi] as number) + fixed;
      const c = (price[at + to] as number) - (price[at + from] as number) + (cost[a] as number) + (cost[b] as number);
      if (c > best + EQUAL_LENGTH_MM) continue;
      const e = (uneven[a] as number) + (uneven[b] as number);
      if (c >= best - EQUAL_LENGTH_MM && e >= even) continue;
      if (barred && (barred[at + to] as number) - (barred[at + from] as number) > EQUAL_LENGTH_MM) continue;
      best = c;
      even = e;
      pick = k;
    }
    if (pick === 0) return;
    cost[here] = best;
    uneven[here] = even;
    this.cut[here] = axis === 0 ? pick : -pick;
  }

  private collect(i1: number, i2: number, j1: number, j2: number, cuts: PartCut[]): void {
    const pick = this.cut[this.at(i1, i2, j1, j2)] as number;
    if (pick === 0) return;
    const axis = pick > 0 ? 0 : 1;
    const k = Math.abs(pick);
    const { lattice } = this;
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
      this.collect(i1, k, j1, j2, cuts);
      this.collect(k, i2, j1, j2, cuts);
    } else {
      this.collect(i1, i2, j1, k, cuts);
      this.collect(i1, i2, k, j2, cuts);
    }
  }
}

/** For lines numbered 0 to count - 1: the number of the pair (a, b), a < b, times a step, at a * count + b. */
function pairPlaces(count: number, step: number): Int32Array {
  const places = new Int32Array(count * count);
  let next = 0;
  for (let a = 0; a < count; a++) {
    for (let b = a + 1; b < count; b++) places[a * count + b] = next++ * step;
  }
  return places;
}
