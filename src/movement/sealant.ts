import { lineMiddle } from '../geometry/line.ts';
import type { JointLine, JointMovement } from '../plan/analysis.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { ruleSets } from '../plan/reference.ts';
import { figureExceeds } from './figure.ts';

/** Least width of a sealant line: the movement over what the sealant takes of its width.
 *  @param movementMm closing and opening still to come after sealing   @param capability share of the least width, 0.075 to 0.5
 *  @returns mm. Source: sources.json#sealant-width. Example: 4 mm, 0.3 -> 13.3 mm */
export function sealantWidthNeeded(movementMm: number, capability: number): number {
  return movementMm / capability;
}

/** Where a joint moves more than its sealant takes, with the width that it needs. It is asked of every joint, whatever covers it now: the
 *  covering is often chosen last. Not of a structural joint, which takes a profile for movement in three directions. */
export function sealantFindings(joint: JointLine, movement: JointMovement, widthMm: number): FindingFact[] {
  return joint.kind !== 'structural' && figureExceeds(movement.sealantNeedsMm, widthMm)
    ? [
        {
          code: 'sealant-narrow',
          at: lineMiddle(joint.line),
          refs: [joint.id],
          joint: joint.id,
          needsMm: movement.sealantNeedsMm,
          widthMm,
        },
      ]
    : [];
}

/** The plan's sealant width against the rule set's least: one width in the plan, one finding. */
export function sealantWidthFindings(plan: Plan): FindingFact[] {
  const leastMm = ruleSets[plan.ruleSet].sealantLeastWidth.value;
  const { widthMm } = plan.sealant;
  return figureExceeds(leastMm, widthMm) ? [{ code: 'sealant-least-width', at: null, refs: [], widthMm, leastMm }] : [];
}
