import { regionsIntersect, regionsSubtract, regionsUnion } from '../geometry/clip.ts';
import { pointBetween, pointDistance } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Room } from '../plan/plan.ts';
import { type BayBody, regionsWide } from './bay-body.ts';

/** The floor of a bay that is counted to one of its rooms, mm: all of it where the bay has no other, and with the room's floor that of doorways
 *  which opens to it. Where rooms overlap the floor is the first one's.
 *  @param rooms the plan's, by id, in the plan's order
 *  Example: a bay of 6 x 4 m over two rooms of 3 x 4 m with no wall between -> 3 x 4 m for each. */
export function bayFloorOf(bay: BayBody, room: Room, rooms: ReadonlyMap<string, Room>): readonly Region[] {
  if (!bay.rooms.includes(room.id)) return [];
  if (bay.rooms.length === 1) return [bay.region];
  const sharing = [...rooms.values()].filter(({ id }) => bay.rooms.includes(id));
  const earlier = sharing.slice(0, sharing.indexOf(room));
  const own = regionsSubtract(regionsIntersect([bay.region], [room]), earlier);
  const openings = regionsWide(regionsSubtract([bay.region], sharing));
  return regionsUnion(
    own,
    openings.filter((opening) => openingRoom(opening, sharing) === room),
  );
}

/** The room along whose edge the floor of an opening lies furthest. */
function openingRoom(opening: Region, rooms: readonly Room[]): Room | undefined {
  const along = rooms.map((room) => sharedMm(opening.outline, [room.outline, ...room.holes]));
  return rooms[along.indexOf(Math.max(...along))];
}

/** Length of a ring along other rings, mm. */
function sharedMm(ring: Ring, others: readonly Ring[]): number {
  return ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    const isShared = [a, pointBetween(a, b, 0.5), b].every((p) =>
      others.some((other) =>
        other.some((q, k) => segmentDistance(q, other[(k + 1) % other.length] ?? q, p) <= WELD_MM),
      ),
    );
    return isShared ? sum + pointDistance(a, b) : sum;
  }, 0);
}
