import type { Edited } from '../../plan/edits/corners.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { commit, gestureRetract, planBefore } from '../state/planStore.ts';
import { refusalWords } from '../tools/choose/refusals.ts';

/** What an edit of a card comes to: the plan after it, or in words why it cannot be. */
export type Tried = PlanFile | string;

export type CardEdit<Value> = (file: PlanFile, value: Value) => Tried;

export function triedOf(edited: Edited): Tried {
  return edited.kind === 'refused' ? `${refusalWords(edited.why)}.` : edited.file;
}

/** An edit that gives the plan back as it was could not be done. */
export function triedUnless(why: string, before: PlanFile, after: PlanFile): Tried {
  return after === before ? why : after;
}

/** What stands beyond this is refused by the edits of places without a word of their own. */
export const offSheet = 'This lies beyond the sheet.';

/** One typed figure of a card: tried against the plan from before its gesture, so that the digits on the way to it leave
 *  nothing behind. */
export function editTry<Value>(edit: CardEdit<Value>, value: Value, gesture: string): string | null {
  const tried = edit(planBefore(gesture), value);
  return typeof tried === 'string' ? tried : null;
}

export function editPut<Value>(name: string, edit: CardEdit<Value>, value: Value, gesture: string): void {
  const before = planBefore(gesture);
  const tried = edit(before, value);
  if (typeof tried === 'string') return;
  if (tried === before) gestureRetract(gesture);
  else commit(name, () => tried, gesture);
}
