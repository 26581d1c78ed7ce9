import type { Point } from '../geometry/point.ts';
import { boxOf, type Region, type Ring } from '../geometry/ring.ts';
import { onGrid, SAME_LINE_MM } from '../geometry/tolerance.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';
import type { Part } from './part.ts';

/** Where joints may run: candidate lines along one axis, rising. */
export interface CandidateLines {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

interface Axis {
  /** Lines that a layout is pinned to: corners, column faces and centres, jambs. */
  readonly hard: number[];
  /** The rest, the more useful first. */
  readonly soft: number[];
}

/** Candidate lines of a region in its frame: hard lines through corners, column faces and centres, jambs, joinery and hints; from every hard line the
 *  reach of each limit (side; area over width; aspect); and equal subdivisions between hard lines.
 *  At most `most` lines an axis are kept, corners first, so that the work stays bounded whatever the plan. */
export function candidateLines(region: Region, part: Part, most: number): CandidateLines {
  const axes = [0, 1].map((axis) => hardLines(region, part, axis as 0 | 1)) as [number[], number[]];
  const [x, y] = [0, 1].map((axis) => {
    const hard = axes[axis] as number[];
    const soft = softLines(hard, axes[1 - axis] as number[], part);
    return linesPick({ hard, soft }, most);
  }) as [number[], number[]];
  return { x, y };
}

function hardLines(region: Region, part: Part, axis: 0 | 1): number[] {
  const box = boxOf(region.outline);
  const [from, to] = axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY];
  const values = [from, to];
  for (const ring of [region.outline, ...region.holes]) {
    ring.forEach((p, i) => {
      const before = ring[(i + ring.length - 1) % ring.length] as Point;
      const after = ring[(i + 1) % ring.length] as Point;
      const onWall = before[axis] === p[axis] || after[axis] === p[axis];
      if (onWall || cornerTurn(before, p, after) < -NOTCH_RAD) values.push(p[axis]);
    });
  }
  for (const column of part.columns) {
    const { minX, minY, maxX, maxY } = column.box;
    const [low, high] = axis === 0 ? [minX, maxX] : [minY, maxY];
    values.push((low + high) / 2);
    if (column.needsJoint) values.push(low, high);
  }
  for (const [a, b] of part.mouths) values.push(a[axis], b[axis]);
  for (const ring of [...part.joinery, ...part.keepClear, ...part.hints]) values.push(...ringExtent(ring, axis));
  return distinct(values.map(onGrid).filter((v) => v >= from && v <= to));
}

function ringExtent(ring: Ring, axis: 0 | 1): number[] {
  const values = ring.map((p) => p[axis]);
  return [Math.min(...values), Math.max(...values)];
}

function distinct(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((v, i) => i === 0 || v - (sorted[i - 1] as number) > 0);
}

function softLines(hard: readonly number[], across: readonly number[], part: Part): number[] {
  const { areaM2, lengthM, aspect, aspectFromM } = part.limits;
  const from = hard[0] as number;
  const to = hard[hard.length - 1] as number;
  const breadth = (across[across.length - 1] as number) - (across[0] as number);
  const soft: number[] = [];
  const sideMm = Math.min(lengthM * 1000, Math.sqrt(areaM2 * 1e6 * Math.max(1, aspect)));
  const longest = Math.min(sideMm, aspectFromM * 1000, (areaM2 * 1e6) / breadth);
  if (to - from <= longest) return [];
  const subdivide = (a: number, b: number) => {
    const least = Math.max(2, Math.ceil((b - a) / sideMm - 1e-3));
    for (const parts of [least, least + 1]) {
      for (let k = 1; k < parts; k++) soft.push(a + ((b - a) * k) / parts);
    }
  };
  for (const [a, b] of pairsBySpan(hard)) if (b - a > longest) subdivide(a, b);
  soft.push(...gapHalves(hard));
  const reaches = reachesOf(across, part);
  for (const line of hard) {
    for (const reach of reaches) soft.push(line - reach, line + reach);
  }
  return soft.map(onGrid).filter((v) => v > from && v < to);
}

/** How far a bay may reach along the axis: by its side, and by area and proportion for every width that hard lines across leave. */
function reachesOf(across: readonly number[], part: Part): ReadonlySet<number> {
  const { areaM2, lengthM, aspect } = part.limits;
  const reaches = new Set<number>();
  if (Number.isFinite(lengthM)) reaches.add(lengthM * 1000);
  for (let i = 0; i < across.length; i++) {
    for (let j = i + 1; j < across.length; j++) {
      const width = (across[j] as number) - (across[i] as number);
      if (width > lengthM * 1000 * 1.001) continue;
      for (const reach of [(areaM2 * 1e6) / width, width * aspect, width / aspect]) {
        if (reach > 0 && reach <= lengthM * 1000 && Number.isFinite(reach)) reaches.add(reach);
      }
    }
  }
  return reaches;
}

/** Halves of every gap between neighbouring hard lines, for corners that want a joint between them. */
function gapHalves(hard: readonly number[]): number[] {
  return hard.slice(1).map((line, i) => (line + (hard[i] as number)) / 2);
}

/** Pairs of hard lines, the widest apart first, and no more of them than there is use for. */
function pairsBySpan(hard: readonly number[]): [number, number][] {
  const pairs: [number, number][] = [];
  for (let i = 0; i < hard.length; i++) {
    for (let j = i + 1; j < hard.length; j++) pairs.push([hard[i] as number, hard[j] as number]);
  }
  return pairs.sort((p, q) => q[1] - q[0] - (p[1] - p[0]) || p[0] - q[0]).slice(0, MOST_PAIRS);
}

const MOST_PAIRS = 120;

/** Keeps all that fits, spreading what must be dropped: soft lines closer than a gap to one already kept go first. */
function linesPick({ hard, soft }: Axis, most: number): number[] {
  const kept = thin(hard, most);
  const span = (hard[hard.length - 1] as number) - (hard[0] as number);
  for (const gap of [span / most / 2, SAME_LINE_MM]) {
    for (const v of soft) {
      if (kept.length >= most) break;
      if (isClear(kept, v, gap)) insert(kept, v);
    }
  }
  return kept;
}

/** Hard lines beyond the number allowed: the closest neighbours are merged first, the ends stay. */
function thin(lines: readonly number[], most: number): number[] {
  const kept = [...lines];
  while (kept.length > Math.max(2, most)) {
    let least = Infinity;
    let drop = 1;
    for (let i = 1; i + 1 < kept.length; i++) {
      const room = (kept[i + 1] as number) - (kept[i - 1] as number);
      if (room < least) {
        least = room;
        drop = i;
      }
    }
    kept.splice(drop, 1);
  }
  return kept;
}

function place(sorted: readonly number[], v: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) < v) low = middle + 1;
    else high = middle;
  }
  return low;
}

function isClear(sorted: readonly number[], v: number, gap: number): boolean {
  const at = place(sorted, v);
  const before = sorted[at - 1];
  const after = sorted[at];
  return (before === undefined || v - before > gap) && (after === undefined || after - v > gap);
}

function insert(sorted: number[], v: number): void {
  sorted.splice(place(sorted, v), 0, v);
}
