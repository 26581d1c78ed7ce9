import { createStore, type StoreApi } from 'zustand/vanilla';
import { boardRefuse, errorWords } from './state/boardStore.ts';

/** What the first view does without. Once fetched it is held; a fetch that failed is begun anew by whoever asks next. */
export interface Late<Part> {
  readonly store: StoreApi<{ readonly part: Part | null }>;
  readonly fetch: () => Promise<Part>;
}

export function lateOf<Part>(load: () => Promise<Part>): Late<Part> {
  const store = createStore<{ readonly part: Part | null }>(() => ({ part: null }));
  let underway: Promise<Part> | null = null;
  const begin = async () => {
    try {
      const part = await load();
      store.setState({ part });
      return part;
    } finally {
      underway = null;
    }
  };
  const fetch = async () => {
    const { part } = store.getState();
    if (part !== null) return part;
    underway ??= begin();
    return underway;
  };
  return { store, fetch };
}

/** For what somebody waits for: a fetch that fails is said on the board.
 *  @param refusal what does not happen for want of it  @returns null where it could not be fetched */
export async function lateAsk<Part>({ fetch }: Late<Part>, refusal: string): Promise<Part | null> {
  try {
    return await fetch();
  } catch (error) {
    lateRefuse(refusal, error);
    return null;
  }
}

export function lateRefuse(refusal: string, error: unknown): void {
  const why = errorWords(error);
  const says = `A part of the program could not be fetched (${why}). Keep this page open and see that its server runs; then try again.`;
  boardRefuse(refusal, [{ at: '', says }]);
}
