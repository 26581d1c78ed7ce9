import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import type { Joint } from '../../src/plan/analysis.ts';
import { jointBays } from './check-joints.ts';
import {
  area,
  at,
  centroid,
  distance,
  inShape,
  lineSegments,
  type Segment,
  type Shape,
  shapeLess,
  shapeMeet,
} from './planar.ts';
import { bareRooms, figure, named, roomFloorIn, type Scene, type SceneBay } from './scene.ts';

/** Movement at every joint and edge, worked out again by section 6 of the contract. */

interface BayMotion {
  /** null where the contract leaves the answer open. */
  readonly closingStrain: number | null;
  readonly openingStrain: number | null;
  readonly still: Point;
  readonly held: readonly string[];
  readonly b: SceneBay;
}

const roundMm = 0.02;

export function movementFaults(scene: Scene): string[] {
  const motions = new Map(scene.bays.map((b) => [b.bay.id, motionOf(scene, b)]));
  return [
    ...[...motions.values()].flatMap((m) => stillFaults(scene, m)),
    ...scene.analysis.joints.flatMap((j) => jointMovementFaults(scene, j, motions)),
    ...scene.analysis.edges.flatMap((e) => {
      const motion = motions.get(e.bay);
      return motion === undefined ? [] : edgeFaults(scene, e, motion);
    }),
    ...stripFaults(scene),
  ];
}

function motionOf(scene: Scene, b: SceneBay): BayMotion {
  const { plan } = scene;
  const rooms = b.rooms.filter((r) => r.areaMm2 > 1).map((r) => r.room);
  // a room of which the bay has no more than a sliver may or may not count
  const sureRooms =
    rooms.length > 0 &&
    b.rooms.every(
      (r) =>
        r.areaMm2 <= 1 ||
        r.areaMm2 > 10000 ||
        JSON.stringify(r.room.temperatures) === JSON.stringify(at(rooms, 0).temperatures),
    );
  const suns = plan.sunZones
    .map((z) => ({ z, on: area(shapeMeet(b.shape, [{ outline: z.outline, holes: [] }])) }))
    .filter(({ on }) => on > 1);
  const sure = sureRooms && suns.every(({ on }) => on > 10000) && scene.floor.muddled.size === 0;
  const places = heldPlaces(scene, b);
  const moment = places.reduce<[number, number, number]>(
    (m, p) => {
      const a = area(p.shape);
      const c = centroid(p.shape);
      return [m[0] + a, m[1] + a * c[0], m[2] + a * c[1]];
    },
    [0, 0, 0],
  );
  const still: Point = places.length === 0 ? centroid(b.shape) : [moment[1] / moment[0], moment[2] / moment[0]];
  const held = places.map((p) => p.id);
  if (!sure) return { closingStrain: null, openingStrain: null, still, held, b };
  // each room from its own laying; the sun warms the whole bay
  const sun = Math.max(-Infinity, ...suns.map(({ z }) => z.highestC));
  const warming = Math.max(...rooms.map(({ temperatures: t }) => Math.max(t.highestC, sun) - t.layingC));
  const cooling = Math.max(...rooms.map(({ temperatures: t }) => t.layingC - t.lowestC));
  const { expansionPerK, shrinkageMmPerM, swellingMmPerM } = plan.screed;
  return {
    closingStrain: expansionPerK * Math.max(0, warming) + swellingMmPerM / 1000,
    openingStrain: expansionPerK * Math.max(0, cooling) + shrinkageMmPerM / 1000,
    still,
    held,
    b,
  };
}

/** Where the bay is held to the slab: by what stands on no insulation, by rooms without any, and by what is bolted down to the slab elsewhere. */
function heldPlaces(scene: Scene, b: SceneBay): { id: string; shape: Shape }[] {
  const { joinery, slabContacts } = scene.plan;
  const on = ({ id, outline }: { id: string; outline: Ring }) => ({
    id,
    shape: shapeMeet(b.shape, [{ outline, holes: [] }]),
  });
  const bare = [...joinery.filter((j) => j.under === 'no-insulation'), ...slabContacts].map(on);
  const rooms = bareRooms(scene).map((room) => ({
    id: room.id,
    shape: shapeLess(
      roomFloorIn(scene, b, room),
      bare.map(({ shape }) => shape),
    ),
  }));
  const fixed = joinery
    .filter((j) => j.under === 'insulated' && j.fixedThrough)
    .map(on)
    .map(({ id, shape }) => ({
      id,
      shape: shapeLess(
        shape,
        rooms.map((room) => room.shape),
      ),
    }));
  return [...bare, ...rooms, ...fixed].filter(({ shape }) => area(shape) > 100);
}

