import { lateAsk } from '../late.ts';
import { fileStem, nameText } from '../parts/format.ts';
import { boardRefuse } from '../state/boardStore.ts';
import { paperMake, papersCompare, papersStore } from '../state/papersRun.ts';
import { download } from './download.ts';
import { fileAsk, fileParts } from './files.ts';

const types: Readonly<Record<string, string>> = {
  json: 'application/json',
  csv: 'text/csv',
  svg: 'image/svg+xml',
  pdf: 'application/pdf',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  ics: 'text/calendar',
  zip: 'application/zip',
};

/** One paper of the last good result, or all of them, as a download. */
export async function paperDownload(name: string): Promise<void> {
  const { laid, run } = papersStore.getState();
  // One after the other: a second press while one is made is no second wish.
  if (laid === null || run !== null) return;
  const { plan } = laid.result;
  const made = await paperMake(name);
  if (made === null) {
    boardRefuse(`The paper was not made. ${papersStore.getState().halted ?? ''}`.trim(), []);
    return;
  }
  const type = types[made.name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
  download(`${fileStem(plan.name)}-${made.name}`, type, made.bytes as Uint8Array<ArrayBuffer>);
}

/** Asks for an earlier version of the plan, to be compared with. */
export function earlierAsk(): void {
  fileAsk((file) => void earlierTake(file));
}

async function earlierTake(file: File): Promise<void> {
  const name = nameText(file.name);
  const refusal = `${name} was not compared.`;
  const earlier = await (await lateAsk(fileParts, refusal))?.fileRead(file, refusal);
  if (earlier) await papersCompare({ name, file: earlier });
}
