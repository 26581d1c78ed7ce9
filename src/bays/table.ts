import type { Point } from '../geometry/point.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import { along, halvesAt, numbersBetween, pairPlaces } from './grid-boxes.ts';
import type { Lattice } from './lattice.ts';
import type { LeafJudge } from './leaf.ts';
import type { PartCut } from './part.ts';

/** A layout of a region and what it costs. */
export interface Layout {
  readonly cuts: readonly PartCut[];
  /** Joint length in mm, with the prices of what it had to break. */
  readonly cost: number;
  readonly uneven: number;
}

/** Floor under this is none, mm2. */
const EMPTY_MM2 = 1;

/** Room for one table, used again by the next: a search fills hundreds. Nothing in it is read before it is written. */
let scratch = scratchOf(4096, 512);

/** @param size rectangles   @param block upright prices, and more than the rectangles of a block or the lines of an axis */
function scratchOf(size: number, block: number) {
  return {
    size,
    block,
    cost: new Float64Array(size),
    uneven: new Float64Array(size),
    cut: new Int16Array(size),
    uprightPrice: new Float64Array(block),
    levelPrice: new Float64Array(block),
    gross: new Float64Array(block),
    net: new Float64Array(block),
    open: new Int32Array(block),
    same: new Int32Array(block),
    parted: new Int16Array(block),
    rows: new Int32Array(block),
    columns: new Int32Array(block),
  };
}

/** What the best layout of every grid rectangle costs. Empty rows and columns of cells fall away first; a bay that breaks nothing needs no
 *  cut; floor that falls apart is parted where it costs nothing; else the best cut, or the bay with what it breaks.
 *
 *  Rectangles stand in blocks, one for each pair of upright lines (i1, i2), narrow ones first; in a block at the pair of level lines
 *  (j1, j2). Upright cuts read narrower blocks only, so that one cut is tried for a whole block at a time; level cuts read their own. */
export class Table {
  private readonly n: number;
  private readonly m: number;
  /** Rectangles of a block, and where they begin: pair (j1, j2) stands at rows[j1] + j2, block (i1, i2) at columns[i1] + i2 * rowPairs. */
  private readonly rowPairs: number;
  private readonly rows: Int32Array;
  private readonly columns: Int32Array;
  private readonly cost: Float64Array;
  private readonly uneven: Float64Array;
  /** 0: a bay; k > 0: cut along upright line k; k < 0: along level line -k. */
  private readonly cut: Int16Array;
  /** Joint along upright line k from j1 to j2, mm, at k * rowPairs and the place of the pair. */
  private readonly uprightPrice: Float64Array;
  private readonly levelPrice: Float64Array;
  /** Of the block under way: floor above every level line, with columns filled in and net of them, mm2. */
  private readonly gross: Float64Array;
  private readonly net: Float64Array;
  /** Of the block under way: places whose cuts are tried; where the same floor stands; the line that parts it for nothing. */
  private readonly open: Int32Array;
  private readonly same: Int32Array;
  private readonly parted: Int16Array;

  constructor(private readonly lattice: Lattice) {
    const [n, m] = [lattice.x.length, lattice.y.length];
    this.n = n;
    this.m = m;
    this.rowPairs = (m * (m - 1)) / 2;
    const size = ((n * (n - 1)) / 2) * this.rowPairs;
    const block = Math.max(n * this.rowPairs, n, m);
    if (scratch.size < size || scratch.block < block) {
      scratch = scratchOf(Math.max(size, scratch.size), Math.max(block, scratch.block));
    }
    this.cost = scratch.cost.fill(0, 0, size);
    this.uneven = scratch.uneven.fill(0, 0, size);
    this.cut = scratch.cut.fill(0, 0, size);
    this.gross = scratch.gross;
    this.net = scratch.net;
    this.open = scratch.open;
    this.same = scratch.same;
    this.parted = scratch.parted;
    this.rows = pairPlaces(scratch.rows, m, 1);
    this.columns = pairPlaces(scratch.columns, n, this.rowPairs);
    this.levelPrice = scratch.levelPrice;
    this.uprightPrice = scratch.uprightPrice;
    this.uprightPrices();
  }

  private uprightPrices(): void {
    const { n, m, uprightPrice } = this;
    const price = this.lattice.cost[0];
    for (let k = 0, at = 0; k < n; k++) {
      for (let j1 = 0; j1 < m; j1++) {
        const before = price[k * m + j1] as number;
        for (let j2 = j1 + 1; j2 < m; j2++) uprightPrice[at++] = (price[k * m + j2] as number) - before;
      }
    }
  }

