import { type Point, pointDistance } from '../geometry/point.ts';
import type { Region } from '../geometry/ring.ts';
import { type Interval, intervalSharing, lineInside } from '../geometry/scanline.ts';
import { segmentDistance, segmentNearest } from '../geometry/segment.ts';
import { EQUAL_LENGTH_MM, onGrid, SAME_LINE_MM, WELD_MM } from '../geometry/tolerance.ts';
import { edgeCut, type Group, groupOf, isInner } from './group.ts';
import { groutAlong, groutFrom, groutTo, lineRate } from './grout.ts';
import { layoutPrice } from './improve.ts';
import { cutBarred } from './lattice.ts';
import type { Part, PartCut } from './part.ts';
import { edgeAxis, edgePoints, type Pieces, piecesOf } from './pieces.ts';

/** A straight run of joint along an axis of the frame. */
interface Run {
  readonly axis: 0 | 1;
  readonly at: number;
  readonly stretch: Interval;
  /** Pieces on both sides of it. */
  readonly faces: ReadonlySet<number>;
}

/** Moves joints that lie off the grout lines into one beside them: each straight run as a whole, with the joints that end on it, as long as the bays on
 *  both sides of it break no more by that. */
export function layoutSlide(
  region: Region,
  part: Part,
  cuts: readonly PartCut[],
  marginMm: number,
): readonly PartCut[] {
  let here = cuts;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = slideRound(region, part, here, marginMm);
    if (next === null) break;
    here = next;
  }
  return here;
}

const MOST_ROUNDS = 8;

/** @returns null where no run is better moved */
function slideRound(region: Region, part: Part, cuts: readonly PartCut[], marginMm: number): readonly PartCut[] | null {
  const pieces = piecesOf(region, cuts);
  const taken = new Set<number>();
  const changed: { readonly faces: ReadonlySet<number>; readonly cuts: readonly PartCut[] }[] = [];
  for (const run of runsOff(pieces, part)) {
    if ([...run.faces].some((face) => taken.has(face))) continue;
    const group = groupOf(pieces, run.faces, part);
    const moved = group && runSlide(group, run, marginMm);
    if (!moved) continue;
    changed.push({ faces: run.faces, cuts: moved });
    for (const face of run.faces) taken.add(face);
  }
  if (changed.length === 0) return null;
  const kept = pieces.between.filter((edge) => !changed.some(({ faces }) => isInner(pieces, edge, faces)));
  return [...kept.map((edge) => edgeCut(pieces, edge)), ...changed.flatMap((change) => change.cuts)];
}

/** The runs of joint off the grout lines that run their way, the longest first. */
function runsOff(pieces: Pieces, { grout }: Part): Run[] {
  return runsAll(pieces)
    .filter(({ axis, at }) => groutAlong(grout, axis) !== null && lineRate(grout, axis, at) > 1)
    .sort((a, b) => b.stretch[1] - b.stretch[0] - (a.stretch[1] - a.stretch[0]) || a.axis - b.axis || a.at - b.at);
}

function runsAll(pieces: Pieces): Run[] {
  return ([0, 1] as const).flatMap((axis) => {
    const edges = pieces.between.filter((edge) => edgeAxis(pieces, edge) === axis);
    return chainsOf(pieces, edges).map((chain) => runOf(pieces, chain, axis));
  });
}

/** Cuts with their ends exactly on the corners and walls that they end on. What is cut and put together again many times strays by a weld each time. */
export function cutsSettle({ outline, holes }: Region, cuts: readonly PartCut[]): PartCut[] {
  const walls = [outline, ...holes].flatMap((ring) =>
    ring.map((p, i) => [p, ring[(i + 1) % ring.length] as Point] as const),
  );
  const settled = (end: Point, other: Point): Point => {
    const axis = Math.abs(other[0] - end[0]) < Math.abs(other[1] - end[1]) ? 0 : 1;
    const near = walls.filter(([a, b]) => segmentDistance(a, b, end) <= STRAY_MM);
    const corner = near.flatMap(([a]) => (pointDistance(a, end) <= STRAY_MM ? [a] : []))[0];
    if (corner) return corner;
    const [wall] = near;
    return wall ? onWall(wall, axis, end) : end;
  };
  return cuts.map((cut) => ({ ...cut, from: settled(cut.from, cut.to), to: settled(cut.to, cut.from) }));
}

const STRAY_MM = 2 * WELD_MM;

/** Where a line along an axis through a place beside a wall meets it. */
function onWall([a, b]: readonly [Point, Point], axis: 0 | 1, p: Point): Point {
  const run = b[axis] - a[axis];
  if (Math.abs(run) < SAME_LINE_MM) return segmentNearest(a, b, p).at;
  const other = axis === 0 ? 1 : 0;
  const across = a[other] + ((b[other] - a[other]) * (p[axis] - a[axis])) / run;
  const met: Point = axis === 0 ? [p[0], across] : [across, p[1]];
  return pointDistance(met, p) <= STRAY_MM ? met : segmentNearest(a, b, p).at;
}

