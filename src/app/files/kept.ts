import type { PlanFile } from '../../plan/schema.ts';
import { lateAsk } from '../late.ts';
import { nameText } from '../parts/format.ts';
import { boardNote, boardRefuse, errorWords } from '../state/boardStore.ts';
import { sheetHold } from '../state/hold.ts';
import { keepingRest, sheetKept } from '../state/keeping.ts';
import { sheetIdNew, sheetLay, sheetStart } from '../state/planStore.ts';
import { type KeptEntry, keptFrom, shelfLast, shelfRead } from '../state/shelf.ts';
import { tabMarked } from '../state/tab.ts';
import { demoStart } from './demos.ts';
import { fileParts } from './files.ts';

/** A browser that has given no answer after so long is not waited for, ms. */
const answerMs = 3000;

interface Found {
  readonly id: string;
  readonly entry: KeptEntry;
}

/** Starts the session on the sheet that was on the board last, on a demo where there was none or it cannot be read. */
export async function boardStart(): Promise<void> {
  const [found] = await Promise.all([lastFound(), demoStart()]);
  if (found === null) return;
  const { id, entry } = found;
  const name = nameText(keptFrom(id, entry.about).name);
  const refusal = `${name} was on the board and could not be read. It is left where it is, among the plans of this browser.`;
  try {
    const file = await keptRead(entry, refusal);
    if (file !== null) sheetStart(file, 'kept', await idClaim(id, file));
  } catch (error) {
    boardRefuse(refusal, [{ at: '', says: errorWords(error) }]);
  }
}

/** Of this tab; else of whichever tab was last. */
async function lastFound(): Promise<Found | null> {
  const find = async () => {
    const own = tabMarked();
    return (own === null ? null : await foundAt(own)) ?? (await foundAt(await shelfLast()));
  };
  const silence = new Promise<null>((resolve) => setTimeout(() => resolve(null), answerMs));
  try {
    return await Promise.race([find(), silence]);
  } catch {
    // A browser that keeps nothing for the page. It is said once there is something to keep.
    return null;
  }
}

async function foundAt(id: string | null): Promise<Found | null> {
  const entry = id === null ? null : await shelfRead(id);
  return id === null || entry === null ? null : { id, entry };
}

/** Null where it is no plan of this program any more, which is said. */
async function keptRead(entry: KeptEntry, refusal: string): Promise<PlanFile | null> {
  return (await lateAsk(fileParts, refusal))?.keptPlan(entry.file, refusal) ?? null;
}

/** Under which id this tab goes on with a kept plan: its own, or a new one where another tab has it on its board. */
async function idClaim(id: string, file: PlanFile): Promise<string> {
  if (await sheetHold(id)) {
    sheetKept(id, file);
    return id;
  }
  boardNote('This plan is also open in another tab: this one is kept as a copy.');
  return sheetIdNew();
}

/** Lays a plan that the browser keeps on the board. */
export async function keptLay(id: string, name: string): Promise<void> {
  const refusal = `${nameText(name)} was not opened. The sheet on the board is as it was.`;
  try {
    // Its newest change may still be under way.
    await keepingRest();
    const found = await foundAt(id);
    if (found === null) {
      boardRefuse(refusal, [{ at: '', says: 'The browser does not have it any more.' }]);
      return;
    }
    const file = await keptRead(found.entry, refusal);
    if (file !== null) sheetLay(`Open ${nameText(file.name)}`, file, 'kept', await idClaim(id, file));
  } catch (error) {
    boardRefuse(refusal, [{ at: '', says: errorWords(error) }]);
  }
}
