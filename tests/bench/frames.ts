import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from '@playwright/test';
import { serveFolder } from '../../src/cli/server.mjs';
import type { PlanFile } from '../../src/plan/schema.ts';
import { chromiumArgs, findChromium } from '../tools/chromium.mjs';

/** How the screen keeps up with a hand: frames and work of the built app in Chromium. */
export interface FrameFigures {
  /** Time from one frame to the next, ms. */
  readonly intervalsMs: readonly number[];
  /** Processor time of the page's main thread in each frame, ms. */
  readonly workMs: readonly number[];
  /** How long its tasks took in each frame, ms: with the time that they waited for the compositor and for a processor. */
  readonly tasksMs: readonly number[];
  /** Results of the analysis that came meanwhile. */
  readonly results: number;
}

/** Builds the app and hands a page of it to `work`, 1440 x 900. */
export async function appMeasured<T>(work: (browser: Browser, page: Page) => Promise<T>): Promise<T> {
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
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' });
    const page = await context.newPage();
    await page.goto(server.address);
    return await work(browser, page);
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true });
  }
}

/** Lays a plan on the board by opening its file. @param shown what the head says once it is there */
export async function planLay(page: Page, plan: PlanFile, shown: RegExp): Promise<void> {
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await asked).setFiles({
    name: 'floor.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(plan)),
  });
  await page.getByText(shown).waitFor();
}

/** Watches the frames while something is done. */
export async function framesOf(browser: Browser, page: Page, work: () => Promise<void>): Promise<FrameFigures> {
  await browser.startTracing(page, {
    categories: ['disabled-by-default-devtools.timeline', 'devtools.timeline', 'toplevel', 'blink.user_timing'],
  });
  await page.evaluate(frameWatch);
  await page.evaluate("performance.mark('work-begins')");
  await work();
  const intervalsMs = await page.evaluate<readonly number[]>('window.frameIntervals');
  const results = await page.evaluate<number>('window.resultsSeen');
  await page.evaluate("performance.mark('work-ends')");
  const trace = JSON.parse((await browser.stopTracing()).toString('utf8')) as Trace;
  return { intervalsMs, ...workOf(trace), results };
}

/** Does something each 16 ms, so often. */
export async function atPace(count: number, act: (i: number) => Promise<void>): Promise<void> {
  const began = performance.now();
  for (let i = 0; i < count; i += 1) {
    await act(i);
    const due = began + (i + 1) * paceMs - performance.now();
    if (due > 0) await new Promise((done) => setTimeout(done, due));
  }
}

const paceMs = 16;

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

/** Tasks of the page's main thread while the work was done, summed from one frame to the next. */
function workOf({ traceEvents }: Trace): Pick<FrameFigures, 'workMs' | 'tasksMs'> {
  const markAt = (mark: string) => traceEvents.find(({ name }) => name === mark)?.ts ?? Number.NaN;
  const [from, to] = [markAt('work-begins'), markAt('work-ends')];
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
    add(workMs, task.tdur ?? task.dur ?? Number.NaN);
    add(tasksMs, task.dur ?? Number.NaN);
  }
  return { workMs: workMs.slice(1, -1), tasksMs: tasksMs.slice(1, -1) };
}
