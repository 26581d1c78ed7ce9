import { createStore } from 'zustand/vanilla';
import type { PlanFile } from '../../plan/schema.ts';
import { sheetHold } from './hold.ts';
import { newestQueue } from './newest.ts';
import { type PlanState, planStore, type Sheet } from './planStore.ts';
import { shelfMark, shelfPut } from './shelf.ts';
import { tabMark } from './tab.ts';

/** Keeps the plan on the board in the browser, after each step and never a preview. A sheet that nobody has changed is
 *  not kept, unless it came from a file: there is nothing in it to lose. */
export interface Keeping {
  /** What the browser has of the sheets of this tab, by id. */
  readonly kept: ReadonlyMap<string, PlanFile>;
  /** Why the newest change is not kept; null where it is or is about to be. */
  readonly trouble: KeepingTrouble | null;
}

/** `late`: it is taking long; `taken`: another tab works on the sheet; `refused`: the browser has no room, or keeps nothing. */
export type KeepingTrouble = 'late' | 'taken' | 'refused';

export const keepingStore = createStore<Keeping>(() => ({ kept: new Map(), trouble: null }));

/** From this long on, a change that is being kept counts as not kept yet. */
const lateMs = 1000;

const queue = newestQueue();
/** Until what has been changed is kept, or could not be. */
export const keepingRest = queue.rest;

/** Follows the board from now on. */
export function keepingFollow(): void {
  planStore.subscribe(({ history: { present } }, before) => {
    if (present !== before.history.present) sheetAsk(present);
  });
  sheetAsk(planStore.getState().history.present);
}

function sheetAsk(sheet: Sheet): void {
  const { kept } = keepingStore.getState();
  if (!isWorthKeeping(sheet, kept)) return;
  tabMark(sheet.id);
  queue.ask(sheet.id, () => sheetKeep(sheet));
}

function isWorthKeeping({ id, file, laid, origin }: Sheet, kept: Keeping['kept']): boolean {
  return file !== laid || origin === 'file' || kept.has(id);
}

async function sheetKeep(sheet: Sheet): Promise<void> {
  const timer = setTimeout(() => keepingStore.setState({ trouble: 'late' }), lateMs);
  const kind = await sheetPut(sheet);
  clearTimeout(timer);
  // Said in the head for as long as it is so; the next change tries again.
  keepingStore.setState({ trouble: kind === 'kept' ? null : kind });
}

async function sheetPut({ id, file }: Sheet): Promise<'kept' | 'taken' | 'refused'> {
  try {
    if (!(await sheetHold(id))) return 'taken';
    const about = { id, name: file.name, rooms: file.rooms.length, savedAt: Date.now() };
    await (keepingStore.getState().kept.get(id) === file ? shelfMark(id) : shelfPut(about, file));
  } catch {
    return 'refused';
  }
  sheetKept(id, file);
  return 'kept';
}

/** The browser has this state of the sheet. */
export function sheetKept(id: string, file: PlanFile): void {
  keepingStore.setState(({ kept }) => ({ kept: new Map([...kept, [id, file]]) }));
}

/** The browser has nothing of the sheet any more. */
export function sheetForgotten(id: string): void {
  keepingStore.setState(({ kept }) => ({ kept: new Map([...kept].filter(([each]) => each !== id)) }));
}

/** Where the newest state of the plan on the board is: `laid` nowhere and nothing is lost, `loose` nowhere else yet. */
export type Standing = 'laid' | 'saved' | 'kept' | 'loose';

export function planStanding(
  { history: { present }, saved }: Pick<PlanState, 'history' | 'saved'>,
  { kept }: Keeping,
): Standing {
  const { id, file, laid, origin } = present;
  if (saved === file || (origin === 'file' && file === laid)) return 'saved';
  if (kept.get(id) === file) return 'kept';
  return file === laid ? 'laid' : 'loose';
}