function stillFaults(scene: Scene, { b, still, held }: BayMotion): string[] {
  const faults: string[] = [];
  const off = distance(still, b.bay.stillPoint);
  if (off > 2) faults.push(`${b.bay.id}: still point is ${figure(off)} mm from ${still.map(figure).join(' ')}`);
  for (const id of held)
    if (!named(scene, id)) faults.push(`${b.bay.id} is held to the slab by ${id} and no finding names it`);
  const twice = scene.analysis.findings.some((f) => f.severity === 'fault' && f.refs.includes(b.bay.id));
  if (held.length > 1 && !twice) faults.push(`${b.bay.id} is held in ${held.length} places and no fault names it`);
  return faults;
}

/** Unit normal of a stretch of joint from the first bay to the second; null where neither side tells. */
function normalFrom([a, b]: Segment, one: SceneBay): Point | null {
  const d = distance(a, b);
  const n: Point = [-(b[1] - a[1]) / d, (b[0] - a[0]) / d];
  for (const step of [0.5, 2, 10]) {
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const left = inShape(one.shape, [middle[0] + n[0] * step, middle[1] + n[1] * step]);
    const right = inShape(one.shape, [middle[0] - n[0] * step, middle[1] - n[1] * step]);
    if (left !== right) return left ? [-n[0], -n[1]] : n;
  }
  return null;
}

interface Movement {
  closing: number;
  opening: number;
  slidingWarm: number;
  slidingCold: number;
  worst: number;
}

function jointMovement(joint: Joint, one: BayMotion, two: BayMotion): Movement | null {
  const m: Movement = { closing: 0, opening: 0, slidingWarm: 0, slidingCold: 0, worst: 0 };
  if (
    one.closingStrain === null ||
    two.closingStrain === null ||
    one.openingStrain === null ||
    two.openingStrain === null
  )
    return null;
  for (const segment of lineSegments(joint.line)) {
    if (distance(...segment) < 1) continue;
    const n = normalFrom(segment, one.b);
    if (n === null) return null;
    for (const p of segment) {
      const apart = (s1: number, s2: number): Point => [
        s1 * (p[0] - one.still[0]) - s2 * (p[0] - two.still[0]),
        s1 * (p[1] - one.still[1]) - s2 * (p[1] - two.still[1]),
      ];
      const warm = apart(one.closingStrain, two.closingStrain);
      const cold = apart(one.openingStrain, two.openingStrain);
      m.closing = Math.max(m.closing, warm[0] * n[0] + warm[1] * n[1]);
      m.opening = Math.max(m.opening, cold[0] * n[0] + cold[1] * n[1]);
      m.slidingWarm = Math.max(m.slidingWarm, Math.abs(warm[1] * n[0] - warm[0] * n[1]));
      m.slidingCold = Math.max(m.slidingCold, Math.abs(cold[1] * n[0] - cold[0] * n[1]));
      const reach = (motion: BayMotion, sign: number) =>
        Math.max(...motion.b.bay.outline.map((q) => sign * ((p[0] - q[0]) * n[0] + (p[1] - q[1]) * n[1])));
      m.worst = Math.max(m.worst, one.closingStrain * reach(one, 1) + two.closingStrain * reach(two, -1));
    }
  }
  return m;
}

