import { type BoxIndex, boxIndexOf } from '../geometry/box-index.ts';
import { type Chain, chainOnGrid } from '../geometry/noding.ts';
import { type Point, pointDirection } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { boxAround, boxOf, type Ring, ringContains } from '../geometry/ring.ts';
import { rayMeets, segmentNearest, segmentsMeet } from '../geometry/segment.ts';
import { GRID_PER_MM } from '../geometry/tolerance.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Lined, Pipe, Plan, Room } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import { type DoorwayFloor, doorwayReach, jointsBetween, type RoomRings } from './doorways.ts';
/** What a line of the plan stands for. Numbers are places in the plan's lists. */
export type Role =
  | { readonly kind: 'room' | 'room-hole'; readonly room: number }
  | { readonly kind: 'doorway-floor'; readonly doorway: number }
  | { readonly kind: 'obstacle'; readonly along: 'column' | 'pipe' | 'joinery'; readonly id: string }
  | { readonly kind: 'joint'; readonly joint: 'structural' | 'drawn'; readonly id: string }
  | { readonly kind: 'joint'; readonly joint: 'doorway'; readonly id: string; readonly tongueMm: number | null };

export interface Linework {
  readonly chains: readonly Chain[];
  readonly roles: readonly Role[];
  /** By doorway: what it joins. */
  readonly doorways: readonly (readonly DoorwayFloor[])[];
  readonly findings: readonly FindingFact[];
}

/** An end of a drawn joint within this of an edge or joint snaps to it, mm. */
const SNAP_MM = rules.drawnJointReachMm.value;

/** Sides of the polygon that stands for a round pipe. */
const PIPE_SIDES = 24;

/** Every line of the plan that bounds or cuts floor, on grid steps, in an order that lets rooms win when points weld. */
export function lineworkOf(plan: Plan): Linework {
  const chains: Chain[] = [];
  const roles: Role[] = [];
  const findings: FindingFact[] = [];
  const add = (points: readonly Point[], closed: boolean, role: Role) => {
    if (points.length < (closed ? 3 : 2)) return;
    chains.push(chainOnGrid(points, closed));
    roles.push(role);
  };
  plan.rooms.forEach((room, i) => {
    add(room.outline, true, { kind: 'room', room: i });
    for (const hole of room.holes) add(hole, true, { kind: 'room-hole', room: i });
  });
  for (const column of plan.columns) add(column.outline, true, { kind: 'obstacle', along: 'column', id: column.id });
  for (const item of plan.joinery) {
    if (item.under === 'built-off-slab') add(item.outline, true, { kind: 'obstacle', along: 'joinery', id: item.id });
  }
  for (const pipe of plan.pipes) add(pipeRing(pipe), true, { kind: 'obstacle', along: 'pipe', id: pipe.id });
  const doorways = doorwaysJoin(plan, findings);
  doorways.forEach((joins, i) => {
    const id = plan.doorways[i]?.id ?? '';
    for (const join of joins) {
      add(join.floor, true, { kind: 'doorway-floor', doorway: i });
      if (!plan.structuralJoints.some(({ line }) => runsThrough(line, join))) {
        for (const { line, tongueMm } of join.joints)
          add(line, false, { kind: 'joint', joint: 'doorway', id, tongueMm });
      }
    }
  });
  for (const { doorway, line } of jointsBetween(doorways)) {
    const id = plan.doorways[doorway]?.id ?? '';
    add(line, false, { kind: 'joint', joint: 'doorway', id, tongueMm: null });
  }
  const structure = targetsOf(plan, chains, roles, doorways);
  for (const joint of plan.structuralJoints) {
    const { line, loose } = lineSnap(joint, structure, 'ahead');
    if (loose) findings.push({ code: 'structural-joint-loose', id: joint.id, at: loose, refs: [joint.id] });
    add(line, false, { kind: 'joint', joint: 'structural', id: joint.id });
  }
  const drawnRoles = plan.drawnJoints.map(({ id }): Role => ({ kind: 'joint', joint: 'drawn', id }));
  const drawn = targetsOf(
    plan,
    [...chains, ...plan.drawnJoints.map(({ line }) => chainOnGrid(line, false))],
    [...roles, ...drawnRoles],
    doorways,
  );
  for (const joint of plan.drawnJoints) {
    const { line, loose } = lineSnap(joint, drawn, 'nearest');
    if (loose)
      findings.push({ code: 'drawn-joint-loose', id: joint.id, reachMm: SNAP_MM, at: loose, refs: [joint.id] });
    else add(line, false, { kind: 'joint', joint: 'drawn', id: joint.id });
  }
  return { chains, roles, doorways, findings };
}

