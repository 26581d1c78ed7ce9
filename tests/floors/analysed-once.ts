import { deserialize, serialize } from 'node:v8';
import { createAnalyser } from '../../src/analysis/analyser.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';

/** A plan and what the product makes of it. */
export interface Analysed {
  readonly plan: Plan;
  readonly analysis: Analysis;
}

const known = new Map<string, Buffer>();

/** The analysis of a plan that many tests look at, worked out by the first of the run that asks. Everybody gets copies of plan and analysis:
 *  nothing that one test does to them, or that the product keeps about them, is there for the next. */
export function analysedOnce(plan: Plan): Analysed {
  const key = JSON.stringify(plan);
  const held = known.get(key) ?? serialize(analysedAnew(plan));
  known.set(key, held);
  return deserialize(held) as Analysed;
}

/** The analysis worked out for this call, for tests of what an analysis is and whether it comes out alike each time. */
export function analysedAnew(plan: Plan): Analysed {
  const analysis = createAnalyser().analyse(plan);
  if (analysis === null) throw new Error('the analysis was given up, though nobody asked for that');
  return { plan, analysis };
}
