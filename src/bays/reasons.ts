import type { StandingBarrier } from '../floor/barrier.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import type { JointLine } from '../plan/analysis.ts';
import { overText } from '../plan/figure-words.ts';
import type { Plan } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import { type BayBody, type FloorMap, facesMeasure } from './bay-shapes.ts';
import type { JointBody } from './joint-lines.ts';
import type { BayRules, Breach } from './measure.ts';
import { strictest } from './parts.ts';

/** Why each joint is here, in words. A joint of the plan names what it stands for; a joint that the search put is explained by what its
 *  two bays would be without it, or else what the bays along its whole line would be. */
export function jointReasons(
  plan: Plan,
  map: FloorMap,
  bays: readonly BayBody[],
  joints: readonly JointBody[],
  columns: ReadonlyMap<string, readonly string[]>,
): JointLine[] {
  const byId = new Map(bays.map((bay) => [bay.shape.id, bay]));
  const runs = new Map<string, JointBody[]>();
  for (const joint of joints) runs.set(joint.line.run, [...(runs.get(joint.line.run) ?? []), joint]);
  return joints.map((joint) => {
    const own = [
      ...doorwaysServed(plan, map, joint),
      ...reasonsOf(plan, map, byId, joint, runs.get(joint.line.run) ?? [joint]),
      ...joint.shared.flatMap((barrier) => standingReasons(plan, barrier)),
    ];
    const reasons = [...new Set(own)];
    const served = (columns.get(joint.line.id) ?? []).map((column) => `column ${column} needs a joint`);
    return {
      ...joint.line,
      reasons: served.length > 0 && reasons[0] === NO_OTHER_REASON ? served : [...reasons, ...served],
    };
  });
}

/** Doorways whose joint another kind of joint is. */
function doorwaysServed(plan: Plan, { floor }: FloorMap, { barrier, edges }: JointBody): string[] {
  if (barrier.kind === 'doorway') return [];
  // Along the room's face the floor of the opening lies on one side only.
  const atFace = barrier.kind === 'structural';
  const served = edges.flatMap((i) => {
    const edge = floor.subdivision.edges[i];
    const [a = -1, b = -1] = [edge?.left, edge?.right].map((face) => floor.faces[face ?? 0]?.doorway);
    return a === b || atFace ? [a, b].filter((doorway) => doorway >= 0) : [];
  });
  return [...new Set(served)].map((d) => `doorway ${plan.doorways[d]?.id}`);
}

const NO_OTHER_REASON = 'completes a split in which every bay is within the limits';

function reasonsOf(
  plan: Plan,
  map: FloorMap,
  bays: ReadonlyMap<string, BayBody>,
  joint: JointBody,
  run: readonly JointBody[],
): string[] {
  const { barrier } = joint;
  switch (barrier.kind) {
    case 'neck':
      return [`the floor narrows to ${Math.round(lineLength(joint.line.line))} mm`];
    case 'field':
      return fieldReasons(map, bays, joint, run);
    default:
      return standingReasons(plan, barrier);
  }
}

function standingReasons(plan: Plan, barrier: StandingBarrier): string[] {
  switch (barrier.kind) {
    case 'doorway':
      return [`doorway ${barrier.id}`, ...tongueReasons(barrier.tongueMm)];
    case 'structural':
      return [`structural joint ${barrier.id} of the building`];
    case 'drawn':
      return [`drawn joint ${barrier.id}`];
    case 'zone':
      return [zoneReason(plan, barrier)];
  }
}

function tongueReasons(tongueMm: number | null): string[] {
  if (tongueMm === null) return [];
  const most = rules.doorwayTongueMm.value;
  return [`the floor of the opening would be a tongue ${overText(tongueMm, most, 0)} mm deep, over ${most} mm`];
}

function zoneReason(plan: Plan, barrier: Extract<StandingBarrier, { kind: 'zone' }>): string {
  const [a, b] = barrier.rooms.map((r) => plan.rooms[r]);
  const heat = a?.heated === b?.heated ? 'are heated in different zones' : 'are heated and unheated';
  return `${a?.name} and ${b?.name} ${heat}`;
}

function fieldReasons(
  map: FloorMap,
  bays: ReadonlyMap<string, BayBody>,
  joint: JointBody,
  run: readonly JointBody[],
): string[] {
  const pair = joint.line.bays.map((id) => bays.get(id) as BayBody);
  const alone = mergedBreaches(map, pair).map(breachReason);
  if (alone.length > 0) return alone;
  const along = [...new Set(run.flatMap((j) => [...j.line.bays]))].map((id) => bays.get(id) as BayBody);
  const together = along.length > 2 ? mergedBreaches(map, along).map(breachReason) : [];
  if (together.length > 0) return [`carries on a line without which ${together.join('; ')}`];
  return [NO_OTHER_REASON];
}

/** What would be wrong with some bays if they were one. */
function mergedBreaches(map: FloorMap, bays: readonly BayBody[]): readonly Breach[] {
  const faces = new Set(bays.flatMap((bay) => [...bay.faces]));
  const edges = [...new Set(bays.flatMap((bay) => map.edgesOf[map.of[bay.faces[0] as number] as number] ?? []))];
  const rules: BayRules = {
    limits: strictest(bays.map((bay) => bay.rules.limits)),
    layout: (bays[0] as BayBody).rules.layout,
  };
  return facesMeasure(map, (face) => faces.has(face), edges, rules)?.breaches ?? [];
}

function breachReason({ rule, value, limit }: Breach): string {
  const text = (v: number, digits: number) => String(Number(v.toFixed(digits)));
  switch (rule) {
    case 'area':
      return `area of ${text(value, 1)} m² is over ${text(limit, 2)} m²`;
    case 'length':
      return `side of ${text(value, 1)} m is over ${text(limit, 2)} m`;
    case 'aspect':
      return `length is ${text(value, 2)} times the width, over ${text(limit, 2)}`;
    case 'reentrant':
      return `re-entrant corner ${text(value, 0)} mm deep, over ${text(limit, 0)} mm`;
    case 'core':
      return `a core of ${text(value, 0)} mm would stand inside the bay, over ${text(limit, 0)} mm`;
  }
}

function lineLength(line: readonly Point[]): number {
  return line.reduce((sum, p, i) => (i === 0 ? 0 : sum + pointDistance(line[i - 1] as Point, p)), 0);
}
