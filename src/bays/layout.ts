import type { Region } from '../geometry/ring.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import { rules } from '../plan/reference.ts';
import type { Budget } from './budget.ts';
import { regionEven, regionGuillotine } from './guillotine.ts';
import { cutBarred, cutPrice } from './lattice.ts';
import { BREACH_PRICE } from './leaf.ts';
import type { CandidateLines, LineChoice } from './lines.ts';
import type { Part, PartCut } from './part.ts';
import { regionSplit } from './pieces.ts';
import { startsOf } from './starts.ts';
import type { Layout } from './table.ts';

export interface LayoutOptions {
  /** Candidate lines an axis at most. */
  readonly lines: number;
  /** What every bay is widened by, mm. */
  readonly marginMm: number;
  /** Whether straight cuts through the whole are sought again, on lines that bays just reach. */
  readonly again: boolean;
  /** Starts to try at most. */
  readonly starts: number;
  readonly budget: Budget;
}

/** The best layout of a region: straight cuts through the whole, or a start that those cannot make and straight cuts through what it leaves. */
export function regionLayout(region: Region, part: Part, options: LayoutOptions): Layout {
  let best = regionStraight(region, part, options, 'parts', NO_LINES);
  if (best.cost === 0) return best;
  if (options.again && !options.budget.isSpent) {
    const other = regionStraight(region, part, options, 'reaches', linesOf(best));
    if (isBetter(other, best)) best = other;
  }
  for (const start of startsOf(region, part).slice(0, options.starts)) {
    if (options.budget.isSpent) return best;
    const layout = layoutFrom(region, part, start, options, best.cost);
    if (layout && layout.cost < best.cost - EQUAL_LENGTH_MM) best = layout;
  }
  return best;
}

/** Straight cuts through the whole.
 *  @param keep lines that have to be among those tried */
function regionStraight(
  region: Region,
  part: Part,
  { lines, marginMm, budget }: LayoutOptions,
  first: LineChoice['first'],
  keep: CandidateLines,
): Layout {
  return regionGuillotine(region, part, { most: lines, keep, first }, marginMm, budget);
}

const NO_LINES: CandidateLines = { x: [], y: [] };

function isBetter(layout: Layout, than: Layout): boolean {
  if (layout.cost < than.cost - EQUAL_LENGTH_MM) return true;
  return layout.cost <= than.cost + EQUAL_LENGTH_MM && layout.uneven < than.uneven;
}

/** What evenness may cost beside the least joint, as a share of it, where it is the aim. */
const EVEN_SHARE = rules.evenBaysShare.value;

/** A layout made more even within the share of joint that may be spent on it; the same where straight cuts through the whole do no better. */
export function layoutEven(
  region: Region,
  part: Part,
  layout: Layout,
  { lines, marginMm, budget }: LayoutOptions,
): Layout {
  if (layout.cost === 0 || layout.cost >= BREACH_PRICE || budget.isSpent) return layout;
  const most = layout.cost * (1 + EVEN_SHARE);
  const choice: LineChoice = { most: lines, keep: linesOf(layout), first: 'parts' };
  const even = regionEven(region, part, choice, marginMm, most, budget);
  return even && even.cost <= most + EQUAL_LENGTH_MM && even.uneven < layout.uneven ? even : layout;
}

function linesOf({ cuts }: Layout): CandidateLines {
  const upright = cuts.filter((cut) => cut.from[0] === cut.to[0]);
  const level = cuts.filter((cut) => cut.from[0] !== cut.to[0]);
  return { x: upright.map((cut) => cut.from[0]), y: level.map((cut) => cut.from[1]) };
}

/** @returns null as soon as it is sure to cost no less than `most` */
function layoutFrom(
  region: Region,
  part: Part,
  start: readonly PartCut[],
  options: LayoutOptions,
  most: number,
): Layout | null {
  if (start.some((cut) => cutBarred(cut, part))) return null;
  let cost = start.reduce((sum, cut) => sum + cutPrice(cut, part), 0);
  let uneven = 0;
  const cuts = [...start];
  const pieces = regionSplit(region, start);
  if (pieces.length < 2) return null;
  for (const piece of pieces) {
    if (cost >= most) return null;
    // With a start made, tight bays are what is left to find.
    const inner = regionStraight(piece, part, options, 'reaches', NO_LINES);
    cost += inner.cost;
    uneven += inner.uneven;
    cuts.push(...inner.cuts);
  }
  return { cuts, cost, uneven };
}
