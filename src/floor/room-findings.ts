import type { Subdivision } from '../geometry/subdivision.ts';
import { CRUMB_MM2, GRID_PER_MM } from '../geometry/tolerance.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import type { DoorwayFloor } from './doorways.ts';
import { type FloorFace, faceCentre } from './faces.ts';
import type { Linework, Role } from './linework.ts';

/** The part of a floor that these findings read. */
interface Floor {
  readonly subdivision: Subdivision;
  readonly faces: readonly FloorFace[];
}

/** Rooms that overlap, and rooms that leave no floor; those among `muddled`, whose outlines cross, have been told of. */
export function roomFindings(
  plan: Plan,
  linework: Pick<Linework, 'roles'>,
  floor: Floor,
  muddled: ReadonlySet<string>,
): FindingFact[] {
  const { subdivision } = floor;
  const perMm2 = GRID_PER_MM * GRID_PER_MM;
  const clearOf = new Map<number, number>();
  const overlaps = new Map<string, { a: number; b: number; area: number; face: number; largest: number }>();
  subdivision.faces.forEach((face, f) => {
    if (f === 0) return;
    const own = floor.faces[f]?.room ?? -1;
    clearOf.set(own, (clearOf.get(own) ?? 0) + face.area);
    const rooms: number[] = [];
    for (const chain of face.inside) {
      const role = linework.roles[chain];
      if (role?.kind === 'room' && !holeOf(face.inside, linework.roles, role.room)) rooms.push(role.room);
    }
    rooms.sort((a, b) => a - b);
    for (let i = 0; i < rooms.length; i++) {
      for (let j = i + 1; j < rooms.length; j++) {
        const [a, b] = [rooms[i] as number, rooms[j] as number];
        const known = overlaps.get(`${a},${b}`) ?? { a, b, area: 0, face: f, largest: 0 };
        known.area += face.area / perMm2;
        if (face.area > known.largest) Object.assign(known, { face: f, largest: face.area });
        overlaps.set(`${a},${b}`, known);
      }
    }
  });
  const findings: FindingFact[] = [];
  plan.rooms.forEach((room, i) => {
    const isThin = (clearOf.get(i) ?? 0) < CRUMB_MM2 * perMm2;
    if (!isThin || room.outline.length < 3 || muddled.has(room.id)) return;
    findings.push({ code: 'room-too-thin', name: room.name, at: room.outline[0] ?? null, refs: [room.id] });
  });
  for (const { a, b, area, face } of overlaps.values()) {
    const [p, q] = [plan.rooms[a], plan.rooms[b]];
    if (!p || !q || area < CRUMB_MM2) continue;
    findings.push({
      code: 'rooms-overlap',
      names: [p.name, q.name],
      areaM2: area / 1e6,
      at: faceCentre(subdivision, face),
      refs: [p.id, q.id],
    });
  }
  return findings;
}

function holeOf(inside: ReadonlySet<number>, roles: readonly Role[], room: number): boolean {
  for (const chain of inside) {
    const role = roles[chain];
    if (role?.kind === 'room-hole' && role.room === room) return true;
  }
  return false;
}

/** Rooms that neither a doorway nor an open edge joins to another. */
export function reachFindings(plan: Plan, floor: Floor, doorways: readonly (readonly DoorwayFloor[])[]): FindingFact[] {
  if (plan.rooms.length < 2) return [];
  const reached = new Set<number>();
  for (const joins of doorways) {
    for (const { rooms } of joins) if (rooms[0] !== rooms[1]) for (const room of rooms) reached.add(room);
  }
  for (const edge of floor.subdivision.edges) {
    const [left, right] = [floor.faces[edge.left], floor.faces[edge.right]];
    if (!left?.floor || !right?.floor || left.room < 0 || right.room < 0 || left.room === right.room) continue;
    reached.add(left.room);
    reached.add(right.room);
  }
  const firstFace = new Map<number, number>();
  floor.faces.forEach((face, f) => {
    if (face.floor && !firstFace.has(face.room)) firstFace.set(face.room, f);
  });
  return plan.rooms.flatMap((room, i): FindingFact[] => {
    const face = firstFace.get(i);
    if (reached.has(i) || face === undefined) return [];
    return [{ code: 'room-unreached', name: room.name, at: faceCentre(floor.subdivision, face), refs: [room.id] }];
  });
}
