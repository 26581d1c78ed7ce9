import { proxy, type Remote, wrap } from 'comlink';
import type { AnalysisService } from '../worker.ts';
import { analysisStore } from './analysisStore.ts';
import { type PlanState, planShown, planStore } from './planStore.ts';

/** From this long on, a run shows its progress. */
export const slowMs = 250;
/** From this long on, a run can be cancelled, and gives way to a newer plan at once. */
export const longMs = 2000;

let worker: Worker | null = null;
let service: Remote<AnalysisService> | null = null;
let timers: readonly ReturnType<typeof setTimeout>[] = [];
/** The newest plan that still waits for the worker. */
let waiting: PlanState | null = null;

/** Loads the worker ahead of the first plan. */
export function analysisPrepare(): void {
  serviceStart();
}

/** Follows the plan: every revision is analysed, or overtaken by a newer one. */
export function analysisFollow(): void {
  planStore.subscribe((state, before) => {
    if (state.revision !== before.revision) analysisAsk(state);
  });
  analysisAsk(planStore.getState());
}

/** Ends the run under way. The last good result stays. */
export function analysisCancel(): void {
  analysisHalt('Cancelled.');
}

function analysisHalt(why: string): void {
  const { run } = analysisStore.getState();
  if (run === null) return;
  const next = waiting;
  workerEnd();
  analysisStore.setState({ run: null, halted: { revision: run.revision, why } });
  // A plan that came meanwhile was not what was halted.
  if (next !== null) void analysisStart(next);
}

export function analysisAgain(): void {
  analysisAsk(planStore.getState());
}

function analysisAsk(state: PlanState): void {
  const { run } = analysisStore.getState();
  if (run !== null && run.pace !== 'long') {
    waiting = state;
    return;
  }
  if (run !== null) workerEnd();
  void analysisStart(state);
}

function workerEnd(): void {
  worker?.terminate();
  worker = null;
  service = null;
  waiting = null;
  timersEnd();
}

function timersEnd(): void {
  for (const timer of timers) clearTimeout(timer);
  timers = [];
}

/** Another run of the same program. */
export function workerNew(): Worker {
  return new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' });
}

function serviceStart(): Remote<AnalysisService> {
  if (service === null) {
    worker = workerNew();
    worker.addEventListener('error', (event) => analysisHalt(event.message || 'The analysis could not start.'));
    service = wrap<AnalysisService>(worker);
    void service.follow(proxy(progress));
  }
  return service;
}

function progress(revision: number, share: number): void {
  const { run } = analysisStore.getState();
  if (run?.revision === revision) analysisStore.setState({ run: { ...run, share } });
}

function pace(revision: number, to: 'slow' | 'long'): void {
  const { run } = analysisStore.getState();
  if (run?.revision === revision) analysisStore.setState({ run: { ...run, pace: to } });
}

async function analysisStart(state: PlanState): Promise<void> {
  const { revision } = state;
  const { number: sheet } = state.history.present;
  const file = planShown(state);
  analysisStore.setState({ run: { revision, pace: 'quick', share: 0 }, halted: null });
  timers = [setTimeout(() => pace(revision, 'slow'), slowMs), setTimeout(() => pace(revision, 'long'), longMs)];
  try {
    const { plan, found } = await serviceStart().analyse(revision, file);
    if (analysisStore.getState().run?.revision !== revision) return;
    // Also where a newer plan waits already: in a gesture there is always a newer one.
    if (found !== null && (waiting === null || waiting.history.present.number === sheet)) {
      analysisStore.setState({ result: { revision, sheet, file, plan, ...found } });
    }
    analysisStore.setState({ run: null });
  } catch (error) {
    if (analysisStore.getState().run?.revision !== revision) return;
    const why = error instanceof Error ? error.message : String(error);
    analysisStore.setState({ run: null, halted: { revision, why } });
  }
  timersEnd();
  const next = waiting;
  waiting = null;
  if (next !== null) void analysisStart(next);
}
