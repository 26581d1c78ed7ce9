import { parentPort } from 'node:worker_threads';
import { type PlanJob, planJobRunner } from './plan-job.ts';

/** A thread of the command line: plans come in, outcomes go out. */
const run = planJobRunner();
parentPort?.on('message', (job: PlanJob) => parentPort?.postMessage(run(job)));
