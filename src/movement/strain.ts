/** The formulas that everything else in this folder rests on, one a function. */

/** Strain of screed that warms or cools evenly: expansion times temperature difference.
 *  @param expansionPerK 1/K, 5e-6 to 40e-6   @param differenceK K, 0 to 100
 *  @returns mm/mm. Valid while the whole thickness is at one temperature. Source: sources.json#linear-expansion.
 *  Example: 12e-6 1/K, 25 K -> 0.3e-3 */
export function strainThermal(expansionPerK: number, differenceK: number): number {
  return expansionPerK * differenceK;
}

/** Strain of screed that swells or shrinks with its moisture.
 *  @param movementMmPerM mm per m still to come, 0 to 1
 *  @returns mm/mm. Source: sources.json#shrinkage. Example: 0.5 mm/m -> 0.5e-3 */
export function strainMoisture(movementMmPerM: number): number {
  return movementMmPerM / 1000;
}

/** Free change of length: strain times the run from the point of no movement.
 *  @param strain mm/mm   @param runMm mm
 *  @returns mm. Valid while nothing holds the bay on that run. Source: sources.json#linear-expansion.
 *  Example: 0.3e-3 over 4000 mm -> 1.2 mm */
export function strainMovement(strain: number, runMm: number): number {
  return strain * runMm;
}

/** Stress in screed that is kept from its strain: elastic modulus times strain. Creep, which eases it over weeks, is ignored.
 *  @param strain mm/mm   @param elasticModulusNPerMm2 N/mm2, 10,000 to 40,000
 *  @returns N/mm2. Valid while the screed is held fully and not cracked. Source: sources.json#held-stress.
 *  Example: 12e-6 1/K over 25 K = 0.3e-3, 20,000 N/mm2 -> 6.0 N/mm2 */
export function strainStress(strain: number, elasticModulusNPerMm2: number): number {
  return strain * elasticModulusNPerMm2;
}
