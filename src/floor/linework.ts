import { type BoxIndex, boxIndexOf } from '../geometry/box-index.ts';
import type { Chain } from '../geometry/noding.ts';
import type { Point } from '../geometry/point.ts';
import { boxOf, type Ring } from '../geometry/ring.ts';
import { rayMeets, segmentNearest } from '../geometry/segment.ts';
import { GRID_PER_MM } from '../geometry/tolerance.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Lined, Pipe, Plan } from '../plan/plan.ts';
import { type DoorwayFloor, doorwayReach, type RoomRings } from './doorways.ts';

/** What a line of the plan stands for. Numbers are places in the plan's lists. */
export type Role =
  | { readonly kind: 'room' | 'room-hole'; readonly room: number }
  | { readonly kind: 'doorway-floor'; readonly doorway: number }
  | { readonly kind: 'obstacle'; readonly along: 'column' | 'pipe' | 'joinery'; readonly id: string }
  | { readonly kind: 'joint'; readonly joint: 'doorway' | 'structural' | 'drawn'; readonly id: string };

export interface Linework {
  readonly chains: readonly Chain[];
  readonly roles: readonly Role[];
  /** By doorway: what it joins. */
  readonly doorways: readonly (DoorwayFloor | null)[];
  readonly findings: readonly FindingFact[];
}

/** An end of a drawn joint within this of an edge or joint snaps to it, mm (contract, design section 2). */
const SNAP_MM = 100;

/** Sides of the polygon that stands for a round pipe. */
const PIPE_SIDES = 24;

/** Every line of the plan that bounds or cuts floor, on grid steps, in an order that lets rooms win when points weld. */
export function lineworkOf(plan: Plan): Linework {
  const chains: Chain[] = [];
  const roles: Role[] = [];
  const findings: FindingFact[] = [];
  const add = (points: readonly Point[], closed: boolean, role: Role) => {
    if (points.length < (closed ? 3 : 2)) return;
    chains.push({
      points: points.map(([x, y]) => [Math.round(x * GRID_PER_MM), Math.round(y * GRID_PER_MM)] as const),
      closed,
    });
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
    if (!joins) return;
    add(joins.floor, true, { kind: 'doorway-floor', doorway: i });
    add(joins.joint, false, { kind: 'joint', joint: 'doorway', id });
  });
  const targets = segmentsOf(chains);
  for (const joint of plan.structuralJoints) {
    const { line, loose } = lineSnap(joint, targets);
    if (loose) findings.push({ code: 'structural-joint-loose', id: joint.id, at: loose, refs: [joint.id] });
    add(line, false, { kind: 'joint', joint: 'structural', id: joint.id });
  }
  const withStructure = segmentsOf([...chains, ...plan.drawnJoints.map((joint) => chainOf(joint.line))]);
  for (const joint of plan.drawnJoints) {
    const { line, loose } = lineSnap(joint, withStructure);
    if (loose)
      findings.push({ code: 'drawn-joint-loose', id: joint.id, reachMm: SNAP_MM, at: loose, refs: [joint.id] });
    else add(line, false, { kind: 'joint', joint: 'drawn', id: joint.id });
  }
  return { chains, roles, doorways, findings };
}

function chainOf(line: readonly Point[]): Chain {
  return { points: line.map(([x, y]) => [x * GRID_PER_MM, y * GRID_PER_MM] as const), closed: false };
}

/** A polygon of the pipe's own area. */
function pipeRing(pipe: Pipe): Ring {
  const step = (2 * Math.PI) / PIPE_SIDES;
  const radius = (pipe.diameterMm / 2) * Math.sqrt(step / Math.sin(step));
  return Array.from(
    { length: PIPE_SIDES },
    (_, i) => [pipe.centre[0] + radius * Math.cos(i * step), pipe.centre[1] + radius * Math.sin(i * step)] as const,
  );
}

function doorwaysJoin(plan: Plan, findings: FindingFact[]): (DoorwayFloor | null)[] {
  const rings: RoomRings[] = plan.rooms.map((room, i) => ({ room: i, rings: [room.outline, ...room.holes] }));
  const index = boxIndexOf(plan.rooms.map((room) => boxOf(room.outline)));
  return plan.doorways.map((doorway) => {
    const reach = doorway.wallMm + SNAP_MM;
    const box = boxOf(doorway.line);
    const around = { minX: box.minX - reach, minY: box.minY - reach, maxX: box.maxX + reach, maxY: box.maxY + reach };
    const near = index.near(around).map((i) => rings[i] as RoomRings);
    const { joins, reached } = doorwayReach(doorway, near);
    if (joins) return joins;
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
    return null;
  });
}

interface Targets {
  readonly segments: readonly (readonly [Point, Point])[];
  readonly index: BoxIndex;
}

function segmentsOf(chains: readonly Chain[]): Targets {
  const mm = ([x, y]: Point): Point => [x / GRID_PER_MM, y / GRID_PER_MM];
  const segments = chains.flatMap(({ points, closed }) =>
    points
      .slice(0, closed ? points.length : -1)
      .map((p, i) => [mm(p), mm(points[(i + 1) % points.length] as Point)] as const),
  );
  return { segments, index: boxIndexOf(segments.map(boxOf)) };
}

/** A joint line with its ends brought to what they nearly reach; `loose` is an end that reaches nothing. */
function lineSnap(joint: Lined, targets: Targets): { line: Point[]; loose: Point | null } {
  const line = [...joint.line];
  const own = new Set(joint.line.map(String));
  let loose: Point | null = null;
  for (const end of [0, line.length - 1]) {
    const tip = line[end] as Point;
    const before = line[end === 0 ? 1 : end - 1] as Point;
    const near = targets.index
      .near({ minX: tip[0] - SNAP_MM, minY: tip[1] - SNAP_MM, maxX: tip[0] + SNAP_MM, maxY: tip[1] + SNAP_MM })
      .map((i) => targets.segments[i] as readonly [Point, Point])
      .filter(([a, b]) => !(own.has(String(a)) && own.has(String(b))));
    const snapped = endSnap(tip, before, near);
    if (snapped) line[end] = snapped;
    else loose = tip;
  }
  return { line, loose };
}

/** Straight on if something is met within reach, else the nearest place within reach. */
function endSnap(tip: Point, before: Point, near: readonly (readonly [Point, Point])[]): Point | null {
  const length = Math.hypot(tip[0] - before[0], tip[1] - before[1]);
  const direction: Point = length === 0 ? [1, 0] : [(tip[0] - before[0]) / length, (tip[1] - before[1]) / length];
  let ahead = Infinity;
  let nearest: Point | null = null;
  let least = SNAP_MM;
  for (const [a, b] of near) {
    const met = rayMeets(tip, direction, a, b);
    if (met !== null && met <= SNAP_MM) ahead = Math.min(ahead, met);
    const { at, distance } = segmentNearest(a, b, tip);
    if (distance <= least) {
      least = distance;
      nearest = at;
    }
  }
  return ahead < Infinity ? [tip[0] + direction[0] * ahead, tip[1] + direction[1] * ahead] : nearest;
}
