import type { Point } from '../geometry/point.ts';
import { regionCentroid } from '../geometry/region.ts';
import { ringArea } from '../geometry/ring.ts';
import { loopsRegion, type Subdivision } from '../geometry/subdivision.ts';
import { CRUMB_MM2, GRID_PER_MM } from '../geometry/tolerance.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import type { DoorwayFloor } from './doorways.ts';
import type { FloorFace } from './faces.ts';
import type { Linework, Role } from './linework.ts';

/** The part of a floor that these findings read. */
interface Floor {
  readonly subdivision: Subdivision;
  readonly faces: readonly FloorFace[];
}

/** A point inside a face, mm. */
function faceCentre(subdivision: Subdivision, face: number): Point {
  return regionCentroid(loopsRegion(subdivision, subdivision.faces[face]?.loops ?? [], GRID_PER_MM));
}

/** Outlines that cross themselves, rooms that overlap, rooms that leave no floor. */
export function roomFindings(plan: Plan, linework: Pick<Linework, 'chains' | 'roles'>, floor: Floor): FindingFact[] {
  const { subdivision } = floor;
  const perMm2 = GRID_PER_MM * GRID_PER_MM;
  const evenOdd = new Map<number, number>();
  const clearOf = new Map<number, number>();
  const overlaps = new Map<string, { a: number; b: number; area: number; face: number; largest: number }>();
  subdivision.faces.forEach((face, f) => {
    if (f === 0) return;
    const own = floor.faces[f]?.room ?? -1;
    clearOf.set(own, (clearOf.get(own) ?? 0) + face.area);
    const rooms: number[] = [];
    for (const chain of face.inside) {
      evenOdd.set(chain, (evenOdd.get(chain) ?? 0) + face.area);
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
  linework.roles.forEach((role, chain) => {
    if (role.kind !== 'room') return;
    const room = plan.rooms[role.room];
    if (!room) return;
    const drawn = ringArea(linework.chains[chain]?.points ?? []) / perMm2;
    const inside = (evenOdd.get(chain) ?? 0) / perMm2;
    const clear = (clearOf.get(role.room) ?? 0) / perMm2;
    const at = room.outline[0] ?? null;
    const walk = subdivision.walks[chain] ?? [];
    const slack = CRUMB_MM2 + walk.length * CRUMB_MM2;
    if (Math.abs(drawn - inside) > Math.max(slack, drawn * 0.001)) {
      findings.push({
        code: 'outline-crossing',
        name: room.name,
        at: crossingPlace(subdivision, walk) ?? at,
        refs: [room.id],
      });
    } else if (clear < CRUMB_MM2) findings.push({ code: 'room-too-thin', name: room.name, at, refs: [room.id] });
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

/** The first point that the outline passes twice. */
function crossingPlace(subdivision: Subdivision, walk: readonly number[]): Point | null {
  const seen = new Set<number>();
  for (const p of walk.slice(0, -1)) {
    if (seen.has(p)) return [(subdivision.x[p] as number) / GRID_PER_MM, (subdivision.y[p] as number) / GRID_PER_MM];
    seen.add(p);
  }
  return null;
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
