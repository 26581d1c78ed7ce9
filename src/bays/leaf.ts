import type { Point } from '../geometry/point.ts';
import { regionArea } from '../geometry/region.ts';
import { regionInBox } from '../geometry/region-clip.ts';
import { type Box, boxOf, type Region, ringArea } from '../geometry/ring.ts';
import { CRUMB_MM2, NEAR_LIMIT } from '../geometry/tolerance.ts';
import type { Lattice } from './lattice.ts';
import { type BayRules, type Breach, bayMeasure, isBox } from './measure.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';
import type { Part } from './part.ts';
import { isPlain } from './plain.ts';

/** What one rule broken by one bay weighs against joint length, mm: more than any floor has joints. */
export const BREACH_PRICE = 1e9;

/** What a grid rectangle costs as one bay, mm: 0 where every rule is met. */
export interface LeafJudge {
  /** Of a rectangle that is floor all over. */
  full(i1: number, i2: number, j1: number, j2: number, netMm2: number): number;
  /** Of any other. */
  piece(i1: number, i2: number, j1: number, j2: number, grossMm2: number, netMm2: number): number;
}

/** Judges grid rectangles of a region as bays. `marginMm` widens every bay: what the real corners may stand off the straightened ones. */
export function leafJudge(region: Region, part: Part, lattice: Lattice, marginMm: number): LeafJudge {
  const areaMost = part.limits.areaM2 * 1e6 * (1 + NEAR_LIMIT);
  const columns = part.columns.filter((c) => c.needsJoint);
  const notches = notchesOf(region, part.layout.reentrantMm);
  const plain = isPlain(region, part.layout);
  const { x, y } = lattice;
  const boxAt = (i1: number, i2: number, j1: number, j2: number): Box => ({
    minX: x[i1] as number,
    maxX: x[i2] as number,
    minY: y[j1] as number,
    maxY: y[j2] as number,
  });
  const bareAt = (i1: number, i2: number, j1: number, j2: number) =>
    columns.length === 0 ? 0 : columnsBare(columns, boxAt(i1, i2, j1, j2), lattice, [i1, i2, j1, j2]);
  // The floor between two upright lines is cut out once for all the level lines across it.
  const between = new Map<number, Region[]>();
  const columnPieces = (i1: number, i2: number): Region[] => {
    const key = i1 * x.length + i2;
    const known = between.get(key);
    if (known) return known;
    const pieces = regionInBox(region, {
      minX: x[i1] as number,
      maxX: x[i2] as number,
      minY: -Infinity,
      maxY: Infinity,
    });
    between.set(key, pieces);
    return pieces;
  };

  return {
    full(i1, i2, j1, j2, netMm2) {
      const w = (x[i2] as number) - (x[i1] as number);
      const h = (y[j2] as number) - (y[j1] as number);
      const over = boxExcess(w, h, netMm2 + (w + h) * marginMm, part.limits, marginMm);
      return (over > 0 ? over : bareAt(i1, i2, j1, j2)) * BREACH_PRICE;
    },
    piece(i1, i2, j1, j2, gross, net) {
      // Floor that falls apart is parted by a cut that costs nothing, so a rectangle over the limit is judged as one bay.
      if (net > areaMost && !part.limits.rectangleMayPass) return BREACH_PRICE * SIZE_WEIGHT * excess(net, areaMost);
      if (plain) return BREACH_PRICE;
      const box = boxAt(i1, i2, j1, j2);
      if (notches.some((notch) => notchDepth(notch, box) > notch.most)) return BREACH_PRICE;
      const share = net / gross;
      let over = bareAt(i1, i2, j1, j2);
      for (const piece of columnPieces(i1, i2).flatMap((strip) => regionInBox(strip, box))) {
        if (ringArea(piece.outline) < CRUMB_MM2) continue;
        over += pieceExcess(piece, regionArea(piece) * share, part, marginMm);
      }
      return over * BREACH_PRICE;
    },
  };
}

/** The same for a rectangle with sides w and h, mm. */
function boxExcess(w: number, h: number, netMm2: number, limits: Part['limits'], marginMm: number): number {
  const long = Math.max(w, h) + marginMm;
  const narrow = Math.min(w, h) - marginMm;
  const tooLong = long / narrow > limits.aspect * (1 + NEAR_LIMIT);
  const aspect = long > limits.aspectFromM * 1000 * (1 + NEAR_LIMIT) && tooLong ? 1 : 0;
  if (limits.rectangleMayPass && !tooLong) return 0;
  return (
    SIZE_WEIGHT * excess(netMm2, limits.areaM2 * 1e6 * (1 + NEAR_LIMIT)) +
    SIZE_WEIGHT * excess(long, limits.lengthM * 1000 * (1 + NEAR_LIMIT)) +
    aspect
  );
}

