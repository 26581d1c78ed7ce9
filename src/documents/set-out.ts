import type { Analysis } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { type FieldSetOut, setOutDrawing } from './set-out-drawing.ts';
import { jointBlocks } from './set-out-joint-text.ts';
import { jointDistances } from './set-out-joints.ts';
import { setOutLines } from './set-out-lines.ts';
import { roomBlocks } from './set-out-room-text.ts';
import { roomSetOuts } from './set-out-rooms.ts';
import { setOutStrip } from './set-out-strip.ts';
import { beforeBlock, fieldBlocks } from './set-out-text.ts';
import { type Face, wallFaces } from './set-out-walls.ts';
import { type Sheet, sheetOf } from './sheet-inks.ts';
import { namesOf, oneLine } from './words.ts';

/** The sheet that a tiler sets out from, to scale: reference lines with their distances from walls, the first whole tile, cuts, what each room is set
 *  out by, and where joints run. */
export function setOutSheet(plan: Plan, analysis: Analysis): Sheet {
  const names = namesOf(plan, analysis);
  const faces = wallFaces(analysis);
  const fields = fieldSetOuts(plan, analysis, faces);
  const drawing = setOutDrawing(plan, analysis, fields);
  const blocks = [
    beforeBlock(plan),
    ...fieldBlocks(fields, names),
    ...roomBlocks(fields, names, plan.edgeStrip.thicknessMm),
    ...jointBlocks(plan, analysis, jointDistances(plan, analysis, faces)),
  ];
  return sheetOf(drawing, setOutStrip({ title: oneLine(plan.name), drawing, blocks }));
}

/** Of every tile field that is laid. */
export function fieldSetOuts(plan: Plan, analysis: Analysis, faces: readonly Face[]): readonly FieldSetOut[] {
  return (analysis.tiles?.fields ?? []).map((report) => ({
    report,
    lines: setOutLines(plan, report, faces, analysis),
    rooms: roomSetOuts(plan, report, faces, analysis),
  }));
}
