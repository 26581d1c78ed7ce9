import { proxy, type Remote, wrap } from 'comlink';
import { createStore } from 'zustand/vanilla';
import type { PourDay } from '../../plan/papers.ts';
import type { PlanFile } from '../../plan/schema.ts';
import type { PaperService, PapersLaid } from '../papers-worker.ts';
import { longMs, slowMs } from './analysisRun.ts';
import { analysisStore, type Result, type Run } from './analysisStore.ts';
import { errorWords } from './boardStore.ts';
import { planStore } from './planStore.ts';

/** The papers of the last good result: worked out in a thread of their own while they are looked at. */
export interface PapersState {
  /** Of the newest result that was laid; null until there is one. */
  readonly laid: Laid | null;
  /** The paper that is being made. */
  readonly run: (Pick<Run, 'pace' | 'share'> & { readonly name: string; readonly sheet: number }) | null;
  /** Why there are none. */
  readonly halted: string | null;
  readonly takeOff: TakeOffShown;
  /** The file that the plan is compared with. */
  readonly earlier: Earlier | null;
}

/** How the take-off is looked at. */
export interface TakeOffShown {
  /** Key of the line whose sources are lit. */
  readonly line: string | null;
  /** Whose quantities are looked at, by id; null: of the whole floor. */
  readonly room: string | null;
}

export interface Earlier {
  readonly name: string;
  readonly file: PlanFile;
  /** Number of the sheet that is compared with it: another plan on the board is not. */
  readonly sheet: number;
}

export interface Laid extends PapersLaid {
  readonly result: Result;
}

export const papersStore = createStore<PapersState>(() => ({
  laid: null,
  run: null,
  halted: null,
  takeOff: { line: null, room: null },
  earlier: null,
}));

let worker: Worker | null = null;
/** What the worker holds: one that is started anew holds nothing. */
let held: { readonly result: Result | null; readonly earlier: Earlier | null } = { result: null, earlier: null };
let service: Remote<PaperService> | null = null;
/** What was asked last: the worker does one thing after the other. */
let last: Promise<unknown> = Promise.resolve();
/** The newest result that still waits to be laid. */
let waiting: Result | null = null;
/** Tells whoever waits for the worker that it has ended. */
let failed: ((why: Error) => void) | null = null;

function serviceStart(): Remote<PaperService> {
  if (service !== null) return service;
  const own = new Worker(new URL('../papers-worker.ts', import.meta.url), { type: 'module' });
  own.addEventListener('error', (event) => serviceEnd(event.message || 'The papers could not start.'));
  worker = own;
  service = wrap<PaperService>(own);
  return service;
}

function serviceEnd(why: string): void {
  worker?.terminate();
  worker = null;
  service = null;
  held = { result: null, earlier: null };
  failed?.(new Error(why));
}

/** What the worker answers, after all that was asked before; or why it ended. */
function answerOf<Answer>(ask: (of: Remote<PaperService>) => Promise<Answer>): Promise<Answer> {
  const answer = last.then(
    () =>
      new Promise<Answer>((told, fail) => {
        failed = fail;
        ask(serviceStart()).then(told, fail);
      }),
  );
  last = answer.catch(() => undefined);
  return answer;
}

/** Fetches all that papers are made with. */
export function papersPrepare(): Promise<void> {
  return answerOf((of) => of.prepare());
}

/** Lays a result before the papers; of results that come faster than they can be worked out the newest. */
export async function papersLay(result: Result): Promise<void> {
  const { run } = papersStore.getState();
  // the papers of one floor do not wait for those of another
  if (run !== null && run.sheet !== planStore.getState().history.present.number)
    serviceEnd('Another plan is on the board.');
  const isUnderway = waiting !== null;
  waiting = result;
  if (isUnderway) return;
  try {
    await answerOf((of) => {
      const newest = waiting ?? result;
      waiting = null;
      return resultLay(of, newest, earlierNow());
    });
  } catch (error) {
    waiting = null;
    papersStore.setState({ halted: errorWords(error) });
  }
}