/** Whether a line runs through an opening from jamb to jamb: it then is the doorway's joint. */
function runsThrough(line: readonly Point[], { jambs }: DoorwayFloor): boolean {
  return line.some((p, i) => i > 0 && jambs.every(([a, b]) => segmentsMeet(line[i - 1] as Point, p, a, b)));
}

/** A polygon of the pipe's own area. */
export function pipeRing(pipe: Pipe): Ring {
  const step = (2 * Math.PI) / PIPE_SIDES;
  const radius = (pipe.diameterMm / 2) * Math.sqrt(step / Math.sin(step));
  return Array.from(
    { length: PIPE_SIDES },
    (_, i) => [pipe.centre[0] + radius * Math.cos(i * step), pipe.centre[1] + radius * Math.sin(i * step)] as const,
  );
}

function doorwaysJoin(plan: Plan, findings: FindingFact[]): (readonly DoorwayFloor[])[] {
  const rings: RoomRings[] = plan.rooms.map((room, i) => ({ room: i, rings: [room.outline, ...room.holes] }));
  const index = boxIndexOf(plan.rooms.map((room) => boxOf(room.outline)));
  return plan.doorways.map((doorway) => {
    const reach = doorway.wallMm + rules.doorwayReachMm.value;
    const near = index.near(boxAround(boxOf(doorway.line), reach)).map((i) => rings[i] as RoomRings);
    const { joins, reached } = doorwayReach(doorway, near);
    if (joins.length > 0) return joins;
    const [a, b] = doorway.line;
    const at: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const room = plan.rooms[reached[0] ?? -1];
    if (!room) findings.push({ code: 'doorway-joins-nothing', doorway: doorway.id, at, refs: [doorway.id] });
    else
      findings.push({
        code: 'doorway-one-room',
        doorway: doorway.id,
        name: room.name,
        at,
        refs: [doorway.id, room.id],
      });
    return [];
  });
}

/** What the end of a joint may come to. */
interface Targets {
  readonly segments: readonly { readonly ends: readonly [Point, Point]; readonly isJoint: boolean }[];
  readonly index: BoxIndex;
  /** Whether a place is floor that an end would lie loose in. */
  isFloor(p: Point): boolean;
  /** Whether a place is floor of a doorway: an outline that runs beside it, with floor on its other side, is no edge. */
  isOpening(p: Point): boolean;
}

function targetsOf(
  plan: Plan,
  chains: readonly Chain[],
  roles: readonly Role[],
  doorways: readonly (readonly DoorwayFloor[])[],
): Targets {
  const mm = ([x, y]: Point): Point => [x / GRID_PER_MM, y / GRID_PER_MM];
  const segments = chains.flatMap(({ points, closed }, c) =>
    points.slice(0, closed ? points.length : -1).map((p, i) => ({
      ends: [mm(p), mm(points[(i + 1) % points.length] as Point)] as const,
      isJoint: roles[c]?.kind === 'joint',
    })),
  );
  const rooms = boxIndexOf(plan.rooms.map((room) => boxOf(room.outline)));
  const openings = doorways.flatMap((joins) => joins.map((join) => join.floor));
  const openingsNear = boxIndexOf(openings.map(boxOf));
  const solid = [...plan.columns, ...plan.joinery.filter((item) => item.under === 'built-off-slab')].map(
    (item) => item.outline,
  );
  const isOpening = (p: Point) => openingsNear.near(boxOf([p])).some((i) => ringContains(openings[i] as Ring, p));
  return {
    segments,
    index: boxIndexOf(segments.map(({ ends }) => boxOf(ends))),
    isOpening,
    isFloor(p) {
      const inRoom = rooms.near(boxOf([p])).some((i) => regionContains(plan.rooms[i] as Room, p));
      return (inRoom || isOpening(p)) && !solid.some((ring) => ringContains(ring, p));
    },
  };
}