/** How many rules a bay breaks, and a little more the further it is over them. */
export function pieceExcess(piece: Region, netMm2: number, rules: BayRules, marginMm: number): number {
  const { limits } = rules;
  const lengthMost = limits.lengthM * 1000 * (1 + NEAR_LIMIT);
  if (isBox(piece)) {
    const { minX, minY, maxX, maxY } = boxOf(piece.outline);
    return boxExcess(maxX - minX, maxY - minY, netMm2, limits, marginMm);
  }
  const figures = bayMeasure(piece, piece.outline, rules, netMm2);
  const over = figures.breaches.reduce((sum, breach) => sum + breachExcess(breach), 0);
  return over + (marginMm > 0 ? SIZE_WEIGHT * excess(figures.lengthM * 1000 + marginMm, lengthMost) : 0);
}

/** A corner of the floor that turns in, with both its walls. */
interface Notch {
  readonly at: Point;
  readonly walls: readonly [Point, Point];
  readonly most: number;
}

function notchesOf(region: Region, reentrantMm: number): Notch[] {
  return [region.outline, ...region.holes].flatMap((ring) =>
    ring.flatMap((p, i): Notch[] => {
      const a = ring[(i + ring.length - 1) % ring.length] as Point;
      const b = ring[(i + 1) % ring.length] as Point;
      return cornerTurn(a, p, b) < -NOTCH_RAD ? [{ at: p, walls: [a, b], most: reentrantMm * 1.002 }] : [];
    }),
  );
}

/** How deep the pocket at a notch is in the box at the least: the height of the triangle that its walls span there. */
function notchDepth({ at, walls }: Notch, box: Box): number {
  if (at[0] <= box.minX || at[0] >= box.maxX || at[1] <= box.minY || at[1] >= box.maxY) return 0;
  const [a, b] = walls.map((end): Point => {
    const share = Math.min(
      1,
      shareInside(at[0], end[0], box.minX, box.maxX),
      shareInside(at[1], end[1], box.minY, box.maxY),
    );
    return [(end[0] - at[0]) * share, (end[1] - at[1]) * share];
  }) as [Point, Point];
  const base = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return base === 0 ? 0 : Math.abs(a[0] * b[1] - a[1] * b[0]) / base;
}

/** Share of the way from a place between the bounds to another that stays between them. */
function shareInside(from: number, to: number, low: number, high: number): number {
  if (to > high) return (high - from) / (to - from);
  if (to < low) return (low - from) / (to - from);
  return 1;
}

function breachExcess({ rule, value, limit }: Breach): number {
  if (rule === 'area' || rule === 'length') return SIZE_WEIGHT * Math.max(1, excess(value, limit));
  return 1;
}

/** 0 within the limit, else how often the limit goes into the figure, and a little for what is left over: a bay twice too large is worth
 *  splitting even where neither half is right, but no cut that mends nothing. */
function excess(value: number, most: number): number {
  if (value <= most) return 0;
  const times = Math.min(MOST_TIMES, value / most);
  return Math.floor(times) + (times % 1) / LEFT_OVER_PARTS;
}

/** An area or a side over its limit weighs as much as two corners: it concerns the whole bay. */
const SIZE_WEIGHT = 2;
const MOST_TIMES = 1e4;
const LEFT_OVER_PARTS = 100_000;

/** 1 where a column that needs a joint stands in the rectangle without touching one of its sides that is a joint, else 0. */
function columnsBare(
  columns: Part['columns'],
  box: Box,
  lattice: Lattice,
  [i1, i2, j1, j2]: readonly [number, number, number, number],
): number {
  for (const { box: c } of columns) {
    if (c.maxX <= box.minX || c.minX >= box.maxX || c.maxY <= box.minY || c.minY >= box.maxY) continue;
    const low = Math.max(c.minY, box.minY);
    const high = Math.min(c.maxY, box.maxY);
    const left = Math.max(c.minX, box.minX);
    const right = Math.min(c.maxX, box.maxX);
    const touched =
      (c.minX <= box.minX && onJoint(lattice, 0, i1, low, high)) ||
      (c.maxX >= box.maxX && onJoint(lattice, 0, i2, low, high)) ||
      (c.minY <= box.minY && onJoint(lattice, 1, j1, left, right)) ||
      (c.maxY >= box.maxY && onJoint(lattice, 1, j2, left, right));
    if (!touched) return 1;
  }
  return 0;
}

function onJoint(lattice: Lattice, axis: 0 | 1, line: number, from: number, to: number): boolean {
  return (lattice.chords[axis][line] ?? []).some(([a, b]) => a < to && b > from);
}
