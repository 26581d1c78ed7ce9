import { areaSums } from '../geometry/area-sums.ts';
import type { Region } from '../geometry/ring.ts';
import { NEAR_LIMIT } from '../geometry/tolerance.ts';
import type { Part } from './part.ts';

/** Whether the floor between two neighbouring hard lines of an axis and two hard lines across, by number, is clear of walls. */
export type ClearRun = (gap: number, from: number, to: number) => boolean;

export function clearRuns(region: Region, x: readonly number[], y: readonly number[]): [ClearRun, ClearRun] {
  const sums = areaSums([region.outline, ...region.holes], x, y);
  const clear = (i1: number, i2: number, j1: number, j2: number) => {
    const at = (i: number, j: number) => sums[i * y.length + j] as number;
    const box = ((x[i2] as number) - (x[i1] as number)) * ((y[j2] as number) - (y[j1] as number));
    return at(i2, j2) - at(i1, j2) - at(i2, j1) + at(i1, j1) > CLEAR_SHARE * box;
  };
  return [(gap, from, to) => clear(gap, gap + 1, from, to), (gap, from, to) => clear(from, to, gap, gap + 1)];
}

/** Skew walls and small niches take a little of a clear run. */
const CLEAR_SHARE = 0.95;

/** Lines that a bay between two hard lines across, or one of a row of equal bays between them, just reaches, from a hard line over clear floor:
 *  as far as side, area and proportion let it, and as far as its proportion asks. The largest bays first, and those that begin at a wall. */
export function reachesOf(
  hard: readonly number[],
  across: readonly number[],
  { limits }: Part,
  clear: ClearRun,
): ReachLine[] {
  const { areaM2, lengthM, aspect, aspectFromM } = limits;
  const found: WorthLine[] = [];
  for (let a = 0; a < across.length; a++) {
    for (let b = a + 1; b < across.length; b++) {
      const breadth = (across[b] as number) - (across[a] as number);
      const count = Math.ceil(breadth / (lengthM * 1000) - NEAR_LIMIT);
      if (count > MOST_IN_ROW) break;
      const width = breadth / count;
      const full = Math.min(lengthM * 1000, (areaM2 * 1e6) / width, Math.max(width * aspect, aspectFromM * 1000));
      const least = width > aspectFromM * 1000 ? width / aspect : 0;
      for (const [from, to] of runsOf(hard.length - 1, (gap) => clear(gap, a, b))) {
        reachesAdd(found, hard, from, to, full, full * width, 1);
        if (least > 0) reachesAdd(found, hard, from, to, least, least * width, -1);
      }
    }
  }
  return tightest(found.sort((p, q) => q.worth - p.worth || p.at - q.at));
}

/** Equal bays between two hard lines at most. */
const MOST_IN_ROW = 4;

/** Of lines that all but meet and bind from the same side the tighter one stays, in the place of the more useful. */
function tightest(lines: readonly WorthLine[]): ReachLine[] {
  const kept: { at: number; readonly side: 1 | -1 }[] = [];
  for (const { at, side } of lines) {
    const near = kept.find((line) => line.side === side && Math.abs(line.at - at) <= NEAR_LINES_MM);
    if (!near) kept.push({ at, side });
    else if ((near.at - at) * side > 0) near.at = at;
  }
  return kept;
}

/** What a limit reaches from here and from there differs by less than this where corners were meant to line up, mm. */
const NEAR_LINES_MM = 10;

export interface ReachLine {
  readonly at: number;
  /** 1: a bay is within its limits up to this line; -1: from it on. */
  readonly side: 1 | -1;
}

interface WorthLine extends ReachLine {
  readonly worth: number;
}

/** Adds the lines that a bay of so long a reach comes to from each hard line of a clear run, either way.
 *  @param most 1 for the longest that a bay may be, -1 for the shortest */
function reachesAdd(
  into: WorthLine[],
  hard: readonly number[],
  from: number,
  to: number,
  reach: number,
  area: number,
  most: 1 | -1,
): void {
  const [first, last] = [hard[from] as number, hard[to] as number];
  for (let i = from; i <= to; i++) {
    const line = hard[i] as number;
    if (line - reach > first)
      into.push({ at: line - reach, worth: i === to ? area : area * INNER_WORTH, side: most === 1 ? -1 : 1 });
    if (line + reach < last) into.push({ at: line + reach, worth: i === from ? area : area * INNER_WORTH, side: most });
  }
}

/** What a bay that begins at no wall is worth beside one that does. */
const INNER_WORTH = 0.5;

/** Runs of gaps that are clear, each as the hard lines it goes from and to. */
export function runsOf(gaps: number, isClear: (gap: number) => boolean): [number, number][] {
  const runs: [number, number][] = [];
  for (let gap = 0; gap < gaps; gap++) {
    if (!isClear(gap)) continue;
    const last = runs[runs.length - 1];
    if (last && last[1] === gap) last[1] = gap + 1;
    else runs.push([gap, gap + 1]);
  }
  return runs;
}
