import type { Subdivision } from '../geometry/subdivision.ts';
import { CRUMB_MM2, GRID_PER_MM } from '../geometry/tolerance.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { faceCentre } from './faces.ts';
import type { Role } from './linework.ts';

/** What of a hole lies in its room and what outside, square grid steps. */
interface HoleArea {
  readonly room: number;
  within: number;
  outside: number;
  /** The largest face of it outside the room. */
  face: number;
  largest: number;
}

/** Holes that lie outside their room, wholly or in part: they take no floor there. */
export function holeFindings(plan: Plan, roles: readonly Role[], subdivision: Subdivision): FindingFact[] {
  const outlineOf = new Map(
    roles.flatMap((role, chain) => (role.kind === 'room' ? [[role.room, chain] as const] : [])),
  );
  const holes = new Map<number, HoleArea>();
  roles.forEach((role, chain) => {
    if (role.kind === 'room-hole') holes.set(chain, { room: role.room, within: 0, outside: 0, face: 0, largest: 0 });
  });
  if (holes.size === 0) return [];
  subdivision.faces.forEach((face, f) => {
    for (const chain of face.inside) {
      const hole = holes.get(chain);
      if (!hole) continue;
      if (face.inside.has(outlineOf.get(hole.room) ?? -1)) hole.within += face.area;
      else {
        hole.outside += face.area;
        if (face.area > hole.largest) Object.assign(hole, { face: f, largest: face.area });
      }
    }
  });
  const crumb = CRUMB_MM2 * GRID_PER_MM ** 2;
  return [...holes.values()].flatMap(({ room: number, within, outside, face }): FindingFact[] => {
    const room = plan.rooms[number];
    if (!room || outside <= crumb) return [];
    const areaM2 = outside / GRID_PER_MM ** 2 / 1e6;
    const at = faceCentre(subdivision, face);
    return [{ code: 'hole-off-room', name: room.name, areaM2, isWhole: within <= crumb, at, refs: [room.id] }];
  });
}
