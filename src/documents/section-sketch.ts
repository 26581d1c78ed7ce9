import type { Point } from '../geometry/point.ts';
import { fillInks, type Ink } from './ink.ts';
import {
  type Callout,
  calloutInks,
  calloutReachMm,
  calloutRows,
  calloutWidthMm,
  type Sketch,
  sketchDimension,
  sketchLine,
  sketchText,
  sketchWidthMm,
} from './sketch-page.ts';
import { rowMm } from './strip-pen.ts';
import type { FillStyleName } from './styles.ts';
import { textLinesEven } from './text-even.ts';
import { textCut, textWidthMm } from './text-width.ts';

/** A section to scale, with words to the right of it. Places in mm of the building: x to the right from its left side, y down from the finished floor. */
export interface Section {
  readonly title: string;
  /** Said under the title. */
  readonly about: string;
  readonly widthMm: number;
  /** What stands above the finished floor, and what lies below it. */
  readonly aboveMm: number;
  readonly belowMm: number;
  /** In painting order. */
  readonly parts: readonly SectionPart[];
  /** To the right of it, and to the left. */
  readonly callouts: readonly SectionCallout[];
  readonly leftCallouts?: readonly SectionCallout[];
  /** Heights between which the dimension line beside the section is ticked, from the top down. */
  readonly ticksMm: readonly number[];
  /** Dimensions above or below the section. */
  readonly spans: readonly SectionSpan[];
}

export type SectionPart =
  | { readonly kind: 'fill'; readonly style: FillStyleName; readonly box: SectionBox }
  | { readonly kind: 'inks'; readonly inks: (place: SectionPlace) => readonly Ink[] };

/** Left, top, right, bottom. */
export type SectionBox = readonly [number, number, number, number];

export type SectionPlace = (xMm: number, yMm: number) => Point;

export interface SectionCallout {
  readonly at: Point;
  readonly words: string;
}

export interface SectionSpan {
  readonly side: 'above' | 'below';
  readonly fromMm: number;
  readonly toMm: number;
  readonly words: string;
}

const titleMm = 6;
const spanMm = 9;
const sectionMm = 108;
/** Words to its left, and what is left for it between words on both sides. */
const leftWordsMm = 50;
const betweenMm = 62;
const tickMm = 4;
const mostMm = 86;

export function part(style: FillStyleName, left: number, top: number, right: number, bottom: number): SectionPart {
  return { kind: 'fill', style, box: [left, top, right, bottom] };
}

/** Largest first. */
const scales = [2, 2.5, 5, 10, 20, 50, 100, 200, 500, 1000] as const;

/** Scales at which all of some sections have room, the largest first; the smallest of all where none is enough. */
export function sectionScales(sections: readonly Section[]): readonly number[] {
  const fits = ({ widthMm, aboveMm, belowMm, leftCallouts }: Section, scale: number) =>
    widthMm / scale <= (leftCallouts?.length ? betweenMm : sectionMm) && (aboveMm + belowMm) / scale <= mostMm;
  const found = scales.filter((scale) => sections.every((section) => fits(section, scale)));
  return found.length > 0 ? found : scales.slice(-1);
}

export function sectionSketch(section: Section, scale: number): Sketch {
  const { widthMm, aboveMm, belowMm, spans } = section;
  const tallMm = aboveMm + belowMm;
  const title = textCut(section.title, 'sheet-head', sketchWidthMm - 30);
  const about = textLinesEven(section.about, 'sheet-text', sketchWidthMm, 3);
  const left = section.leftCallouts ?? [];
  const leftMm = Math.min(leftWordsMm, Math.max(0, ...left.map(({ words }) => textWidthMm(words, 'sheet-text'))));
  const insetMm = left.length === 0 ? 0 : calloutReachMm(leftMm);
  const bendMm = insetMm + Math.min(widthMm / scale, sectionMm) + 6;
  const rightAt = (place: SectionPlace) => calloutsOf(section.callouts, place, calloutWidthMm(bendMm));
  const leftAt = (place: SectionPlace) => calloutsOf(left, place, leftWordsMm);
  const still: SectionPlace = (x, y) => [x / scale, (y + aboveMm) / scale];
  const rows = [...calloutRows(rightAt(still)), ...calloutRows(leftAt(still))].flat();
  const [first, last] = [Math.min(...rows), Math.max(...rows)];
  const hasSpan = (side: SectionSpan['side']) => spans.some((span) => span.side === side);
  const overMm = Math.max(hasSpan('above') ? spanMm : 0, rowMm / 2 - first);
  const underMm = Math.max(hasSpan('below') ? spanMm : 0, last + rowMm / 2 - tallMm / scale);
  const headMm = titleMm + about.length * rowMm + 2;
  const heightMm = headMm + overMm + tallMm / scale + underMm;
  const inks = ([x, y]: Point): readonly Ink[] => {
    const top = y + headMm + overMm;
    const place: SectionPlace = (xMm, yMm) => [x + insetMm + xMm / scale, top + (yMm + aboveMm) / scale];
    return [
      sketchText(title, 'sheet-head', [x, y + titleMm / 2]),
      sketchText(`1 : ${scale}`, 'sheet-text', [x + sketchWidthMm, y + titleMm / 2], 'end'),
      ...about.map((line, i) => sketchText(line, 'sheet-text', [x, y + titleMm + (i + 0.5) * rowMm])),
      ...section.parts.flatMap((each) => partInks(each, place)),
      ...tickInks(section, place, x + bendMm),
      ...calloutInks(rightAt(place), x + bendMm),
      ...calloutInks(leftAt(place), x + insetMm, 'left'),
      ...spansInks(section, place),
    ];
  };
  return { ref: null, scale, heightMm, inks };
}

