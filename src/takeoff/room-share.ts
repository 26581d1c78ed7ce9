import { ringContains } from '../geometry/ring.ts';
import type { BayFloor, HeldPlace, JointLine } from '../plan/analysis.ts';
import type { Room } from '../plan/plan.ts';

/** Part of something that falls to a room, 0 to 1. */
export interface RoomShare {
  readonly room: string;
  readonly share: number;
}

export type BayShares = ReadonlyMap<string, readonly RoomShare[]>;

/** For each bay the rooms that it lies in, by floor area. */
export function bayRoomShares(
  bays: Iterable<readonly [bay: string, floors: readonly Pick<BayFloor, 'room' | 'areaM2'>[]]>,
): BayShares {
  return new Map(
    [...bays].map(([bay, floors]) => {
      const areaM2 = floors.reduce((sum, floor) => sum + floor.areaM2, 0);
      return [bay, floors.map((floor) => ({ room: floor.room, share: floor.areaM2 / areaM2 }))];
    }),
  );
}

/** A joint falls half to each of its bays; a bay in several rooms passes its half on by floor area. So a joint inside a room is that room's,
 *  and one in a doorway is shared by the two rooms. */
export function jointRoomShares(joint: JointLine, bays: BayShares): readonly (RoomShare & { readonly bay: string })[] {
  return joint.bays.flatMap((bay) => (bays.get(bay) ?? []).map(({ room, share }) => ({ bay, room, share: share / 2 })));
}

/** A held place falls to the room that it is the floor of, or else to the room of its bay that its centre lies in; where it lies in none, to the
 *  bay's rooms by floor area. */
export function placeRoomShares(
  place: HeldPlace,
  bays: BayShares,
  rooms: ReadonlyMap<string, Room>,
): readonly RoomShare[] {
  if (rooms.has(place.object)) return [{ room: place.object, share: 1 }];
  const shares = bays.get(place.bay) ?? [];
  const own = shares.find(({ room }) => ringContains(rooms.get(room)?.outline ?? [], place.centre));
  return own === undefined ? shares : [{ room: own.room, share: 1 }];
}
