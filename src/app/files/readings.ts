import { type PlanReading, planFrom, planRead } from '../../plan/read.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { boardRefuse } from '../state/boardStore.ts';

/** The plan in the text of a file; null where there is none, which is said. */
export function filePlan(text: string, refusal: string): PlanFile | null {
  return readingTake(planRead(text), refusal);
}

/** The same for a plan as the browser kept it. */
export function keptPlan(raw: unknown, refusal: string): PlanFile | null {
  return readingTake(planFrom(raw), refusal);
}

function readingTake(reading: PlanReading, refusal: string): PlanFile | null {
  if (reading.kind === 'plan') return reading.file;
  const details = reading.problems.map(({ path, message }) => ({ at: path, says: message }));
  boardRefuse(refusal, details);
  return null;
}
