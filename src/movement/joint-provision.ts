import { lineMiddle } from '../geometry/line.ts';
import type { JointLine, JointMovement } from '../plan/analysis.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { figureExceeds } from './figure.ts';
import type { JointDisplacement } from './joint-movement.ts';
import { sealantWidthNeeded } from './sealant.ts';
import { stripTakes } from './strip.ts';

/** What a joint must take beside what is provided. A structural joint has its own width; its foam closes like any other's. */
export function jointMovement(joint: JointLine, displacement: JointDisplacement, plan: Plan): JointMovement {
  const own = plan.structuralJoints.find((one) => joint.kind === 'structural' && joint.sources.includes(one.id));
  const profileMm = own?.widthMm ?? plan.jointProfile.widthMm;
  return {
    ...displacement,
    profileMm,
    profileTakesMm: stripTakes(profileMm, plan.jointProfile.usableTravel),
    sealantNeedsMm: sealantWidthNeeded(displacement.closingMm + displacement.openingMm, plan.sealant.capability),
  };
}

/** Where the profile closes further than its foam goes: a fault in the centred case, a caution where only the worst case does. */
export function profileFindings(joint: JointLine, movement: JointMovement): FindingFact[] {
  const at = lineMiddle(joint.line);
  const fact = { at, refs: [joint.id], joint: joint.id, takesMm: movement.profileTakesMm };
  if (figureExceeds(movement.closingMm, movement.profileTakesMm)) {
    return [{ ...fact, code: 'profile-overrun', needsMm: movement.closingMm }];
  }
  return figureExceeds(movement.worstClosingMm, movement.profileTakesMm)
    ? [{ ...fact, code: 'profile-worst-case', needsMm: movement.worstClosingMm }]
    : [];
}
