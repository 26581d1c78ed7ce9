import type { Cut } from '../floor/barrier.ts';
import { type FloorPlan, floorCut } from '../floor/floor.ts';
import { pipeRing } from '../floor/linework.ts';
import { lineMiddle } from '../geometry/line.ts';
import type { Point } from '../geometry/point.ts';
import { type JointLine, jointIsFound, type Split } from '../plan/analysis.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Lined, Plan } from '../plan/plan.ts';
import { bayFindings, crossingFindings, neckFindings } from './bay-findings.ts';
import { type BayBody, bayBodies, floorMap } from './bay-shapes.ts';
import { columnsCheck } from './columns.ts';
import { edgeLines } from './edge-lines.ts';
import { type JointBody, jointBodies } from './joint-lines.ts';
import type { Neck } from './necks.ts';
import type { Part } from './part.ts';
import { cutsPlace, type PlacedPart, partsOf } from './parts.ts';
import { jointReasons } from './reasons.ts';
import { partSolve, type Solved } from './solve.ts';

export interface SplitReport {
  readonly split: Split;
  readonly findings: readonly FindingFact[];
  /** Length of intermediate and neck joints, m. */
  readonly fieldJointM: number;
}

export interface SplitOptions {
  /** Layouts already found, by part; new ones are put in. */
  readonly known: Map<string, Solved>;
  readonly onProgress: (share: number) => void;
  readonly cancelled: () => boolean;
}

/** Splits a floor into bays.
 *  @returns null where it was cancelled */
export function floorSplit(plan: Plan, floorPlan: FloorPlan, options: SplitOptions): SplitReport | null {
  const parts = partsOf(plan, floorPlan.floor);
  const cuts: Cut[] = [];
  const necks: Neck[] = [];
  const given: FindingFact[] = [];
  const used = new Map<string, Solved>();
  for (const [i, placed] of parts.entries()) {
    if (options.cancelled()) return null;
    const key = partKey(placed.part);
    const solved = options.known.get(key) ?? partSolve(placed.part);
    used.set(key, solved);
    options.known.set(key, solved);
    cuts.push(...cutsPlace(placed, solved.cuts));
    necks.push(...solved.openNecks.map((neck) => neckPlace(placed, neck)));
    given.push(...givenUpFindings(placed, solved));
    options.onProgress((i + 1) / parts.length);
  }
  for (const key of options.known.keys()) if (!used.has(key)) options.known.delete(key);
  const report = splitReport(plan, floorPlan, cuts, necks);
  return { ...report, findings: [...given, ...report.findings] };
}

/** A part that was not laid out to the end, or not at all. */
function givenUpFindings({ part, rooms }: PlacedPart, { givenUp }: Solved): FindingFact[] {
  if (givenUp === null) return [];
  const names = rooms.map((room) => room.name);
  const place = { at: rooms[0]?.outline[0] ?? null, refs: rooms.map((room) => room.id) };
  const corners = part.region.holes.reduce((sum, hole) => sum + hole.length, part.region.outline.length);
  return givenUp === 'too-intricate'
    ? [{ code: 'layout-unfinished', names, corners, ...place }]
    : [{ code: 'layout-too-many-bays', names, ...givenUp, ...place }];
}

function partKey(part: Part): string {
  return JSON.stringify(part);
}

function neckPlace({ origin }: PlacedPart, neck: Neck): Neck {
  const move = ([x, y]: Point): Point => [x + origin[0], y + origin[1]];
  return { ...neck, from: move(neck.from), to: move(neck.to) };
}

function splitReport(plan: Plan, floorPlan: FloorPlan, cuts: readonly Cut[], necks: readonly Neck[]): SplitReport {
  const floor = cuts.length > 0 ? floorCut(plan, floorPlan.linework, cuts) : floorPlan.floor;
  const map = floorMap(
    floor,
    floorPlan.doorways.map((joins) => joins[0]?.rooms ?? null),
  );
  const bays = bayBodies(plan, map);
  const bayNumber = new Map(bays.map((bay, i) => [map.of[bay.faces[0] as number] as number, i]));
  const bodies = jointBodies(map, bays, bayNumber, [
    ...plan.columns.map((column) => column.outline),
    ...plan.pipes.map(pipeRing),
  ]);
  const columns = columnsCheck(plan, map, bays, bayNumber, bodies);
  const joints = jointReasons(plan, map, bays, bodies, columns.served);
  const fieldJointM = joints.filter(jointIsFound).reduce((sum, { lengthM }) => sum + lengthM, 0);
  return {
    split: {
      bays: bays.map((bay) => bay.shape),
      joints,
      edges: edgeLines(plan, map, bays, bayNumber),
      pieces: bays.flatMap((bay) => bay.pieces),
    },
    findings: [
      ...bayFindings(plan, bays),
      ...columns.findings,
      ...crossingFindings(plan, joints),
      ...neckFindings(plan, necks, bays),
      ...idleFindings(plan, floorPlan, bays, bodies, joints),
    ],
    fieldJointM,
  };
}

/** Joints of the plan that part no floor, and doorways that keep no joint because something stands in them. */
function idleFindings(
  plan: Plan,
  floorPlan: FloorPlan,
  bays: readonly BayBody[],
  bodies: readonly JointBody[],
  joints: readonly JointLine[],
): FindingFact[] {
  const along = bodies.flatMap(({ barrier, shared }) => [barrier, ...shared]);
  const named = new Set([...along.flatMap((b) => ('id' in b ? [b.id] : [])), ...joints.flatMap((j) => j.reasons)]);
  const loose = new Set(
    floorPlan.findings.flatMap((f) =>
      f.code === 'drawn-joint-loose' || f.code === 'structural-joint-loose' ? [f.id] : [],
    ),
  );
  const idle = (what: 'drawn' | 'structural', of: readonly Lined[]) =>
    of
      .filter(({ id }) => !named.has(id) && !loose.has(id))
      .map(({ id, line }): FindingFact => ({ code: 'joint-idle', what, id, at: lineMiddle(line), refs: [id] }));
  const drawn = [...idle('drawn', plan.drawnJoints), ...idle('structural', plan.structuralJoints)];
  const joins = new Map(plan.doorways.map(({ id }, i) => [id, floorPlan.doorways[i] ?? []]));
  const joinsOf = (id: string) => joins.get(id) ?? [];
  const doorways = plan.doorways
    .filter(({ id }) => joinsOf(id).length > 0 && !named.has(`doorway ${id}`))
    .map(({ id, line }): FindingFact => {
      const rooms = joinsOf(id).map(({ rooms }) => rooms.map((room) => plan.rooms[room]?.id ?? ''));
      const isOpen = rooms.some((pair) => bays.some(({ shape }) => pair.every((room) => shape.rooms.includes(room))));
      return { code: 'doorway-blocked', doorway: id, isOpen, at: lineMiddle(line), refs: [id] };
    });
  return [...drawn, ...doorways];
}
