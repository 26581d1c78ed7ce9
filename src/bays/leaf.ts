import { rectangleRound } from '../geometry/hull.ts';
import { vectorLength } from '../geometry/point.ts';
import { regionArea } from '../geometry/region.ts';
import { regionInBox } from '../geometry/region-clip.ts';
import { type Box, boxOf, type Region, ringArea } from '../geometry/ring.ts';
import { CRUMB_MM2, NEAR_LIMIT } from '../geometry/tolerance.ts';
import { LIMIT_SLACK } from '../plan/exceed.ts';
import { rules } from '../plan/reference.ts';
import type { Lattice } from './lattice.ts';
import { type BayRules, type Breach, bayMeasure, isBox } from './measure.ts';
import { boxNotched, type Notch, notchesOf } from './notched.ts';
import type { Part } from './part.ts';
import { isPlain, isSquare } from './plain.ts';

/** What one rule broken by one bay weighs against joint length, mm: more than any floor has joints. */
export const BREACH_PRICE = 1e9;

/** Judges grid rectangles of a region as bays: what each costs, mm, 0 where every rule is met. A class, so that the table's inner loop calls
 *  it without a detour. */
export class LeafJudge {
  private readonly limits: Part['limits'];
  private readonly areaMost: number;
  private readonly columns: Part['columns'];
  private readonly notches: readonly Notch[];
  /** Whether a bay can only be a full rectangle: a joint in a grout line beside a corner leaves a shallow notch of it. */
  private readonly plain: boolean;
  /** Whether every wall follows an axis where joints lie in grout: then most bays are judged at a glance as well. */
  private readonly stepped: boolean;
  /** The floor between two upright lines is cut out once for all the level lines across it. */
  private readonly between = new Map<number, Region[]>();

  /** @param marginMm widens every bay: what the real corners may stand off the straightened ones */
  constructor(
    private readonly region: Region,
    private readonly part: Part,
    private readonly lattice: Lattice,
    private readonly marginMm: number,
  ) {
    this.limits = part.limits;
    this.areaMost = part.limits.areaM2 * 1e6 * (1 + NEAR_LIMIT);
    this.columns = part.columns.filter((c) => c.needsJoint);
    this.notches = notchesOf(region, part.layout.reentrantMm);
    this.plain = part.grout === null && isPlain(region, part.layout);
    this.stepped = part.grout !== null && isSquare(region);
  }

  /** Steps that all rectangles take at the most: cuts along every line, and any but a full one is clipped and measured, unless the region is plain. */
  get steps(): number {
    const [n, m] = [this.lattice.x.length, this.lattice.y.length];
    const corners = this.region.holes.reduce((sum, hole) => sum + hole.length, this.region.outline.length);
    const own = this.plain || this.stepped ? STEPS_PLAIN : STEPS_CLIPPED + STEPS_PER_CORNER * corners;
    return ((n * (n - 1) * m * (m - 1)) / 4) * (own + STEPS_PER_LINE * (n + m));
  }

  /** Of a rectangle that is floor all over. */
  full(i1: number, i2: number, j1: number, j2: number, netMm2: number): number {
    return this.boxPrice(i1, i2, j1, j2, netMm2);
  }

  /** Of one that is a bay as long and as wide as itself. */
  private boxPrice(i1: number, i2: number, j1: number, j2: number, netMm2: number): number {
    const { x, y } = this.lattice;
    const w = (x[i2] as number) - (x[i1] as number);
    const h = (y[j2] as number) - (y[j1] as number);
    const over = boxExcess(w, h, netMm2 + (w + h) * this.marginMm, this.limits, this.marginMm);
    const narrow = slightPrice(Math.min(w, h), w * h, this.part);
    if (over > 0) return over * BREACH_PRICE + narrow;
    return narrow + (this.columns.length === 0 ? 0 : this.bareAt(i1, i2, j1, j2) * BREACH_PRICE);
  }

  /** Of any other. */
  piece(i1: number, i2: number, j1: number, j2: number, grossMm2: number, netMm2: number): number {
    // Floor that falls apart is parted by a cut that costs nothing, so a rectangle over the limit is judged as one bay.
    if (netMm2 > this.areaMost && !this.limits.rectangleMayPass)
      return BREACH_PRICE * SIZE_WEIGHT * excess(netMm2, this.areaMost);
    if (this.plain) return BREACH_PRICE;
    const box = this.boxAt(i1, i2, j1, j2);
    const notched = boxNotched(this.notches, box, grossMm2);
    if (notched === 'deeply') return BREACH_PRICE;
    if (this.stepped && notched === 'shallowly' && this.isPlainly(box, netMm2))
      return this.boxPrice(i1, i2, j1, j2, netMm2);
    const share = netMm2 / grossMm2;
    let over = this.bareAt(i1, i2, j1, j2);
    let narrow = 0;
    for (const piece of this.columnPieces(i1, i2).flatMap((strip) => regionInBox(strip, box))) {
      if (ringArea(piece.outline) < CRUMB_MM2) continue;
      over += pieceExcess(piece, regionArea(piece) * share, this.part, this.marginMm);
      narrow += piecePrice(piece, this.part);
    }
    return over * BREACH_PRICE + narrow;
  }

  /** Whether a box with shallow notches is well within its limits, or well over: but for those it is as long and as wide as the box. */
  private isPlainly({ minX, maxX, minY, maxY }: Box, netMm2: number): boolean {
    const { reentrantMm } = this.part.layout;
    const over = [this.marginMm - reentrantMm, this.marginMm + reentrantMm].map((marginMm) =>
      boxExcess(maxX - minX, maxY - minY, netMm2, this.limits, marginMm),
    );
    return over.every((excess) => excess === 0) || over.every((excess) => excess > 0);
  }

