import { readdirSync, readFileSync } from 'node:fs';
import type { Plan } from '../../src/plan/plan.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { manyRoomsPlan } from '../floors/many-rooms.ts';
import { planOf } from '../floors/read.ts';

/** A plan that speed and memory are measured on. */
export interface SpeedPlan {
  readonly name: string;
  readonly targetMs: number | null;
  readonly plan: () => Plan;
}

const demoFolder = new URL('../../demo-plans/', import.meta.url);
const demoTargets: readonly (readonly [string, number])[] = [
  ['dwelling', 16],
  ['public', 60],
  ['hall', 1000],
];

export function speedPlans(): SpeedPlan[] {
  const files = readdirSync(demoFolder)
    .filter((file) => file.endsWith('.json'))
    .sort();
  const demos = files.flatMap((file): SpeedPlan[] => {
    const target = demoTargets.find(([word]) => file.includes(word));
    const row = (name: string, read: (text: string) => PlanFile): SpeedPlan => {
      const plan = () => planOf(read(readFileSync(new URL(file, demoFolder), 'utf8')));
      return { name, targetMs: target?.[1] ?? null, plan };
    };
    const name = file.replace('.json', '');
    return [row(name, JSON.parse), row(`${name}, least joint, no tiles`, (text) => untiled(JSON.parse(text)))];
  });
  return [...demos, { name: '1,000 different rooms', targetMs: 2000, plan: () => planOf(manyRoomsPlan(1000)) }];
}

/** The screed alone: as the plan lays out without a thought for its tiles. */
function untiled({ tiles: _, tileFields: __, layout, ...file }: PlanFile): PlanFile {
  return { ...file, layout: { ...layout, aim: 'least-joint' } };
}
