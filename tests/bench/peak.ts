import { createAnalyser } from '../../src/analysis/analyser.ts';
import { speedPlans } from './speed-plans.ts';

/** Prints the highest resident memory of a process that analyses one plan five times, MB. Started by speed.ts, one process a plan.
 *  usage: peak.ts NAME */

const RUNS = 5;

const plan = speedPlans()
  .find(({ name }) => name === process.argv[2])
  ?.plan();
if (!plan) throw new Error(`no plan is named ${process.argv[2]}`);
for (let i = 0; i < RUNS; i++) createAnalyser().analyse(plan);
process.stdout.write(String(process.resourceUsage().maxRSS / 1024));
