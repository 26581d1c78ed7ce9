/** Undo and redo of plan states. The states share what an edit left alone, so a step costs what it changed. */
export interface HistoryStep<State> {
  readonly name: string;
  /** The state before the step (in `past`) or after it (in `future`). */
  readonly state: State;
  /** Steps of one gesture are one step; null where the step stands alone. */
  readonly gesture: string | null;
}

export interface History<State> {
  readonly present: State;
  readonly past: readonly HistoryStep<State>[];
  readonly future: readonly HistoryStep<State>[];
}

export function historyStart<State>(present: State): History<State> {
  return { present, past: [], future: [] };
}

/** The history with one more step. An edit that changes nothing leaves the history as it was; an edit of the gesture
 *  under way replaces its outcome and its name and keeps the state from before the gesture. */
export function historyCommit<State>(
  history: History<State>,
  step: { readonly name: string; readonly state: State; readonly gesture: string | null },
): History<State> {
  if (step.state === history.present) return history;
  const last = history.past.at(-1);
  const goesOn = step.gesture !== null && last?.gesture === step.gesture;
  const before = { name: step.name, state: goesOn ? last.state : history.present, gesture: step.gesture };
  const earlier = goesOn ? history.past.slice(0, -1) : history.past;
  return { present: step.state, past: [...earlier, before], future: [] };
}

/** The history as if the gesture under way had never begun. */
export function historyRetract<State>(history: History<State>, gesture: string): History<State> {
  const last = history.past.at(-1);
  if (last === undefined || last.gesture !== gesture) return history;
  return { present: last.state, past: history.past.slice(0, -1), future: [] };
}

export function historyUndo<State>(history: History<State>): History<State> {
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return {
    present: step.state,
    past: history.past.slice(0, -1),
    future: [{ name: step.name, state: history.present, gesture: null }, ...history.future],
  };
}

export function historyRedo<State>(history: History<State>): History<State> {
  const [step, ...future] = history.future;
  if (step === undefined) return history;
  return {
    present: step.state,
    past: [...history.past, { name: step.name, state: history.present, gesture: null }],
    future,
  };
}
