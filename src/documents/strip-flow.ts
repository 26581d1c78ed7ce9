import type { Drawing, LabelItem } from './drawing.ts';
import type { Ink } from './ink.ts';
import { legendOf } from './legend.ts';
import { columnsOf, type SheetLayout, sheetDetail, stripMm } from './sheet.ts';
import { mostCells } from './sheet-grid.ts';
import { factParts, legendParts, type StripPart, scalePart, textPart } from './strip-parts.ts';
import { type Column, columnIn, padMm, rowMm, rule, textRow } from './strip-pen.ts';
import { textLines } from './text-width.ts';
import { revisionRows, type SheetCount, type TitleBlock, titleBlockCells } from './title-block.ts';

/** A drawing as it stands on sheets. */
export interface SheetDrawing {
  /** At a scale, with all that is drawn to be measured. */
  readonly at: (scale: number) => Drawing;
  /** All of it in small, as a key to the sheets that show its parts. */
  readonly small: Drawing;
}

/** A drawing that is the same at every scale. */
export function drawingAsIs(drawing: Drawing): SheetDrawing {
  return { at: () => drawing, small: drawing };
}

/** Names of a drawing that have found no room. */
export interface NamesLeft {
  readonly labels: readonly LabelItem[];
  /** Rooms that are named nowhere. */
  readonly rooms: number;
}

/** What stands beside a drawing. */
export interface SheetStrip {
  readonly block: TitleBlock;
  /** What the strip should have room for, the most first. */
  readonly wants: readonly ((layout: SheetLayout) => boolean)[];
  inks(layout: SheetLayout, unlettered: NamesLeft, count: SheetCount): readonly Ink[];
}

export interface StripContent<Part extends StripPart> {
  readonly block: TitleBlock;
  readonly facts: readonly (readonly [head: string, text: string])[];
  readonly drawing: SheetDrawing;
  /** What follows the legend. */
  readonly parts: readonly Part[];
  /** Whether a strip may leave these out, the strictest first: the paper is chosen by the first that can be had. */
  readonly mayLeave: readonly ((left: readonly Part[]) => boolean)[];
  /** What is said of parts without room, line by line. */
  readonly leftText: (left: readonly Part[]) => readonly string[];
  /** What is said of names without room on the drawing; null for nothing.
   *  @param scale of the drawing that they are from */
  readonly note: (unlettered: NamesLeft, left: readonly Part[], scale: number) => string | null;
  /** Room for the note, so that the length of the strip is known before labels are seated. */
  readonly noteLines: number;
}

/** Inner width of a column. */
export const columnMm = stripMm - 2 * padMm;
/** A strip in columns: facts, scale and north, legend, what follows; at the foot of the last column cautions, revisions and the title block. */
export function stripOf<Part extends StripPart>(content: StripContent<Part>): SheetStrip {
  return {
    block: content.block,
    wants: content.mayLeave.map((may) => (layout) => {
      const { heads, left } = flowTold(content, layout, () => null, { note: content.noteLines, left: 0 });
      return heads === 0 && may(left);
    }),
    inks: (layout, unlettered, count) => stripInks(content, layout, unlettered, count),
  };
}

const firstOfMany: SheetCount = { page: 1, of: 99 };

/** Rows kept free at the foot: for what has no room on the drawing, and for what has none in the strip. */
interface KeptRows {
  readonly note: number;
  readonly left: number;
}

interface Flow<Part> {
  readonly inks: Ink[];
  /** Of facts and legend, that have found no room. */
  readonly heads: number;
  readonly left: readonly Part[];
  /** Where more can be written. */
  readonly column: Column;
}

