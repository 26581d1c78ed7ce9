import type { Analysis } from '../plan/analysis.ts';
import { papersOf } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';
import type { PaperSource } from './paper-source.ts';
import { type FieldSetOut, setOutDrawing } from './set-out-drawing.ts';
import { jointBlocks } from './set-out-joint-text.ts';
import { jointDistances } from './set-out-joints.ts';
import { setOutLines } from './set-out-lines.ts';
import { roomBlocks } from './set-out-room-text.ts';
import { roomSetOuts } from './set-out-rooms.ts';
import { setOutStrip } from './set-out-strip.ts';
import { beforeBlock, fieldBlocks } from './set-out-text.ts';
import { type Face, wallFaces } from './set-out-walls.ts';
import { type Sheets, sheetPages } from './sheet-pages.ts';
import { drawingAsIs } from './strip-flow.ts';
import { textCut } from './text-width.ts';
import { titleBlockOf } from './title-block.ts';
import { namesOf, oneLine, textBefore } from './words.ts';

/** The sheet that a tiler sets out from, to scale, over several where it has to be: reference lines with their distances from walls, the first whole tile, cuts, what each room is set
 *  out by, and where joints run. */
export function setOutPages(source: PaperSource): Sheets {
  const { plan: whole, analysis } = source;
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
  const block = titleBlockOf(source, 'Setting out of the tiles');
  return sheetPages(drawingAsIs(drawing), setOutStrip({ block, drawing, blocks }), papersOf(source.file));
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

function nameShort(name: string): string {
  return textBefore(textCut(oneLine(name), 'sheet-head', widestNameMm));
}
