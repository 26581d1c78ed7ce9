import { type Point, pointDistance } from '../geometry/point.ts';
import { boxOf, type Region, type Ring } from '../geometry/ring.ts';
import { onGrid, SAME_LINE_MM } from '../geometry/tolerance.ts';
import { type EqualGrid, equalGrids } from './equal-grid.ts';
import { groutAlong, groutNear } from './grout.ts';
import { type GroutSide, groutGrids, groutLinesBetween } from './grout-grid.ts';
import { columnsInGrout, cornersInGrout, linesInGrout, reachesInGrout } from './grout-lines.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';
import type { GroutRows, Part } from './part.ts';
import { type ClearRun, clearRuns, reachesOf, runsOf } from './reaches.ts';

/** Where joints may run: candidate lines along one axis, rising. */
export interface CandidateLines {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** What the choice of lines rests on besides the region. */
export interface LineChoice {
  /** Lines an axis at most. */
  readonly most: number;
  /** Lines that a layout found before has used: they stay. */
  readonly keep: CandidateLines;
  /** Soft lines come in this order: equal parts first and spread out, or reaches first, however close: of two the second may be what fits. */
  readonly first: 'parts' | 'reaches';
}

/** Candidate lines of a region in its frame: hard lines through corners and column centres; column faces, joinery, jambs and hints; from every
 *  hard line the reach of each limit (side; area over width; aspect); and equal subdivisions between hard lines.
 *  An axis gets as many soft lines as it needs bays, and at most `most` lines in all, corners first, so that the work stays bounded
 *  whatever the plan. */
export function candidateLines(region: Region, part: Part, { most, keep, first }: LineChoice): CandidateLines {
  const hard = ([0, 1] as const).map((axis) => {
    const corners = hardLines(region, part, axis);
    const kept = axis === 0 ? keep.x : keep.y;
    return thin(kept.length > 0 ? distinct([...corners, ...kept]) : corners, part.grout ? Math.ceil(most * 0.6) : most);
  }) as [number[], number[]];
  const clear = clearRuns(region, hard[0], hard[1]);
  const offers = ([0, 1] as const).map((axis) =>
    offerOf(region, part, axis, hard[axis], hard[1 - axis] as number[], first, clear[axis]),
  );
  const [forX, forY] = offers.map((offer) => Math.max(2, offer.wanted)) as [number, number];
  // A long narrow region may have many lines across it, as it has few along it.
  const room = most * most;
  const scale = Math.min(1, Math.sqrt(room / (forX * forY)));
  const caps = [forX, forY].map((wanted, axis) => {
    const other = [forY, forX][axis] as number;
    return Math.min(wanted, Math.max(Math.floor(wanted * scale), Math.min(most, Math.floor(room / other))));
  });
  const [x, y] = ([0, 1] as const).map((axis) => {
    const { grid, soft } = offers[axis] as Offer;
    const cap = caps[axis] as number;
    return linesPick(linesPick(hard[axis], grid, cap, false), soft, cap, first === 'parts');
  }) as [number[], number[]];
  return { x, y };
}

/** Soft lines of an axis, the more useful first, and how many lines it wants in all. */
interface Offer {
  /** Lines that come before all soft ones, however close. */
  readonly grid: readonly number[];
  readonly soft: readonly number[];
  readonly wanted: number;
}

function offerOf(
  region: Region,
  part: Part,
  axis: 0 | 1,
  own: readonly number[],
  across: readonly number[],
  first: LineChoice['first'],
  clear: ClearRun,
): Offer {
  const span = (own[own.length - 1] as number) - (own[0] as number);
  const longest = longestBay(across, part);
  const rows = groutAlong(part.grout, axis);
  const corners = rows === null ? [] : distinct(cornersInGrout(rows, region, part, axis));
  const faces = rows === null ? columnFaces(part, axis, own) : distinct(columnsInGrout(rows, part, axis));
  if (span <= longest) return { grid: corners, soft: faces, wanted: own.length + corners.length + faces.length };
  // In a hall of columns the bays go by their rows.
  const isCrowded = faces.length > MANY_FACES;
  const extras = edgesOfThings(part, axis, own).slice(0, isCrowded ? CROWDED_EXTRAS : MOST_EXTRAS);
  const things = isCrowded ? extras : [...faces, ...extras];
  const bays = isCrowded ? 1 : Math.ceil(span / usualBay(across, part));
  const lines = isCrowded ? rowLines(own, across, part) : gridLines(own, across, part);
  const inGrout = isCrowded ? groutRowLines(own, across, part, axis) : groutGridLines(own, across, part, axis);
  const grid =
    rows === null ? lines : [...new Set([...corners, ...faces, ...inGrout, ...linesInGrout(rows, own, lines)])];
  return {
    grid,
    soft: [...things, ...softLines(own, across, part, longest, first, clear, rows)],
    wanted: own.length + grid.length + things.length + softWanted(bays),
  };
}

/** The lines of the best grids of equal bays over the whole, where that is so many bays that little is won beside them. */
function gridLines(own: readonly number[], across: readonly number[], { limits }: Part): number[] {
  const [from, to] = endsOf(own);
  const [low, high] = endsOf(across);
  const grids = equalGrids(to - from, high - low, limits).filter(isLarge);
  const counts = new Set(grids.map((grid) => grid.along));
  return distinct([...counts].flatMap((count) => equalParts(from, to, count)).map(onGrid));
}

/** The same in grout. */
function groutGridLines(
  own: readonly number[],
  across: readonly number[],
  { limits, grout }: Part,
  axis: 0 | 1,
): number[] {
  const side = (lines: readonly number[], of: 0 | 1): GroutSide => {
    const [from, to] = endsOf(lines);
    return { from, to, rows: groutAlong(grout, of) };
  };
  const grids = grout === null ? [] : groutGrids(side(own, axis), side(across, axis === 0 ? 1 : 0), limits);
  return distinct(grids.filter(isLarge).flatMap(({ lines }) => lines.map(onGrid)));
}

/** Lines in grout that go by no row of columns, for bays between the grout lines beside the rows that cross them. */
function groutRowLines(
  own: readonly number[],
  across: readonly number[],
  { limits, grout }: Part,
  axis: 0 | 1,
): number[] {
  const [from, to] = endsOf(own);
  const rows = groutAlong(grout, axis === 0 ? 1 : 0);
  const crossing =
    rows === null ? across : distinct([...endsOf(across), ...across.slice(1, -1).map((at) => groutNear(rows, at))]);
  return groutLinesBetween({ from, to, rows: groutAlong(grout, axis) }, crossing, limits).map(onGrid);
}

function endsOf(lines: readonly number[]): [number, number] {
  return [lines[0] as number, lines[lines.length - 1] as number];
}

function isLarge({ along, across }: EqualGrid): boolean {
  return along * across > GRID_FROM_BAYS;
}

const GRID_FROM_BAYS = 20;

/** Equal parts between neighbouring rows of columns, where a bay is shorter than the way from row to row. */
function rowLines(own: readonly number[], across: readonly number[], { limits }: Part): number[] {
  const widest = across.slice(1).reduce((most, line, i) => Math.max(most, line - (across[i] as number)), 0);
  return own.slice(1).flatMap((to, i) => {
    const from = own[i] as number;
    return equalParts(from, to, equalGrids(to - from, widest, limits)[0]?.along ?? 1).map(onGrid);
  });
}

const MANY_FACES = 8;
const MOST_EXTRAS = 2;
const CROWDED_EXTRAS = 6;

/** How many soft lines an axis of so many bays wants: with more bays there are more ways to lay them, and on 82 floors of 13 to 26 m the worst
 *  stood 5.9 % over the optimum with the fewer, 0.8 % with the more. Small rooms gain nothing from them. */
function softWanted(bays: number): number {
  return bays + (bays < MANY_BAYS ? SOFT_FEW : SOFT_MANY);
}

const MANY_BAYS = 4;
const SOFT_FEW = 7;
const SOFT_MANY = 14;

/** How long a bay may be along an axis whatever its width, mm. */
function longestBay(across: readonly number[], { limits }: Part): number {
  const breadth = (across[across.length - 1] as number) - (across[0] as number);
  return Math.min(limits.lengthM * 1000, longOnce(limits), (limits.areaM2 * 1e6) / breadth);
}

const WIDE_PIER_MM = 1000;

function hardLines(region: Region, part: Part, axis: 0 | 1): number[] {
  const box = boxOf(region.outline);
  const [from, to] = axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY];
  const values = [from, to];
  for (const ring of [region.outline, ...region.holes]) {
    ring.forEach((p, i) => {
      const before = ring[(i + ring.length - 1) % ring.length] as Point;
      const after = ring[(i + 1) % ring.length] as Point;
      const beyond = ring[(i + 2) % ring.length] as Point;
      const onWall = before[axis] === p[axis] || after[axis] === p[axis];
      const turns = cornerTurn(before, p, after) < -NOTCH_RAD;
      if (onWall || turns) values.push(p[axis]);
      // The middle of a pier: half the notch on either side of a joint there may be no corner of either bay.
      const isPier = turns && cornerTurn(p, after, beyond) < -NOTCH_RAD && pointDistance(p, after) <= WIDE_PIER_MM;
      if (isPier) values.push((p[axis] + after[axis]) / 2);
    });
  }
  for (const column of part.columns) {
    const { minX, minY, maxX, maxY } = column.box;
    const [low, high] = axis === 0 ? [minX, maxX] : [minY, maxY];
    values.push((low + high) / 2);
  }
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

/** How long a bay is along an axis at the usual, mm: for counting how many lines the axis wants. */
function usualBay(across: readonly number[], { limits }: Part): number {
  const breadth = (across[across.length - 1] as number) - (across[0] as number);
  const area = limits.areaM2 * 1e6;
  return Math.min(limits.lengthM * 1000, longOnce(limits), Math.max(Math.sqrt(area), area / breadth));
}

/** From how long a bay its proportion may ask for a cut, mm. */
function longOnce({ aspectFromM }: Part['limits']): number {
  return Math.max(aspectFromM * 1000, LEAST_LONG_MM);
}

const LEAST_LONG_MM = 2000;

/** Faces of columns that need a joint: a joint along one is shorter there, or leaves an even bay. */
function columnFaces(part: Part, axis: 0 | 1, hard: readonly number[]): number[] {
  const from = hard[0] as number;
  const to = hard[hard.length - 1] as number;
  const faces = part.columns
    .filter((column) => column.needsJoint)
    .flatMap(({ box }) => (axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY]));
  return distinct(faces.map(onGrid).filter((v) => v > from && v < to));
}

