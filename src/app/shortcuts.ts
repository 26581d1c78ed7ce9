import { surfaceClass } from './canvas/surface.ts';
import { filePick, planSave } from './files/files.ts';
import { laterDo } from './later.tsx';
import { redoTell, undoTell } from './state/actions.ts';
import { boardStore } from './state/boardStore.ts';
import { handAct, keyLetGo } from './tools/hand.ts';
import { toolStore } from './tools/toolStore.ts';

/** The shortcuts of the platform for what every program with files has, those for what is chosen, Escape to let go of it,
 *  and no others. */
export function shortcutsFollow(): void {
  window.addEventListener('keyup', keyLetGo);
  window.addEventListener('blur', keyLetGo);
  // Escape closes an open menu or sheet, and that is all it does then: looked at before the browser closes it.
  let isOpen = false;
  const look = () => {
    isOpen = document.querySelector(':popover-open, dialog[open]') !== null;
  };
  window.addEventListener('keydown', look, { capture: true });
  window.addEventListener('keydown', (event) => {
    // A field that is being typed in keeps Escape to itself.
    if (event.key === 'Escape' && !isOpen) handAct({ kind: 'back' });
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

/** Where the keys for what is chosen are meant: on the board, its things and figures, and lists of things. Elsewhere a key
 *  that removes would do so behind the back of whoever pressed it. */
const removesOn = `.${surfaceClass}, .thing, .dimension, [role="listbox"]`;

/** Removes what is chosen. In a gesture it does nothing: Backspace steps back there. */
function plainKey({ key, target }: KeyboardEvent): (() => void) | null {
  if (key !== 'Delete' && key !== 'Backspace') return null;
  const isMeant = target === document.body || (target instanceof Element && target.closest(removesOn) !== null);
  const isFree = !toolStore.getState().stance.underway && boardStore.getState().chosen.length > 0;
  return isMeant && isFree && !(target instanceof HTMLInputElement)
    ? () => laterDo((parts) => parts.chosenRemove())
    : null;
}

const chosenKeys: Readonly<Record<string, () => void>> = {
  c: () => laterDo((parts) => parts.chosenCopy()),
  x: () => laterDo((parts) => parts.chosenCut()),
  v: () => laterDo((parts) => parts.clipPaste()),
  a: () => laterDo((parts) => parts.chosenAll()),
};

function chosenKey(event: KeyboardEvent): (() => void) | null {
  if (event.shiftKey || inText(event) || toolStore.getState().stance.underway) return null;
  const key = event.key.toLowerCase();
  // Words of the page that were marked are copied as words.
  if (key === 'c' && window.getSelection()?.isCollapsed === false) return null;
  return chosenKeys[key] ?? null;
}

function shortcutOf(event: KeyboardEvent): (() => void) | null {
  const key = event.key.toLowerCase();
  // A field under the hand keeps its own undo.
  const typing = event.target instanceof HTMLInputElement && event.target.dataset.typing === 'true';
  // In a gesture the last thing done is the gesture.
  const undo = toolStore.getState().stance.underway ? () => handAct({ kind: 'back' }) : undoTell;
  const redo = toolStore.getState().stance.underway ? null : redoTell;
  if (key === 'z' && !typing) return event.shiftKey ? redo : undo;
  if (key === 'y' && !typing && !event.shiftKey) return redo;
  if (key === 'o' && !event.shiftKey) return () => typingPut(filePick);
  if (key === 's' && !event.shiftKey) return () => typingPut(() => void planSave());
  return null;
}

/** What is being typed is put in first: a field is left and come back to. */
function typingPut(act: () => void): void {
  const { activeElement } = document;
  if (activeElement instanceof HTMLInputElement && activeElement.dataset.typing === 'true') {
    activeElement.blur();
    activeElement.focus();
  }
  act();
}
