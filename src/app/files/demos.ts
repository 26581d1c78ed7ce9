import type { PlanFile } from '../../plan/schema.ts';
import { type Late, lateAsk, lateOf } from '../late.ts';
import { sheetLay, sheetStart } from '../state/planStore.ts';

/** The demo plans that ship with the app. They are plan files of this version, checked by the tests like any other, so
 *  that the first view need not wait for the reader of foreign files. */
const loaders = import.meta.glob<PlanFile>('../../../demo-plans/*.json', { import: 'default' });

export interface Demo {
  readonly path: string;
  readonly name: string;
  readonly file: Late<PlanFile>;
}

/** In the order of their file names. */
export const demos: readonly Demo[] = Object.entries(loaders)
  .sort(([a], [b]) => (a < b ? -1 : 1))
  .map(([path, load]) => ({ path, name: nameOf(path), file: lateOf(load) }));

export const demoParts: readonly Late<PlanFile>[] = demos.map(({ file }) => file);

/** "1-dwelling.json" -> "Dwelling". */
function nameOf(path: string): string {
  const words = (path.split('/').at(-1) ?? path)
    .replace(/\.json$/, '')
    .replace(/^\d+-/, '')
    .replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Starts the session on the demo that shows most at a glance: the first. */
export async function demoStart(): Promise<void> {
  const [first] = demos;
  const file = first === undefined ? null : await demoRead(first);
  if (file !== null) sheetStart(file, 'demo');
}

export async function demoLay(demo: Demo): Promise<void> {
  const file = await demoRead(demo);
  if (file !== null) sheetLay(`Demo ${demo.name}`, file, 'demo');
}

function demoRead({ name, file }: Demo): Promise<PlanFile | null> {
  return lateAsk(file, `The demo "${name}" could not be laid on the board.`);
}
