import type { PlanFile } from '../../plan/schema.ts';
import { nameText } from '../parts/format.ts';
import { boardNote, boardRefuse, errorWords } from '../state/boardStore.ts';
import { sheetHold } from '../state/hold.ts';
import { keepingRest, sheetKept } from '../state/keeping.ts';
import { sheetIdNew, sheetLay, sheetStart } from '../state/planStore.ts';
import { type KeptEntry, shelfRead } from '../state/shelf.ts';
import { keptPlan } from './readings.ts';

/** Starts the session on a kept plan; where it cannot be read that is said, and what is on the board stays. */
export async function keptStart({ id, file: raw }: KeptEntry, refusal: string): Promise<void> {
  try {
    const file = keptPlan(raw, refusal);
    if (file !== null) sheetStart(file, 'kept', await idClaim(id, file));
  } catch (error) {
    boardRefuse(refusal, [{ at: '', says: errorWords(error) }]);
  }
}

/** Lays a kept plan on the board. */
export async function keptLay(id: string, refusal: string): Promise<void> {
  try {
    // Its newest change may still be under way.
    await keepingRest();
    const entry = await shelfRead(id);
    if (entry === null) {
      boardRefuse(refusal, [{ at: '', says: 'The browser does not have it any more.' }]);
      return;
    }
    const file = keptPlan(entry.file, refusal);
    if (file !== null) sheetLay(`Open ${nameText(file.name)}`, file, 'kept', await idClaim(id, file));
  } catch (error) {
    boardRefuse(refusal, [{ at: '', says: errorWords(error) }]);
  }
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
