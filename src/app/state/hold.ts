/** A sheet is worked on in one tab at a time, so that no tab writes over what another keeps. A tab holds every sheet that
 *  was on its board until it closes, since undo may bring each of them back. */
const asked = new Map<string, Promise<boolean>>();

/** A page that is loaded again may come before the browser has let go of what it held before: so often it asks again, and
 *  so long it waits in between, ms. A time limit on the asking itself would take a slow browser for another tab. */
const tries = 5;
const waitMs = 100;

/** @returns whether the sheet is this tab's; false: another tab has it. Rejects where the browser tells tabs nothing of
 *  each other. */
export function sheetHold(id: string): Promise<boolean> {
  const known = asked.get(id);
  if (known !== undefined) return known;
  const asking = lockAsk(id);
  asked.set(id, asking);
  const forget = () => asked.delete(id);
  // A sheet that the other tab has let go of may be had later.
  asking.then((isHeld) => isHeld || forget(), forget);
  return asking;
}

async function lockAsk(id: string): Promise<boolean> {
  for (let i = 0; i < tries; i += 1) {
    if (i > 0) await new Promise((resolve) => setTimeout(resolve, waitMs));
    if (await lockTake(id)) return true;
  }
  return false;
}

/** Takes the lock for as long as the page lives, where nobody has it. */
function lockTake(id: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const hold = (lock: Lock | null) => {
      resolve(lock !== null);
      return lock === null ? undefined : new Promise<never>(() => {});
    };
    navigator.locks.request(`sheet/${id}`, { ifAvailable: true }, hold).catch(reject);
  });
}
