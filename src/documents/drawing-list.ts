import { boxOf } from '../geometry/ring.ts';
import type { Analysis } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import type { Drawing } from './drawing.ts';

/** The drawing of a plan with its bays, joints and findings. */
export function drawingOf(plan: Plan, _analysis: Analysis): Drawing {
  return { items: [], box: plan.rooms.length === 0 ? null : boxOf(plan.rooms.flatMap((room) => room.outline)) };
}
