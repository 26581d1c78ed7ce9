import type { Analysis, Joint } from '../../src/plan/analysis.ts';
import { type Analysed, analysedAnew } from '../floors/analysed-once.ts';
import { planOf } from '../floors/read.ts';

/** A plan file and what the product makes of it. */
export function analysed(json: unknown): Analysed {
  return analysedAnew(planOf(json));
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
