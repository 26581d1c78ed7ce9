import { lateAsk } from '../late.ts';
import { nameText } from '../parts/format.ts';
import { type KeptEntry, shelfLast, shelfRead } from '../state/shelf.ts';
import { tabMarked } from '../state/tab.ts';
import { demoStart } from './demos.ts';
import { fileParts } from './files.ts';

/** A browser that has given no answer after so long is not waited for, ms. */
const answerMs = 1500;

/** Starts the session on the sheet that was on the board last, on a demo where there was none or it cannot be read. */
export async function boardStart(): Promise<void> {
  const [last] = await Promise.all([lastFound(), demoStart()]);
  if (last === null) return;
  const refusal =
    'The plan that was on the board could not be read. It is left where it is, among the plans of this browser.';
  await (await lateAsk(fileParts, refusal))?.keptStart(last, refusal);
}

/** Of this tab; else of whichever tab was last. */
async function lastFound(): Promise<KeptEntry | null> {
  const find = async () => (await foundAt(tabMarked())) ?? (await foundAt(await shelfLast()));
  const silence = new Promise<null>((resolve) => setTimeout(() => resolve(null), answerMs));
  try {
    return await Promise.race([find(), silence]);
  } catch {
    // A browser that keeps nothing for the page. It is said once there is something to keep.
    return null;
  }
}

async function foundAt(id: string | null): Promise<KeptEntry | null> {
  return id === null ? null : shelfRead(id);
}

/** Lays a plan that the browser keeps on the board; where it cannot be, the sheet on the board stays. */
export async function keptOpen(id: string, name: string): Promise<void> {
  const refusal = `${nameText(name)} was not opened. The sheet on the board is as it was.`;
  await (await lateAsk(fileParts, refusal))?.keptLay(id, refusal);
}
