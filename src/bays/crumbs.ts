import type { Region } from '../geometry/ring.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { Budget } from './budget.ts';
import { edgeCut, type Group, groupOf, isInner } from './group.ts';
import { layoutPrice, neighboursOf } from './improve.ts';
import { cutBarred } from './lattice.ts';
import { regionLayout } from './layout.ts';
import { piecePrice } from './leaf.ts';
import type { Part, PartCut } from './part.ts';
import { type Pieces, piecesOf, piecesRegion, regionSplit } from './pieces.ts';

/** The part with all bays paid for that no one would lay for the sake of a joint in grout: too narrow, or too small. */
export function crumbsCounted(part: Part): Part {
  return { ...part, grout: part.grout && { ...part.grout, counts: 'crumbs' } };
}

/** A layout with joints in grout and fewer crumbs of bays: each is laid out anew together with bays beside it, where that costs less than the crumb counts for. */
export function crumbsMended(region: Region, part: Part, cuts: readonly PartCut[], budget: Budget): readonly PartCut[] {
  const counting = crumbsCounted(part);
  const hopeless = new Set<string>();
  let here = cuts;
  for (let next: readonly PartCut[] | null = cuts; next !== null; ) {
    here = next;
    next = crumbMended(piecesOf(region, here), counting, budget, hopeless);
  }
  return here;
}

/** Every mend costs less than what it mends, so that there is a last one.
 *  @param hopeless groups that are known to have none
 *  @returns null where no crumb is better laid out anew */
function crumbMended(pieces: Pieces, part: Part, budget: Budget, hopeless: Set<string>): readonly PartCut[] | null {
  const beside = neighboursOf(pieces);
  const crumbs = pieces.faces.filter((face) =>
    piecesRegion(pieces, new Set([face])).some((bay) => piecePrice(bay, part) > 0),
  );
  for (const crumb of crumbs) {
    const others = [...(beside.get(crumb) ?? [])];
    for (const group of [...others.map((other) => new Set([crumb, other])), new Set([crumb, ...others])]) {
      const own = group.size <= MOST_IN_GROUP && !budget.isSpent ? groupOf(pieces, group, part) : null;
      if (own === null) continue;
      const name = JSON.stringify([own.floor.outline, own.inner]);
      const inner = hopeless.has(name) ? null : groupMended(own, budget);
      if (inner === null) {
        hopeless.add(name);
        continue;
      }
      const kept = pieces.between.filter((edge) => !isInner(pieces, edge, group));
      return [...kept.map((edge) => edgeCut(pieces, edge)), ...inner];
    }
  }
  return null;
}

const MOST_IN_GROUP = 6;

/** Cuts of a group that cost less; null where there are none, or where the floor is laid out with as many crumbs for the least joint as well. */
function groupMended({ floor, inner, part }: Group, budget: Budget): readonly PartCut[] | null {
  const options = { lines: GROUP_LINES, marginMm: 0, again: false, starts: 0, budget };
  const crumbs = (cuts: readonly PartCut[]) =>
    regionSplit(floor, cuts).filter((bay) => piecePrice(bay, part) > 0).length;
  if (crumbs(regionLayout(floor, { ...part, grout: null }, options).cuts) >= crumbs(inner)) return null;
  const { cuts } = regionLayout(floor, part, options);
  if (cuts.some((cut) => cutBarred(cut, part))) return null;
  const [after, before] = [cuts, inner].map((own) => layoutPrice(floor, part, own, 0).cost) as [number, number];
  return after < before - EQUAL_LENGTH_MM ? cuts : null;
}

/** Candidate lines an axis for a group of bays. */
const GROUP_LINES = 20;
