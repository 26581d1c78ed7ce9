import { createAnalyser } from '../../src/analysis/analyser.ts';
import type { Analysis, Joint } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planOf } from '../floors/read.ts';

/** A plan file and what the product makes of it. */
export function analysed(json: unknown): { readonly plan: Plan; readonly analysis: Analysis } {
  const plan = planOf(json);
  const analysis = createAnalyser().analyse(plan);
  if (analysis === null) throw new Error('the analysis was given up, though nobody asked for that');
  return { plan, analysis };
}

/** Length of field and neck joints, m. */
export function freeJointM(analysis: Analysis): number {
  return lengthOf(analysis.joints.filter((j) => j.kind === 'field' || j.kind === 'neck'));
}

export function jointM(analysis: Analysis): number {
  return lengthOf(analysis.joints);
}

function lengthOf(joints: readonly Joint[]): number {
  return joints.reduce((sum, j) => sum + j.lengthM, 0);
}