function cutAlong(axis: 0 | 1, at: number, [low, high]: Interval): PartCut {
  return axis === 0
    ? { kind: 'field', from: [at, low], to: [at, high] }
    : { kind: 'field', from: [low, at], to: [high, at] };
}

/** Edges that hang together. */
function chainsOf({ subdivision }: Pieces, edges: readonly number[]): number[][] {
  const at = new Map<number, number[]>();
  const endsOf = (edge: number) => {
    const { from, to } = subdivision.edges[edge] as { from: number; to: number };
    return [from, to];
  };
  for (const edge of edges) for (const end of endsOf(edge)) at.set(end, [...(at.get(end) ?? []), edge]);
  const left = new Set(edges);
  return edges.flatMap((start) => {
    if (!left.delete(start)) return [];
    const chain = [start];
    for (let i = 0; i < chain.length; i++) {
      for (const end of endsOf(chain[i] as number)) {
        for (const next of at.get(end) ?? []) if (left.delete(next)) chain.push(next);
      }
    }
    return [chain];
  });
}

function runOf(pieces: Pieces, edges: readonly number[], axis: 0 | 1): Run {
  const other = axis === 0 ? 1 : 0;
  const points = edges.flatMap((edge) => edgePoints(pieces, edge));
  const along = points.map((p) => p[other]);
  const faces = edges.flatMap((edge) => {
    const { left, right } = pieces.subdivision.edges[edge] as { left: number; right: number };
    return [left, right];
  });
  return {
    axis,
    at: points.reduce((sum, p) => sum + p[axis], 0) / points.length,
    stretch: [Math.min(...along), Math.max(...along)],
    faces: new Set(faces),
  };
}

/** The joints of a group with a run of them in the grout line that costs least; null where none is better than it is. */
function runSlide({ floor, inner, part }: Group, run: Run, marginMm: number): readonly PartCut[] | null {
  const rows = groutAlong(part.grout, run.axis);
  if (rows === null) return null;
  const [below, above] = [groutTo(rows, run.at), groutFrom(rows, run.at)];
  const before = layoutPrice(floor, part, inner, marginMm).cost;
  let best: { readonly cuts: readonly PartCut[]; readonly cost: number } | null = null;
  for (const line of [below, above].map(onGrid)) {
    const rest = cutsMoved(inner, run, line);
    if (rest === null) continue;
    for (const own of runMoved(floor, run, line, part.layout.reentrantMm)) {
      const cuts = [...rest, ...own];
      if (cuts.some((cut) => cutBarred(cut, part))) continue;
      const { cost } = layoutPrice(floor, part, cuts, marginMm);
      if (cost < (best?.cost ?? before) - EQUAL_LENGTH_MM) best = { cuts, cost };
    }
  }
  return best?.cuts ?? null;
}

/** The joints beside a run that is moved to another line: those that end on it are cut short or go on to it. Null where there is no room for that. */
function cutsMoved(cuts: readonly PartCut[], { axis, at, stretch }: Run, to: number): PartCut[] | null {
  const other = axis === 0 ? 1 : 0;
  const isOn = (p: Point) =>
    Math.abs(p[axis] - at) <= SAME_LINE_MM &&
    p[other] >= stretch[0] - SAME_LINE_MM &&
    p[other] <= stretch[1] + SAME_LINE_MM;
  const moved = (p: Point): Point => (axis === 0 ? [to, p[1]] : [p[0], to]);
  const found: PartCut[] = [];
  for (const cut of cuts) {
    const [from, end] = [isOn(cut.from), isOn(cut.to)];
    if (from && end) continue;
    const next = { ...cut, from: from ? moved(cut.from) : cut.from, to: end ? moved(cut.to) : cut.to };
    const [before, after] = [cut, next].map((each) => each.to[axis] - each.from[axis]) as [number, number];
    // One that led from the run to where it now is has no length left.
    if ((from || end) && Math.abs(after) <= SAME_LINE_MM) continue;
    if ((from || end) && after * before < 0) return null;
    found.push(next);
  }
  return found;
}

/** Ways for a run to go on another line: from wall to wall; and, where it ended at a corner that it would pass there, to beside that corner, with a short
 *  joint square to it. */
function runMoved(floor: Region, { axis, at, stretch }: Run, to: number, reentrantMm: number): PartCut[][] {
  const chord = intervalSharing(lineInside([floor.outline, ...floor.holes], axis, to), stretch);
  if (chord === null) return [];
  const by = Math.abs(to - at);
  const across: Interval = [Math.min(at, to), Math.max(at, to)];
  const ends = ([0, 1] as const).map((end) => {
    const isBeyond = by <= reentrantMm && Math.abs(chord[end] - stretch[end]) > by;
    return isBeyond ? [chord[end], stretch[end]] : [chord[end]];
  }) as [number[], number[]];
  return ends[0].flatMap((low) =>
    ends[1].map((high) => {
      const square = [low, high].filter((end, i) => end !== chord[i]);
      return [cutAlong(axis, to, [low, high]), ...square.map((end) => cutAlong(axis === 0 ? 1 : 0, end, across))];
    }),
  );
}
