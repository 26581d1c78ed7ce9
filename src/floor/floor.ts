import type { Chain } from '../geometry/noding.ts';
import { type Subdivision, type SubdivisionEdge, subdivisionOf } from '../geometry/subdivision.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { type Barrier, type Cut, isStanding, type StandingBarrier } from './barrier.ts';
import type { DoorwayFloor } from './doorways.ts';
import { type FloorFace, faceName } from './faces.ts';
import { holeFindings } from './hole-findings.ts';
import { lineworkOf, type Role } from './linework.ts';
import { offFloorFindings } from './off-floor.ts';
import { outlineFindings } from './outline-crossings.ts';
import { reachFindings, roomFindings } from './room-findings.ts';
import { takenJointFindings } from './taken-joints.ts';
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
  /** By edge where several joints share a line: those that stand there besides. */
  readonly shared: ReadonlyMap<number, readonly StandingBarrier[]>;
}

export interface FloorPlan {
  readonly linework: { readonly chains: readonly Chain[]; readonly roles: readonly Role[] };
  /** By doorway: the openings that it makes, the widest first. */
  readonly doorways: readonly (readonly DoorwayFloor[])[];
  readonly findings: readonly FindingFact[];
  /** Ids of things that touch no floor. */
  readonly offFloor: ReadonlySet<string>;
  readonly floor: Floor;
}

export function floorPlanOf(plan: Plan): FloorPlan {
  const { chains, roles, doorways, findings } = lineworkOf(plan);
  const floor = floorCut(plan, { chains, roles }, []);
  const offFloor = offFloorFindings(plan, { chains, roles });
  const crossings = outlineFindings(plan, { chains, roles }, floor.subdivision);
  return {
    linework: { chains, roles },
    doorways,
    findings: [
      ...findings,
      ...crossings,
      ...holeFindings(plan, roles, floor.subdivision),
      ...roomFindings(plan, { roles }, floor, new Set(crossings.flatMap((finding) => finding.refs))),
      ...reachFindings(plan, floor, doorways),
      ...offFloor,
      ...takenJointFindings(plan, floor),
    ],
    offFloor: new Set(offFloor.flatMap(({ refs }) => refs)),
    floor,
  };
}

/** The floor with the chosen cuts in it as well. */
export function floorCut(plan: Plan, linework: FloorPlan['linework'], cuts: readonly Cut[]): Floor {
  const chains = [...linework.chains, ...cuts.map((cut) => ({ points: cut.line, closed: false }))];
  const subdivision = subdivisionOf(chains);
  const faces = subdivision.faces.map((face) => faceName(face.inside, linework.roles));
  const zones = zoneRule(plan, subdivision, faces);
  const shared = new Map<number, readonly StandingBarrier[]>();
  const barriers = subdivision.edges.map((edge, i) => {
    const [first = null, ...others] = barriersOf(edge, faces, linework.roles, cuts, zones);
    const standing = others.filter(isStanding);
    if (standing.length > 0) shared.set(i, standing);
    return first;
  });
  return { subdivision, faces, barriers, shared };
}

/** The joints along an edge, the one that names it first. */
function barriersOf(
  edge: SubdivisionEdge,
  faces: readonly FloorFace[],
  roles: readonly Role[],
  cuts: readonly Cut[],
  zones: (a: number, b: number) => boolean,
): Barrier[] {
  const left = faces[edge.left];
  const right = faces[edge.right];
  if (!left || !right || edge.left === edge.right) return [];
  const found: Barrier[] = [];
  for (const chain of edge.chains) {
    const role = roles[chain];
    const cut = cuts[chain - roles.length];
    if (role?.kind === 'joint') found.push(jointBarrier(role));
    else if (cut) found.push({ kind: cut.kind, cut });
  }
  if (left.room >= 0 && right.room >= 0 && left.room !== right.room && zones(left.room, right.room)) {
    found.push({ kind: 'zone', rooms: [Math.min(left.room, right.room), Math.max(left.room, right.room)] });
  }
  return found.length > 1 ? found.sort((a, b) => standing(a) - standing(b)) : found;
}

function jointBarrier(role: Extract<Role, { kind: 'joint' }>): StandingBarrier {
  return role.joint === 'doorway'
    ? { kind: role.joint, id: role.id, tongueMm: role.tongueMm }
    : { kind: role.joint, id: role.id };
}

/** Where several joints share a line, the one that must stand names it. */
function standing(barrier: Barrier): number {
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
