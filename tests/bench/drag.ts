import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from '@playwright/test';
import { serveFolder } from '../../src/cli/server.mjs';
import { ringArea } from '../../src/geometry/ring.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { boardPlaces, rows, stepOpen } from '../app/board.ts';
import { chromiumArgs, findChromium } from '../tools/chromium.mjs';

/** How the screen keeps up while a corner of the 900 m2 demo is dragged, with the analysis following: in Chromium, over
 *  the built app. */
export interface DragFigures {
  /** Time from one frame to the next, ms. */
  readonly intervalsMs: readonly number[];
  /** Processor time of the page's main thread in each frame, ms. */
  readonly workMs: readonly number[];
  /** How long its tasks took in each frame, ms: with the time that they waited for the compositor and for a processor. */
  readonly tasksMs: readonly number[];
  /** Results of the analysis that came meanwhile. */
  readonly results: number;
  readonly floorM2: number;
}

const moves = 360;
const moveMs = 16;
/** The first moves warm the code up: nobody judges a drag by its first half second. */
const warmMoves = 60;

/** Builds the app and drags in it. */
export async function dragMeasure(): Promise<DragFigures> {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const folder = mkdtempSync(join(tmpdir(), 'screed-bays-'));
  const build = [join(root, 'node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'error', '--outDir', folder];
  const { status } = spawnSync(process.execPath, build, { cwd: root, stdio: 'inherit' });
  if (status !== 0) throw new Error('the app was not built');
  const executablePath = findChromium();
  const server = await serveFolder(folder, 0);
  const browser = await chromium.launch({
    args: [...chromiumArgs],
    ...(executablePath === undefined ? {} : { executablePath }),
  });
  try {
    return await dragOn(browser, server.address);
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true });
  }
}

async function dragOn(browser: Browser, address: string): Promise<DragFigures> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  await page.goto(address);
  await demoLay(page);
  const [x, y] = await cornerTake(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await dragAbout(page, x, y, warmMoves);
  await browser.startTracing(page, {
    categories: ['disabled-by-default-devtools.timeline', 'devtools.timeline', 'toplevel', 'blink.user_timing'],
  });
  await page.evaluate(frameWatch);
  await page.evaluate("performance.mark('drag-begins')");
  await dragAbout(page, x, y, moves);
  const intervalsMs = await page.evaluate<readonly number[]>('window.frameIntervals');
  const results = await page.evaluate<number>('window.resultsSeen');
  await page.evaluate("performance.mark('drag-ends')");
  const trace = JSON.parse((await browser.stopTracing()).toString('utf8')) as Trace;
  await page.mouse.up();
  const floorM2 = demo.rooms.reduce((sum, { outline }) => sum + ringArea(outline), 0) / 1e6;
  return { intervalsMs, ...workOf(trace), results, floorM2 };
}

const demo = JSON.parse(
  readFileSync(new URL('../../demo-plans/2-public-library.json', import.meta.url), 'utf8'),
) as PlanFile;

/** Lays the demo on the board by opening its file. */
async function demoLay(page: Page): Promise<void> {
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await asked).setFiles({
    name: 'floor.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(demo)),
  });
  await page.getByText(/^\d+ rooms, 8\d\d.* bays, \d+ joints\./).waitFor();
}

/** Chooses the largest room and gives the place of its first corner, px. */
async function cornerTake(page: Page): Promise<readonly [number, number]> {
  await stepOpen(page, 'Floor');
  const [room] = [...demo.rooms].sort((a, b) => ringArea(b.outline) - ringArea(a.outline));
  if (room === undefined) throw new Error('the demo has no room');
  await rows(page, 'Rooms')
    .filter({ hasText: room.name ?? room.id })
    .first()
    .click();
  const places = await boardPlaces(page);
  const [x, y] = room.outline[0] as readonly [number, number];
  return places(x, y);
}

/** Leads the hand about the place in a circle, a move every 16 ms. */
async function dragAbout(page: Page, x: number, y: number, count: number): Promise<void> {
  const began = performance.now();
  for (let i = 0; i < count; i += 1) {
    const turn = (i / 60) * 2 * Math.PI;
    await page.mouse.move(x + 30 * Math.sin(turn), y + 30 * Math.sin(turn * 0.7));
    const due = began + (i + 1) * moveMs - performance.now();
    if (due > 0) await new Promise((done) => setTimeout(done, due));
  }
}

/** Runs in the page: notes the time from frame to frame, and how many results came. As text: the runner's own helpers are not there. */
const frameWatch = `{
  const intervals = (window.frameIntervals = []);
  window.resultsSeen = 0;
  // The line in the head says the floor's area, which each result changes.
  const line = document.querySelector('.on-board');
  new MutationObserver(() => (window.resultsSeen += 1)).observe(line, { subtree: true, characterData: true });
  let last = null;
  const frame = (now) => {
    if (last !== null) intervals.push(now - last);
    last = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}`;

interface Trace {
  readonly traceEvents: readonly TraceEvent[];
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Tasks of the page's main thread while the corner was dragged, summed from one frame to the next. */
function workOf({ traceEvents }: Trace): Pick<DragFigures, 'workMs' | 'tasksMs'> {
  const markAt = (mark: string) => traceEvents.find(({ name }) => name === mark)?.ts ?? Number.NaN;
  const [from, to] = [markAt('drag-begins'), markAt('drag-ends')];
  const mains = traceEvents.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain');
  const frames = traceEvents.filter(({ name }) => name === 'FireAnimationFrame');
  const [frame] = frames;
  const main = mains.find(({ pid, tid }) => frame?.pid === pid && frame.tid === tid);
  if (main === undefined) throw new Error('the trace has no frames');
  const tasks = traceEvents.filter(
    ({ name, pid, tid, dur }) => name === 'RunTask' && pid === main.pid && tid === main.tid && dur !== undefined,
  );
  const ordered = [...tasks].sort((a, b) => a.ts - b.ts);
  const called = frames.filter(({ tid, ts }) => tid === main.tid && ts >= from && ts <= to).map(({ ts }) => ts);
  // All that is called for one frame is one task: a frame begins with it.
  const isFrame = ({ ts, dur = 0 }: TraceEvent) => called.some((at) => at >= ts && at <= ts + dur);
  const workMs: number[] = [];
  const tasksMs: number[] = [];
  const add = (sums: number[], us: number) => {
    if (sums.length > 0) sums[sums.length - 1] = (sums.at(-1) ?? 0) + us / 1000;
  };
  for (const task of ordered) {
    if (task.ts > to) break;
    if (isFrame(task)) {
      workMs.push(0);
      tasksMs.push(0);
    }
    add(workMs, task.tdur ?? Number.NaN);
    add(tasksMs, task.dur ?? Number.NaN);
  }
  return { workMs: workMs.slice(1, -1), tasksMs: tasksMs.slice(1, -1) };
}
