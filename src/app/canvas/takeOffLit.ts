import type { Point } from '../../geometry/point.ts';
import type { TakeOffRef } from '../../plan/take-off.ts';
import type { Result } from '../state/analysisStore.ts';
import { boardStore } from '../state/boardStore.ts';
import { papersStore } from '../state/papersRun.ts';
import { type SketchMark, sketchLine, sketchRing } from '../tools/sketch.ts';

/** What the chosen line of the take-off was measured from; none outside the step of the papers. */
export function takeOffMarks(): readonly SketchMark[] {
  const { laid, lit } = papersStore.getState();
  if (laid === null || lit === null || boardStore.getState().step !== 'papers') return [];
  const line = laid.takeOff.lines.find(({ key }) => key === lit);
  return (line?.refs ?? []).flatMap((ref) => refMarks(ref, laid.result));
}

function refMarks({ kind, id }: TakeOffRef, { plan, analysis }: Result): readonly SketchMark[] {
  switch (kind) {
    case 'joint':
      return analysis.joints.filter((each) => each.id === id).map(({ line }) => sketchLine(line, 'lit'));
    case 'edge':
      return analysis.edges.filter((each) => each.id === id).map(({ line }) => sketchLine(line, 'lit'));
    case 'bay':
      return rings(analysis.bays.filter((each) => each.id === id));
    case 'room':
      return rings(plan.rooms.filter((each) => each.id === id));
    case 'object':
      return rings([...plan.columns, ...plan.joinery, ...plan.slabContacts].filter((each) => each.id === id));
  }
}

function rings(things: readonly { readonly outline: readonly Point[] }[]): readonly SketchMark[] {
  return things.map(({ outline }) => sketchRing(outline, 'lit'));
}
