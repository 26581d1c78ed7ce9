import type { Analysis } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { type FieldSetOut, setOutDrawing } from './set-out-drawing.ts';
import { jointDistances } from './set-out-joints.ts';
import { setOutLines } from './set-out-lines.ts';
import { setOutStrip } from './set-out-strip.ts';
import { beforeBlock, fieldBlocks, jointBlocks } from './set-out-text.ts';
import { wallFaces } from './set-out-walls.ts';
import { type Sheet, sheetOf } from './sheet-inks.ts';
import { namesOf, oneLine } from './words.ts';

/** The sheet that a tiler sets out from, to scale: reference lines with their distances from walls, the first whole tile, cuts, and where joints run. */
export function setOutSheet(plan: Plan, analysis: Analysis): Sheet {
  const names = namesOf(plan, analysis);
  const faces = wallFaces(analysis);
  const fields = (analysis.tiles?.fields ?? []).map(
    (report): FieldSetOut => ({ report, lines: setOutLines(plan, report, faces, analysis) }),
  );
  const drawing = setOutDrawing(plan, analysis, fields);
  const blocks = [
    beforeBlock(plan),
    ...fieldBlocks(fields, names),
    ...jointBlocks(plan, analysis, jointDistances(plan, analysis, faces)),
  ];
  return sheetOf(drawing, setOutStrip({ title: oneLine(plan.name), drawing, blocks }));
}