/** Places that a joint had better pass by: areas to keep clear, joinery, jambs, edges of sun zones. */
function edgesOfThings(part: Part, axis: 0 | 1, hard: readonly number[]): number[] {
  const from = hard[0] as number;
  const to = hard[hard.length - 1] as number;
  const values = [
    ...part.keepClear.flatMap((ring) => ringExtent(ring, axis)),
    ...part.joinery.flatMap((ring) => ringExtent(ring, axis)),
    ...part.mouths.flatMap(([a, b]) => [a[axis], b[axis]]),
    ...part.hints.flatMap((ring) => ringExtent(ring, axis)),
  ];
  return [...new Set(values.map(onGrid))].filter((v) => v > from && v < to);
}

/** The more useful first. */
function softLines(
  hard: readonly number[],
  across: readonly number[],
  part: Part,
  longest: number,
  first: LineChoice['first'],
  clear: ClearRun,
  rows: GroutRows | null,
): number[] {
  const from = hard[0] as number;
  const to = hard[hard.length - 1] as number;
  const found = clearPairs(hard, across.length - 1, clear).filter(([a, b]) => b - a > longest);
  // Between skew or curved walls no run is clear, and bays are parts of the whole.
  const pairs: [number, number][] = found.length > 0 ? found : [[from, to]];
  const beside = (lines: readonly number[]) => (rows === null ? lines : linesInGrout(rows, hard, lines));
  const parts = beside(pairs.flatMap(([a, b]) => subdivisions(a, b, across, part)));
  const reached = reachesOf(hard, across, part, clear);
  const reaches = rows === null ? reached.map(({ at }) => at) : reachesInGrout(rows, hard, reached);
  const halves = beside(gapHalves(hard));
  const soft = first === 'parts' ? [...parts, ...halves, ...reaches] : [...reaches, ...halves, ...parts];
  return soft.map(onGrid).filter((v) => v > from && v < to);
}

