import { createStore } from 'zustand/vanilla';
import { planEmpty } from '../../plan/empty.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { type History, historyCommit, historyRedo, historyRetract, historyStart, historyUndo } from './history.ts';

/** The sheet on the board. Laying another sheet on the board is a step like any other: undo brings the old one back,
 *  so that opening a plan never asks about the one before it. */
export interface Sheet {
  /** Its own for good, wherever undo goes: the browser keeps the plan under it. */
  readonly id: string;
  readonly file: PlanFile;
  /** The file as it was laid. */
  readonly laid: PlanFile;
  /** Counts the sheets of the session: the board fits a new one into view. */
  readonly number: number;
  readonly origin: 'demo' | 'file' | 'new' | 'kept';
}

export interface PlanState {
  readonly history: History<Sheet>;
  /** The plan as it would be if the gesture under way ended now; null without one. No step, and not saved. */
  readonly preview: PlanFile | null;
  /** Counts the changes of the shown plan, there and back: what the analysis is keyed by. */
  readonly revision: number;
  /** The plan that was saved to a file last. */
  readonly saved: PlanFile | null;
}

/** Where the page did not come over a safe line the browser gives no such ids, and keeps nothing: any other id does. */
export function sheetIdNew(): string {
  return 'randomUUID' in crypto ? crypto.randomUUID() : String(Math.random());
}

function sheetOf(file: PlanFile, number: number, origin: Sheet['origin'], id: string): Sheet {
  return { id, file, laid: file, number, origin };
}

export const planStore = createStore<PlanState>(() => ({
  history: historyStart(sheetOf(planEmpty('New floor'), 0, 'new', sheetIdNew())),
  preview: null,
  revision: 0,
  saved: null,
}));

/** What the board shows: the preview of a gesture under way, the plan else. */
export function planShown({ preview, history }: Pick<PlanState, 'preview' | 'history'>): PlanFile {
  return preview ?? history.present.file;
}

function historySet(history: History<Sheet>): void {
  const state = planStore.getState();
  if (history === state.history && state.preview === null) return;
  // A preview that became the plan is shown already.
  const { file, number } = history.present;
  const isShown = planShown(state) === file && state.history.present.number === number;
  planStore.setState({
    history,
    preview: null,
    revision: isShown ? state.revision : state.revision + 1,
  });
}

/** The only way to change the plan. One gesture is one step: edits that carry the same gesture replace each other's
 *  outcome. An edit that gives the plan back as it was is no step. */
export function commit(name: string, edit: (file: PlanFile) => PlanFile, gesture: string | null = null): void {
  const { history } = planStore.getState();
  const file = edit(history.present.file);
  const state = file === history.present.file ? history.present : { ...history.present, file };
  historySet(historyCommit(history, { name, state, gesture }));
}

/** The plan from before a gesture: what is typed digit by digit changes that plan each time, not what the digits before
 *  made of it. */
export function planBefore(gesture: string): PlanFile {
  const { past, present } = planStore.getState().history;
  const last = past.at(-1);
  return last?.gesture === gesture ? last.state.file : present.file;
}

/** Takes back what a gesture under way has changed: the plan is what it was, and no step is left. */
export function gestureRetract(gesture: string): void {
  historySet(historyRetract(planStore.getState().history, gesture));
}

/** Shows what a gesture under way makes of the plan; null: the gesture came to nothing. */
export function planPreview(file: PlanFile | null): void {
  const state = planStore.getState();
  const preview = file === state.history.present.file ? null : file;
  if (preview === state.preview) return;
  planStore.setState({ preview, revision: state.revision + 1 });
}

/** Lays another sheet on the board. @param id of a sheet that the browser keeps; else it is a new one */
export function sheetLay(name: string, file: PlanFile, origin: Sheet['origin'], id = sheetIdNew()): void {
  const { history } = planStore.getState();
  const state = sheetOf(file, sheetNumberNext(history), origin, id);
  historySet(historyCommit(history, { name, state, gesture: null }));
}

/** The first sheet of the session: there is nothing before it to go back to. */
export function sheetStart(file: PlanFile, origin: Sheet['origin'], id = sheetIdNew()): void {
  historySet(historyStart(sheetOf(file, 1, origin, id)));
}

function sheetNumberNext(history: History<Sheet>): number {
  const steps = [...history.past, ...history.future].map((step) => step.state.number);
  return Math.max(history.present.number, ...steps) + 1;
}

/** @returns name of the step undone, null where there was none */
export function planUndo(): string | null {
  const { history } = planStore.getState();
  historySet(historyUndo(history));
  return history.past.at(-1)?.name ?? null;
}

/** @returns name of the step done again, null where there was none */
export function planRedo(): string | null {
  const { history } = planStore.getState();
  historySet(historyRedo(history));
  return history.future[0]?.name ?? null;
}

export function planSaved(file: PlanFile): void {
  planStore.setState({ saved: file });
}
