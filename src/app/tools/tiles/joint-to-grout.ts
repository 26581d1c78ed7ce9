import { lineMiddle } from '../../../geometry/line.ts';
import type { Point } from '../../../geometry/point.ts';
import type { Joint } from '../../../plan/analysis.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { analysisStore, type Result } from '../../state/analysisStore.ts';
import { boardRefuse } from '../../state/boardStore.ts';
import { jointThing } from '../../state/thing.ts';
import { jointAsDrawn, jointDragged, jointShifted } from '../choose/joint.ts';
import { handTake, sceneOf } from '../hand.ts';
import type { Step } from '../stance.ts';
import { groutCatch } from './grout.ts';

/** Moves a joint on to the nearest grout line that runs its way, as a drag would: one that was found becomes a drawn one. */
export function jointToGrout(joint: Joint): void {
  const { result } = analysisStore.getState();
  const { file } = sceneOf();
  const moved = result === null ? null : jointOnGrout(joint, { file, result });
  if (moved === null) {
    boardRefuse('No grout line runs there that the joint could be moved to.', []);
    return;
  }
  handTake({ next: 'rest', step: moved, choose: [{ kind: 'object', key: moved.id }] });
}

/** The step that does it, and the drawn joint that the plan has then; null where no grout line runs the joint's way, or no floor lies there. */
export function jointOnGrout(
  joint: Joint,
  { file, result }: { readonly file: PlanFile; readonly result: Result },
): (Step & { readonly id: string }) | null {
  const dragged = jointDragged(jointThing(joint), { file, result });
  const drawn = dragged && jointAsDrawn(dragged, file);
  if (dragged === null || drawn === null) return null;
  const middle = lineMiddle(drawn.line);
  const lines = groutCatch(file, drawn.line)(middle);
  const [nearest] = lines.map((line) => squareTo(middle, line)).sort((a, b) => Math.hypot(...a) - Math.hypot(...b));
  const after = nearest === undefined ? null : jointShifted(drawn, nearest);
  return after === null ? null : { name: `${dragged.name} to the grout line`, file: after, id: drawn.id };
}

/** The way from a place to a line, square to it. */
function squareTo([x, y]: Point, { at, way: [ux, uy] }: { readonly at: Point; readonly way: Point }): Point {
  const across = (at[1] - y) * ux - (at[0] - x) * uy;
  return [-uy * across, ux * across];
}
