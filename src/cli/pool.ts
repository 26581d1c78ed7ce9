import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import {
  errorText,
  failed,
  type PlanJob,
  type PlanOutcome,
  planJobRunner,
  problemLine,
  type ToldJob,
} from './plan-job.ts';

/** Fewer plans are done sooner than workers start. */
const fewestForWorkers = 12;
/** Plans under way or done and not yet printed, for each worker: bounds the memory when the first of many is slow. */
const aheadPerWorker = 6;

/** The outcomes of the jobs in the order given, on all cores where there are many. @param told how far a plan is, where they are few */
export async function* outcomesInOrder(jobs: readonly PlanJob[], told: ToldJob): AsyncGenerator<PlanOutcome> {
  const count = Math.min(availableParallelism(), Math.floor(jobs.length / 2));
  if (jobs.length < fewestForWorkers || count < 2) {
    const run = planJobRunner();
    for (const job of jobs) yield await run(job, told);
    return;
  }
  const pool = new WorkerPool(count);
  try {
    const ahead: Promise<PlanOutcome>[] = [];
    let next = 0;
    for (;;) {
      while (next < jobs.length && ahead.length < count * aheadPerWorker) ahead.push(pool.run(jobs[next++] as PlanJob));
      const first = ahead.shift();
      if (first === undefined) return;
      yield await first;
    }
  } finally {
    await pool.close();
  }
}

interface Task {
  readonly job: PlanJob;
  readonly done: (outcome: PlanOutcome) => void;
  readonly broken: (error: unknown) => void;
}

/** Workers that each do one plan at a time. One that breaks down over a plan costs that plan and is replaced; one that does
 *  not even start is a fault of ours and ends the call. */
class WorkerPool {
  private readonly waiting: Task[] = [];
  private readonly idle: Worker[] = [];
  private readonly busy = new Map<Worker, Task>();
  private readonly all = new Set<Worker>();

  constructor(count: number) {
    for (let i = 0; i < count; i++) this.start();
  }

  run(job: PlanJob): Promise<PlanOutcome> {
    return new Promise((done, broken) => {
      this.waiting.push({ job, done, broken });
      this.assign();
    });
  }

  async close(): Promise<void> {
    await Promise.all([...this.all].map((worker) => worker.terminate()));
  }

  private start(): void {
    const worker = new Worker(new URL('./bays-worker.mjs', import.meta.url));
    let ready = false;
    this.all.add(worker);
    worker.on('message', (message: 'ready' | PlanOutcome) => {
      if (message !== 'ready') this.busy.get(worker)?.done(message);
      ready = true;
      this.busy.delete(worker);
      this.idle.push(worker);
      this.assign();
    });
    worker.on('error', (error) => {
      this.all.delete(worker);
      if (!ready) {
        for (const task of this.waiting.splice(0)) task.broken(error);
        return;
      }
      const task = this.busy.get(worker);
      this.busy.delete(worker);
      task?.done(failed(task.job, [problemLine(task.job.file, '', `could not be analysed: ${errorText(error)}`)]));
      this.start();
    });
  }

  private assign(): void {
    while (this.idle.length > 0 && this.waiting.length > 0) {
      const worker = this.idle.pop() as Worker;
      const task = this.waiting.shift() as Task;
      this.busy.set(worker, task);
      worker.postMessage(task.job);
    }
  }
}
