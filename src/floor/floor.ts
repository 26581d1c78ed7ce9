import type { Chain } from '../geometry/noding.ts';
import type { Point } from '../geometry/point.ts';
import { regionCentroid } from '../geometry/region.ts';
import { ringArea } from '../geometry/ring.ts';
import {
  facesBoundary,
  loopsRegion,
  type Subdivision,
  type SubdivisionEdge,
  subdivisionOf,
} from '../geometry/subdivision.ts';
import { CRUMB_MM2, GRID_PER_MM } from '../geometry/tolerance.ts';
import type { EdgeAlong } from '../plan/analysis.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { lineworkOf, type Role } from './linework.ts';
import { zoneRule } from './zones.ts';

/** Rooms, doorways, columns, pipes, joinery and joint lines of a plan become floor.
 *
 *  Accepts any plan that could be read. Guarantees that every place in a room or doorway and outside of holes, columns, pipes and
 *  built-off joinery is floor of exactly one face, that the joints which stand whatever they cost are barriers, and that
 *  what does not fit together is a finding with a place.
 *  Steps: linework (doorways bridged, joint ends snapped); one planar subdivision; faces named; barriers; parts. */
export interface Floor {
  readonly subdivision: Subdivision;
  readonly faces: readonly FloorFace[];
  /** By edge of the subdivision: the joint that separates the floor on its sides, or null. */
  readonly barriers: readonly (Barrier | null)[];
}

export interface FloorFace {
  /** Number of the room; -1 where it is none. */
  readonly room: number;
  /** Number of the doorway whose opening it is; -1 where it is none. */
  readonly doorway: number;
  readonly obstacle: { readonly along: EdgeAlong; readonly id: string } | null;
  /** Whether screed lies here. */
  readonly floor: boolean;
}

/** A line across a part that the search chose, on grid steps. */
export interface Cut {
  readonly kind: 'neck' | 'field';
  readonly line: readonly Point[];
}

export type Barrier =
  | { readonly kind: 'doorway' | 'structural' | 'drawn'; readonly id: string }
  | { readonly kind: 'zone'; readonly rooms: readonly [number, number] }
  | { readonly kind: 'neck' | 'field'; readonly cut: Cut };

export interface FloorPlan {
  readonly linework: { readonly chains: readonly Chain[]; readonly roles: readonly Role[] };
  readonly doorways: readonly ({ readonly rooms: readonly [number, number] } | null)[];
  readonly findings: readonly FindingFact[];
  readonly floor: Floor;
}

export function floorPlanOf(plan: Plan): FloorPlan {
  const { chains, roles, doorways, findings } = lineworkOf(plan);
  const floor = floorCut(plan, { chains, roles }, []);
  return {
    linework: { chains, roles },
    doorways,
    findings: [...findings, ...roomFindings(plan, { chains, roles }, floor), ...reachFindings(plan, floor, doorways)],
    floor,
  };
}

/** The floor with the chosen cuts in it as well. */
export function floorCut(plan: Plan, linework: FloorPlan['linework'], cuts: readonly Cut[]): Floor {
  const chains = [...linework.chains, ...cuts.map((cut) => ({ points: cut.line, closed: false }))];
  const subdivision = subdivisionOf(chains);
  const faces = subdivision.faces.map((face) => faceName(face.inside, linework.roles));
  const zones = zoneRule(plan, subdivision, faces);
  const barriers = subdivision.edges.map((edge) => barrierOf(edge, faces, linework.roles, cuts, zones));
  return { subdivision, faces, barriers };
}