  private levelPrices(i1: number, i2: number): void {
    const price = this.lattice.cost[1];
    for (let k = 0; k < this.m; k++) this.levelPrice[k] = along(price, k * this.n, i1, i2);
  }

  fill(judge: LeafJudge): void {
    for (let di = 1; di < this.n; di++) {
      for (let i1 = 0; i1 + di < this.n; i1++) {
        this.levelPrices(i1, i1 + di);
        const opened = this.leaves(judge, i1, i1 + di);
        for (let k = i1 + 1; k < i1 + di; k++) this.uprightCut(i1, i1 + di, k, opened);
        this.levelCuts(i1, i1 + di);
      }
    }
  }

  layout(): Layout {
    if (this.n < 2 || this.m < 2) return { cuts: [], cost: 0, uneven: 0 };
    const cuts: PartCut[] = [];
    this.collect(0, this.n - 1, 0, this.m - 1, cuts);
    const top = this.at(0, this.n - 1, 0, this.m - 1);
    return { cuts, cost: this.cost[top] as number, uneven: this.uneven[top] as number };
  }

  private at(i1: number, i2: number, j1: number, j2: number): number {
    return (this.columns[i1] as number) + i2 * this.rowPairs + (this.rows[j1] as number) + j2;
  }

  /** Every rectangle of a block as a bay.
   *  @returns how many of them cuts are to be tried for */
  private leaves(judge: LeafJudge, i1: number, i2: number): number {
    const { lattice, m, same, parted, gross, net } = this;
    this.strip(lattice.gross, i1, i2, gross);
    this.strip(lattice.net, i1, i2, net);
    const width = (lattice.x[i2] as number) - (lattice.x[i1] as number);
    const base = (this.columns[i1] as number) + i2 * this.rowPairs;
    let opened = 0;
    for (let j1 = 0, place = 0; j1 < m; j1++) {
      for (let j2 = j1 + 1; j2 < m; j2++, place++) {
        same[place] = -1;
        parted[place] = 0;
        const area = (gross[j2] as number) - (gross[j1] as number);
        if (area < EMPTY_MM2) continue;
        const here = base + place;
        const own = (net[j2] as number) - (net[j1] as number);
        const height = (lattice.y[j2] as number) - (lattice.y[j1] as number);
        if (area < width * height - EMPTY_MM2) {
          const inner = this.trimmed(i1, i2, j1, j2);
          same[place] = inner;
          if (inner < 0) parted[place] = this.partingLine(i1, i2, j1, j2);
          if (inner >= 0 || parted[place] !== 0) continue;
          this.cost[here] = judge.piece(i1, i2, j1, j2, area, own);
        } else {
          this.cost[here] = judge.full(i1, i2, j1, j2, own);
        }
        this.uneven[here] = (own / 1e6) ** 2;
        if (this.cost[here] !== 0) this.open[opened++] = place;
      }
    }
    return opened;
  }

  private strip(sums: Float64Array, i1: number, i2: number, into: Float64Array): void {
    const [left, right] = [i1 * this.m, i2 * this.m];
    for (let j = 0; j < this.m; j++) into[j] = (sums[right + j] as number) - (sums[left + j] as number);
  }

  /** What sums say of a rectangle. */
  private area(sums: Float64Array, i1: number, i2: number, j1: number, j2: number): number {
    const [left, right] = [i1 * this.m, i2 * this.m];
    return (
      (sums[right + j2] as number) -
      (sums[left + j2] as number) -
      (sums[right + j1] as number) +
      (sums[left + j1] as number)
    );
  }

  /** Where the layout of the same floor in a smaller rectangle stands, without an empty outer row or column; -1 where there is none. */
  private trimmed(i1: number, i2: number, j1: number, j2: number): number {
    const { gross } = this.lattice;
    const own = this.gross;
    const full = (own[j2] as number) - (own[j1] as number) - EMPTY_MM2;
    if (i2 - i1 > 1) {
      if (this.area(gross, i1 + 1, i2, j1, j2) > full) return this.at(i1 + 1, i2, j1, j2);
      if (this.area(gross, i1, i2 - 1, j1, j2) > full) return this.at(i1, i2 - 1, j1, j2);
    }
    if (j2 - j1 > 1) {
      if ((own[j2] as number) - (own[j1 + 1] as number) > full) return this.at(i1, i2, j1 + 1, j2);
      if ((own[j2 - 1] as number) - (own[j1] as number) > full) return this.at(i1, i2, j1, j2 - 1);
    }
    return -1;
  }

