import type { BayFloor, HeldPlace, Split } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { bayRoomShares, placeRoomShares } from './room-share.ts';

type BayArea = Pick<BayFloor, 'room' | 'areaM2'>;

/** For each bay its area in each room. */
export function bayAreas(split: Pick<Split, 'pieces'>): ReadonlyMap<string, readonly BayArea[]> {
  const areas = new Map<string, BayArea[]>();
  for (const { bay, room, areaM2 } of split.pieces) {
    const own = areas.get(bay);
    if (own === undefined) areas.set(bay, [{ room, areaM2 }]);
    else own.push({ room, areaM2 });
  }
  return areas;
}

/** For each bay its floor in each room, and what of it lies on bare slab. */
export function bayFloors(
  plan: Pick<Plan, 'rooms'>,
  split: Pick<Split, 'pieces'>,
  held: readonly HeldPlace[],
): ReadonlyMap<string, readonly BayFloor[]> {
  const areas = bayAreas(split);
  const shares = bayRoomShares(areas);
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  const bare = new Map<string, Map<string, number>>();
  for (const place of held.filter(placeIsBare)) {
    const own = bare.get(place.bay) ?? new Map<string, number>();
    for (const { room, share } of placeRoomShares(place, shares, rooms)) {
      own.set(room, (own.get(room) ?? 0) + place.areaM2 * share);
    }
    bare.set(place.bay, own);
  }
  return new Map(
    [...areas].map(([bay, own]) => [bay, own.map((area) => ({ ...area, bareM2: bare.get(bay)?.get(area.room) ?? 0 }))]),
  );
}

/** Whether a held place has no insulation below: what is fixed through holds the floor, but stands on its insulation. */
export function placeIsBare({ cause }: HeldPlace): boolean {
  return cause !== 'fixed-through';
}
