/** Down to this scale lines have the full weight that their style gives them. */
const fullWeightScale = 150;
/** A line is still told from its neighbours at this share of its weight. */
const finestShare = 0.45;

/** Share of its full weight that a pen has at a scale. Bays shrink with the scale and lines of constant weight would close
 *  up the floor between them, so on small scales the pens are finer and the marks at the ends smaller, as in print.
 *  Letters and pins keep their size: they are read, and left out where they find no room.
 *
 *  @param paperPerPlan mm on paper for one mm on the plan
 *  Example: 1 : 50 -> 1; 1 : 200 -> 0.75; 1 : 500 -> 0.45 */
export function penShare(paperPerPlan: number): number {
  return Math.min(1, Math.max(finestShare, fullWeightScale * paperPerPlan));
}
