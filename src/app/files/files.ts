import { lateAsk, lateOf } from '../late.ts';
import { nameText } from '../parts/format.ts';

export const fileParts = lateOf(() => import('./file-work.ts'));

/** Asks for a plan file, to be laid on the board. */
export function filePick(): void {
  fileAsk((file) => void fileOpen(file));
}

/** Asks for a plan file, or a paper that carries a plan. */
export function fileAsk(take: (file: File) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,.pdf,.svg';
  input.addEventListener('change', () => {
    const [file] = input.files ?? [];
    if (file !== undefined) take(file);
  });
  input.click();
}

/** Takes a plan file that is dropped anywhere in the window. */
export function fileDropFollow(): void {
  window.addEventListener('dragover', (event) => event.preventDefault());
  window.addEventListener('drop', (event) => {
    event.preventDefault();
    const [file] = event.dataTransfer?.files ?? [];
    if (file !== undefined) void fileOpen(file);
  });
}

/** Lays a plan file on the board; where it cannot be, the sheet on the board stays. */
async function fileOpen(file: File): Promise<void> {
  const refusal = `${nameText(file.name)} was not opened. The sheet on the board is as it was.`;
  await (await lateAsk(fileParts, refusal))?.fileLay(file, refusal);
}

export async function planSave(): Promise<void> {
  const refusal = 'The plan was not saved.';
  await (await lateAsk(fileParts, refusal))?.planPut(refusal);
}