/** Equal parts of a stretch: those of the best grids of equal bays; as few as the side allows and one more, and as few as area and proportion
 *  allow across the whole breadth or the narrowest gap. */
function subdivisions(a: number, b: number, across: readonly number[], part: Part): number[] {
  const { areaM2, lengthM, aspect, aspectFromM } = part.limits;
  const side = Math.min(lengthM * 1000, Math.sqrt(areaM2 * 1e6 * Math.max(1, aspect)), b - a);
  const least = Math.max(2, Math.ceil((b - a) / side - LESS_A_HAIR));
  const area = areaM2 * 1e6;
  const breadth = (across[across.length - 1] as number) - (across[0] as number);
  const narrowest = across.slice(1).reduce((m, v, i) => Math.min(m, v - (across[i] as number)), breadth);
  const reach = (width: number) =>
    width > side ? Infinity : Math.min(side, area / width, Math.max(width * aspect, aspectFromM * 1000));
  // Besides: as square as the area allows, and as long as the side allows with the breadth that leaves.
  const others = [reach(breadth), Math.sqrt(area), area / side, reach(narrowest)]
    .filter(Number.isFinite)
    .map((long) => Math.max(2, Math.ceil((b - a) / long - LESS_A_HAIR)));
  const grids = equalGrids(b - a, breadth, part.limits).map((grid) => grid.along);
  const counts = [...grids, least, least + 1, ...others];
  const parts = [...new Set(counts)].filter((n) => n <= MOST_PARTS);
  return parts.flatMap((n) => equalParts(a, b, n));
}

