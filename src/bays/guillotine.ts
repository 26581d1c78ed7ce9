import type { Region } from '../geometry/ring.ts';
import type { Budget } from './budget.ts';
import { latticeOf } from './lattice.ts';
import { LeafJudge } from './leaf.ts';
import { candidateLines, type LineChoice } from './lines.ts';
import type { Part } from './part.ts';
import { type Layout, Table } from './table.ts';

/** The shortest layout whose cuts run straight through what they split, over the candidate lines of the region.
 *
 *  Dynamic programming over grid rectangles: a rectangle is a bay, or is cut in two along a grid line. A region of n by m lines has
 *  n^2 m^2 / 4 rectangles and each tries n + m cuts. Ties go to the more even bays. */
export function regionGuillotine(
  region: Region,
  part: Part,
  choice: LineChoice,
  marginMm: number,
  budget: Budget,
): Layout {
  return tableOf(region, part, choice, marginMm, budget).layout();
}

/** The most even layout of the same kind that costs no more than `mostMm`; null where none does. At every cut the parts are as even as the
 *  room that is left allows. */
export function regionEven(
  region: Region,
  part: Part,
  choice: LineChoice,
  marginMm: number,
  mostMm: number,
  budget: Budget,
): Layout | null {
  return tableOf(region, part, choice, marginMm, budget).evenLayout(mostMm);
}

function tableOf(region: Region, part: Part, choice: LineChoice, marginMm: number, budget: Budget): Table {
  const lattice = latticeOf(region, part, candidateLines(region, part, choice));
  const table = new Table(lattice);
  const judge = new LeafJudge(region, part, lattice, marginMm);
  budget.spend(judge.steps);
  table.fill(judge);
  return table;
}
