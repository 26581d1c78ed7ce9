import { proxy, wrap } from 'comlink';
import { createStore } from 'zustand/vanilla';
import type { Agreement } from '../../analysis/agreement.ts';
import type { PlanFile } from '../../plan/schema.ts';
import type { AnalysisService } from '../worker.ts';
import { longMs, slowMs, workerNew } from './analysisRun.ts';
import type { Run } from './analysisStore.ts';
import { errorWords } from './boardStore.ts';
import { planStore } from './planStore.ts';

/** The ways of joints and tiles to agree, worked out when they are asked for, beside the analysis: the plan can be changed meanwhile. */
export interface AgreementState {
  readonly run: AgreementRun | null;
  /** The last ways that were found, and the plan that they are of: of another one they are old. */
  readonly found: { readonly sheet: number; readonly file: PlanFile; readonly ways: readonly Agreement[] } | null;
  /** Why there are none of the plan that was asked about last. */
  readonly halted: string | null;
}

type AgreementRun = Pick<Run, 'pace' | 'share'>;

export const agreementStore = createStore<AgreementState>(() => ({ run: null, found: null, halted: null }));

let worker: Worker | null = null;
let timers: readonly ReturnType<typeof setTimeout>[] = [];

/** Works out the ways for the plan on the board; one run at a time. */
export async function agreementAsk(): Promise<void> {
  runEnd();
  const { file, number: sheet } = planStore.getState().history.present;
  const own = workerNew();
  worker = own;
  agreementStore.setState({ run: { pace: 'quick', share: 0 }, halted: null });
  timers = [setTimeout(() => runTell({ pace: 'slow' }), slowMs), setTimeout(() => runTell({ pace: 'long' }), longMs)];
  try {
    const ways = await answerOf(own, file);
    if (worker === own) agreementStore.setState({ found: { sheet, file, ways } });
  } catch (error) {
    if (worker === own) agreementStore.setState({ halted: errorWords(error) });
  } finally {
    if (worker === own) runEnd();
  }
}

/** A worker that ends answers no more: who waits for it is told. */
let waiterTell: (() => void) | null = null;

function answerOf(own: Worker, file: PlanFile): Promise<readonly Agreement[]> {
  return new Promise((answer, fail) => {
    waiterTell = () => fail(new Error('Cancelled.'));
    own.addEventListener('error', (event) => fail(new Error(event.message || 'The comparison could not start.')));
    const told = proxy((share: number) => runTell({ share }));
    wrap<AnalysisService>(own).agree(file, told).then(answer, fail);
  });
}

function runTell(change: Partial<Pick<Run, 'pace' | 'share'>>): void {
  const { run } = agreementStore.getState();
  if (run !== null) agreementStore.setState({ run: { ...run, ...change } });
}

/** Ends the run under way; what was found before stays. */
export function agreementCancel(): void {
  const { run } = agreementStore.getState();
  if (run === null) return;
  runEnd();
  agreementStore.setState({ halted: 'Cancelled.' });
}

function runEnd(): void {
  for (const timer of timers) clearTimeout(timer);
  timers = [];
  worker?.terminate();
  worker = null;
  waiterTell?.();
  waiterTell = null;
  agreementStore.setState({ run: null });
}
