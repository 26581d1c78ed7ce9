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
import { textCut } from './text-width.ts';
import { namesOf, oneLine } from './words.ts';

/** The sheet that a tiler sets out from, to scale: reference lines with their distances from walls, the first whole tile, cuts, what each room is set
 *  out by, and where joints run. */
export function setOutSheet(whole: Plan, analysis: Analysis): Sheet {
  const plan = { ...whole, rooms: whole.rooms.map((room) => ({ ...room, name: nameShort(room.name) })) };
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

/** A name in the strip takes no more than most of a line, mm on paper. */
const widestNameMm = 64;
const rightToLeft = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/u;

function nameShort(name: string): string {
  const short = textCut(oneLine(name), 'sheet-head', widestNameMm);
  // else a figure that follows would be read as a part of the name and stand before it
  return rightToLeft.test(short) ? `${short}\u200e` : short;
}
