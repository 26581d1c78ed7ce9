import type { Point } from '../geometry/point.ts';
import type { DrawingRef } from './drawing.ts';
import { type Ink, lineInks } from './ink.ts';
import { spread } from './joint-dimensions-string.ts';
import type { Page, PageGroup } from './page.ts';
import type { PaperSource } from './paper-source.ts';
import { type Column, penStroke, rowMm, rule, textAt, textRow } from './strip-pen.ts';
import { type TextStyleName, textStyles } from './styles.ts';
import { textCut, textLinesFirst, textWidthMm } from './text-width.ts';
import { type SheetCount, sheetNumberText, titleBlockOf } from './title-block.ts';
import { notChecked, statusNames, textBefore } from './words.ts';

/** Pages of sketches that stand under each other, each to its scale: doorways and sections. */

export interface Sketch {
  readonly ref: DrawingRef | null;
  /** 10 for 1 : 10; it stands beside the sketch. */
  readonly scale: number;
  readonly heightMm: number;
  /** @param top left upper corner, mm on paper */
  readonly inks: (top: Point) => readonly Ink[];
}

const page = { paper: 'A4 standing', widthMm: 210, heightMm: 297 } as const;
const margin = { left: 18, right: 10, top: 10, bottom: 10 } as const;
const headMm = 17;
const footMm = 24;
const gapMm = 4;

/** Room that a sketch has across, mm on paper. */
export const sketchWidthMm = page.widthMm - margin.left - margin.right;
const bodyMm = page.heightMm - margin.top - margin.bottom - headMm - footMm;

/** Sketches in their order, none alone on the last page where it can share one. One that is higher than a page has a page to itself.
 *  @param note stands at the head of each page */
export function sketchPages(
  source: PaperSource,
  subject: string,
  sketches: readonly Sketch[],
  note = '',
): readonly Page[] {
  const pages = pagesFilled(sketches);
  const block = titleBlockOf(source, subject);
  return pages.map((on, i): Page => {
    const scales = [...new Set(on.map(({ scale }) => scale))];
    const frame: PageGroup = {
      ref: null,
      inks: frameInks(block, { scales, note, count: { page: i + 1, of: pages.length } }),
    };
    const scale = scales.length === 1 ? (scales[0] ?? null) : null;
    let y: number = margin.top + headMm;
    const groups = on.map(({ ref, heightMm, inks }): PageGroup => {
      const top: Point = [margin.left, y];
      y += heightMm + gapMm;
      return { ref, inks: inks(top) };
    });
    return { ...page, scale, title: block.title, subject, part: subject, groups: [...groups, frame] };
  });
}

type On = readonly Sketch[];

function pagesFilled(sketches: readonly Sketch[]): readonly On[] {
  const pages: Sketch[][] = [];
  for (const sketch of sketches) {
    const open = pages[pages.length - 1];
    if (open !== undefined && heightOf([...open, sketch]) <= bodyMm) open.push(sketch);
    else pages.push([sketch]);
  }
  return lastEvened(pages);
}

function heightOf(on: On): number {
  return on.reduce((sum, { heightMm }) => sum + heightMm, (on.length - 1) * gapMm);
}

/** The last page takes from the one before it as long as that has more on it after all. */
function lastEvened(pages: readonly On[]): readonly On[] {
  const [before, last] = [pages[pages.length - 2], pages[pages.length - 1]];
  const moved = before?.[before.length - 1];
  if (before === undefined || last === undefined || moved === undefined) return pages;
  const [left, taken] = [before.slice(0, -1), [moved, ...last]];
  const isEvener = left.length >= taken.length && heightOf(taken) <= bodyMm;
  return isEvener ? lastEvened([...pages.slice(0, -2), left, taken]) : pages;
}

/** Whether a low sketch has a page to itself while others share theirs. */
export function sketchesHaveAlone(sketches: readonly Sketch[]): boolean {
  const pages = pagesFilled(sketches);
  return (
    pages.length > 1 &&
    pages.some(
      ([first, ...others]) =>
        others.length === 0 && heightOf(first === undefined ? [] : [first]) <= (bodyMm - gapMm) / 2,
    )
  );
}

type Block = ReturnType<typeof titleBlockOf>;

interface Frame {
  readonly scales: readonly number[];
  readonly note: string;
  readonly count: SheetCount;
}

