import { boxIndexOf } from '../geometry/box-index.ts';
import { regionsIntersect } from '../geometry/clip.ts';
import { regionArea } from '../geometry/region.ts';
import { boxOf } from '../geometry/ring.ts';
import { AREA_SLACK_M2 } from '../geometry/tolerance.ts';
import type { Bay } from '../plan/analysis.ts';
import type { Kin, Pair } from './compare-match.ts';

/** Which bay of one version is which of the other, by the floor that they have in common.
 *
 *  Two bays are one where more than half of the floor of each lies in the other. No two bays of one version hold more than half of a third, so that each
 *  has one partner at most, whatever the order they are looked at in, and swapping the versions gives the same pairs. A bay that is split goes on as its
 *  larger part; split in halves it is gone and two are new. Keys and rooms do not count: a bay that took over the key of another floor is not that bay. */

export interface BayMatch {
  readonly pairs: readonly Pair<Bay>[];
  /** Of bays that have a partner: the floor that both have. */
  readonly sharedM2: ReadonlyMap<Bay, number>;
  /** Of bays that have no partner: those of the other version that lie in them, or that they lie in, by more than half of the smaller of the two. */
  readonly kin: Kin<Bay>;
}

export function bayMatch(before: readonly Bay[], now: readonly Bay[]): BayMatch {
  const shared = sharedFloors(before, now);
  const pairs = shared.filter(({ bays, areaM2 }) => isOver(areaM2, Math.max(...bays.map((bay) => bay.areaM2)) / 2));
  const partners = new Map(pairs.map(({ bays }) => bays));
  const taken = new Set(pairs.flatMap(({ bays }) => bays));
  const near = shared.filter(({ bays, areaM2 }) => isOver(areaM2, Math.min(...bays.map((bay) => bay.areaM2)) / 2));
  const kinOf = (bay: Bay) =>
    near.flatMap(({ bays }) => (bays.includes(bay) ? bays.filter((each) => each !== bay) : []));
  return {
    pairs: [
      ...before.map((bay) => ({ before: bay, now: partners.get(bay) ?? null })),
      ...now.filter((bay) => !taken.has(bay)).map((bay) => ({ before: null, now: bay })),
    ],
    sharedM2: new Map(pairs.flatMap(({ bays, areaM2 }) => bays.map((bay) => [bay, areaM2]))),
    kin: new Map([...before, ...now].filter((bay) => !taken.has(bay)).map((bay) => [bay, kinOf(bay)])),
  };
}

function isOver(areaM2: number, leastM2: number): boolean {
  return areaM2 > leastM2 + AREA_SLACK_M2;
}

interface SharedFloor {
  readonly bays: readonly [before: Bay, now: Bay];
  readonly areaM2: number;
}

/** All bays that overlap. Most of a revised floor is as it was: bays with the same corners need no clipping. */
function sharedFloors(before: readonly Bay[], now: readonly Bay[]): readonly SharedFloor[] {
  const sameNow = new Map(now.map((bay) => [cornersText(bay), bay]));
  const same = before.flatMap((bay): SharedFloor[] => {
    const other = sameNow.get(cornersText(bay));
    return other === undefined ? [] : [{ bays: [bay, other], areaM2: bay.areaM2 }];
  });
  const found = new Set(same.flatMap(({ bays }) => bays));
  const [left, leftNow] = [before.filter((bay) => !found.has(bay)), now.filter((bay) => !found.has(bay))];
  const index = boxIndexOf(leftNow.map(({ outline }) => boxOf(outline)));
  const clipped = left.flatMap((bay) =>
    index
      .near(boxOf(bay.outline))
      .flatMap((i) => leftNow[i] ?? [])
      .map((other): SharedFloor => {
        const parts = regionsIntersect([bay], [other]);
        return { bays: [bay, other], areaM2: parts.reduce((sum, part) => sum + regionArea(part), 0) / 1e6 };
      }),
  );
  return [...same, ...clipped];
}

function cornersText({ outline, holes }: Bay): string {
  return [outline, ...holes].map((ring) => ring.join(' ')).join('\n');
}
