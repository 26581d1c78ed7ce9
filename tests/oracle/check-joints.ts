import type { Point } from '../../src/geometry/point.ts';
import type { Joint, JointKind } from '../../src/plan/analysis.ts';
import { lineInside } from './expected-floor.ts';
import { leastRectangle } from './measures.ts';
import {
  area,
  at,
  between,
  distance,
  distanceToSegment,
  distanceToSegments,
  lineLength,
  lineSegments,
  type Segment,
  type Shape,
  shapeMeet,
} from './planar.ts';
import { figure, named, type Scene, type SceneBay } from './scene.ts';

/** Joints and edges: each stretch of a bay's boundary is one of the two, once; mandatory cuts stand; forbidden places are kept. */

export function jointFaults(scene: Scene): string[] {
  return [
    ...boundaryFaults(scene),
    ...lengthFaults(scene),
    ...runFaults(scene),
    ...cutFaults(scene),
    ...zoneFaults(scene),
    ...forbiddenFaults(scene),
  ];
}

const name = (a: Point, b: Point) => `${a[0]} ${a[1]} ${b[0]} ${b[1]}`;
const lies = (p: Point, line: readonly Point[]) => distanceToSegments(p, lineSegments(line)) < 0.2;

/** Common sides of two bays belong to exactly one joint of that pair; every other side to exactly one edge. */
function boundaryFaults(scene: Scene): string[] {
  const owners = new Map<string, string[]>();
  for (const { bay, sides } of scene.bays) {
    for (const [a, b] of sides) {
      const key = owners.has(name(b, a)) ? name(b, a) : name(a, b);
      owners.set(key, [...(owners.get(key) ?? []), bay.id]);
    }
  }
  const jointsOf = groupBy(scene.analysis.joints, (j) => [...j.bays].sort().join(' '));
  const edgesOf = groupBy(scene.analysis.edges, (e) => e.bay);
  const faults: string[] = [];
  const common = new Map<string, number>();
  for (const [key, ids] of owners) {
    const [ax, ay, bx, by] = key.split(' ').map(Number) as [number, number, number, number];
    const middle = between([ax, ay], [bx, by], 0.5);
    const where = `${figure(middle[0])} ${figure(middle[1])}`;
    if (ids.length > 2) faults.push(`the side at ${where} belongs to ${ids.join(', ')}`);
    const pair = [...ids].sort().join(' ');
    const on = (ids.length === 2 ? jointsOf.get(pair) : edgesOf.get(pair)) ?? [];
    const count = on.filter((item) => lies(middle, item.line)).length;
    const what = ids.length === 2 ? 'joint' : 'edge';
    if (count !== 1)
      faults.push(
        `the side of ${pair} at ${where} (${figure(distance([ax, ay], [bx, by]))} mm) is on ${count} ${what}s`,
      );
    if (ids.length === 2) common.set(pair, (common.get(pair) ?? 0) + distance([ax, ay], [bx, by]));
  }
  for (const [pair, joints] of jointsOf) {
    const drawn = joints.reduce((sum, j) => sum + lineLength(j.line), 0);
    if (Math.abs(drawn - (common.get(pair) ?? 0)) > 1)
      faults.push(
        `joints of ${pair} are ${figure(drawn)} mm long, their common boundary ${figure(common.get(pair) ?? 0)} mm`,
      );
  }
  return faults;
}

function groupBy<T>(list: readonly T[], key: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of list) groups.set(key(item), [...(groups.get(key(item)) ?? []), item]);
  return groups;
}

