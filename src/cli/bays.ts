import { once } from 'node:events';
import { documentStems } from './document-names.ts';
import { commandOf, type RunOptions, usage } from './options.ts';
import type { PlanJob } from './plan-job.ts';
import { outcomesInOrder } from './pool.ts';
import { progressOf } from './progress.ts';

/** The command line: plans in, analyses and documents out. `usage` says how. */
async function main(): Promise<number> {
  const command = commandOf(process.argv.slice(2));
  switch (command.kind) {
    case 'help':
      process.stdout.write(usage);
      return 0;
    case 'misused':
      process.stderr.write(`${command.message}\n\n${usage}`);
      return 2;
    case 'run':
      return run(command.options);
  }
}

async function run(options: RunOptions): Promise<number> {
  const progress = progressOf(options.files.length, process.stderr);
  let status = 0;
  for await (const outcome of outcomesInOrder(jobsOf(options))) {
    status = Math.max(status, outcome.status);
    progress.step();
    if (outcome.output !== '' || outcome.problems.length > 0) progress.clear();
    for (const line of outcome.problems) process.stderr.write(`${line}\n`);
    // waits for a slow reader instead of holding thousands of analyses in memory
    if (!process.stdout.write(outcome.output)) await once(process.stdout, 'drain');
  }
  progress.clear();
  return status;
}

function jobsOf({ files, json, quick, out, agree, compare, date }: RunOptions): readonly PlanJob[] {
  const stems = out === null ? [] : documentStems(files);
  return files.map((file, i) => ({
    file,
    folder: callerFolder(),
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

/** Where the user stands: npm runs its scripts from the project's folder and says where it was called from. */
function callerFolder(): string {
  const { npm_lifecycle_event: script, INIT_CWD: caller } = process.env;
  return script === 'bays' && caller !== undefined ? caller : process.cwd();
}

// a reader that has seen enough, such as `head`, is no fault
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

process.exitCode = await main();