  /** A line that crosses no floor of the rectangle, by its number as a cut; 0 where there is none. */
  private partingLine(i1: number, i2: number, j1: number, j2: number): number {
    const place = (this.rows[j1] as number) + j2;
    for (let k = i1 + 1; k < i2; k++) {
      if ((this.uprightPrice[k * this.rowPairs + place] as number) <= EQUAL_LENGTH_MM) return k;
    }
    for (let k = j1 + 1; k < j2; k++) if ((this.levelPrice[k] as number) <= EQUAL_LENGTH_MM) return -k;
    return 0;
  }

  /** Tries the cut along an upright line for every open rectangle of a block. */
  private uprightCut(i1: number, i2: number, k: number, opened: number): void {
    const { cost, uneven, cut, open, uprightPrice, rowPairs } = this;
    const base = (this.columns[i1] as number) + i2 * rowPairs;
    const left = (this.columns[i1] as number) + k * rowPairs;
    const right = (this.columns[k] as number) + i2 * rowPairs;
    const prices = k * rowPairs;
    const mayBeBarred = this.lattice.barred[0] !== null;
    for (let i = 0; i < opened; i++) {
      const place = open[i] as number;
      const here = base + place;
      const c =
        (uprightPrice[prices + place] as number) + (cost[left + place] as number) + (cost[right + place] as number);
      const best = cost[here] as number;
      if (c > best + EQUAL_LENGTH_MM) continue;
      const e = (uneven[left + place] as number) + (uneven[right + place] as number);
      if (c >= best - EQUAL_LENGTH_MM && e >= (uneven[here] as number)) continue;
      if (mayBeBarred && this.isBarred(k, i1, i2, ...this.pairAt(place))) continue;
      cost[here] = c;
      uneven[here] = e;
      cut[here] = k;
    }
  }

  /** The level lines of a place in a block. */
  private pairAt(place: number): [number, number] {
    let j1 = 0;
    while (j1 + 1 < this.m && (this.rows[j1 + 1] as number) + j1 + 2 <= place) j1++;
    return [j1, place - (this.rows[j1] as number)];
  }

  /** Tries every level cut in a block, the lower rectangles first, and takes over what stands elsewhere. */
  private levelCuts(i1: number, i2: number): void {
    const { m, rows, cost, same, parted } = this;
    const base = (this.columns[i1] as number) + i2 * this.rowPairs;
    for (let dj = 1; dj < m; dj++) {
      for (let j1 = 0, j2 = dj; j2 < m; j1++, j2++) {
        const place = (rows[j1] as number) + j2;
        const inner = same[place] as number;
        const line = parted[place] as number;
        if (inner >= 0) this.copy(base + place, inner);
        else if (line > 0) this.take(base + place, this.at(i1, line, j1, j2), this.at(line, i2, j1, j2), line);
        else if (line < 0)
          this.take(base + place, base + (rows[j1] as number) - line, base + (rows[-line] as number) + j2, line);
        else if ((cost[base + place] as number) !== 0) this.levelCutsOf(i1, i2, j1, j2, base);
      }
    }
  }

  private levelCutsOf(i1: number, i2: number, j1: number, j2: number, base: number): void {
    const { cost, uneven, rows, levelPrice } = this;
    const upper = base + (rows[j1] as number);
    const here = upper + j2;
    let best = cost[here] as number;
    let even = uneven[here] as number;
    let pick = 0;
    for (let k = j1 + 1; k < j2; k++) {
      const a = upper + k;
      const b = base + (rows[k] as number) + j2;
      const c = (levelPrice[k] as number) + (cost[a] as number) + (cost[b] as number);
      if (c > best + EQUAL_LENGTH_MM) continue;
      const e = (uneven[a] as number) + (uneven[b] as number);
      if (c >= best - EQUAL_LENGTH_MM && e >= even) continue;
      if (this.isBarred(-k, i1, i2, j1, j2)) continue;
      best = c;
      even = e;
      pick = k;
    }
    if (pick === 0) return;
    cost[here] = best;
    uneven[here] = even;
    this.cut[here] = -pick;
  }

  private copy(here: number, from: number): void {
    this.cost[here] = this.cost[from] as number;
    this.uneven[here] = this.uneven[from] as number;
    this.cut[here] = this.cut[from] as number;
  }

