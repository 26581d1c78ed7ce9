import { lineMiddle } from '../../../geometry/line.ts';
import { type Point, vectorLength } from '../../../geometry/point.ts';
import type { Joint } from '../../../plan/analysis.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import type { Result } from '../../state/analysisStore.ts';
import { jointThing } from '../../state/thing.ts';
import type { CatchGrout } from '../catch-lines.ts';
import { jointAsDrawn, jointDragged, jointShifted } from '../choose/joint.ts';
import type { Step } from '../stance.ts';
import { groutCatch } from './grout.ts';

/** A joint moved on to the nearest grout line that runs its way, as a drag would: the step, and the drawn joint that the plan has then. Null where no
 *  grout line runs the joint's way, or no floor lies there. */
export function jointOnGrout(
  joint: Joint,
  { file, result }: { readonly file: PlanFile; readonly result: Result },
): (Step & { readonly id: string }) | null {
  const dragged = jointDragged(jointThing(joint), { file, result });
  const drawn = dragged && jointAsDrawn(dragged, file);
  if (dragged === null || drawn === null) return null;
  const middle = lineMiddle(drawn.line);
  const ways = groutCatch(file, drawn.line)(middle).map((line) => squareTo(middle, line));
  const [nearest] = [...ways].sort((a, b) => vectorLength(...a) - vectorLength(...b));
  const after = nearest === undefined ? null : jointShifted(drawn, nearest);
  return after === null ? null : { name: `${dragged.name} to the grout line`, file: after, id: drawn.id };
}

/** The way from a place to a line, square to it. */
function squareTo([x, y]: Point, { at, way: [ux, uy] }: CatchGrout): Point {
  const across = (at[1] - y) * ux - (at[0] - x) * uy;
  return [-uy * across, ux * across];
}
