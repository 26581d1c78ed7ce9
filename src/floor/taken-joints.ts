import { boxIndexOf } from '../geometry/box-index.ts';
import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { boxAround, boxOf } from '../geometry/ring.ts';
import { loopPoints, type Subdivision } from '../geometry/subdivision.ts';
import { GRID_PER_MM } from '../geometry/tolerance.ts';
import { naturalOrder } from '../plan/figure-words.ts';
import type { FindingFact, JointKeeper } from '../plan/finding.ts';
import type { Plan, Room } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import { type Barrier, isStanding, type StandingBarrier } from './barrier.ts';
import type { FloorFace } from './faces.ts';

/** A joint within this of the line of one that was taken away, over at least so much of it and no further turned from it, is that joint again. */
const BAND_MM = rules.takenJointReachMm.value;
const LEAST_MM = rules.takenJointLeastMm.value;
const SKEW = Math.tan((rules.takenJointTurnDeg.value * Math.PI) / 180);

/** The part of a floor that these findings read. */
interface Floor {
  readonly subdivision: Subdivision;
  readonly faces: readonly FloorFace[];
  readonly barriers: readonly (Barrier | null)[];
}

interface Standing {
  readonly ends: readonly [Point, Point];
  readonly barrier: StandingBarrier;
}

interface Kept {
  readonly keeper: JointKeeper;
  readonly refs: readonly string[];
}

/** Joints that the user took away and that stand all the same, with what keeps each: taking away bars intermediate joints and those across
 *  necks, no other. */
export function takenJointFindings(plan: Plan, floor: Floor): FindingFact[] {
  if (plan.noJoint.length === 0) return [];
  const standing = standingJoints(floor);
  const index = boxIndexOf(standing.map(({ ends }) => boxOf(ends)));
  return plan.noJoint.flatMap(({ id, line }): FindingFact[] => {
    const keepers = new Map<string, Kept>();
    line.slice(1).forEach((b, i) => {
      const a = line[i] as Point;
      for (const n of index.near(boxAround(boxOf([a, b]), BAND_MM))) {
        const { ends, barrier } = standing[n] as Standing;
        if (!runsAlong(a, b, ends)) continue;
        const kept = keptBy(plan, barrier);
        keepers.set(kept.refs.join(' '), kept);
      }
    });
    const kept = [...keepers].sort(([p], [q]) => naturalOrder(p, q)).map(([, each]) => each);
    if (kept.length === 0) return [];
    return [
      {
        code: 'no-joint-stands',
        id,
        keepers: kept.map(({ keeper }) => keeper),
        at: lineMiddle(line),
        refs: [...new Set([id, ...kept.flatMap(({ refs }) => refs)])],
      },
    ];
  });
}

/** The stretches of joints that part floor from floor whatever is taken away. */
function standingJoints({ subdivision, faces, barriers }: Floor): readonly Standing[] {
  return subdivision.edges.flatMap(({ from, to, left, right }, i): readonly Standing[] => {
    const barrier = barriers[i];
    if (!barrier || !isStanding(barrier)) return [];
    if (!faces[left]?.floor || !faces[right]?.floor) return [];
    const [a, b] = loopPoints(subdivision, [from, to], GRID_PER_MM) as [Point, Point];
    return [{ ends: [a, b], barrier }];
  });
}

function keptBy(plan: Plan, barrier: StandingBarrier): Kept {
  if (barrier.kind !== 'zone') return { keeper: { kind: barrier.kind, id: barrier.id }, refs: [barrier.id] };
  const [one, two] = barrier.rooms.map((room) => plan.rooms[room]) as [Room, Room];
  return { keeper: { kind: 'zone', names: [one.name, two.name] }, refs: [one.id, two.id] };
}

/** Whether a joint runs beside the stretch from a to b, in its direction and within the band. */
function runsAlong(a: Point, b: Point, ends: readonly [Point, Point]): boolean {
  const lengthMm = pointDistance(a, b);
  const [ux, uy] = pointDirection(a, b);
  const along = ([x, y]: Point) => (x - a[0]) * ux + (y - a[1]) * uy;
  const beside = ([x, y]: Point) => (y - a[1]) * ux - (x - a[0]) * uy;
  const [p, q] = along(ends[0]) <= along(ends[1]) ? ends : [ends[1], ends[0]];
  const from = Math.max(0, along(p));
  const to = Math.min(lengthMm, along(q));
  if (to - from < LEAST_MM) return false;
  const skew = (beside(q) - beside(p)) / (along(q) - along(p));
  const offAt = (t: number) => Math.abs(beside(p) + skew * (t - along(p)));
  return Math.abs(skew) <= SKEW && Math.max(offAt(from), offAt(to)) <= BAND_MM;
}
