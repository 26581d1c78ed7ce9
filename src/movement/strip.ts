/** Movement that a foam strip takes: its thickness times the share of it that closes.
 *  @param thicknessMm mm   @param usableTravel share, 0 to 1
 *  @returns mm. Source: sources.json#foam-travel. Example: 8 mm, 0.5 -> 4 mm */
export function stripTakes(thicknessMm: number, usableTravel: number): number {
  return thicknessMm * usableTravel;
}
