import { areaSums } from '../geometry/area-sums.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { type Interval, intervalsMeet, lineInside } from '../geometry/scanline.ts';
import { EQUAL_LENGTH_MM, SAME_LINE_MM } from '../geometry/tolerance.ts';
import { rules } from '../plan/reference.ts';
import { cutRate, lineRate, OFF_RATE } from './grout.ts';
import type { CandidateLines } from './lines.ts';
import type { Part, PartCut } from './part.ts';

/** Price of a millimetre of joint through joinery: more than any joint saved is worth. */
const JOINERY_PRICE = 1000;

/** Price of ending a joint in the mouth of a doorway, mm of joint: it would split the reveal. */
const MOUTH_PRICE_MM = 400;

/** As much against joints off the grout, and against a strip of a bay, as against joints where there is no grout: neither is worth the reveal. */
function mouthPrice({ grout }: Part): number {
  return grout === null ? MOUTH_PRICE_MM : MOUTH_PRICE_MM * OFF_RATE + rules.narrowBayPriceM.value * 1000;
}

/** A joint so near to a place where the user took one away, and along it, is that joint again. */
const NO_JOINT_BAND_MM = rules.takenJointReachMm.value;
const NO_JOINT_LEAST_MM = rules.takenJointLeastMm.value;
const NO_JOINT_SKEW = Math.tan((rules.takenJointTurnDeg.value * Math.PI) / 180);

/** The grid that the candidate lines span over a region, with sums that answer at once what lies in any grid rectangle and what a joint along
 *  any stretch of line costs. Areas in mm2, costs in mm of joint. */
export interface Lattice {
  /** The lines, rising. Typed, as everything that the table's inner loop reads. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Floor left of and above the crossing of lines i and j, at i times the number of level lines plus j: columns filled in, and net of them. */
  readonly gross: Float64Array;
  readonly net: Float64Array;
  /** By axis: cost of the joint along line k up to crossing line j, at k times the number of crossing lines plus j. */
  readonly cost: readonly [Float64Array, Float64Array];
  /** By axis and line: where the line runs on floor. */
  readonly chords: readonly [readonly (readonly Interval[])[], readonly (readonly Interval[])[]];
  /** The same for how much of the line may carry no joint, mm; null where all may. */
  readonly barred: readonly [Float64Array | null, Float64Array | null];
}

export function latticeOf(region: Region, part: Part, lines: CandidateLines): Lattice {
  const { x, y } = lines;
  const rings = [region.outline, ...region.holes];
  const gross = areaSums(rings, x, y);
  const columns = part.columns.map((c) => c.ring);
  const upright = lineCosts(rings, part, 0, x, y);
  const level = lineCosts(rings, part, 1, y, x);
  return {
    x: Float64Array.from(x),
    y: Float64Array.from(y),
    gross,
    net: columns.length > 0 ? sumsWithout(gross, areaSums(columns, x, y)) : gross,
    cost: [upright.cost, level.cost],
    chords: [upright.chords, level.chords],
    barred: [upright.barred, level.barred],
  };
}

function sumsWithout(sums: Float64Array, less: Float64Array): Float64Array {
  return sums.map((sum, i) => sum - (less[i] as number));
}

interface LineCosts {
  readonly cost: Float64Array;
  readonly barred: Float64Array | null;
  readonly chords: Interval[][];
}

function lineCosts(
  rings: readonly Ring[],
  part: Part,
  axis: 0 | 1,
  lines: readonly number[],
  across: readonly number[],
): LineCosts {
  const cost = new Float64Array(lines.length * across.length);
  const barred = part.keepClear.length + part.noJoint.length > 0 ? new Float64Array(cost.length) : null;
  const chords = lines.map((at, k) => {
    const found = lineInside(rings, axis, at);
    const own = cost.subarray(k * across.length, (k + 1) * across.length);
    const rate = lineRate(part.grout, axis, at);
    for (const stretch of found) addStretch(own, across, stretch, (stretch[1] - stretch[0]) * rate);
    // A line through a column is no joint there.
    for (const column of columnsThrough(part, axis, at)) {
      for (const stretch of intervalsMeet(found, column))
        addStretch(own, across, stretch, (stretch[0] - stretch[1]) * rate);
    }
    for (const ring of part.joinery) {
      for (const stretch of intervalsMeet(found, lineInside([ring], axis, at))) {
        addStretch(own, across, stretch, (stretch[1] - stretch[0]) * JOINERY_PRICE);
      }
    }
    for (const [place, inward] of mouthEnds(part, axis, at, found)) {
      const to = place + inward;
      addStretch(own, across, inward > 0 ? [place, to] : [to, place], mouthPrice(part));
    }
    runningSum(own);
    if (barred) {
      const ownBarred = barred.subarray(k * across.length, (k + 1) * across.length);
      for (const stop of stopsAt(part, axis, at)) {
        for (const stretch of intervalsMeet(found, stop))
          addStretch(ownBarred, across, stretch, stretch[1] - stretch[0]);
      }
      runningSum(ownBarred);
    }
    return found;
  });
  return { cost, barred, chords };
}

