import type { FindingFact } from '../plan/finding.ts';
import type { Screed } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import type { BayStrain } from './bay-strain.ts';
import { type HeldGround, heldPlaceCount } from './held-place.ts';
import type { MovingBay } from './joint-movement.ts';
import { strainStress } from './strain.ts';

/** Stress between two held places and what the screed bears, N/mm2. */
export interface Restraint {
  readonly stress: 'compression' | 'tension';
  readonly stressNPerMm2: number;
  readonly strengthNPerMm2: number;
}

/** Tensile strength of a screed, taken as a share of its flexural class.
 *  @param flexuralNPerMm2 N/mm2   @returns N/mm2. Source: sources.json#tensile-half. Example: F4 -> 2 N/mm2 */
export function tensileStrength(flexuralNPerMm2: number): number {
  return flexuralNPerMm2 * rules.tensileShare.value;
}

/** The worse of the two cases of a bay held in two places: compression between them as it warms and swells, against the compressive
 *  class; tension between them as it cools and shrinks, against the tensile strength. The stiffest screed of the class is taken, creep is
 *  ignored. The tension that warming brings beside the held places is local and not figured here: held in two places is a fault as it is.
 *  Source: sources.json#held-stress. Example: 0.3e-3 of growing, nothing else, 25,000 N/mm2, C25 -> 7.5 of 25 N/mm2, compression. */
export function bayRestraint(strain: BayStrain, screed: Screed): Restraint {
  const [, stiffest] = screed.elasticModulusNPerMm2;
  const compression: Restraint = {
    stress: 'compression',
    stressNPerMm2: strainStress(strain.growing, stiffest),
    strengthNPerMm2: screed.compressiveNPerMm2,
  };
  const tension: Restraint = {
    stress: 'tension',
    stressNPerMm2: strainStress(strain.shortening, stiffest),
    strengthNPerMm2: tensileStrength(screed.flexuralNPerMm2),
  };
  const use = ({ stressNPerMm2, strengthNPerMm2 }: Restraint) => stressNPerMm2 / strengthNPerMm2;
  return use(tension) > use(compression) ? tension : compression;
}

/** A finding where a bay is held in more than one place. */
export function restraintFindings(bay: MovingBay, grounds: readonly HeldGround[], screed: Screed): FindingFact[] {
  if (heldPlaceCount(grounds) < 2) return [];
  return [
    {
      code: 'held-twice',
      at: bay.stillPoint,
      refs: [bay.body.id, ...grounds.map((ground) => ground.place.object)],
      bay: bay.body.id,
      names: grounds.map((ground) => ground.name),
      ...bayRestraint(bay.strain, screed),
    },
  ];
}
