import { lateAsk } from '../late.ts';
import { fileStem, nameText } from '../parts/format.ts';
import { boardRefuse, boardStore, boardTell } from '../state/boardStore.ts';
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

/** One paper of the plan as it stands, or all of them, as a download. */
export async function paperDownload(paper: string): Promise<void> {
  const { laid, run } = papersStore.getState();
  if (laid === null) return;
  if (run !== null) {
    boardTell('Another paper is being made: press again when it is there.');
    return;
  }
  const made = await paperMake(paper);
  if (made === null) {
    boardRefuse(`The paper was not made. ${papersStore.getState().halted ?? ''}`.trim(), []);
    return;
  }
  refusalPast();
  const type = types[made.name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
  const name = papersStore.getState().laid?.result.plan.name ?? '';
  download(`${fileStem(name)}-${made.name}`, type, made.bytes as Uint8Array<ArrayBuffer>);
  if (made.isPast) boardTell('The plan was changed meanwhile: the paper has it as it was before. Make it again.');
}

/** Asks for an earlier version of the plan, to be compared with. */
export function earlierAsk(): void {
  fileAsk((file) => void earlierTake(file));
}

async function earlierTake(file: File): Promise<void> {
  const name = nameText(file.name);
  const refusal = `${name} was not compared.`;
  const earlier = await (await lateAsk(fileParts, refusal))?.fileRead(file, refusal);
  if (!earlier) return;
  await papersCompare({ name, file: earlier });
  const { halted } = papersStore.getState();
  if (halted === null) boardTell(`The plan is compared with ${name}.`);
  else boardRefuse(`${refusal} ${halted}`, []);
}

/** What was done after all stands refused no longer. */
function refusalPast(): void {
  if (boardStore.getState().notice?.tone === 'refused') boardStore.setState({ notice: null });
}