/** A joint line with its ends brought to what they nearly reach; `loose` is an end that lies on floor and reaches nothing. */
function lineSnap(joint: Lined, targets: Targets, how: 'ahead' | 'nearest'): { line: Point[]; loose: Point | null } {
  const line = [...joint.line];
  const own = new Set(joint.line.map(String));
  let loose: Point | null = null;
  for (const end of [0, line.length - 1]) {
    const tip = line[end] as Point;
    const before = line[end === 0 ? 1 : end - 1] as Point;
    const near = targets.index
      .near(boxAround(boxOf([tip]), SNAP_MM))
      .map((i) => targets.segments[i] as Targets['segments'][number])
      .filter(({ ends: [a, b] }) => !(own.has(String(a)) && own.has(String(b))));
    const snapped =
      aheadSnap(tip, before, near, targets) ?? (how === 'nearest' ? nearestSnap(tip, near, targets) : null);
    if (snapped) line[end] = snapped;
    else if (targets.isFloor(tip) && !isOnEdge(tip, near, targets)) loose = tip;
  }
  return { line, loose };
}

/** Straight on to the first edge or joint within reach. */
function aheadSnap(tip: Point, before: Point, near: Targets['segments'], targets: Targets): Point | null {
  const direction = pointDirection(before, tip);
  if (direction[0] === 0 && direction[1] === 0) return null;
  const along = (d: number): Point => [tip[0] + direction[0] * d, tip[1] + direction[1] * d];
  const met = near
    .map(({ ends: [a, b], isJoint }) => ({ isJoint, d: rayMeets(tip, direction, a, b) }))
    .filter((hit): hit is { isJoint: boolean; d: number } => hit.d !== null && hit.d <= SNAP_MM)
    .filter(({ d, isJoint }) => isJoint || !targets.isOpening(along(d + AHEAD_MM)))
    .map(({ d }) => d);
  return met.length > 0 ? along(Math.min(...met)) : null;
}

/** Far enough past a line to be beyond it, mm. */
const AHEAD_MM = 1;

function nearestSnap(tip: Point, near: Targets['segments'], targets: Targets): Point | null {
  let nearest: Point | null = null;
  let least = SNAP_MM;
  for (const {
    ends: [a, b],
    isJoint,
  } of near) {
    const { at, distance } = segmentNearest(a, b, tip);
    if (distance > least || !(isJoint || isEdgeAt(a, b, at, targets))) continue;
    least = distance;
    nearest = at;
  }
  return nearest;
}

/** Whether an end lies on an edge or joint that its line follows. */
function isOnEdge(tip: Point, near: Targets['segments'], targets: Targets): boolean {
  return near.some(({ ends: [a, b], isJoint }) => {
    const { at, distance } = segmentNearest(a, b, tip);
    return distance < AHEAD_MM && (isJoint || isEdgeAt(a, b, at, targets));
  });
}

/** Whether floor may end along an outline at a place on it: not in the mouth of a doorway. */
function isEdgeAt(a: Point, b: Point, at: Point, { isFloor, isOpening }: Targets): boolean {
  const [dx, dy] = pointDirection(a, b);
  const sides = [AHEAD_MM, -AHEAD_MM].map((off): Point => [at[0] - dy * off, at[1] + dx * off]);
  return !(sides.every(isFloor) && sides.some(isOpening));
}
