import type { Point } from './point.ts';
import { GRID_PER_MM, WELD_GRID } from './tolerance.ts';

/** Lines and outlines of a plan, made to meet only at shared points.
 *
 *  Accepts polylines and rings on whole grid steps, in any position: crossing, touching, overlapping. A chain whose points all weld
 *  is one point and no line: points weld to it, but it leaves the segments that pass it as they are.
 *  Guarantees that afterwards two segments meet at a shared end or not at all; that no two points are closer than the weld distance,
 *  and no segment to an end of another (but for the height of a triangle with sides of little more than a weld, sqrt(3) / 2 of it
 *  or more); that the same input gives the same output, and the output given again stays as it is. A point moves by at most the weld
 *  distance. So does a segment at each split; only where points stand little more than a weld apart does one split lead to another.
 *  Steps: weld the points; split segments at points that lie on them and where they cross; again until nothing splits.
 *  It ends: a split leaves only segments shorter than the one it parts, between points at least a weld apart in the box of the
 *  input. Only so many such points fit, so there are only so many lengths for segments to fall through. */
export interface Chain {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** A line or outline in mm, brought to whole grid steps. */
export function chainOnGrid(points: readonly Point[], closed: boolean): Chain {
  return {
    points: points.map(([x, y]) => [Math.round(x * GRID_PER_MM), Math.round(y * GRID_PER_MM)] as const),
    closed,
  };
}

export interface Noded {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** For each chain the walk along its points, by number; a closed chain repeats its first at the end. */
  readonly walks: readonly (readonly number[])[];
}

export function chainsNode(chains: readonly Chain[]): Noded {
  const welder = new Welder();
  let walks = chains.map((chain) => {
    const walk: number[] = [];
    for (const [x, y] of chain.points) {
      const id = welder.add(x, y);
      if (walk[walk.length - 1] !== id) walk.push(id);
    }
    const first = walk[0];
    if (chain.closed && first !== undefined && walk[walk.length - 1] !== first) walk.push(first);
    return walk;
  });
  for (let splits = splitsFind(welder, walks); splits.size > 0; splits = splitsFind(welder, walks)) {
    walks = walks.map((walk) => walkSplit(walk, splits));
  }
  return { x: welder.x, y: welder.y, walks };
}

/** Gives each place one number; the first comer keeps its coordinates. */
class Welder {
  readonly x: number[] = [];
  readonly y: number[] = [];
  private readonly cells = new Map<number, number[]>();

