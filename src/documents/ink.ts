import { regionHatch } from '../geometry/hatch.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import type { BareEnds, DrawingItem, FillItem, LineItem, MarkItem, PlacedLabel, RuledItem } from './drawing.ts';
import { penShare } from './pen.ts';
import {
  type ColourName,
  fillStyles,
  haloMm,
  type LineStyle,
  lineStyles,
  type Stroke,
  type TextStyleName,
  textStyles,
} from './styles.ts';
import { endMarks, markShown, marks, type SymbolFigure } from './symbols.ts';
import { formRows } from './text-width.ts';
import type { Strokes } from './tile-lines.ts';

/** What a pen does on paper: all that a writer of SVG or PDF has to know. Places and widths in mm on paper. */
export type Ink = PathInk | RuledInk | DiscInk | TextInk;

export interface PathInk {
  readonly ink: 'path';
  /** Filled together by the even-odd rule. */
  readonly lines: readonly (readonly Point[])[];
  readonly closed: boolean;
  readonly fill: ColourName | null;
  readonly stroke: Stroke | null;
}

/** Many straight strokes of one pen: they stay as they are on the plan, and whoever draws them puts them in place, so that thousands cost nothing anew
 *  at each step of a zoom. */
export interface RuledInk {
  readonly ink: 'ruled';
  readonly strokes: Strokes;
  readonly place: PaperPlace;
  readonly stroke: Stroke;
}

export interface DiscInk {
  readonly ink: 'disc';
  readonly centre: Point;
  readonly radiusMm: number;
  readonly fill: ColourName | null;
  readonly stroke: Stroke | null;
}

export interface TextInk {
  readonly ink: 'text';
  readonly text: string;
  readonly style: TextStyleName;
  readonly colour: ColourName;
  /** Middle of the height of the capitals; sideways as `anchor` says. */
  readonly at: Point;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly angleDeg: number;
  /** Colour of the ground laid round the letters; null for none. */
  readonly halo: ColourName | null;
}

/** From the plan to the paper: `paper = plan * paperPerPlan + offset`. */
export interface PaperPlace {
  readonly paperPerPlan: number;
  readonly offsetMm: Point;
}

export function paperPoint({ paperPerPlan, offsetMm }: PaperPlace, [x, y]: Point): Point {
  return [x * paperPerPlan + offsetMm[0], y * paperPerPlan + offsetMm[1]];
}

/** The inks of one item. Labels have none here: they are seated first, then `textInks` writes them. */
export function itemInks(item: DrawingItem, place: PaperPlace): readonly Ink[] {
  const onPaper = (points: readonly Point[]) => points.map((point) => paperPoint(place, point));
  const share = penShare(place.paperPerPlan);
  switch (item.shape) {
    case 'fill':
      return inksThinned(fillInks(item.style, onPaper(item.outline), item.holes.map(onPaper)), share);
    case 'line':
      return lineInks(item.style, onPaper(item.points), { share, bareEnds: item.bareEnds });
    case 'ruled':
      return ruledInks(item, place);
    case 'mark':
      return markShown(item, place.paperPerPlan) ? markInks(item, paperPoint(place, item.at)) : [];
    case 'label':
      return [];
  }
}

/** Tiles less wide than this on paper, mm, would be a grey floor. */
const leastTileMm = 1.5;

function ruledInks({ style, strokes, grout }: RuledItem, place: PaperPlace): readonly Ink[] {
  const { strokes: pens, insetMm } = lineStyles[style] as LineStyle;
  const { paperPerPlan } = place;
  if (grout !== undefined) {
    if (!groutShown(grout.leastMm, paperPerPlan)) return [];
    const wide = (pen: Stroke) => ({ ...pen, widthMm: Math.max(pen.widthMm, grout.groutMm * paperPerPlan) });
    return pens.map((pen): Ink => ({ ink: 'ruled', strokes, place, stroke: wide(pen) }));
  }
  const share = penShare(paperPerPlan);
  const lines = strokesInset(strokes, place, (insetMm ?? 0) * share);
  return pens.map((pen): Ink => ({ ink: 'path', lines, closed: false, fill: null, stroke: strokeThinned(pen, share) }));
}

/** Whether the grout lines of tiles are drawn at a scale. */
export function groutShown(leastMm: number, paperPerPlan: number): boolean {
  return leastMm * paperPerPlan >= leastTileMm;
}

/** An inset stroke shorter than this on paper, mm, is left out: bars round a small column would be read as its edge. */
const leastInsetMm = 2.5;

/** Strokes on paper, moved to their right by so much, mm, and shortened so that they clear each other where two meet in a corner. */
function strokesInset(strokes: Strokes, place: PaperPlace, insetMm: number): readonly (readonly Point[])[] {
  const lines: (readonly Point[])[] = [];
  for (let k = 0; k < strokes.length; k += 4) {
    const at = (i: number) => paperPoint(place, [strokes[k + i] as number, strokes[k + i + 1] as number]);
    const [a, b] = [at(0), at(2)];
    const [ux, uy] = pointDirection(a, b);
    const endMm = 1.6 * insetMm;
    if (insetMm > 0 && pointDistance(a, b) < 2 * endMm + leastInsetMm) continue;
    const moved = ([x, y]: Point, by: number): Point => [x - uy * insetMm + ux * by, y + ux * insetMm + uy * by];
    lines.push([moved(a, endMm), moved(b, -endMm)]);
  }
  return lines;
}

