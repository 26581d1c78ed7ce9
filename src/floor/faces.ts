import type { Point } from '../geometry/point.ts';
import { regionCentroid } from '../geometry/region.ts';
import { loopsRegion, type Subdivision } from '../geometry/subdivision.ts';
import { GRID_PER_MM } from '../geometry/tolerance.ts';
import type { EdgeAlong } from '../plan/analysis.ts';
import type { Role } from './linework.ts';

export interface FloorFace {
  /** Number of the room; -1 where it is none. */
  readonly room: number;
  /** Number of the doorway whose opening it is; -1 where it is none. */
  readonly doorway: number;
  readonly obstacle: { readonly along: EdgeAlong; readonly id: string } | null;
  /** Whether screed lies here. */
  readonly floor: boolean;
}

/** What a face is, from the closed lines that it lies inside of. */
export function faceName(inside: ReadonlySet<number>, roles: readonly Role[]): FloorFace {
  let room = -1;
  let doorway = -1;
  let obstacle: FloorFace['obstacle'] = null;
  const holed = new Set<number>();
  const roomsIn: number[] = [];
  for (const chain of inside) {
    const role = roles[chain];
    if (role?.kind === 'room') roomsIn.push(role.room);
    else if (role?.kind === 'room-hole') holed.add(role.room);
    else if (role?.kind === 'doorway-floor') doorway = role.doorway;
    else if (role?.kind === 'obstacle') obstacle = { along: role.along, id: role.id };
  }
  const clear = roomsIn.filter((r) => !holed.has(r)).sort((a, b) => a - b);
  if (clear[0] !== undefined) {
    room = clear[0];
    doorway = -1;
  }
  return { room, doorway, obstacle, floor: (room >= 0 || doorway >= 0) && obstacle === null };
}

/** The middle of a face, mm. */
export function faceCentre(subdivision: Subdivision, face: number): Point {
  return regionCentroid(loopsRegion(subdivision, subdivision.faces[face]?.loops ?? [], GRID_PER_MM));
}
