import { type Point, pointDirection } from '../geometry/point.ts';
import { ringCentroid } from '../geometry/ring.ts';
import { limitExceeded } from '../plan/exceed.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import type { BayBody, FloorMap } from './bay-shapes.ts';
import type { JointBody } from './joint-lines.ts';
import { longerSide } from './measure.ts';

/** Joints whose directions differ by no more than this run one way, degrees. */
const ONE_WAY_DEG = 20;

interface Standing {
  /** Bays round the column. */
  readonly bays: Set<number>;
  /** Joints that end at it or run through it. */
  readonly joints: Set<number>;
  /** Whether a wall touches it. */
  walled: boolean;
}

export interface ColumnReport {
  readonly findings: readonly FindingFact[];
  /** By joint id: the columns that need a joint and have this one. */
  readonly served: ReadonlyMap<string, readonly string[]>;
}

/** Columns against the joints: a large one must touch a joint, better from two directions; a small one inside a bay starts cracks. */
export function columnsCheck(
  plan: Plan,
  map: FloorMap,
  bays: readonly BayBody[],
  bayNumber: ReadonlyMap<number, number>,
  joints: readonly JointBody[],
): ColumnReport {
  const standing = columnsStanding(map, bayNumber, joints);
  const served = new Map<string, string[]>();
  const findings = plan.columns.flatMap((column): FindingFact[] => {
    const found = standing.get(column.id);
    const at = ringCentroid(column.outline);
    if (!found || found.bays.size === 0) {
      return [{ code: 'object-off-floor', what: 'column', id: column.id, at, refs: [column.id] }];
    }
    const sideMm = longerSide(column.outline);
    const limitMm = plan.layout.columnMm;
    const bay = bays[[...found.bays].sort((a, b) => a - b)[0] as number]?.shape.id ?? '';
    const touching = [...found.joints].map((j) => joints[j] as JointBody);
    if (limitExceeded(sideMm, limitMm)) {
      for (const { line } of touching)
        if (line.kind === 'field') served.set(line.id, [...(served.get(line.id) ?? []), column.id]);
      if (touching.length === 0)
        return [{ code: 'column-off-joint', column: column.id, bay, sideMm, limitMm, at, refs: [column.id, bay] }];
      return isOneWay(touching)
        ? [
            {
              code: 'column-one-direction',
              column: column.id,
              at,
              refs: [column.id, ...touching.map((j) => j.line.id)],
            },
          ]
        : [];
    }
    if (found.walled || touching.length > 0) return [];
    return [{ code: 'column-in-bay', column: column.id, bay, at, refs: [column.id, bay] }];
  });
  return { findings, served };
}

function columnsStanding(
  map: FloorMap,
  bayNumber: ReadonlyMap<number, number>,
  joints: readonly JointBody[],
): Map<string, Standing> {
  const { floor, of } = map;
  const { faces, subdivision } = floor;
  const standing = new Map<string, Standing>();
  const atPoint = new Map<number, Set<string>>();
  const columnId = (f: number) => (faces[f]?.obstacle?.along === 'column' ? faces[f]?.obstacle?.id : undefined);
  for (const edge of subdivision.edges) {
    for (const [own, other] of [
      [edge.left, edge.right],
      [edge.right, edge.left],
    ] as const) {
      const id = columnId(own);
      if (id === undefined || columnId(other) === id) continue;
      const entry = standing.get(id) ?? { bays: new Set(), joints: new Set(), walled: false };
      standing.set(id, entry);
      const bay = bayNumber.get(of[other] as number);
      if (bay !== undefined) entry.bays.add(bay);
      else entry.walled = true;
      for (const p of [edge.from, edge.to]) atPoint.set(p, (atPoint.get(p) ?? new Set()).add(id));
    }
  }
  joints.forEach((joint, j) => {
    for (const i of joint.edges) {
      const edge = subdivision.edges[i] as { from: number; to: number };
      for (const p of [edge.from, edge.to]) for (const id of atPoint.get(p) ?? []) standing.get(id)?.joints.add(j);
    }
  });
  return standing;
}

function isOneWay(joints: readonly JointBody[]): boolean {
  const directions = joints.map(
    ({ line }): Point => pointDirection(line.line[0] as Point, line.line[line.line.length - 1] as Point),
  );
  const first = directions[0] as Point;
  const limit = Math.sin((ONE_WAY_DEG * Math.PI) / 180);
  return directions.every((d) => Math.abs(first[0] * d[1] - first[1] * d[0]) <= limit);
}
