import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { createAnalyser } from '../../src/analysis/analyser.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { manyRoomsPlan } from '../floors/many-rooms.ts';
import { planOf } from '../floors/read.ts';
import { type SpeedPlan, speedPlans } from './speed-plans.ts';

/** Time of one analysis, warm: the program has run before, the analyser is fresh and remembers nothing. */

export interface SpeedRow {
  readonly name: string;
  readonly medianMs: number;
  readonly fastestMs: number;
  readonly runs: number;
  /** Over the calibration loop of the same run, so that machines compare. */
  readonly ratio: number;
  readonly targetMs: number | null;
  /** Highest resident memory of a process of its own that analyses the plan five times. */
  readonly peakMb: number;
}

export interface SpeedResult {
  readonly calibrationMs: number;
  readonly rows: readonly SpeedRow[];
  /** Time grows as rooms to this power, 125 to 2,000 rooms. */
  readonly growth: number;
  readonly growthRows: readonly { readonly rooms: number; readonly medianMs: number }[];
}

export function speed(): SpeedResult {
  const calibrationMs = median(Array.from({ length: 7 }, () => timed(calibrationLoop)));
  const rows = speedPlans().map(({ name, targetMs, plan }: SpeedPlan): SpeedRow => {
    const time = analysisTime(plan());
    return { name, ...time, ratio: time.medianMs / calibrationMs, targetMs, peakMb: peakOf(name) };
  });
  const growthRows = [125, 250, 500, 1000, 2000].map((count) => ({
    rooms: count,
    medianMs: analysisTime(planOf(manyRoomsPlan(count))).medianMs,
  }));
  return { calibrationMs, rows, growth: exponent(growthRows), growthRows };
}

function peakOf(name: string): number {
  const script = fileURLToPath(new URL('peak.ts', import.meta.url));
  return Number(execFileSync(process.execPath, ['--import', 'tsx', script, name], { encoding: 'utf8' }));
}

function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Median of at least three runs and about two seconds, after half a second of warming up. */
function analysisTime(plan: Plan): Pick<SpeedRow, 'medianMs' | 'fastestMs' | 'runs'> {
  const run = () => timed(() => createAnalyser().analyse(plan));
  for (let warmMs = 0, n = 0; warmMs < 500 && n < 50; n++) warmMs += run();
  const times: number[] = [];
  for (let sumMs = 0; times.length < 3 || (sumMs < 2000 && times.length < 100); ) {
    const ms = run();
    sumMs += ms;
    times.push(ms);
  }
  return { medianMs: median(times), fastestMs: Math.min(...times), runs: times.length };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** Plain arithmetic and small arrays, the same on every run. */
function calibrationLoop(): void {
  let sum = 0;
  for (let i = 0; i < 2e6; i++) {
    const pair = [Math.hypot(i, 3), Math.sqrt(i + sum)] as const;
    sum = (sum + pair[0] + pair[1]) % 1000;
  }
  if (Number.isNaN(sum)) throw new Error('the calibration loop lost its sum');
}

/** Slope of a straight line through the logarithms. */
function exponent(rows: readonly { rooms: number; medianMs: number }[]): number {
  const points = rows.map(({ rooms, medianMs }) => [Math.log(rooms), Math.log(medianMs)] as const);
  const mean = (k: 0 | 1) => points.reduce((sum, p) => sum + p[k], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  const sxy = points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
  return sxy / points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
}