  add(x: number, y: number): number {
    const cx = Math.floor(x / WELD_GRID);
    const cy = Math.floor(y / WELD_GRID);
    for (let i = cx - 1; i <= cx + 1; i++) {
      for (let j = cy - 1; j <= cy + 1; j++) {
        for (const id of this.cells.get(cellKey(i, j)) ?? []) {
          const dx = (this.x[id] as number) - x;
          const dy = (this.y[id] as number) - y;
          if (dx * dx + dy * dy < WELD_GRID * WELD_GRID) return id;
        }
      }
    }
    const id = this.x.length;
    this.x.push(Math.round(x));
    this.y.push(Math.round(y));
    const key = cellKey(cx, cy);
    const cell = this.cells.get(key);
    if (cell) cell.push(id);
    else this.cells.set(key, [id]);
    return id;
  }
}

/** Points and cells are numbered below this, so that a pair of them is one exact number. */
const MOST_POINTS = 2 ** 25;

function cellKey(i: number, j: number): number {
  return (i + MOST_POINTS) * 2 * MOST_POINTS + (j + MOST_POINTS);
}

/** One number for a pair of points, whichever way round. */
export function segmentKey(a: number, b: number): number {
  return a < b ? a * MOST_POINTS + b : b * MOST_POINTS + a;
}

/** For each segment that must be split, the points to put into it, in order from its lower-numbered end. */
type Splits = Map<number, number[]>;

function splitsFind(welder: Welder, walks: readonly (readonly number[])[]): Splits {
  const splits: Splits = new Map();
  const put = (a: number, b: number, point: number) => {
    const key = segmentKey(a, b);
    const list = splits.get(key);
    if (!list) splits.set(key, [point]);
    else if (!list.includes(point)) list.push(point);
  };
  segmentPairs(segmentsOf(walks), welder.x, welder.y, (s, t) => pairSplit(welder, s, t, put));
  for (const [key, points] of splits) splits.set(key, pointsOrder(welder, key, points));
  return splits;
}

/** Each segment once, whichever way the walks run along it. */
function segmentsOf(walks: readonly (readonly number[])[]): [number, number][] {
  const segments: [number, number][] = [];
  const seen = new Set<number>();
  for (const walk of walks) {
    for (let i = 0; i + 1 < walk.length; i++) {
      const a = walk[i] as number;
      const b = walk[i + 1] as number;
      const key = segmentKey(a, b);
      if (seen.has(key)) continue;
      seen.add(key);
      segments.push([a, b]);
    }
  }
  return segments;
}

/** The points of a split in order from the lower-numbered end of the segment, without those that would leave a part as long as the
 *  whole: of two points on either side of a short segment the next round tests the second against the parts that the first leaves. */
function pointsOrder({ x, y }: Welder, key: number, points: readonly number[]): number[] {
  const a = Math.floor(key / MOST_POINTS);
  const b = key % MOST_POINTS;
  const from = (p: number, q: number) => squared(x, y, p, q);
  const whole = from(a, b);
  const order: number[] = [];
  let last = a;
  for (const p of [...points].sort((p, q) => from(a, p) - from(a, q) || p - q)) {
    if (from(last, p) >= whole) continue;
    order.push(p);
    last = p;
  }
  return order;
}

/** Calls back for every pair of segments whose boxes come within the weld distance of each other. */
function segmentPairs(
  segments: readonly [number, number][],
  x: readonly number[],
  y: readonly number[],
  visit: (s: readonly [number, number], t: readonly [number, number]) => void,
): void {
  const boxes = segments.map(([a, b]) => ({
    minX: Math.min(x[a] as number, x[b] as number) - WELD_GRID,
    maxX: Math.max(x[a] as number, x[b] as number) + WELD_GRID,
    minY: Math.min(y[a] as number, y[b] as number) - WELD_GRID,
    maxY: Math.max(y[a] as number, y[b] as number) + WELD_GRID,
  }));
  const order = segments.map((_, i) => i).sort((i, j) => (boxes[i]?.minX ?? 0) - (boxes[j]?.minX ?? 0) || i - j);
  const mean = boxes.reduce((sum, box) => sum + (box.maxY - box.minY), 0) / Math.max(1, boxes.length);
  const band = Math.max(mean, WELD_GRID * 8);
  // Sweep over x with the segments under way kept in bands of y; long segments stand in several bands.
  const bands = new Map<number, number[]>();
  const met = new Int32Array(segments.length).fill(-1);
  for (const i of order) {
    const box = boxes[i];
    if (!box) continue;
    const from = Math.floor(box.minY / band);
    const to = Math.floor(box.maxY / band);
    for (let k = from; k <= to; k++) {
      const list = bands.get(k) ?? [];
      let kept = 0;
      for (const j of list) {
        const other = boxes[j];
        if (!other || other.maxX < box.minX) continue;
        list[kept++] = j;
        if (met[j] === i || other.maxY < box.minY || other.minY > box.maxY) continue;
        met[j] = i;
        visit(segments[i] as [number, number], segments[j] as [number, number]);
      }
      list.length = kept;
      list.push(i);
      bands.set(k, list);
    }
  }
}

/** Puts ends of either segment that lie on the other into it, or else the crossing into both. Then all four ends are a weld or more
 *  from the crossing, for the nearest of them is nearer to both ends of the other segment than those are to each other; so the point
 *  that stands for the crossing, within a weld of it, leaves parts shorter than the whole. */
function pairSplit(
  welder: Welder,
  [a, b]: readonly [number, number],
  [c, d]: readonly [number, number],
  put: (a: number, b: number, point: number) => void,
): void {
  const { x, y } = welder;
  let touches = false;
  for (const [p, q, r] of [
    [a, b, c],
    [a, b, d],
    [c, d, a],
    [c, d, b],
  ] as const) {
    if (r === p || r === q) touches = true;
    else if (pointOnSegment(x, y, p, q, r)) {
      put(p, q, r);
      touches = true;
    }
  }
  if (touches) return;
  const crossing = segmentsCross(x, y, a, b, c, d);
  if (!crossing) return;
  const id = welder.add(Math.round(crossing[0]), Math.round(crossing[1]));
  if (partsShorten(x, y, a, b, id)) put(a, b, id);
  if (partsShorten(x, y, c, d, id)) put(c, d, id);
}

/** Whether point r lies within the weld distance of the segment p-q, and parts it into shorter ones. */
function pointOnSegment(x: readonly number[], y: readonly number[], p: number, q: number, r: number): boolean {
  if (!partsShorten(x, y, p, q, r)) return false;
  const px = x[p] as number;
  const py = y[p] as number;
  const dx = (x[q] as number) - px;
  const dy = (y[q] as number) - py;
  const cross = dx * ((y[r] as number) - py) - dy * ((x[r] as number) - px);
  return cross * cross < WELD_GRID * WELD_GRID * (dx * dx + dy * dy);
}

/** Whether p-r and r-q are both shorter than p-q. Only such points split a segment, so that three little more than a weld apart do
 *  not split each other's sides for ever. */
function partsShorten(x: readonly number[], y: readonly number[], p: number, q: number, r: number): boolean {
  const whole = squared(x, y, p, q);
  return squared(x, y, p, r) < whole && squared(x, y, r, q) < whole;
}

/** Distance between two points, squared. */
function squared(x: readonly number[], y: readonly number[], p: number, q: number): number {
  return ((x[q] as number) - (x[p] as number)) ** 2 + ((y[q] as number) - (y[p] as number)) ** 2;
}

function segmentsCross(
  x: readonly number[],
  y: readonly number[],
  a: number,
  b: number,
  c: number,
  d: number,
): Point | null {
  const ax = x[a] as number;
  const ay = y[a] as number;
  const ux = (x[b] as number) - ax;
  const uy = (y[b] as number) - ay;
  const cx = x[c] as number;
  const cy = y[c] as number;
  const vx = (x[d] as number) - cx;
  const vy = (y[d] as number) - cy;
  const denominator = ux * vy - uy * vx;
  if (denominator === 0) return null;
  const s = ((cx - ax) * vy - (cy - ay) * vx) / denominator;
  const t = ((cx - ax) * uy - (cy - ay) * ux) / denominator;
  if (s <= 0 || s >= 1 || t <= 0 || t >= 1) return null;
  return [ax + ux * s, ay + uy * s];
}

function walkSplit(walk: readonly number[], splits: Splits): number[] {
  const out: number[] = [];
  for (let i = 0; i < walk.length; i++) {
    const a = walk[i] as number;
    out.push(a);
    const b = walk[i + 1];
    if (b === undefined) break;
    const inner = splits.get(segmentKey(a, b)) ?? [];
    for (const p of a < b ? inner : inner.toReversed()) out.push(p);
  }
  return out;
}
