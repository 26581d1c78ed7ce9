import { filePick, planSave } from './files/files.ts';
import { redoTell, undoTell } from './state/actions.ts';
import { handAct, keyLetGo } from './tools/hand.ts';

/** The shortcuts of the platform for what every program with files has, Escape to let go of what is chosen, and no others. */
export function shortcutsFollow(): void {
  window.addEventListener('keyup', keyLetGo);
  window.addEventListener('keydown', (event) => {
    // A field that is being typed in keeps Escape to itself.
    if (event.key === 'Escape') handAct({ kind: 'back' });
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const act = shortcutOf(event);
    if (act === null) return;
    event.preventDefault();
    act();
  });
}

function shortcutOf(event: KeyboardEvent): (() => void) | null {
  const key = event.key.toLowerCase();
  // A field under the hand keeps its own undo.
  const typing = event.target instanceof HTMLInputElement && event.target.dataset.typing === 'true';
  if (key === 'z' && !typing) return event.shiftKey ? redoTell : undoTell;
  if (key === 'y' && !typing && !event.shiftKey) return redoTell;
  if (key === 'o' && !event.shiftKey) return filePick;
  if (key === 's' && !event.shiftKey) return () => void planSave();
  return null;
}
