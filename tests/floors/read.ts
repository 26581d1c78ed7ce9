import type { Plan } from '../../src/plan/plan.ts';
import { planFrom } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';

/** The plan as the product reads it. Throws where it refuses one that it should read. */
export function planOf(json: unknown): Plan {
  const reading = planFrom(JSON.parse(JSON.stringify(json)));
  if (reading.kind === 'refused')
    throw new Error(`refused: ${reading.problems.map((p) => `${p.path} ${p.message}`).join('; ')}`);
  return planResolve(reading.file);
}
