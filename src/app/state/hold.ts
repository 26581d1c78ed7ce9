/** A sheet is worked on in one tab at a time, so that no tab writes over what another keeps. A tab holds every sheet that
 *  was on its board until it closes, since undo may bring each of them back. */
const asked = new Map<string, Promise<boolean>>();

/** A page that is loaded again may have to wait until the browser has let go of what it held before, ms. */
const waitMs = 500;

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

function lockAsk(id: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const hold = () => {
      resolve(true);
      return new Promise<never>(() => {});
    };
    navigator.locks.request(`sheet/${id}`, { signal: AbortSignal.timeout(waitMs) }, hold).catch((error: unknown) => {
      if (error instanceof DOMException && error.name === 'TimeoutError') resolve(false);
      else reject(error);
    });
  });
}
