import { once } from 'node:events';
import type { Writable } from 'node:stream';
import { documentStems } from './document-names.ts';
import { commandOf, type RunOptions, usage } from './options.ts';
import type { PlanJob } from './plan-job.ts';
import { outcomesInOrder } from './pool.ts';
import { type ProgressStream, progressOf } from './progress.ts';

/** Where the user stands, and what is read there of a run. */
export interface BaysCaller {
  readonly folder: string;
  readonly out: Writable;
  readonly err: ProgressStream;
}

/** The command line: plans in, analyses and documents out. `usage` says how.
 *  @returns the exit status */
export async function baysRun(args: readonly string[], caller: BaysCaller): Promise<number> {
  const command = commandOf(args);
  switch (command.kind) {
    case 'help':
      caller.out.write(usage);
      return 0;
    case 'misused':
      caller.err.write(`${command.message}\n\n${usage}`);
      return 2;
    case 'run':
      return plansRun(command.options, caller);
  }
}

async function plansRun(options: RunOptions, { folder, out, err }: BaysCaller): Promise<number> {
  const progress = progressOf(options.files.length, err);
  let status = 0;
  for await (const outcome of outcomesInOrder(jobsOf(options, folder), progress.within)) {
    status = Math.max(status, outcome.status);
    progress.step();
    if (outcome.output !== '' || outcome.problems.length > 0) progress.clear();
    for (const line of outcome.problems) err.write(`${line}\n`);
    // waits for a slow reader instead of holding thousands of analyses in memory
    if (!out.write(outcome.output)) await once(out, 'drain');
  }
  progress.clear();
  return status;
}

function jobsOf(options: RunOptions, folder: string): readonly PlanJob[] {
  const { files, json, quick, out, agree, compare, date } = options;
  const stems = out === null ? [] : documentStems(files);
  return files.map((file, i) => ({
    file,
    folder,
    json,
    effort: quick ? 'quick' : 'full',
    agree,
    compare,
    date: date ?? today(),
    documents: out === null ? null : { folder: out, stem: stems[i] as string },
  }));
}

/** By the clock of the machine, where it stands. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}
