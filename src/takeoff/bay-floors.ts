import type { BayFloor, HeldPlace, Split } from '../plan/analysis.ts';

/** For each bay its floor in each room. */
export function bayFloors(split: Pick<Split, 'pieces'>): ReadonlyMap<string, readonly BayFloor[]> {
  const floors = new Map<string, BayFloor[]>();
  for (const { bay, room, areaM2 } of split.pieces) {
    const own = floors.get(bay);
    if (own === undefined) floors.set(bay, [{ room, areaM2 }]);
    else own.push({ room, areaM2 });
  }
  return floors;
}

/** For each bay that has any, its floor on bare slab. */
export function bareFloors(held: readonly HeldPlace[]): ReadonlyMap<string, number> {
  const bare = new Map<string, number>();
  for (const { bay, areaM2, cause } of held) {
    // what is fixed through holds the floor, but stands on its insulation
    if (cause !== 'fixed-through') bare.set(bay, (bare.get(bay) ?? 0) + areaM2);
  }
  return bare;
}
