import { useEffect, useState } from 'react';
import type { PlanFile } from '../../plan/schema.ts';
import { errorWords } from '../state/boardStore.ts';
import { keepingRest, keepingStore, sheetForgotten, sheetKept } from '../state/keeping.ts';
import { type Kept, type KeptEntry, shelfList, shelfPutBack, shelfRemove } from '../state/shelf.ts';

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

/** Takes a plan out of the browser. Where it is on the board it stays there, and its next change is kept again. */
export async function keptRemove(id: string): Promise<Removed> {
  await keepingRest();
  const file = keepingStore.getState().kept.get(id) ?? null;
  const entry = await shelfRemove(id);
  sheetForgotten(id);
  return { entry, file };
}

export async function keptPutBack(id: string, { entry, file }: Removed): Promise<void> {
  const isBack = await shelfPutBack(id, entry);
  if (isBack && file !== null) sheetKept(id, file);
}