function lengthFaults({ analysis }: Scene): string[] {
  const faults: string[] = [];
  for (const item of [...analysis.joints, ...analysis.edges]) {
    const lengthM = lineLength(item.line) / 1000;
    if (Math.abs(lengthM - item.lengthM) > 0.002)
      faults.push(`${item.id}: length ${item.lengthM}, should be ${figure(lengthM)} m`);
  }
  const sum = (list: readonly { lengthM: number }[]) => list.reduce((s, j) => s + j.lengthM, 0);
  const near = (a: number, b: number, count: number) => Math.abs(a - b) < 0.002 + 0.001 * count;
  const { joints, edges, bays, quantities, proof } = analysis;
  for (const [kind, lengthM] of Object.entries(quantities.jointM)) {
    const own = joints.filter((j) => j.kind === kind);
    if (!near(lengthM, sum(own), own.length))
      faults.push(`quantities give ${lengthM} m of ${kind} joint, the joints ${figure(sum(own))} m`);
  }
  const field = joints.filter((j) => j.kind === 'field' || j.kind === 'neck');
  if (!near(proof.fieldJointM, sum(field), field.length))
    faults.push(`proof gives ${proof.fieldJointM} m of field and neck joint, the joints ${figure(sum(field))} m`);
  if (proof.atLeastM !== null && proof.atLeastM > proof.fieldJointM * 1.0001 + 0.002)
    faults.push('proof: the lower bound is above the layout');
  const perimeterM = bays.reduce((s, b) => s + b.perimeterM, 0);
  const count = joints.length + edges.length + bays.length;
  if (!near(perimeterM, sum(edges) + 2 * sum(joints), count))
    faults.push(
      `edges + 2 x joints give ${figure(sum(edges) + 2 * sum(joints))} m, the bays' perimeters ${figure(perimeterM)} m`,
    );
  if (!near(quantities.edgeStripM, sum(edges), edges.length))
    faults.push(`quantities give ${quantities.edgeStripM} m of edge strip, the edges ${figure(sum(edges))} m`);
  return faults;
}

/** Joints of one run lie in one line (a drawn or structural joint may bend). */
function runFaults({ analysis }: Scene): string[] {
  const free: readonly JointKind[] = ['drawn', 'structural', 'zone'];
  return [
    ...groupBy(
      analysis.joints.filter((j) => !free.includes(j.kind)),
      (j) => j.run,
    ),
  ].flatMap(([run, joints]) => {
    const points = joints.flatMap((j) => j.line);
    const far = points.reduce((best, p) => (distance(p, at(points, 0)) > distance(best, at(points, 0)) ? p : best));
    const start = points.reduce((best, p) => (distance(p, far) > distance(best, far) ? p : best));
    const off = Math.max(...points.map((p) => distanceToSegment(p, [start, far])));
    return off > 50 ? [`run ${run} strays ${figure(off)} mm from a line`] : [];
  });
}

/** Doorways, structural and drawn joints are cut, or a finding names them. */
function cutFaults(scene: Scene): string[] {
  const { plan, floor, analysis } = scene;
  const faults: string[] = [];
  for (const door of floor.doors) {
    const { id } = door.doorway;
    const sound =
      door.joins.length === 2 &&
      door.clear &&
      !floor.muddled.has(at(door.joins, 0)) &&
      !floor.muddled.has(at(door.joins, 1));
    const shared = floor.doors.some((other) => other !== door && area(shapeMeet(other.reach, door.reach)) > 1);
    if (!sound || shared || named(scene, id)) continue;
    const own = analysis.joints.filter((j) => j.reasons.some((r) => r.split(/[^\w.-]+/).includes(id)));
    if (own.length === 0) faults.push(`doorway ${id} between ${door.joins.join(' and ')} has no joint that names it`);
    else if (!isParted(scene, door.floor, door.joins)) faults.push(`a bay runs through doorway ${id}`);
  }
  const onFloor: Shape = scene.bays.flatMap((b) => b.shape);
  for (const [what, list] of [
    ['structural', plan.structuralJoints],
    ['drawn', plan.drawnJoints],
  ] as const) {
    for (const { id, line } of list) {
      if (named(scene, id) || floor.muddled.size > 0) continue;
      const lines = [...analysis.joints.map((joint) => joint.line), ...analysis.edges.map((edge) => edge.line)];
      const missed = lineInside(line, onFloor)
        .filter((s) => distance(...s) > 250)
        .flatMap(samples)
        .filter((p) => !lines.some((cut) => distanceToSegments(p, lineSegments(cut)) < 2));
      if (missed.length > 0) faults.push(`${what} joint ${id} is not cut at ${at(missed, 0).map(figure).join(' ')}`);
    }
  }
  return faults;
}