function frameInks(block: Block, { scales, note, count }: Frame): readonly Ink[] {
  const inks: Ink[] = [];
  const column: Column = { inks, left: margin.left, width: sketchWidthMm, y: margin.top };
  const title = textBefore(textCut(block.title, 'sheet-title', column.width));
  textRow(column, title, 'sheet-title', rowMm * 1.4);
  textRow(column, block.subject, 'sheet-text');
  const noteX = column.left + textWidthMm(block.subject, 'sheet-text') + 4;
  if (note !== '') textAt(column, note, 'sheet-text', [noteX, column.y - rowMm / 2], 'start');
  const scaleText = `${scales.length === 1 ? 'Scale' : 'Scales'} ${scales.map((scale) => `1 : ${scale}`).join(', ')}`;
  textAt(column, scaleText, 'sheet-head', [column.left + column.width, column.y - rowMm / 2], 'end');
  rule(column, 1.5);

  const facts = [block.project, statusNames[block.status], block.date].filter((part) => part !== '');
  const lines = block.cautions.flatMap((caution) => textLinesFirst(caution, 'sheet-text', column.width, 2));
  column.y = page.heightMm - margin.bottom - footMm + 3;
  rule(column, -1.5);
  const sheet = sheetNumberText(block, count, { what: 'Sheet', style: 'sheet-head', widthMm: 58 });
  textAt(column, sheet, 'sheet-head', [column.left + column.width, column.y + rowMm / 2], 'end');
  textRow(column, textCut(facts.map(textBefore).join(', '), 'sheet-text', column.width - 60), 'sheet-text');
  const isNamed = block.designer !== '';
  const designer = isNamed
    ? `Responsible designer: ${textBefore(block.designer)}`
    : `${notChecked}: no designer is named.`;
  const faultsMm = block.faults === null ? 0 : textWidthMm(block.faults, 'sheet-fault') + 2;
  if (block.faults !== null)
    textAt(column, block.faults, 'sheet-fault', [column.left + column.width, column.y + rowMm / 2], 'end');
  const [style, roomMm] = [isNamed ? 'sheet-head' : 'sheet-fault', column.width - faultsMm] as const;
  textRow(column, textCut(designer, style, roomMm), style);
  for (const text of lines) textRow(column, text, 'sheet-text');
  return inks;
}

/** Text in its place on a sketch. */
export function sketchText(
  text: string,
  style: TextStyleName,
  at: Point,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Ink {
  return { ink: 'text', text, style, colour: textStyles[style].colour, at, anchor, angleDeg: 0, halo: null };
}

/** A fine line, such as one that leads from a place to its words. */
export function sketchLine(...points: readonly Point[]): Ink {
  return { ink: 'path', lines: [points], closed: false, fill: null, stroke: penStroke(0.18, 'ink') };
}

/** A dimension line with a slanted stroke at each of its places, which stand in order along it. */
export function sketchDimension(places: readonly Point[]): readonly Ink[] {
  return places.slice(1).flatMap((to, i) => lineInks('dimension', [places[i] as Point, to]));
}

/** Words that belong to places one above the other. */
export interface Callout {
  /** Where its leader begins, mm on paper. */
  readonly from: Point;
  readonly lines: readonly string[];
}

/** From the line at which leaders bend to the words, mm on paper. */
const leaderMm = { straight: 3, bent: 5.5, end: 7, words: 8 } as const;

/** Rows of callouts in the order of their places, the first line of each as near to its place as the others let it be. */
export function calloutRows(callouts: readonly Callout[]): readonly (readonly number[])[] {
  const wanted = callouts.flatMap(({ from, lines }) => lines.map((_, i) => from[1] + i * rowMm));
  const rows = spread(wanted, rowMm);
  let at = 0;
  return callouts.map(({ lines }) => {
    at += lines.length;
    return rows.slice(at - lines.length, at);
  });
}

/** Callouts with leaders that bend to one side of a line up the page and never cross. */
export function calloutInks(
  callouts: readonly Callout[],
  bendX: number,
  side: 'left' | 'right' = 'right',
): readonly Ink[] {
  const rows = calloutRows(callouts);
  const [way, anchor] = side === 'right' ? ([1, 'start'] as const) : ([-1, 'end'] as const);
  const off = (mm: number) => bendX + way * mm;
  return callouts.flatMap(({ from, lines }, i): Ink[] => {
    const own = rows[i] ?? [];
    const to = own[0];
    if (to === undefined) return [];
    const words = lines.map((line, k) => sketchText(line, 'sheet-text', [off(leaderMm.words), own[k] ?? to], anchor));
    const bends: readonly Point[] = [
      from,
      [off(leaderMm.straight), from[1]],
      [off(leaderMm.bent), to],
      [off(leaderMm.end), to],
    ];
    return [sketchLine(...bends), ...words];
  });
}

/** From the line at which leaders bend to the end of their words. */
export function calloutReachMm(wordsMm: number): number {
  return wordsMm + leaderMm.words;
}

/** Room for the words of callouts, mm on paper. @param bendMm of the line at which leaders bend, from the left side of the sketch */
export function calloutWidthMm(bendMm: number): number {
  return sketchWidthMm - bendMm - leaderMm.words;
}
