import type { Barrier, StandingBarrier } from '../floor/barrier.ts';
import { edgesWalk } from '../geometry/chain-walk.ts';
import { lineMiddle, lineStraight } from '../geometry/line.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import { boxOf, type Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { loopPoints } from '../geometry/subdivision.ts';
import { GRID_PER_MM, RUN_BEND_DEG, WELD_MM } from '../geometry/tolerance.ts';
import type { JointLine } from '../plan/analysis.ts';
import { type BayBody, type FloorMap, placeKey } from './bay-shapes.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';

/** A joint before its reasons are known: where it runs and what stands behind it. */
export interface JointBody {
  readonly line: Omit<JointLine, 'reasons'>;
  readonly barrier: Barrier;
  /** Joints of the plan that run along here as well. */
  readonly shared: readonly StandingBarrier[];
  /** Edges of the subdivision. */
  readonly edges: readonly number[];
}

interface Stretch {
  readonly barrier: Barrier;
  readonly bays: readonly [number, number];
  readonly edges: number[];
}

/** One joint for each pair of neighbouring bays and each stretch, split where a third bay begins or another kind of joint. */
export function jointBodies(
  map: FloorMap,
  bays: readonly BayBody[],
  bayNumber: ReadonlyMap<number, number>,
  columns: readonly Ring[],
): JointBody[] {
  const stretches = [...stretchesOf(map, bayNumber).values()];
  const found = stretches.flatMap((stretch) => stretchJoints(map, bays, stretch));
  const ordered = found.sort((a, b) => jointOrder(a) - jointOrder(b) || placeOrder(a.line.line, b.line.line));
  const runs = runsOf(
    ordered.map((joint) => joint.line),
    columns,
  );
  const keys = new Map<string, number>();
  return ordered.map((joint, i) => {
    const times = (keys.get(joint.line.key) ?? 0) + 1;
    keys.set(joint.line.key, times);
    const key = times > 1 ? `${joint.line.key}#${times}` : joint.line.key;
    return { ...joint, line: { ...joint.line, id: `J${i + 1}`, key, run: `R${runs[i]}` } };
  });
}

function jointOrder({ line }: JointBody): number {
  return Math.min(...line.bays.map((id) => Number(id.slice(1))));
}

function placeOrder(a: readonly Point[], b: readonly Point[]): number {
  const [p, q] = [lineMiddle(a), lineMiddle(b)];
  return p[1] - q[1] || p[0] - q[0];
}

function stretchesOf({ floor, of }: FloorMap, bayNumber: ReadonlyMap<number, number>): Map<string, Stretch> {
  const stretches = new Map<string, Stretch>();
  floor.subdivision.edges.forEach((edge, i) => {
    const barrier = floor.barriers[i];
    const a = bayNumber.get(of[edge.left] as number);
    const b = bayNumber.get(of[edge.right] as number);
    if (!barrier || a === undefined || b === undefined || a === b) return;
    const bays: [number, number] = a < b ? [a, b] : [b, a];
    const key = `${bays} ${barrier.kind} ${barrierSources(barrier)}`;
    const known = stretches.get(key);
    if (known) known.edges.push(i);
    else stretches.set(key, { barrier, bays, edges: [i] });
  });
  return stretches;
}

function barrierSources(barrier: Barrier): readonly string[] {
  return 'id' in barrier ? [barrier.id] : [];
}

function stretchJoints(
  { floor }: FloorMap,
  bays: readonly BayBody[],
  { barrier, bays: pair, edges }: Stretch,
): JointBody[] {
  const { subdivision } = floor;
  const ends = edges.map((i) => {
    const edge = subdivision.edges[i] as { from: number; to: number };
    return [edge.from, edge.to] as const;
  });
  const edgeBetween = new Map(
    ends.flatMap(([a, b], k) => [
      [`${a},${b}`, edges[k] as number],
      [`${b},${a}`, edges[k] as number],
    ]),
  );
  const [first, second] = pair.map((b) => bays[b] as BayBody) as [BayBody, BayBody];
  return edgesWalk(ends, cornersOf(floor, ends)).map((walk) => {
    const points = loopPoints(subdivision, walk, GRID_PER_MM);
    const lengthM =
      points.reduce((sum, p, i) => (i === 0 ? 0 : sum + pointDistance(points[i - 1] as Point, p)), 0) / 1000;
    const line = lineStraight(points);
    const sources = barrierSources(barrier);
    const rooms = [...new Set([...first.shape.rooms, ...second.shape.rooms])].join('+');
    // A doorway is found again wherever it was moved to; of any other line each stretch is known by its place.
    const named = `${barrier.kind}:${sources.length > 0 ? sources.join('+') : rooms}`;
    const key = barrier.kind === 'doorway' ? named : `${named}@${placeKey(lineMiddle(line))}`;
    const own = walk.flatMap((p, i) => (i === 0 ? [] : (edgeBetween.get(`${walk[i - 1]},${p}`) ?? [])));
    return {
      barrier,
      shared: sharedAlong(floor, own),
      edges: own,
      line: {
        id: '',
        key,
        kind: barrier.kind,
        sources,
        line,
        run: '',
        lengthM,
        bays: [first.shape.id, second.shape.id],
      },
    };
  });
}

