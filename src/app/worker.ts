import { expose } from 'comlink';
import type { Agreement } from '../analysis/agreement.ts';
import { createAnalyser } from '../analysis/analyser.ts';
import type { Drawing } from '../documents/drawing.ts';
import { drawingOf } from '../documents/drawing-list.ts';
import type { Analysis } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { planResolve } from '../plan/resolve.ts';
import type { PlanFile } from '../plan/schema.ts';
import { decimalMark } from './parts/format.ts';

/** The analyser and the drawing list, off the screen's own thread: a drag has its frames to itself. It keeps the parts that it has solved from one call to the next. */
const analyser = createAnalyser();

export interface Analysed {
  readonly revision: number;
  readonly plan: Plan;
  /** Null where the run was cancelled. */
  readonly found: { readonly analysis: Analysis; readonly drawing: Drawing } | null;
}

let told: (revision: number, share: number) => void = () => undefined;

const service = {
  /** Who is told how far a run is: once, as a channel for each run costs more than the run of a small plan. */
  follow(onProgress: (revision: number, share: number) => void): void {
    told = onProgress;
  },
  analyse(revision: number, file: PlanFile): Analysed {
    const onProgress = (share: number) => told(revision, share);
    const plan = planResolve(file);
    const analysis = analyser.analyse(plan, { onProgress });
    const found = analysis === null ? null : { analysis, drawing: drawingOf(plan, analysis, { decimalMark }) };
    return { revision, plan, found };
  },
  /** The ways of joints and tiles to agree: fetched when they are asked for. */
  async agree(file: PlanFile, onProgress: (share: number) => void): Promise<readonly Agreement[]> {
    const { agreementsOf } = await import('../analysis/agreement.ts');
    return agreementsOf(planResolve(file), { onProgress }) ?? [];
  },
};
export type AnalysisService = typeof service;

expose(service);
