import type { Joint } from '../../../plan/analysis.ts';
import { analysisStore } from '../../state/analysisStore.ts';
import { boardRefuse } from '../../state/boardStore.ts';
import { planStore } from '../../state/planStore.ts';
import { handTake } from '../hand.ts';
import { jointOnGrout } from './joint-on-grout.ts';

/** Moves a joint on to the nearest grout line, and keeps it chosen: one that was found becomes a drawn one. */
export function jointToGrout(joint: Joint): void {
  const { result } = analysisStore.getState();
  const { file } = planStore.getState().history.present;
  const moved = result === null ? null : jointOnGrout(joint, { file, result });
  if (moved === null) boardRefuse('No grout line runs there that the joint could be moved to.', []);
  else handTake({ next: 'rest', step: moved, choose: [{ kind: 'object', key: moved.id }] });
}