function sharedAlong({ shared }: FloorMap['floor'], edges: readonly number[]): StandingBarrier[] {
  const found = edges.flatMap((edge) => shared.get(edge) ?? []);
  return [...new Map(found.map((barrier) => [JSON.stringify(barrier), barrier])).values()];
}

/** Where two edges meet at more than a bend: a joint is a straight length of profile, so that another begins there. */
function cornersOf(
  { subdivision: { x, y } }: FloorMap['floor'],
  ends: readonly (readonly [number, number])[],
): (point: number) => boolean {
  const others = new Map<number, number[]>();
  for (const [a, b] of ends) {
    others.set(a, [...(others.get(a) ?? []), b]);
    others.set(b, [...(others.get(b) ?? []), a]);
  }
  const at = (p: number): Point => [x[p] as number, y[p] as number];
  return (point) => {
    const [before, after, ...more] = others.get(point) ?? [];
    if (before === undefined || after === undefined || more.length > 0) return false;
    return Math.abs(cornerTurn(at(before), at(point), at(after))) > NOTCH_RAD;
  };
}

interface End {
  readonly joint: number;
  readonly at: Point;
  /** Unit vector out of the joint. */
  readonly out: Point;
}

/** Numbers the straight lines that joints make together, also across a column that stands in the line. */
function runsOf(joints: readonly Omit<JointLine, 'reasons'>[], columns: readonly Ring[]): number[] {
  const parent = joints.map((_, i) => i);
  const root = (i: number): number => (parent[i] === i ? i : root(parent[i] as number));
  const ends = joints.flatMap(({ line }, joint): End[] => {
    const last = line.length - 1;
    return [
      endOf(joint, line[0] as Point, line[1] as Point),
      endOf(joint, line[last] as Point, line[last - 1] as Point),
    ];
  });
  const places = new Map<string, End[]>();
  for (const end of ends) {
    const key = `${end.at[0]},${end.at[1]}`;
    places.set(key, [...(places.get(key) ?? []), end]);
  }
  const groups = [...places.values(), ...columns.map((ring) => ends.filter((end) => isAt(ring, end.at)))];
  for (const group of groups) {
    for (let i = 0; i < group.length; i++) {
      for (let j = i + 1; j < group.length; j++) {
        const [a, b] = [group[i] as End, group[j] as End];
        if (runsOn(a, b) && sameClass(joints[a.joint]?.kind, joints[b.joint]?.kind))
          parent[root(b.joint)] = root(a.joint);
      }
    }
  }
  const numbers = new Map<number, number>();
  return joints.map((_, i) => {
    const r = root(i);
    if (!numbers.has(r)) numbers.set(r, numbers.size + 1);
    return numbers.get(r) as number;
  });
}

function sameClass(a: string | undefined, b: string | undefined): boolean {
  const found = (kind: string | undefined) => (kind === 'field' || kind === 'neck' ? 'found' : kind);
  return found(a) === found(b);
}

function endOf(joint: number, at: Point, before: Point): End {
  const length = pointDistance(before, at) || 1;
  return { joint, at, out: [(at[0] - before[0]) / length, (at[1] - before[1]) / length] };
}

function isAt(ring: Ring, p: Point): boolean {
  const weld = WELD_MM;
  const box = boxOf(ring);
  if (p[0] < box.minX - weld || p[0] > box.maxX + weld || p[1] < box.minY - weld || p[1] > box.maxY + weld)
    return false;
  return ring.some((a, i) => segmentDistance(a, ring[(i + 1) % ring.length] as Point, p) <= weld);
}

/** Whether two ends look at each other along one line. */
function runsOn(a: End, b: End): boolean {
  const straight = Math.cos((RUN_BEND_DEG * Math.PI) / 180);
  if (a.out[0] * b.out[0] + a.out[1] * b.out[1] > -straight) return false;
  const gap: Point = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const along = gap[0] * a.out[0] + gap[1] * a.out[1];
  const off = Math.abs(gap[0] * a.out[1] - gap[1] * a.out[0]);
  return along >= -1 && off <= Math.max(1, along * Math.sin((RUN_BEND_DEG * Math.PI) / 180));
}
