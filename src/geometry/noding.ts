import type { Point } from './point.ts';
import { WELD_GRID } from './tolerance.ts';

/** Lines and outlines of a plan, made to meet only at shared points.
 *
 *  Accepts polylines and rings on whole grid steps, in any position: crossing, touching, overlapping.
 *  Guarantees that afterwards two segments meet at a shared end or not at all, that no two points are closer than the weld
 *  distance, and that the same input gives the same output. A point moves by at most the weld distance.
 *  Steps: weld the points; split segments at points that lie on them and where they cross; again until nothing splits. */
export interface Chain {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

export interface Noded {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** For each chain the walk along its points, by number; a closed chain repeats its first at the end. */
  readonly walks: readonly (readonly number[])[];
}

/** Two or three rounds settle any plan; the bound only keeps hostile input from going round for ever. */
const MOST_ROUNDS = 50;

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
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const splits = splitsFind(welder, walks);
    if (splits.size === 0) break;
    walks = walks.map((walk) => walkSplit(welder, walk, splits));
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

/** For each segment that must be split, the points to put into it. */
type Splits = Map<number, number[]>;

function splitsFind(welder: Welder, walks: readonly (readonly number[])[]): Splits {
  const { x, y } = welder;
  const segments: [number, number][] = [];
  const seen = new Set<number>();
  for (const walk of walks) {
    for (let i = 0; i + 1 < walk.length; i++) {
      const a = walk[i] as number;
      const b = walk[i + 1] as number;
      const key = segmentKey(a, b);
      if (a === b || seen.has(key)) continue;
      seen.add(key);
      segments.push([a, b]);
    }
  }
  const splits: Splits = new Map();
  const put = (a: number, b: number, point: number) => {
    const key = segmentKey(a, b);
    const list = splits.get(key);
    if (!list) splits.set(key, [point]);
    else if (!list.includes(point)) list.push(point);
  };
  segmentPairs(segments, x, y, (s, t) => pairSplit(welder, s, t, put));
  return splits;
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
  if (id !== a && id !== b) put(a, b, id);
  if (id !== c && id !== d) put(c, d, id);
}

/** Whether point r lies within the weld distance of the segment p-q, and nearer to either end than those are to each other: a split
 *  leaves shorter segments only, so that three points little more than a weld apart do not split each other's sides for ever. */
function pointOnSegment(x: readonly number[], y: readonly number[], p: number, q: number, r: number): boolean {
  const px = x[p] as number;
  const py = y[p] as number;
  const dx = (x[q] as number) - px;
  const dy = (y[q] as number) - py;
  const ex = (x[r] as number) - px;
  const ey = (y[r] as number) - py;
  const lengthSquared = dx * dx + dy * dy;
  if (ex * ex + ey * ey >= lengthSquared) return false;
  if ((dx - ex) ** 2 + (dy - ey) ** 2 >= lengthSquared) return false;
  const cross = dx * ey - dy * ex;
  return cross * cross < WELD_GRID * WELD_GRID * lengthSquared;
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

function walkSplit(welder: Welder, walk: readonly number[], splits: Splits): number[] {
  const { x, y } = welder;
  const out: number[] = [];
  for (let i = 0; i < walk.length; i++) {
    const a = walk[i] as number;
    if (out[out.length - 1] !== a) out.push(a);
    const b = walk[i + 1];
    if (b === undefined) break;
    const inner = splits.get(segmentKey(a, b));
    if (!inner) continue;
    const from = (p: number) => ((x[p] as number) - (x[a] as number)) ** 2 + ((y[p] as number) - (y[a] as number)) ** 2;
    for (const p of [...inner].sort((p, q) => from(p) - from(q) || p - q)) out.push(p);
  }
  return out;
}
