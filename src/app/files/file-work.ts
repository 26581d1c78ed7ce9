import { documentsOf } from '../../documents/documents.ts';
import { planWrite } from '../../plan/write.ts';
import { fileStem, nameText } from '../parts/format.ts';
import type { Result } from '../state/analysisStore.ts';
import { boardRefuse, boardTell, errorWords } from '../state/boardStore.ts';
import { planSaved, planStore, sheetLay } from '../state/planStore.ts';
import { fontsFetch } from './fonts.ts';
import { filePlan } from './readings.ts';

export { keptLay, keptStart } from './kept-work.ts';

/** What is done with files, kept plans, and with reader, writer and papers: none of them has a place in the first view. */

/** Reads a plan file and lays it on the board; where it cannot be read, says what is wrong and where. */
export async function fileLay(file: File, refusal: string): Promise<void> {
  const name = nameText(file.name);
  const text = await fileText(file, refusal);
  if (text === null) return;
  const plan = filePlan(text, refusal);
  if (plan === null) return;
  sheetLay(`Open ${name}`, plan, 'file');
  boardTell(`${name} is on the board.`);
}

/** Null where the disk does not give it, which is said. */
async function fileText(file: File, refusal: string): Promise<string | null> {
  try {
    return await file.text();
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

const types: Readonly<Record<string, string>> = { json: 'application/json', csv: 'text/csv', svg: 'image/svg+xml' };

/** One paper of the last good result, as a download. */
export async function paperPut({ file, plan, analysis }: Result, name: string): Promise<void> {
  const source = { file, plan, analysis, date: today() };
  const paper = documentsOf(source, fontsFetch).find((each) => each.name === name);
  if (paper === undefined) throw new Error(`no paper named ${name}`);
  const type = types[name.split('.').at(-1) ?? ''] ?? 'text/plain';
  download(`${fileStem(plan.name)}-${name}`, type, (await paper.make()) as BlobPart);
}

/** By the clock of the machine, where it stands. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}

function download(name: string, type: string, content: BlobPart): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the file by the next turn.
  setTimeout(() => URL.revokeObjectURL(address));
}
