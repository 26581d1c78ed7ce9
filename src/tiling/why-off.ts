import { type Point, pointDistance } from '../geometry/point.ts';
import { boxOf, type Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { JointKind, JointLine, WhyOff } from '../plan/analysis.ts';
import { limitExceeded } from '../plan/exceed.ts';
import type { Plan } from '../plan/plan.ts';

/** Joints that stand where something else puts them. A neck's is put at the narrowest place. */
const dictated: Readonly<Partial<Record<JointKind, WhyOff>>> = {
  doorway: 'doorway',
  structural: 'building',
  zone: 'zone',
  drawn: 'user',
  neck: 'neck',
};

/** Why a joint that lies off the grout lines does.
 *  @param runs how grout runs: straight its way, not so in this bond, or the joint is askew to the grid */
export function whyOff(plan: Plan, joint: JointLine, runs: 'straight' | 'bond' | 'askew'): WhyOff {
  const put = dictated[joint.kind];
  if (put !== undefined) return put;
  if (runs !== 'straight') return runs;
  if (plan.layout.aim !== 'grout-lines') return 'aim';
  const ends = [joint.line[0] as Point, joint.line[joint.line.length - 1] as Point];
  if (ends.some((end) => isNotch(plan, end))) return 'corner';
  return plan.columns.some(({ outline }) => isNeeded(outline, plan) && meets(outline, ends)) ? 'column' : 'limits';
}

/** Whether a place is a corner that turns into the floor: of a room's outline inwards, of a hole's or of joinery that takes floor any. */
function isNotch({ rooms, joinery }: Plan, at: Point): boolean {
  const holes = [
    ...rooms.flatMap((room) => room.holes),
    ...joinery.flatMap(({ under, outline }) => (under === 'built-off-slab' ? [outline] : [])),
  ];
  if (holes.some((hole) => hole.some((p) => pointDistance(p, at) <= WELD_MM))) return true;
  return rooms.some(({ outline }) => outline.some((p, k) => pointDistance(p, at) <= WELD_MM && turnsIn(outline, k)));
}

function turnsIn(ring: Ring, k: number): boolean {
  const turn = (i: number) => {
    const [a, p, b] = [-1, 0, 1].map((by) => ring[(i + by + ring.length) % ring.length] as Point) as [
      Point,
      Point,
      Point,
    ];
    return (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]);
  };
  // The leftmost corner turns the way that the ring runs.
  const leftmost = ring.reduce((best, p, i) => (p[0] < (ring[best] as Point)[0] ? i : best), 0);
  return turn(k) * turn(leftmost) < 0;
}

function isNeeded(outline: Ring, { layout }: Plan): boolean {
  const { minX, maxX, minY, maxY } = boxOf(outline);
  return limitExceeded(Math.max(maxX - minX, maxY - minY), layout.columnMm);
}

function meets(outline: Ring, ends: readonly Point[]): boolean {
  return ends.some((end) =>
    outline.some((p, k) => segmentDistance(p, outline[(k + 1) % outline.length] as Point, end) <= WELD_MM),
  );
}
