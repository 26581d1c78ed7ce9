import { boardTell } from './boardStore.ts';
import { planRedo, planUndo } from './planStore.ts';

/** Undo and redo say what they did. */
export function undoTell(): void {
  const name = planUndo();
  if (name !== null) boardTell(`Undone: ${name}.`);
}

export function redoTell(): void {
  const name = planRedo();
  if (name !== null) boardTell(`Done again: ${name}.`);
}
