import { readdirSync, readFileSync } from 'node:fs';
import type { Plan } from '../../src/plan/plan.ts';
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
  const demos = files.map((file): SpeedPlan => {
    const target = demoTargets.find(([word]) => file.includes(word));
    const plan = () => planOf(JSON.parse(readFileSync(new URL(file, demoFolder), 'utf8')));
    return { name: file.replace('.json', ''), targetMs: target?.[1] ?? null, plan };
  });
  return [...demos, { name: '1,000 different rooms', targetMs: 2000, plan: () => planOf(manyRoomsPlan(1000)) }];
}
