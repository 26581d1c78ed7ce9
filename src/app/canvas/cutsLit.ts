import { limitExceeded } from '../../plan/exceed.ts';
import { rules } from '../../plan/reference.ts';
import { analysisStore } from '../state/analysisStore.ts';
import { boardStore } from '../state/boardStore.ts';
import { type SketchMark, sketchLine } from '../tools/sketch.ts';

/** Along which walls, things and joints the cuts lie that a count in the list lights; none outside the step that lays coverings. */
export function cutMarks(): readonly SketchMark[] {
  const { cutsLit, step } = boardStore.getState();
  const fields = analysisStore.getState().result?.analysis.tiles?.fields ?? [];
  if (cutsLit === null || step !== 'coverings') return [];
  const { cuts: which, of } = cutsLit;
  const under = which === 'half' ? rules.cutLeastShare.value : rules.sliverShare.value;
  return fields
    .filter(({ id }) => of === undefined || id === of)
    .flatMap(({ cuts }) => cuts)
    .filter(({ leastShare }) => limitExceeded(under, leastShare))
    .map(({ line }) => sketchLine(line, 'lit'));
}
