import type { Ring } from '../../src/geometry/ring.ts';
import type { BayLimits } from '../../src/plan/plan.ts';
import { leastRectangle, pocketVerdict, ringWithoutNotches, type Verdict } from './measures.ts';
import {
  area,
  at,
  distanceToSegment,
  distanceToSegments,
  lineSegments,
  ringLength,
  rings,
  type Segment,
  segments,
  shapeLess,
  shapeMeet,
} from './planar.ts';
import { bayLimits, figure, isInDoorway, named, type Scene, type SceneBay } from './scene.ts';

/** Measures of each bay, whether it is within its limits, cores, and columns off the joints. */

export function bayFaults(scene: Scene): string[] {
  return [
    ...scene.bays.flatMap((b) => [...measureFaults(b), ...roomFaults(scene, b), ...withinFaults(scene, b)]),
    ...columnFaults(scene),
  ];
}

function measureFaults({ bay, shape }: SceneBay): string[] {
  const faults: string[] = [];
  const areaM2 = area(shape) / 1e6;
  if (Math.abs(areaM2 - bay.areaM2) > 0.002 + areaM2 * 1e-5)
    faults.push(`${bay.id}: area ${bay.areaM2}, should be ${figure(areaM2)} m2`);
  const perimeterM = shape.flatMap(rings).reduce((sum, ring) => sum + ringLength(ring), 0) / 1000;
  if (Math.abs(perimeterM - bay.perimeterM) > 0.002 + perimeterM * 1e-5)
    faults.push(`${bay.id}: perimeter ${bay.perimeterM}, should be ${figure(perimeterM)} m`);
  const answers = leastRectangle(bay.measured);
  const near = (a: number, b: number) => Math.abs(a - b) < 0.002 + b * 1e-5;
  if (!answers.some((r) => near(bay.lengthM, r.lengthMm / 1000) && near(bay.widthM, r.widthMm / 1000))) {
    const r = at(answers, 1);
    faults.push(
      `${bay.id}: sides ${bay.lengthM} x ${bay.widthM}, should be ${figure(r.lengthMm / 1000)} x ${figure(r.widthMm / 1000)} m`,
    );
  }
  if (bay.widthM > 0 && Math.abs(bay.aspect - bay.lengthM / bay.widthM) > 0.006 + bay.aspect * 1e-3)
    faults.push(`${bay.id}: aspect ${bay.aspect}, should be ${figure(bay.lengthM / bay.widthM)}`);
  return faults;
}

/** The rooms that a bay names are those that it lies in; floor between two joints of a doorway names a room that it lies against. */
function roomFaults(scene: Scene, own: SceneBay): string[] {
  const { bay, rooms } = own;
  const missing = rooms.filter((r) => r.areaMm2 > 10000 && !bay.rooms.includes(r.room.id)).map((r) => r.room.id);
  const extra = bay.rooms.filter((id) => !scene.floor.muddled.has(id) && !rooms.some((r) => r.room.id === id));
  const beyond = new Set(
    isInDoorway(own) ? jointedBays(scene, bay.id).flatMap((other) => other.rooms.map((r) => r.room.id)) : [],
  );
  return [
    ...missing.map((id) => `${bay.id} lies in room ${id} and does not name it`),
    ...extra.filter((id) => !beyond.has(id)).map((id) => `${bay.id} names room ${id} and does not lie in it`),
  ];
}

/** The bays beyond the joints of one. */
function jointedBays({ analysis, bayOf }: Scene, id: string): SceneBay[] {
  const others = analysis.joints.filter((j) => j.bays.includes(id)).flatMap((j) => j.bays.filter((b) => b !== id));
  return others.flatMap((b) => bayOf.get(b) ?? []);
}

/** How a figure stands to its limit: it breaks it by more than `share`; the last 5 % of that share is left open. */
function overLimit(value: number, limit: number, share: number): Verdict {
  if (!Number.isFinite(limit)) return 'none';
  if (value > limit * (1 + share * 1.05)) return 'fault';
  return value > limit * (1 + share * 0.95) ? 'unsure' : 'none';
}

export interface BayVerdict {
  readonly area: Verdict;
  readonly length: Verdict;
  readonly aspect: Verdict;
  readonly reentrant: Verdict;
  readonly core: Verdict;
}

