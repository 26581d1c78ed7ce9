/** Does one piece of work after the other. Of those that wait under one key only the newest is done, of other keys none
 *  is left out. */
export interface NewestQueue {
  readonly ask: (key: string, work: () => Promise<void>) => void;
  /** Until nothing is under way any more. */
  readonly rest: () => Promise<void>;
}

export function newestQueue(): NewestQueue {
  const waiting = new Map<string, () => Promise<void>>();
  let underway: Promise<void> | null = null;
  const run = async () => {
    for (;;) {
      const [next] = waiting;
      if (next === undefined) break;
      waiting.delete(next[0]);
      await next[1]();
    }
    underway = null;
  };
  const ask = (key: string, work: () => Promise<void>) => {
    // To the end: what is asked for last is done last.
    waiting.delete(key);
    waiting.set(key, work);
    underway ??= run();
  };
  return { ask, rest: async () => underway ?? undefined };
}
