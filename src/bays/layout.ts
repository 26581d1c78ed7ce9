import type { Region } from '../geometry/ring.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import { type Layout, regionGuillotine } from './guillotine.ts';
import { cutBarred, cutPrice } from './lattice.ts';
import type { Part, PartCut } from './part.ts';
import { regionSplit } from './pieces.ts';
import { startsOf } from './starts.ts';

export interface LayoutOptions {
  /** Candidate lines an axis at most. */
  readonly lines: number;
  /** What every bay is widened by, mm. */
  readonly marginMm: number;
}

/** The best layout of a region: straight cuts through the whole, or a start that those cannot make and straight cuts through what it leaves. */
export function regionLayout(region: Region, part: Part, options: LayoutOptions): Layout {
  let best = regionGuillotine(region, part, options);
  if (best.cost === 0) return best;
  for (const start of startsOf(region)) {
    const layout = layoutFrom(region, part, start, options, best.cost);
    if (layout && layout.cost < best.cost - EQUAL_LENGTH_MM) best = layout;
  }
  return best;
}

/** @returns null as soon as it is sure to cost no less than `most` */
function layoutFrom(region: Region, part: Part, start: readonly PartCut[], options: LayoutOptions, most: number): Layout | null {
  if (start.some((cut) => cutBarred(cut, part))) return null;
  let cost = start.reduce((sum, cut) => sum + cutPrice(cut, part), 0);
  let uneven = 0;
  const cuts = [...start];
  const pieces = regionSplit(region, start);
  if (pieces.length < 2) return null;
  for (const piece of pieces) {
    if (cost >= most) return null;
    const inner = regionGuillotine(piece, part, options);
    cost += inner.cost;
    uneven += inner.uneven;
    cuts.push(...inner.cuts);
  }
  return { cuts, cost, uneven };
}