function faceName(inside: ReadonlySet<number>, roles: readonly Role[]): FloorFace {
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

function barrierOf(
  edge: SubdivisionEdge,
  faces: readonly FloorFace[],
  roles: readonly Role[],
  cuts: readonly Cut[],
  zones: (a: number, b: number) => boolean,
): Barrier | null {
  const left = faces[edge.left];
  const right = faces[edge.right];
  if (!left || !right || edge.left === edge.right) return null;
  let found: Barrier | null = null;
  for (const chain of edge.chains) {
    const role = roles[chain];
    const cut = cuts[chain - roles.length];
    let barrier: Barrier | null = null;
    if (role?.kind === 'joint') barrier = { kind: role.joint, id: role.id };
    else if (cut) barrier = { kind: cut.kind, cut };
    if (barrier && (!found || standing(barrier) < standing(found))) found = barrier;
  }
  if (found && standing(found) <= standing({ kind: 'drawn' })) return found;
  if (left.room >= 0 && right.room >= 0 && left.room !== right.room && zones(left.room, right.room)) {
    return { kind: 'zone', rooms: [Math.min(left.room, right.room), Math.max(left.room, right.room)] };
  }
  return found;
}

/** Where several joints share a line, the one that must stand names it. */
function standing(barrier: { readonly kind: Barrier['kind'] }): number {
  return ['structural', 'doorway', 'drawn', 'zone', 'neck', 'field'].indexOf(barrier.kind);
}

/** Components of floor that no barrier separates: for each face its number, -1 where it is no floor. */
export function floorComponents(floor: Floor): { readonly of: readonly number[]; readonly count: number } {
  const { faces, barriers, subdivision } = floor;
  const around: number[][] = faces.map(() => []);
  subdivision.edges.forEach((edge, i) => {
    if (barriers[i] || edge.left === edge.right) return;
    if (!faces[edge.left]?.floor || !faces[edge.right]?.floor) return;
    around[edge.left]?.push(edge.right);
    around[edge.right]?.push(edge.left);
  });
  const of = new Array<number>(faces.length).fill(-1);
  let count = 0;
  faces.forEach((face, start) => {
    if (!face.floor || of[start] !== -1) return;
    const queue = [start];
    of[start] = count;
    for (let at = 0; at < queue.length; at++) {
      for (const other of around[queue[at] as number] ?? []) {
        if (of[other] !== -1) continue;
        of[other] = count;
        queue.push(other);
      }
    }
    count++;
  });
  return { of, count };
}

/** A point inside a face, mm. */
function faceCentre(subdivision: Subdivision, face: number): Point {
  return regionCentroid(loopsRegion(subdivision, subdivision.faces[face]?.loops ?? [], GRID_PER_MM));
}

function roomFindings(plan: Plan, linework: FloorPlan['linework'], floor: Floor): FindingFact[] {
  const { subdivision } = floor;
  const perMm2 = GRID_PER_MM * GRID_PER_MM;
  const evenOdd = new Map<number, number>();
  const overlaps = new Map<string, { a: number; b: number; area: number; face: number; largest: number }>();
  subdivision.faces.forEach((face, f) => {
    if (f === 0) return;
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
    } else if (inside < CRUMB_MM2) findings.push({ code: 'room-too-thin', name: room.name, at, refs: [room.id] });
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

function reachFindings(plan: Plan, floor: Floor, doorways: FloorPlan['doorways']): FindingFact[] {
  if (plan.rooms.length < 2) return [];
  const reached = new Set<number>();
  doorways.forEach((joins) => {
    if (joins && joins.rooms[0] !== joins.rooms[1]) for (const room of joins.rooms) reached.add(room);
  });
  for (const edge of floor.subdivision.edges) {
    const [left, right] = [floor.faces[edge.left], floor.faces[edge.right]];
    if (!left?.floor || !right?.floor || left.room < 0 || right.room < 0 || left.room === right.room) continue;
    reached.add(left.room);
    reached.add(right.room);
  }
  return plan.rooms.flatMap((room, i): FindingFact[] => {
    const face = floor.faces.findIndex((f) => f.room === i && f.floor);
    if (reached.has(i) || face < 0) return [];
    return [{ code: 'room-unreached', name: room.name, at: faceCentre(floor.subdivision, face), refs: [room.id] }];
  });
}

/** Boundary of a set of faces as regions in mm. */
export function floorRegions(floor: Floor, has: (face: number) => boolean, edges: readonly number[]) {
  return facesBoundary(floor.subdivision, has, edges).map((loops) =>
    loopsRegion(floor.subdivision, loops, GRID_PER_MM),
  );
}
