import { readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { dragMeasure } from './drag.ts';
import { type Figures, figuresPage } from './figures-page.ts';
import { hostileRows } from './hostile.ts';
import { leastJoint } from './least-joint.ts';
import { panMeasure } from './pan.ts';
import { papersRows } from './papers.ts';
import { placementRows, shakenRows } from './placement.ts';
import { speed } from './speed.ts';
import { tilesRows } from './tiles.ts';

/** `npm run bench`: how good, how steady and how fast. Without options everything is run.
 *  --least-joint N  N floors for each set of limits, without and with a core   --turn  --jitter  --speed  --drag  --pan  --tiles  --papers  --hostile  one part alone
 *  --write  into docs/figures.md: everything, or with parts named only those, the rest of the page as it was */

const { values } = parseArgs({
  options: {
    'least-joint': { type: 'string' },
    turn: { type: 'boolean', default: false },
    jitter: { type: 'boolean', default: false },
    speed: { type: 'boolean', default: false },
    drag: { type: 'boolean', default: false },
    pan: { type: 'boolean', default: false },
    tiles: { type: 'boolean', default: false },
    papers: { type: 'boolean', default: false },
    hostile: { type: 'boolean', default: false },
    write: { type: 'boolean', default: false },
  },
});

const usualFloors = 21;
const floors = Number(values['least-joint'] ?? usualFloors);
if (!Number.isInteger(floors) || floors < 1) throw new Error('--least-joint takes a whole number of floors');
const parts =
  values['least-joint'] !== undefined ||
  [values.turn, values.jitter, values.speed, values.drag, values.pan, values.tiles, values.papers, values.hostile].some(
    Boolean,
  );
const all = !parts;

async function run(): Promise<void> {
  const figures: Figures = {
    ...(all || values.speed ? { speed: speed() } : {}),
    ...(all || values.tiles ? { tiles: tilesRows() } : {}),
    ...(all || values.papers ? { papers: await papersRows() } : {}),
    ...(all || values.drag ? { drag: await dragMeasure() } : {}),
    ...(all || values.pan ? { pan: await panMeasure() } : {}),
    ...(all || values.hostile ? { hostile: hostileRows() } : {}),
    ...(all || values.turn ? { turned: placementRows(floors) } : {}),
    ...(all || values.jitter ? { shaken: shakenRows(floors) } : {}),
    ...(all || values['least-joint'] !== undefined ? { leastJoint: await leastJoint(floors) } : {}),
  };
  const page = `${figuresPage(figures)}\n`;
  process.stdout.write(page);
  if (!values.write) return;
  const file = new URL('../../docs/figures.md', import.meta.url);
  writeFileSync(file, all ? page : pageJoined(readFileSync(file, 'utf8'), page));
}

/** The page with the parts that were run anew; parts that it had not yet stand at its end. */
function pageJoined(before: string, now: string): string {
  const partsOf = (page: string) => page.trimEnd().split(/\n\n(?=## )/);
  const headOf = (part: string) => part.split('\n')[0] ?? '';
  const [, ...fresh] = partsOf(now);
  const old = partsOf(before);
  const heads = new Set(old.map(headOf));
  const kept = old.map((part) => fresh.find((each) => headOf(each) === headOf(part)) ?? part);
  return `${[...kept, ...fresh.filter((part) => !heads.has(headOf(part)))].join('\n\n')}\n`;
}

await run();