/** @param outline, holes mm on paper */
export function fillInks(
  name: FillItem['style'],
  outline: readonly Point[],
  holes: readonly (readonly Point[])[],
): readonly Ink[] {
  const { fill, outline: stroke, hatches } = fillStyles[name];
  const hatched = hatches.map(({ angleDeg, spacingMm, stroke: pen }): Ink => {
    const lines = regionHatch({ outline, holes }, spacingMm, angleDeg);
    return { ink: 'path', lines, closed: false, fill: null, stroke: pen };
  });
  return [{ ink: 'path', lines: [outline, ...holes], closed: true, fill, stroke }, ...hatched];
}

export interface LineOptions {
  /** Of the full weight of its pens and size of its end marks. */
  readonly share?: number;
  readonly bareEnds?: BareEnds | undefined;
}

/** @param points mm on paper */
export function lineInks(
  name: LineItem['style'],
  points: readonly Point[],
  { share = 1, bareEnds }: LineOptions = {},
): readonly Ink[] {
  const style: LineStyle = lineStyles[name];
  const ring = points.length > 2 && samePlace(points[0], points[points.length - 1]);
  const passes = style.strokes.map(
    (stroke): Ink => ({
      ink: 'path',
      lines: [ring ? points.slice(1) : points],
      closed: ring,
      fill: null,
      stroke: strokeThinned(stroke, share),
    }),
  );
  if (style.endMark === null || ring || bareEnds === 'both') return passes;
  const symbol = endMarks[style.endMark];
  const [first, second] = points;
  const [last, beforeLast] = [points[points.length - 1], points[points.length - 2]];
  const endInks = (end: Point | undefined, before: Point | undefined) =>
    end === undefined || before === undefined
      ? []
      : symbolInks(symbol, end, pointDirection(before, end), style.colour, share);
  return [
    ...passes,
    ...(bareEnds === 'first' ? [] : endInks(first, second)),
    ...(bareEnds === 'last' ? [] : endInks(last, beforeLast)),
  ];
}

function strokeThinned(stroke: Stroke, share: number): Stroke {
  if (share === 1) return stroke;
  return { ...stroke, widthMm: stroke.widthMm * share, dashMm: stroke.dashMm.map((mm) => mm * share) };
}

/** Hatches keep their spacing: only the pen is finer. */
function inksThinned(inks: readonly Ink[], share: number): readonly Ink[] {
  if (share === 1) return inks;
  return inks.map((ink) =>
    ink.ink === 'path' && ink.stroke !== null ? { ...ink, stroke: strokeThinned(ink.stroke, share) } : ink,
  );
}

function samePlace(a: Point | undefined, b: Point | undefined): boolean {
  return a !== undefined && b !== undefined && a[0] === b[0] && a[1] === b[1];
}

/** So many letters have room in a pin; more are written smaller. */
const pinLetters = 2;

/** @param at mm on paper */
export function markInks(
  { style, text, angleDeg = 0 }: Pick<MarkItem, 'style' | 'text' | 'angleDeg'>,
  at: Point,
): readonly Ink[] {
  const { figures, textAt, textStyle } = marks[style];
  const radians = (angleDeg * Math.PI) / 180;
  const inks = symbolInks(figures, at, angleDeg === 0 ? [1, 0] : [Math.cos(radians), Math.sin(radians)], 'ink');
  if (text === null || textAt === null || textStyle === null) return inks;
  const written = text.length > pinLetters ? (`${textStyle}-long` as const) : textStyle;
  const { colour } = textStyles[written];
  const place: Point = [at[0] + textAt[0], at[1] + textAt[1]];
  return [...inks, { ink: 'text', text, style: written, colour, at: place, anchor: 'middle', angleDeg: 0, halo: null }];
}

/** A symbol with its x axis along `direction`. */
function symbolInks(
  figures: readonly SymbolFigure[],
  at: Point,
  [dx, dy]: Point,
  lineColour: ColourName,
  share = 1,
): readonly Ink[] {
  const turned = ([x, y]: Point): Point => [at[0] + share * (x * dx - y * dy), at[1] + share * (x * dy + y * dx)];
  const colourOf = (name: SymbolFigure['fill']) => (name === 'line' ? lineColour : name);
  return figures.map((figure): Ink => {
    const colour = colourOf(figure.stroke);
    const stroke =
      colour === null ? null : ({ widthMm: share * figure.widthMm, colour, dashMm: [], cap: 'butt' } as const);
    const fill = colourOf(figure.fill);
    return figure.figure === 'disc'
      ? { ink: 'disc', centre: turned(figure.centre), radiusMm: share * figure.radiusMm, fill, stroke }
      : { ink: 'path', lines: [figure.points.map(turned)], closed: figure.closed, fill, stroke };
  });
}

/** A seated label, centred on `at` (mm on paper). */
export function labelInks(label: Omit<PlacedLabel, 'label' | 'at'>, at: Point): readonly Ink[] {
  const { form, angleDeg, ground, widthMm, heightMm } = label;
  const rows = formRows(form);
  const radians = (angleDeg * Math.PI) / 180;
  const turned = (along: number, down: number): Point => [
    at[0] + Math.cos(radians) * along - Math.sin(radians) * down,
    at[1] + Math.sin(radians) * along + Math.cos(radians) * down,
  ];
  const [x, y] = [widthMm / 2 + haloMm, heightMm / 2];
  const plate: Ink = {
    ink: 'path',
    lines: [[turned(-x, -y), turned(x, -y), turned(x, y), turned(-x, y)]],
    closed: true,
    fill: ground.colour,
    stroke: null,
  };
  const letters = form.map(({ text, style }, i): Ink => {
    const place = turned(0, rows[i] ?? 0);
    return {
      ink: 'text',
      text,
      style,
      colour: textStyles[style].colour,
      at: place,
      anchor: 'middle',
      angleDeg,
      halo: ground.colour,
    };
  });
  return ground.hatched ? [plate, ...letters] : letters;
}
