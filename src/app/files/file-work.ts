import { isPaper, paperIsLocked, planTextIn } from '../../documents/plan-data.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { planWrite } from '../../plan/write.ts';
import { fileStem, nameText } from '../parts/format.ts';
import { boardRefuse, boardTell, errorWords } from '../state/boardStore.ts';
import { planSaved, planStore, sheetLay } from '../state/planStore.ts';
import { download } from './download.ts';
import { filePlan } from './readings.ts';

export { keptLay, keptStart } from './kept-work.ts';

/** What is done with files, kept plans, and with reader and writer: none of them has a place in the first view. */

/** Reads a plan file, or a paper that carries a plan, and lays it on the board; where it cannot be read, says what is wrong and where. */
export async function fileLay(file: File, refusal: string): Promise<void> {
  const name = nameText(file.name);
  const plan = await fileRead(file, refusal);
  if (plan === null) return;
  sheetLay(`Open ${name}`, plan, 'file');
  boardTell(`${name} is on the board.`);
}

/** The plan of a plan file, or of a paper that carries one; null where it cannot be read, which is said. */
export async function fileRead(file: File, refusal: string): Promise<PlanFile | null> {
  const text = await fileText(file, refusal);
  return text === null ? null : filePlan(text, refusal);
}

const lockedWords = 'This PDF is locked with a password. Save it without one, and open that.';

/** Null where the disk does not give it or a password locks it, which is said; empty where a paper carries no plan. */
async function fileText(file: File, refusal: string): Promise<string | null> {
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    if (!isPaper(bytes)) return new TextDecoder().decode(bytes);
    const text = planTextIn(bytes);
    if (text !== null || !paperIsLocked(bytes)) return text ?? '';
    boardRefuse(refusal, [{ at: '', says: lockedWords }]);
    return null;
  } catch (error) {
    boardRefuse(refusal, [{ at: '', says: errorWords(error) }]);
    return null;
  }
}

interface SavePicker {
  showSaveFilePicker(options: {
    readonly suggestedName: string;
    readonly types: readonly { readonly description: string; readonly accept: Readonly<Record<string, string[]>> }[];
  }): Promise<FileSystemFileHandle>;
}

/** Saves the plan where the user says; as a download where the browser cannot ask. */
export async function planPut(refusal: string): Promise<void> {
  const { file } = planStore.getState().history.present;
  const name = `${fileStem(file.name)}.json`;
  const text = planWrite(file);
  if (!('showSaveFilePicker' in window)) {
    download(name, 'application/json', text);
    planSaved(file);
    return;
  }
  try {
    const types = [{ description: 'Plan', accept: { 'application/json': ['.json'] } }];
    const handle = await (window as unknown as SavePicker).showSaveFilePicker({ suggestedName: name, types });
    const stream = await handle.createWritable();
    await stream.write(text);
    await stream.close();
    planSaved(file);
    boardTell(`Saved as ${nameText(handle.name)}.`);
  } catch (error) {
    // Closing the question without an answer is no fault.
    if (error instanceof DOMException && error.name === 'AbortError') return;
    boardRefuse(refusal, [{ at: '', says: errorWords(error) }]);
  }
}