  private take(here: number, a: number, b: number, cut: number): void {
    this.cost[here] = (this.cost[a] as number) + (this.cost[b] as number);
    this.uneven[here] = (this.uneven[a] as number) + (this.uneven[b] as number);
    this.cut[here] = cut;
  }

  /** The most even layout that this table holds for at most so much joint and price, mm; null where none costs so little. */
  evenLayout(mostMm: number): Layout | null {
    if (this.n < 2 || this.m < 2) return null;
    const cuts: PartCut[] = [];
    const sum = { cost: 0, uneven: 0 };
    const spare = mostMm - (this.cost[this.at(0, this.n - 1, 0, this.m - 1)] as number);
    if (spare < 0) return null;
    this.collectEven(0, this.n - 1, 0, this.m - 1, spare, cuts, sum);
    return { cuts, ...sum };
  }

  private collect(i1: number, i2: number, j1: number, j2: number, cuts: PartCut[]): void {
    const pick = this.cut[this.at(i1, i2, j1, j2)] as number;
    if (pick === 0) return;
    this.cutPush(pick, i1, i2, j1, j2, cuts);
    for (const [a, b, c, d] of halvesAt(pick, i1, i2, j1, j2)) this.collect(a, b, c, d, cuts);
  }

  /** @param spare joint that may be spent on evenness, mm; what a cut leaves of it is shared by area */
  private collectEven(
    i1: number,
    i2: number,
    j1: number,
    j2: number,
    spare: number,
    cuts: PartCut[],
    sum: { cost: number; uneven: number },
  ): void {
    const here = this.at(i1, i2, j1, j2);
    const pick = this.evenCut(i1, i2, j1, j2, spare);
    if (pick === 0) {
      sum.cost += this.cost[here] as number;
      sum.uneven += this.uneven[here] as number;
      return;
    }
    const price = this.priceOf(pick, i1, i2, j1, j2);
    const halves = halvesAt(pick, i1, i2, j1, j2);
    const least = halves.reduce((total, half) => total + (this.cost[this.at(...half)] as number), price);
    const left = spare - (least - (this.cost[here] as number));
    const area = this.area(this.lattice.gross, i1, i2, j1, j2);
    sum.cost += price;
    this.cutPush(pick, i1, i2, j1, j2, cuts);
    for (const half of halves) {
      this.collectEven(...half, (left * this.area(this.lattice.gross, ...half)) / area, cuts, sum);
    }
  }

  /** The cut that leaves the most even halves for no more than `spare` above the least; 0 for a bay. */
  private evenCut(i1: number, i2: number, j1: number, j2: number, spare: number): number {
    const here = this.at(i1, i2, j1, j2);
    let pick = this.cut[here] as number;
    if (pick === 0) return 0;
    const most = (this.cost[here] as number) + spare;
    let even = this.uneven[here] as number;
    for (const cut of [...numbersBetween(i1, i2), ...numbersBetween(j1, j2).map((k) => -k)]) {
      const [a, b] = halvesAt(cut, i1, i2, j1, j2).map((half) => this.at(...half)) as [number, number];
      const e = (this.uneven[a] as number) + (this.uneven[b] as number);
      if (e >= even || this.isBarred(cut, i1, i2, j1, j2)) continue;
      if (this.priceOf(cut, i1, i2, j1, j2) + (this.cost[a] as number) + (this.cost[b] as number) > most) continue;
      even = e;
      pick = cut;
    }
    return pick;
  }

  /** What a cut from side to side of a rectangle costs, mm. */
  private priceOf(cut: number, i1: number, i2: number, j1: number, j2: number): number {
    return cut > 0
      ? along(this.lattice.cost[0], cut * this.m, j1, j2)
      : along(this.lattice.cost[1], -cut * this.n, i1, i2);
  }

  /** Whether a cut would run where no joint may. */
  private isBarred(cut: number, i1: number, i2: number, j1: number, j2: number): boolean {
    const [upright, level] = this.lattice.barred;
    if (cut > 0) return upright !== null && along(upright, cut * this.m, j1, j2) > EQUAL_LENGTH_MM;
    return level !== null && along(level, -cut * this.n, i1, i2) > EQUAL_LENGTH_MM;
  }

  private cutPush(cut: number, i1: number, i2: number, j1: number, j2: number, cuts: PartCut[]): void {
    const axis = cut > 0 ? 0 : 1;
    const k = Math.abs(cut);
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
  }
}