function jointMovementFaults(scene: Scene, joint: Joint, motions: ReadonlyMap<string, BayMotion>): string[] {
  const { plan } = scene;
  const faults: string[] = [];
  const off = (what: string, given: number, right: number) => {
    if (Math.abs(given - right) > roundMm + right * 0.002)
      faults.push(`${joint.id}: ${what} ${figure(given)}, should be ${figure(right)} mm`);
  };
  const structural = plan.structuralJoints.filter(() => joint.kind === 'structural').map((s) => s.widthMm);
  if (joint.kind !== 'structural') off('profile', joint.profileMm, plan.jointProfile.widthMm);
  else if (structural.length > 0 && !structural.some((w) => Math.abs(w - joint.profileMm) < 0.1))
    faults.push(`${joint.id}: profile ${joint.profileMm} is no structural joint's width`);
  off('profile takes', joint.profileTakesMm, joint.profileMm * plan.jointProfile.usableTravel);
  off('sealant needs', joint.sealantNeedsMm, (joint.closingMm + joint.openingMm) / plan.sealant.capability);
  faults.push(...overrunFaults(scene, joint));
  const one = motions.get(joint.bays[0]);
  const two = motions.get(joint.bays[1]);
  if (one === undefined || two === undefined || jointBays(scene, joint) === null) return faults;
  const right = jointMovement(joint, one, two);
  if (right === null) return faults;
  off('closing', joint.closingMm, right.closing);
  off('opening', joint.openingMm, right.opening);
  const either = Math.max(right.slidingWarm, right.slidingCold);
  if (Math.abs(joint.slidingMm - right.slidingWarm) > roundMm) off('sliding', joint.slidingMm, either);
  if (one.held.length + two.held.length === 0) off('worst closing', joint.worstClosingMm, right.worst);
  if (joint.worstClosingMm < joint.closingMm - roundMm)
    faults.push(`${joint.id}: worst closing is under the centred case`);
  return faults;
}

/** What passes its travel or its sealant is named by a finding of the right severity. */
function overrunFaults(scene: Scene, joint: Joint): string[] {
  const about = scene.analysis.findings.filter((f) => f.refs.includes(joint.id));
  const has = (severity: string) => about.some((f) => f.severity === severity);
  const faults: string[] = [];
  if (joint.closingMm > joint.profileTakesMm + roundMm && !has('fault'))
    faults.push(`${joint.id} closes more than its profile takes and no fault says so`);
  if (joint.worstClosingMm > joint.profileTakesMm + roundMm && about.length === 0)
    faults.push(`${joint.id} may close more than its profile takes and no finding says so`);
  if (joint.kind !== 'structural' && joint.sealantNeedsMm > scene.plan.sealant.widthMm + 0.1 && about.length === 0)
    faults.push(`${joint.id} needs a wider sealant line and no finding says so`);
  return faults;
}

function edgeFaults(scene: Scene, edge: Scene['analysis']['edges'][number], motion: BayMotion): string[] {
  const strain = motion.closingStrain;
  if (strain === null) return [];
  let right = 0;
  for (const segment of lineSegments(edge.line)) {
    if (distance(...segment) < 1) continue;
    const n = normalFrom(segment, motion.b);
    if (n === null) return [];
    for (const p of segment)
      right = Math.max(right, strain * ((p[0] - motion.still[0]) * n[0] + (p[1] - motion.still[1]) * n[1]));
  }
  const faults: string[] = [];
  if (Math.abs(edge.movementMm - right) > roundMm + right * 0.002)
    faults.push(`${edge.id}: movement ${figure(edge.movementMm)}, should be ${figure(right)} mm`);
  const takes = scene.plan.edgeStrip.thicknessMm * scene.plan.edgeStrip.usableTravel;
  const told = scene.analysis.findings.some(
    (f) => f.severity === 'fault' && (f.refs.includes(edge.id) || f.refs.includes(edge.bay)),
  );
  if (edge.movementMm > takes + roundMm && !told)
    faults.push(`${edge.id} moves more than its strip takes and no fault says so`);
  return faults;
}

/** EN 1264-4: the strip allows at least 5 mm. */
function stripFaults({ plan, analysis }: Scene): string[] {
  const takes = plan.edgeStrip.thicknessMm * plan.edgeStrip.usableTravel;
  const told = analysis.findings.some((f) => f.code === 'strip-travel' && f.severity === 'fault');
  return takes < 4.999 !== told && analysis.edges.length > 0
    ? [`the edge strip takes ${figure(takes)} mm and strip-travel is ${told ? '' : 'not '}found`]
    : [];
}
