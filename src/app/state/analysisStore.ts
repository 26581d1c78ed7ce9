import { createStore } from 'zustand/vanilla';
import type { Drawing } from '../../documents/drawing.ts';
import type { Analysis } from '../../plan/analysis.ts';
import type { Plan } from '../../plan/plan.ts';
import type { PlanFile } from '../../plan/schema.ts';

/** What is derived: the last good analysis and the plan that it was made from. It stays until the next is there. */
export interface Result {
  readonly revision: number;
  readonly sheet: number;
  /** The plan file that it was made from: what the shown plan has beyond it is not in the analysis yet. */
  readonly file: PlanFile;
  readonly plan: Plan;
  readonly analysis: Analysis;
  readonly drawing: Drawing;
}

/** How a run stands: `quick` shows nothing, `slow` its progress, `long` can be cancelled. */
export interface Run {
  readonly revision: number;
  readonly pace: 'quick' | 'slow' | 'long';
  readonly share: number;
}

export interface AnalysisState {
  readonly result: Result | null;
  readonly run: Run | null;
  /** Why the newest revision has no analysis; null where it has one or is about to. */
  readonly halted: { readonly revision: number; readonly why: string } | null;
}

export const analysisStore = createStore<AnalysisState>(() => ({ result: null, run: null, halted: null }));
