import { baysRun } from './bays-run.ts';

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

process.exitCode = await baysRun(process.argv.slice(2), {
  folder: callerFolder(),
  out: process.stdout,
  err: process.stderr,
});
