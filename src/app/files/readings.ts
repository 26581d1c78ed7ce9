import { type PlanReading, planFrom, planRead } from '../../plan/read.ts';
import { PLAN_FORMAT, type PlanFile } from '../../plan/schema.ts';
import { boardRefuse } from '../state/boardStore.ts';

const noFloorWords = 'This file holds no floor plan. Choose a plan file, or a PDF, SVG or ZIP made by this planner.';

/** The plan in the text of a file; null where there is none, which is said. */
export function filePlan(text: string, refusal: string): PlanFile | null {
  const reading = planRead(text);
  // A picture or a letter has no line and column at which it would be wrong.
  if (reading.kind === 'plan' || text.includes(PLAN_FORMAT)) return readingTake(reading, refusal);
  boardRefuse(refusal, [{ at: '', says: noFloorWords }]);
  return null;
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