/** The lines that cut a stretch into so many equal parts. */
function equalParts(a: number, b: number, count: number): number[] {
  return Array.from({ length: count - 1 }, (_, k) => a + ((b - a) * (k + 1)) / count);
}

/** A stretch this share of a bay over a whole number of bays is that number. */
const LESS_A_HAIR = 1e-3;
const MOST_PARTS = 200;

/** Halves of every gap between neighbouring hard lines, for corners that want a joint between them. */
function gapHalves(hard: readonly number[]): number[] {
  return hard.slice(1).map((line, i) => (line + (hard[i] as number)) / 2);
}

/** Pairs of hard lines with clear floor somewhere all the way between them, the widest apart first, and no more of them than there is use for. */
function clearPairs(hard: readonly number[], gapsAcross: number, clear: ClearRun): [number, number][] {
  const count = hard.length;
  const found = new Set<number>();
  for (let gap = 0; gap < gapsAcross; gap++) {
    for (const [from, to] of runsOf(count - 1, (own) => clear(own, gap, gap + 1))) {
      for (let i = from; i < to; i++) for (let j = i + 1; j <= to; j++) found.add(i * count + j);
    }
  }
  const pairs = [...found].map((pair): [number, number] => [
    hard[Math.floor(pair / count)] as number,
    hard[pair % count] as number,
  ]);
  return pairs.sort((p, q) => q[1] - q[0] - (p[1] - p[0]) || p[0] - q[0]).slice(0, MOST_PAIRS);
}

const MOST_PAIRS = 120;

/** Keeps the first that fit beside the hard lines. Spread out, lines closer than a gap to one already kept wait until the rest have come. */
function linesPick(hard: readonly number[], soft: readonly number[], most: number, spread: boolean): number[] {
  const kept = [...hard];
  const span = (hard[hard.length - 1] as number) - (hard[0] as number);
  for (const gap of spread ? [span / most / 4, SAME_LINE_MM] : [SAME_LINE_MM]) {
    for (const v of soft) {
      if (kept.length >= most) break;
      if (isClear(kept, v, gap)) insert(kept, v);
    }
  }
  return kept;
}

/** Of lines without number every so many-th is looked at. */
const THIN_FROM = 8;

/** Hard lines beyond the number allowed: the closest neighbours are merged first, the ends stay. */
function thin(lines: readonly number[], most: number): number[] {
  const step = Math.max(1, Math.ceil(lines.length / (THIN_FROM * most)));
  const kept = lines.filter((_, i) => i % step === 0 || i === lines.length - 1);
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
