import { expose } from 'comlink';
import { createAnalyser } from '../analysis/analyser.ts';
import type { Analysis } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { planResolve } from '../plan/resolve.ts';
import type { PlanFile } from '../plan/schema.ts';

/** The analyser, off the screen's own thread. It keeps the parts that it has solved from one call to the next. */
const analyser = createAnalyser();

export interface Analysed {
  readonly revision: number;
  readonly plan: Plan;
  readonly analysis: Analysis | null;
}

const service = {
  analyse(revision: number, file: PlanFile, onProgress: (share: number) => void): Analysed {
    const plan = planResolve(file);
    return { revision, plan, analysis: analyser.analyse(plan, { onProgress }) };
  },
};
export type AnalysisService = typeof service;

expose(service);