function flow<Part extends StripPart>(content: StripContent<Part>, layout: SheetLayout, rows: KeptRows): Flow<Part> {
  const { block, facts, drawing, parts } = content;
  const inks: Ink[] = [];
  const detail = sheetDetail(layout);
  const heads: readonly StripPart[] = [
    ...factParts([...facts, ...scaleFacts(layout)], columnMm),
    scalePart(layout.scale, block.northDeg, columnMm),
    ...legendParts(legendOf(drawing.at(detail), 1 / detail), columnMm),
  ];
  const columns = columnsOf(layout);
  const columnAt = (i: number) => columnIn(columnBox(layout, i), inks);
  const { strip } = layout;
  const foot = footOf(content, layout, null, firstOfMany);
  const lastBottom = strip.y + strip.height - foot.heightMm - (rows.note + rows.left) * rowMm;
  const bottomOf = (i: number) => (i === columns - 1 ? lastBottom : strip.y + strip.height - padMm);
  let [at, column, isFull] = [0, columnAt(0), false];
  const hasRoom = (part: StripPart): boolean => {
    const isOver = () => column.y + part.heightMm > bottomOf(at);
    while (!isFull && isOver() && at < columns - 1) column = columnAt(++at);
    const isIn = !isFull && !isOver();
    if (isIn) part.ink(column);
    else isFull ||= part.standsAlone === undefined;
    return isIn;
  };
  const headsLeft = heads.filter((part) => !hasRoom(part));
  return { inks, heads: headsLeft.length, left: parts.filter((part) => !hasRoom(part)), column };
}

function columnBox({ strip }: SheetLayout, i: number) {
  return { ...strip, x: strip.x + i * stripMm, width: stripMm };
}

function stripInks<Part extends StripPart>(
  content: StripContent<Part>,
  layout: SheetLayout,
  unlettered: NamesLeft,
  count: SheetCount,
): readonly Ink[] {
  const scale = sheetDetail(layout);
  const noteOf = (left: readonly Part[]) => content.note(unlettered, left, scale);
  const { inks, column, told, note } = flowTold(content, layout, noteOf, { note: 0, left: 0 });
  for (const row of told) textRow(column, row, 'sheet-head');
  const { strip } = layout;
  const foot = footOf(content, layout, note, count);
  const last = columnIn(columnBox(layout, columnsOf(layout) - 1), inks);
  last.y = strip.y + strip.height - foot.heightMm;
  foot.ink(last);
  return inks;
}

/** What is said of all that has no room, with room for saying it and no more: the more is left out, the more there is to say. */
function flowTold<Part extends StripPart>(
  content: StripContent<Part>,
  layout: SheetLayout,
  noteOf: (left: readonly Part[]) => string | null,
  rows: KeptRows,
): Flow<Part> & { readonly told: readonly string[]; readonly note: string | null } {
  const flown = flow(content, layout, rows);
  const { heads, left } = flown;
  const note = noteOf(left);
  const lines = [
    ...(heads > 0 ? [`${heads} more facts and symbols on a larger sheet`] : []),
    ...content.leftText(left),
  ];
  const told = lines.flatMap((text) => textLines(text, 'sheet-head', columnMm));
  const needed = {
    note: Math.max(rows.note, note === null ? 0 : textLines(note, 'sheet-text', columnMm).length),
    left: Math.max(rows.left, told.length),
  };
  if (needed.note === rows.note && needed.left === rows.left) return { ...flown, told, note };
  return flowTold(content, layout, noteOf, needed);
}

function scaleFacts({ scale, detailScale, wishedScale, paper }: SheetLayout): StripContent<StripPart>['facts'] {
  if (detailScale === undefined) return [];
  const scales = ['Scales', `this sheet 1 : ${scale}, the sheets after it 1 : ${detailScale}`] as const;
  if (wishedScale === undefined) return [scales];
  return [scales, ['Wished', `1 : ${wishedScale}, not possible on ${paper} with at most ${mostCells} sheets`]];
}

const footPadMm = padMm / 2;

/** Note, cautions, revisions and title block, down to the frame of the strip. */
function footOf(
  { block }: Pick<StripContent<StripPart>, 'block'>,
  layout: SheetLayout,
  note: string | null,
  count: SheetCount,
): StripPart {
  const lines = [...(note === null ? [] : [note]), ...block.cautions];
  const words = textPart(
    lines.flatMap((text) => textLines(text, 'sheet-text', columnMm)),
    'sheet-text',
  );
  const revisions = revisionRows(block, layout, columnMm);
  const cells = titleBlockCells(block, layout, count, columnIn(columnBox(layout, columnsOf(layout) - 1)));
  const revisionsMm = revisions.heightMm === 0 ? 0 : revisions.heightMm + footPadMm;
  return {
    heightMm: words.heightMm + 2 * footPadMm + revisionsMm + cells.heightMm,
    ink(column) {
      rule(column, 0);
      column.y += footPadMm;
      words.ink(column);
      column.y += footPadMm;
      if (revisionsMm > 0) {
        rule(column, 0);
        column.y += footPadMm;
        revisions.ink(column);
      }
      cells.ink(column);
    },
  };
}
