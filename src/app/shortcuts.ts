import { filePick, planSave } from './files/files.ts';
import { redoTell, undoTell } from './state/actions.ts';
import { boardStore } from './state/boardStore.ts';
import { chosenAll, chosenCopy, chosenCut, chosenRemove, clipPaste } from './tools/actions.ts';
import { handAct, keyLetGo } from './tools/hand.ts';
import { toolStore } from './tools/toolStore.ts';

/** The shortcuts of the platform for what every program with files has, those for what is chosen, Escape to let go of it,
 *  and no others. */
export function shortcutsFollow(): void {
  window.addEventListener('keyup', keyLetGo);
  window.addEventListener('keydown', (event) => {
    // A field that is being typed in keeps Escape to itself.
    if (event.key === 'Escape') handAct({ kind: 'back' });
    const act = isPlain(event) ? plainKey(event) : isCommand(event) ? (shortcutOf(event) ?? chosenKey(event)) : null;
    if (act === null) return;
    event.preventDefault();
    act();
  });
}

const isPlain = (event: KeyboardEvent) => !event.ctrlKey && !event.metaKey && !event.altKey && !event.shiftKey;
const isCommand = (event: KeyboardEvent) => (event.ctrlKey || event.metaKey) && !event.altKey;

/** Whether the focus is where words or figures are typed: a field keeps its own keys. */
function inText({ target }: KeyboardEvent): boolean {
  if (target instanceof HTMLInputElement) return target.type !== 'checkbox';
  return target instanceof HTMLElement && (target.isContentEditable || target.tagName === 'TEXTAREA');
}

/** Removes what is chosen. Backspace steps back where a gesture is under way. */
function plainKey(event: KeyboardEvent): (() => void) | null {
  const removes = event.key === 'Delete' || (event.key === 'Backspace' && !toolStore.getState().stance.underway);
  return removes && !inText(event) && boardStore.getState().chosen.length > 0 ? chosenRemove : null;
}

const chosenKeys: Readonly<Record<string, () => void>> = { c: chosenCopy, x: chosenCut, v: clipPaste, a: chosenAll };

function chosenKey(event: KeyboardEvent): (() => void) | null {
  if (event.shiftKey || inText(event)) return null;
  const key = event.key.toLowerCase();
  // Words of the page that were marked are copied as words.
  if (key === 'c' && window.getSelection()?.isCollapsed === false) return null;
  return chosenKeys[key] ?? null;
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
