import { useEffect, useState } from 'react';
import type { PlanFile } from '../../plan/schema.ts';
import { errorWords } from '../state/boardStore.ts';
import { sheetHold } from '../state/hold.ts';
import { keepingRest, keepingStore, sheetForgotten, sheetKept } from '../state/keeping.ts';
import type { Kept, KeptEntry } from '../state/shelf.ts';
import { shelfList, shelfPutBack, shelfRemove } from '../state/shelf-list.ts';

export interface KeptList {
  /** The newest first. */
  readonly plans: readonly Kept[];
  /** Why they could not be read; null where they could. */
  readonly why: string | null;
}

/** What the browser keeps at this moment; null until it has said so. */
export function useKeptList(): KeptList | null {
  const [list, setList] = useState<KeptList | null>(null);
  useEffect(() => {
    let wanted = true;
    void keptList().then((read) => wanted && setList(read));
    return () => {
      wanted = false;
    };
  }, []);
  return list;
}

async function keptList(): Promise<KeptList> {
  try {
    await keepingRest();
    return { plans: await shelfList(), why: null };
  } catch (error) {
    return { plans: [], why: errorWords(error) };
  }
}

/** A plan that was removed, to be put back. */
export interface Removed {
  readonly entry: KeptEntry;
  /** The same as this tab had kept it; null where it had not. */
  readonly file: PlanFile | null;
}

/** Takes a plan out of the browser. Where it is on the board it stays there, and its next change is kept again. What is on
 *  the board of another tab is not taken from under it. */
export async function keptRemove(id: string): Promise<Removed> {
  if (!(await sheetHold(id))) throw new Error('It is open in another tab: close that first.');
  await keepingRest();
  const file = keepingStore.getState().kept.get(id) ?? null;
  const entry = await shelfRemove(id);
  sheetForgotten(id);
  return { entry, file };
}

export async function keptPutBack({ entry, file }: Removed): Promise<void> {
  const isBack = await shelfPutBack(entry);
  if (isBack && file !== null) sheetKept(entry.id, file);
}
