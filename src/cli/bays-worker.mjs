import { parentPort } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

/** A thread of the command line: says that it is ready, then plans come in and outcomes go out. In plain JavaScript, since
 *  Node 20 does not hand the loader of the main thread on to its workers. */
register();
const { planJobRunner } = await import('./plan-job.ts');
const run = planJobRunner();
parentPort?.on('message', async (job) => parentPort?.postMessage(await run(job)));
parentPort?.postMessage('ready');