/** Each rule of `within` for one bay, from the bay's own rings. */
export function bayVerdict(scene: Scene, b: SceneBay, limits: BayLimits): BayVerdict {
  const { reentrantMm, columnMm } = scene.plan.layout;
  const answers = leastRectangle(b.bay.measured);
  const sides = answers.map((r): [number, number] => [r.lengthMm / 1000, r.widthMm / 1000]);
  const agreed = (verdicts: readonly Verdict[]): Verdict =>
    verdicts.every((v) => v === verdicts[0]) ? at(verdicts, 0) : 'unsure';
  const aspect = ([length, width]: [number, number]): Verdict => {
    const held =
      length > limits.aspectFromM * 1.00105 ? 'fault' : length > limits.aspectFromM * 0.9999 ? 'unsure' : 'none';
    const over = overLimit(length / width, limits.aspect, 0.002);
    return held === 'none' || over === 'none' ? 'none' : held === 'fault' ? over : 'unsure';
  };
  const passes = (v: Verdict): Verdict => (limits.rectangleMayPass === true && v === 'fault' ? 'unsure' : v);
  return {
    area: passes(overLimit(measuredAreaM2(b), limits.areaM2, 0.001)),
    length: passes(agreed(sides.map(([length]) => overLimit(length, limits.lengthM, 0.001)))),
    aspect: agreed(sides.map(aspect)),
    reentrant: reentrantVerdict(scene, b, reentrantMm),
    core: coreVerdict(scene, b, columnMm),
  };
}

/** Area that the limit holds on: `measured` net of the bay's holes. */
function measuredAreaM2({ bay }: SceneBay): number {
  const measured = [{ outline: bay.measured, holes: [] }];
  return (
    area(
      shapeLess(
        measured,
        bay.holes.map((outline) => [{ outline, holes: [] }]),
      ),
    ) / 1e6
  );
}

/** A column beside a joint leaves a notch that is not judged here; a column that only touches a wall may be read both ways. */
function reentrantVerdict(scene: Scene, b: SceneBay, reentrantMm: number): Verdict {
  const plain = pocketVerdict(b.bay.measured, reentrantMm);
  if (plain === 'none') return 'none';
  const columns = scene.plan.columns.map((c) => c.outline).filter((c) => touches(c, b.sides));
  if (columns.length === 0) return plain;
  const filled = pocketVerdict(ringWithoutNotches(b.bay.measured, columns), reentrantMm);
  // a pipe against a column lengthens the column's notch; the words of the rule leave open whose it is
  const piped = scene.plan.pipes.some(({ centre, diameterMm }) =>
    columns.some((c) => distanceToSegments(centre, segments(c)) < diameterMm / 2 + 1),
  );
  if (piped && filled === 'fault') return 'unsure';
  return filled === plain || columns.every((c) => onJoint(scene, c)) ? filled : 'unsure';
}

function touches(ring: Ring, sides: readonly Segment[]): boolean {
  return (
    ring.some((p) => distanceToSegments(p, sides) < 1) ||
    segments(ring).some((s) => sides.some((side) => side.some((p) => distanceToSegment(p, s) < 1)))
  );
}

function onJoint(scene: Scene, ring: Ring): boolean {
  return scene.analysis.joints.some((j) => touches(ring, lineSegments(j.line)));
}

/** A hole of a room, over the column size, inside the bay. */
function coreVerdict(scene: Scene, b: SceneBay, columnMm: number): Verdict {
  const cores = scene.plan.rooms.flatMap((r) => r.holes);
  const inside = b.bay.holes.filter((hole) => {
    const core = cores.find((c) => area(shapeMeet([{ outline: hole, holes: [] }], [{ outline: c, holes: [] }])) > 1000);
    return core !== undefined && at(leastRectangle(core), 1).lengthMm > columnMm * 1.001;
  });
  return inside.length > 0 ? 'fault' : 'none';
}

function withinFaults(scene: Scene, b: SceneBay): string[] {
  const { bay } = b;
  if (!bay.within && !named(scene, bay.id)) return [`${bay.id} is not within its limits and no finding names it`];
  const limits = bayLimits(b);
  if (limits === null || scene.floor.muddled.size > 0) return [];
  const verdict = bayVerdict(scene, b, limits);
  const rules = Object.entries(verdict) as [keyof BayVerdict, Verdict][];
  const broken = rules.filter(([, v]) => v === 'fault').map(([rule]) => rule);
  const open = rules.some(([, v]) => v === 'unsure');
  const size = `${figure(bay.areaM2)} m2, ${figure(bay.lengthM)} x ${figure(bay.widthM)} m`;
  if (bay.within && broken.length > 0)
    return [`${bay.id} is called within its limits but breaks ${broken.join(', ')} (${size})`];
  if (!bay.within && broken.length === 0 && !open)
    return [`${bay.id} is called over its limits but breaks none (${size})`];
  return [];
}

/** A column over the column size that stands on the floor touches a joint, or a finding names it. */
function columnFaults(scene: Scene): string[] {
  return scene.plan.columns.flatMap((column) => {
    const sizeMm = at(leastRectangle(column.outline), 1).lengthMm;
    const base = [{ outline: column.outline, holes: [] }];
    const onFloor = scene.floor.rooms.some(
      (r) => !scene.floor.muddled.has(r.id) && area(shapeMeet(base, r.shape)) > area(base) * 0.9,
    );
    if (sizeMm <= scene.plan.layout.columnMm * 1.001 || !onFloor) return [];
    if (onJoint(scene, column.outline) || named(scene, column.id)) return [];
    return [`column ${column.id} of ${figure(sizeMm)} mm touches no joint and no finding names it`];
  });
}