/** What is compared with; none once another plan lies on the board. */
function earlierNow(): Earlier | null {
  const { earlier } = papersStore.getState();
  return earlier?.sheet === planStore.getState().history.present.number ? earlier : null;
}

/** What is shown changes as one: no comparison stands under the name of another file. */
async function resultLay(of: Remote<PaperService>, result: Result, earlier: Earlier | null): Promise<void> {
  if (held.earlier !== earlier) await of.compare(earlier?.file ?? null, today());
  const { file, plan, analysis } = result;
  const laid = { result, ...(await of.lay({ file, plan, analysis, date: today() })) };
  held = { result, earlier };
  papersStore.setState({ laid, earlier, halted: null });
}

/** The result of the plan as it stands: a figure that was typed a moment ago is in it. Fails where its analysis was halted. */
function resultNow(): Promise<Result> {
  return new Promise((found, fail) => {
    const look = () => {
      const { result, run, halted } = analysisStore.getState();
      if (result?.file === planStore.getState().history.present.file) found(result);
      else if (run === null && halted !== null) fail(new Error('The plan as it stands has no analysis.'));
      else return false;
      return true;
    };
    if (look()) return;
    const end = analysisStore.subscribe(() => {
      if (look()) end();
    });
  });
}

/** By the clock of the machine, where it stands. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}

export interface MadePaper {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** The plan was changed since it was begun. */
  readonly isPast: boolean;
}

/** The days of the pour that are proposed for the plan as it stands.  @returns null where there are none: `halted` says why */
export async function papersPour(): Promise<readonly PourDay[] | null> {
  papersStore.setState({ halted: null });
  try {
    return await answerOf(async (of) => {
      await newestLay(of);
      return of.pour();
    });
  } catch (error) {
    papersStore.setState({ halted: errorWords(error) });
    return null;
  }
}

async function newestLay(of: Remote<PaperService>): Promise<void> {
  const result = await resultNow();
  if (held.result !== result) await resultLay(of, result, earlierNow());
}

/** Makes one paper of the plan as it stands, or all of them.  @returns null where it was cancelled or could not be made: `halted` says why */
export async function paperMake(name: string): Promise<MadePaper | null> {
  const sheet = planStore.getState().history.present.number;
  papersStore.setState({ run: { name, sheet, pace: 'quick', share: 0 }, halted: null });
  const timers = [
    setTimeout(() => runTell({ pace: 'slow' }), slowMs),
    setTimeout(() => runTell({ pace: 'long' }), longMs),
  ];
  try {
    return await answerOf(async (of) => {
      await newestLay(of);
      const made = await of.make(
        name,
        proxy((share: number) => runTell({ share })),
      );
      return { ...made, isPast: held.result?.file !== planStore.getState().history.present.file };
    });
  } catch (error) {
    papersStore.setState({ halted: errorWords(error) });
    return null;
  } finally {
    for (const timer of timers) clearTimeout(timer);
    papersStore.setState({ run: null });
  }
}

function runTell(change: Partial<Pick<Run, 'pace' | 'share'>>): void {
  const { run } = papersStore.getState();
  if (run !== null) papersStore.setState({ run: { ...run, ...change } });
}

/** Ends the paper under way. What was laid is laid anew for the next. */
export function paperCancel(): void {
  const { run, laid } = papersStore.getState();
  if (run === null) return;
  serviceEnd('Cancelled.');
  if (laid !== null) void papersLay(laid.result);
}

/** Compares what is laid with an earlier version; null: no longer. */
export async function papersCompare(version: Omit<Earlier, 'sheet'> | null): Promise<void> {
  const { laid } = papersStore.getState();
  if (laid === null) return;
  const earlier = version && { ...version, sheet: planStore.getState().history.present.number };
  papersStore.setState({ halted: null });
  try {
    await answerOf((of) => resultLay(of, papersStore.getState().laid?.result ?? laid.result, earlier));
  } catch (error) {
    papersStore.setState({ halted: errorWords(error) });
  }
}