  private boxAt(i1: number, i2: number, j1: number, j2: number): Box {
    const { x, y } = this.lattice;
    return { minX: x[i1] as number, maxX: x[i2] as number, minY: y[j1] as number, maxY: y[j2] as number };
  }

  private bareAt(i1: number, i2: number, j1: number, j2: number): number {
    return this.columns.length === 0 ? 0 : columnsBare(this.columns, this.lattice, i1, i2, j1, j2);
  }

  private columnPieces(i1: number, i2: number): Region[] {
    const { x } = this.lattice;
    const key = i1 * x.length + i2;
    const known = this.between.get(key);
    if (known) return known;
    const box = { minX: x[i1] as number, maxX: x[i2] as number, minY: -Infinity, maxY: Infinity };
    const pieces = regionInBox(this.region, box);
    this.between.set(key, pieces);
    return pieces;
  }
}

/** What a bay costs that no one would lay for the sake of a joint in grout, mm of joint. */
function slightPrice(widthMm: number, areaMm2: number, { grout }: Pick<Part, 'grout'>): number {
  if (grout === null) return 0;
  if (grout.counts === 'strips') return widthMm < rules.groutBayLeastMm.value ? STRIP_PRICE_MM : 0;
  return widthMm < rules.crumbBayWidthMm.value || areaMm2 < rules.crumbBayM2.value * 1e6 ? CRUMB_PRICE_MM : 0;
}

const STRIP_PRICE_MM = rules.narrowBayPriceM.value * 1000;
const CRUMB_PRICE_MM = rules.crumbBayPriceM.value * 1000;

/** The same for a bay of any shape. */
export function piecePrice(piece: Region, part: Pick<Part, 'grout'>): number {
  if (part.grout === null) return 0;
  const { minX, minY, maxX, maxY } = boxOf(piece.outline);
  const areaMm2 = ringArea(piece.outline);
  // No rectangle round it is longer than from corner to corner of its box, or has less area.
  const leastMm = areaMm2 / vectorLength(maxX - minX, maxY - minY);
  return slightPrice(leastMm, areaMm2, part) && slightPrice(rectangleRound(piece.outline).width, areaMm2, part);
}

/** The same for a rectangle with sides w and h, mm. */
function boxExcess(w: number, h: number, netMm2: number, limits: Part['limits'], marginMm: number): number {
  const long = Math.max(w, h) + marginMm;
  const narrow = Math.min(w, h) - marginMm;
  const tooLong = long / narrow > limits.aspect * (1 + NEAR_LIMIT);
  const aspect = long > limits.aspectFromM * 1000 * (1 + NEAR_LIMIT) && tooLong ? 1 : 0;
  // Notched by columns it is no true rectangle, and only that may pass. A column inside it counts as a notch: the safe side.
  const isTrue = netMm2 >= w * h * (1 - LIMIT_SLACK);
  if (limits.rectangleMayPass && !tooLong && isTrue) return 0;
  return (
    SIZE_WEIGHT * excess(netMm2, limits.areaM2 * 1e6 * (1 + NEAR_LIMIT)) +
    SIZE_WEIGHT * excess(long, limits.lengthM * 1000 * (1 + NEAR_LIMIT)) +
    aspect
  );
}

const STEPS_PER_LINE = 0.005;
const STEPS_PLAIN = 0.1;
const STEPS_CLIPPED = 2;
const STEPS_PER_CORNER = 0.05;

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
  if (marginMm === 0) return over;
  const long = figures.lengthM * 1000 + marginMm;
  const narrow = figures.widthM * 1000 - marginMm;
  const isHeld =
    long > limits.aspectFromM * 1000 * (1 + NEAR_LIMIT) && long / narrow > limits.aspect * (1 + NEAR_LIMIT);
  const isCounted = figures.breaches.some(({ rule }) => rule === 'aspect');
  return over + SIZE_WEIGHT * excess(long, lengthMost) + (isHeld && !isCounted ? 1 : 0);
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

/** How many columns that need a joint stand in the rectangle without touching one of its sides that is a joint. */
function columnsBare(
  columns: Part['columns'],
  lattice: Lattice,
  i1: number,
  i2: number,
  j1: number,
  j2: number,
): number {
  const minX = lattice.x[i1] as number;
  const maxX = lattice.x[i2] as number;
  const minY = lattice.y[j1] as number;
  const maxY = lattice.y[j2] as number;
  let bare = 0;
  for (const { box: c } of columns) {
    if (c.maxX <= minX || c.minX >= maxX || c.maxY <= minY || c.minY >= maxY) continue;
    const low = Math.max(c.minY, minY);
    const high = Math.min(c.maxY, maxY);
    const left = Math.max(c.minX, minX);
    const right = Math.min(c.maxX, maxX);
    const touched =
      (c.minX <= minX && onJoint(lattice, 0, i1, low, high)) ||
      (c.maxX >= maxX && onJoint(lattice, 0, i2, low, high)) ||
      (c.minY <= minY && onJoint(lattice, 1, j1, left, right)) ||
      (c.maxY >= maxY && onJoint(lattice, 1, j2, left, right));
    if (!touched) bare++;
  }
  return bare;
}

function onJoint(lattice: Lattice, axis: 0 | 1, line: number, from: number, to: number): boolean {
  return (lattice.chords[axis][line] ?? []).some(([a, b]) => a < to && b > from);
}