/** Where a line runs through columns. Along a face it is a joint like any other: else joints round a column would cost nothing. */
function columnsThrough(part: Part, axis: 0 | 1, at: number): Interval[][] {
  return part.columns.flatMap(({ box, ring }) => {
    const [low, high] = axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY];
    return at > low + SAME_LINE_MM && at < high - SAME_LINE_MM ? [lineInside([ring], axis, at)] : [];
  });
}

/** Where along a line no joint may run. */
function stopsAt(part: Part, axis: 0 | 1, at: number): Interval[][] {
  return [...part.keepClear.map((ring) => lineInside([ring], axis, at)), noJointBand(part, axis, at)];
}

/** Ends of chords that lie in the mouth of a doorway, each with a step towards the floor. */
function mouthEnds(part: Part, axis: 0 | 1, at: number, chords: readonly Interval[]): [number, number][] {
  const other = axis === 0 ? 1 : 0;
  const ends: [number, number][] = [];
  for (const [a, b] of part.mouths) {
    const low = Math.min(a[axis], b[axis]);
    const high = Math.max(a[axis], b[axis]);
    if (at <= low + 1 || at >= high - 1) continue;
    const place = a[other] + ((b[other] - a[other]) * (at - a[axis])) / (b[axis] - a[axis]);
    for (const [from, to] of chords) {
      if (Math.abs(from - place) < 1) ends.push([from, 1]);
      if (Math.abs(to - place) < 1) ends.push([to, -1]);
    }
  }
  return ends;
}

function noJointBand(part: Part, axis: 0 | 1, at: number): Interval[] {
  const other = axis === 0 ? 1 : 0;
  const out: Interval[] = [];
  for (const line of part.noJoint) {
    for (let i = 0; i + 1 < line.length; i++) {
      const [p, q] = [line[i] as Point, line[i + 1] as Point];
      const along = Math.abs(q[other] - p[other]);
      const off = Math.min(Math.abs(p[axis] - at), Math.abs(q[axis] - at));
      if (Math.abs(q[axis] - p[axis]) > along * NO_JOINT_SKEW || off >= NO_JOINT_BAND_MM || along < NO_JOINT_LEAST_MM)
        continue;
      out.push([Math.min(p[other], q[other]), Math.max(p[other], q[other])]);
    }
  }
  return out.sort((a, b) => a[0] - b[0]);
}

/** Spreads an amount over the cells that a stretch covers, in proportion. */
function addStretch(into: Float64Array, across: readonly number[], [from, to]: Interval, amount: number): void {
  for (let j = 1; j < across.length; j++) {
    const shared = Math.min(to, across[j] as number) - Math.max(from, across[j - 1] as number);
    if (shared > 0) into[j] = (into[j] as number) + (amount * shared) / (to - from);
  }
}

function runningSum(cells: Float64Array): void {
  for (let j = 1; j < cells.length; j++) cells[j] = (cells[j] as number) + (cells[j - 1] as number);
}

/** A straight joint (nearly) along an axis, as the lattice sees it. */
function cutLine({ from, to }: PartCut): { axis: 0 | 1; at: number; stretch: Interval } {
  const axis = Math.abs(to[0] - from[0]) < Math.abs(to[1] - from[1]) ? 0 : 1;
  const other = axis === 0 ? 1 : 0;
  return {
    axis,
    at: (from[axis] + to[axis]) / 2,
    stretch: [Math.min(from[other], to[other]), Math.max(from[other], to[other])],
  };
}

/** What one joint costs, by the prices of the lattice. */
export function cutPrice(cut: PartCut, part: Part): number {
  const { axis, at, stretch } = cutLine(cut);
  const rate = cutRate(part.grout, cut);
  let price = pointDistance(cut.from, cut.to) * rate;
  for (const column of columnsThrough(part, axis, at)) {
    for (const [a, b] of intervalsMeet([stretch], column)) price -= (b - a) * rate;
  }
  for (const ring of part.joinery) {
    for (const [a, b] of intervalsMeet([stretch], lineInside([ring], axis, at))) price += (b - a) * JOINERY_PRICE;
  }
  return price + mouthEnds(part, axis, at, [stretch]).length * mouthPrice(part);
}

/** Whether a joint runs where none may. */
export function cutBarred(cut: PartCut, part: Part): boolean {
  const { axis, at, stretch } = cutLine(cut);
  return stopsAt(part, axis, at).some((stop) =>
    intervalsMeet([stretch], stop).some(([a, b]) => b - a > EQUAL_LENGTH_MM),
  );
}