function partInks(each: SectionPart, place: SectionPlace): readonly Ink[] {
  if (each.kind === 'inks') return each.inks(place);
  const [left, top, right, bottom] = each.box;
  const outline = [place(left, top), place(right, top), place(right, bottom), place(left, bottom)];
  return fillInks(each.style, outline, []);
}

const mostLines = 4;

/** From the top down, so that leaders do not cross. */
function calloutsOf(callouts: readonly SectionCallout[], place: SectionPlace, widthMm: number): readonly Callout[] {
  return [...callouts]
    .sort((a, b) => a.at[1] - b.at[1] || b.at[0] - a.at[0])
    .map(({ at, words }) => ({
      from: place(...at),
      lines: textLinesEven(words, 'sheet-text', widthMm, mostLines),
    }));
}

function tickInks({ ticksMm, widthMm }: Section, place: SectionPlace, x: number): readonly Ink[] {
  const heights = ticksMm.map((mm) => place(0, mm)[1]);
  const [right] = place(widthMm, 0);
  return [
    ...heights.map((y) => sketchLine([right + 1, y], [x - tickMm / 2, y])),
    ...sketchDimension(heights.map((y): Point => [x - tickMm, y])),
  ];
}

/** Each with its words in its middle; together where one of several is too short for them. */
function spansInks(section: Section, place: SectionPlace): readonly Ink[] {
  return (['above', 'below'] as const).flatMap((side) => {
    const spans = section.spans.filter((span) => span.side === side);
    const isRoomy =
      spans.length < 2 || spans.every((span) => textWidthMm(span.words, 'sheet-text') < lengthMm(span, place));
    const [first, last] = [spans[0], spans[spans.length - 1]];
    if (first === undefined || last === undefined) return [];
    const words = isRoomy ? spans : [{ ...first, toMm: last.toMm, words: spans.map((span) => span.words).join(', ') }];
    return [
      ...spans.flatMap((span) => spanLines(span, section, place)),
      ...words.map((span) => spanWords(span, section, place)),
    ];
  });
}

function lengthMm({ fromMm, toMm }: SectionSpan, place: SectionPlace): number {
  return place(toMm, 0)[0] - place(fromMm, 0)[0];
}

/** Height of the dimension line, and which way it lies off the section. */
function spanLine({ side }: SectionSpan, { aboveMm, belowMm }: Section, place: SectionPlace) {
  const [edge, way] = side === 'above' ? [-aboveMm, -1] : [belowMm, 1];
  const [, y] = place(0, edge);
  return { edge: y, line: y + way * 3, way };
}

function spanLines(span: SectionSpan, section: Section, place: SectionPlace): readonly Ink[] {
  const { edge, line, way } = spanLine(span, section, place);
  const [left, right] = [place(span.fromMm, 0)[0], place(span.toMm, 0)[0]];
  return [
    ...[left, right].map((x) => sketchLine([x, edge + way * 0.5], [x, line + way * 1.2])),
    ...sketchDimension([
      [left, line],
      [right, line],
    ]),
  ];
}

function spanWords(span: SectionSpan, section: Section, place: SectionPlace): Ink {
  const { line, way } = spanLine(span, section, place);
  return sketchText(span.words, 'sheet-text', [place((span.fromMm + span.toMm) / 2, 0)[0], line + way * 3], 'middle');
}