/** Points along a stretch, clear of its ends by 100 mm. */
function samples([a, b]: Segment): Point[] {
  const length = distance(a, b);
  const count = Math.max(2, Math.ceil(length / 500));
  return Array.from({ length: count + 1 }, (_, i) => between(a, b, (100 + ((length - 200) * i) / count) / length));
}

/** No bay reaches through the opening from one room into the other. */
function isParted(scene: Scene, opening: Shape, rooms: readonly string[]): boolean {
  if (area(opening) < 1) return true;
  return scene.bays.every((b) => {
    const inOpening = area(shapeMeet(b.shape, opening));
    const both = rooms.every((id) => b.rooms.some((r) => r.room.id === id && r.areaMm2 > 1000));
    return !both || inOpening < area(opening) * 0.999;
  });
}

/** No bay reaches over a change of heating or zone. */
function zoneFaults(scene: Scene): string[] {
  return scene.bays.flatMap((b) => {
    const rooms = b.rooms.filter((r) => r.areaMm2 > 20000).map((r) => r.room);
    return rooms.flatMap((one, i) =>
      rooms.slice(i + 1).flatMap((two) => {
        const strip = [one, two].some((r) => !r.heated && at(leastRectangle(r.outline), 1).widthMm <= 1001);
        if (one.heated !== two.heated && !strip)
          return [`${b.bay.id} joins heated and unheated floor (${one.id}, ${two.id})`];
        const zoned = one.heated && two.heated && one.zone !== null && two.zone !== null && one.zone !== two.zone;
        return zoned ? [`${b.bay.id} joins zones ${one.zone} and ${two.zone}`] : [];
      }),
    );
  });
}

function forbiddenFaults(scene: Scene): string[] {
  const { plan, analysis } = scene;
  const free = analysis.joints.filter((j) => j.kind === 'field' || j.kind === 'neck');
  return free.flatMap((joint) => {
    if (named(scene, joint.id)) return [];
    const faults: string[] = [];
    for (const { id, outline } of plan.keepClear) {
      const inside = lineInside(joint.line, [{ outline, holes: [] }]).filter((s) => distanceToRing(s, outline) > 1);
      if (inside.length > 0) faults.push(`${joint.id} (${joint.kind}) runs in the place kept clear ${id}`);
    }
    for (const { id, line } of plan.noJoint)
      if (sharedMm(joint, line) > 50) faults.push(`${joint.id} (${joint.kind}) runs along ${id}, where none is wanted`);
    return faults;
  });
}

function distanceToRing([a, b]: Segment, ring: readonly Point[]): number {
  return distanceToSegments(between(a, b, 0.5), [...lineSegments(ring), [at(ring, -1), at(ring, 0)]]);
}

/** Length of joint that lies along a line, mm. */
function sharedMm(joint: Joint, line: readonly Point[]): number {
  return lineSegments(joint.line).reduce((sum, [a, b]) => {
    const count = Math.max(1, Math.ceil(distance(a, b) / 20));
    const on = Array.from({ length: count }, (_, i) => between(a, b, (i + 0.5) / count)).filter(
      (p) => distanceToSegments(p, lineSegments(line)) < 5,
    );
    return sum + (on.length * distance(a, b)) / count;
  }, 0);
}

/** Bays on both sides of a joint, for checks that read it. */
export function jointBays(scene: Scene, joint: Joint): readonly [SceneBay, SceneBay] | null {
  const one = scene.bayOf.get(joint.bays[0]);
  const two = scene.bayOf.get(joint.bays[1]);
  return one === undefined || two === undefined ? null : [one, two];
}
