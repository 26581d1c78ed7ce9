import type { Point } from '../geometry/point.ts';
import { type DiscInk, type Ink, type PathInk, paperPoint, type RuledInk, type TextInk } from './ink.ts';
import { mmText } from './mm-text.ts';
import type { PdfGlyph } from './pdf-face.ts';
import { faceNames, type PdfFaces, type PdfGlyphs } from './pdf-file.ts';
import { glyphOperators, type TextPiece, textSetter } from './pdf-text.ts';
import { type ColourName, colours, haloMm, type Stroke, type TextStyleName, textFontMm, textStyles } from './styles.ts';
import { textWidthMm } from './text-width.ts';

/** Puts inks into the operators of a PDF page, whose unit is one mm, y down. It draws what `svg.ts` draws, ink by ink. */
export type PdfInker = (inks: readonly Ink[]) => {
  readonly operators: string;
  readonly glyphs: PdfGlyphs;
};

/** @returns one for all pages of all files in these faces: a text is set once */
export function pdfInker(faces: PdfFaces): PdfInker {
  const setters = { regular: textSetter(faces.regular), bold: textSetter(faces.bold) };
  const known = new Map<TextStyleName, Map<string, Lettering>>();
  const letteringOf = ({ text, style }: TextInk): Lettering => {
    const ofStyle = known.get(style) ?? new Map<string, Lettering>();
    known.set(style, ofStyle);
    const found = ofStyle.get(text) ?? letteringMade(text, style, setters[textStyles[style].weight](text));
    ofStyle.set(text, found);
    return found;
  };
  return (inks) => {
    const pen = newPen();
    const written = { regular: new Map<number, PdfGlyph>(), bold: new Map<number, PdfGlyph>() };
    const lettering = (ink: TextInk) => {
      const made = letteringOf(ink);
      const own = written[made.weight];
      for (const glyph of made.glyphs) if (!own.has(glyph.id)) own.set(glyph.id, glyph);
      return made;
    };
    // round joins, as in SVG
    let operators = '1 j';
    for (const ink of inks) {
      const text = inkOperators(ink, pen, lettering);
      if (text !== '') operators += `\n${text}`;
    }
    return { operators, glyphs: { regular: [...written.regular.values()], bold: [...written.bold.values()] } };
  };
}

/** A text as it is shown in its style, wherever it stands. */
interface Lettering {
  readonly weight: keyof PdfFaces;
  /** Each once. */
  readonly glyphs: readonly PdfGlyph[];
  /** Operators that show it; none where there is nothing to see. */
  readonly shown: string;
  /** From its start to its end as shown. */
  readonly widthMm: number;
  /** Width that is shown over the natural one: no text is wider than the room that was kept for it. */
  readonly share: number;
}

function letteringMade(text: string, style: TextStyleName, pieces: readonly TextPiece[]): Lettering {
  const fontMm = textFontMm(style);
  const naturalMm = pieces.reduce((sum, { widthShare }) => sum + widthShare, 0) * fontMm;
  const share = Math.min(1, textWidthMm(text, style) / naturalMm);
  return {
    weight: textStyles[style].weight,
    glyphs: [...new Set(pieces.flatMap(({ glyphs }) => glyphs))],
    shown: glyphOperators(pieces, fontMm),
    widthMm: naturalMm * share,
    share,
  };
}

function inkOperators(ink: Ink, pen: Pen, lettering: (ink: TextInk) => Lettering): string {
  switch (ink.ink) {
    case 'path':
      return pathOperators(ink, pen);
    case 'ruled':
      return ruledOperators(ink, pen);
    case 'disc':
      return discOperators(ink, pen);
    case 'text':
      return textOperators(ink, lettering(ink), pen);
  }
}

/** What a page is drawn with at the moment: only what changes is said. */
interface Pen {
  fill(colour: ColourName): string;
  stroke(stroke: Stroke): string;
  font(name: string, sizeMm: number): string;
}

function newPen(): Pen {
  const said = new Map<string, string>();
  const say = (what: string, text: string) => {
    if (said.get(what) === text) return '';
    said.set(what, text);
    return `${text} `;
  };
  return {
    fill: (colour) => say('fill', `${rgbText(colour)} rg`),
    stroke: ({ colour, widthMm, dashMm, cap }) =>
      say('stroke', `${rgbText(colour)} RG`) +
      say('width', `${mmText(widthMm)} w`) +
      say('dash', `[${dashMm.map(mmText).join(' ')}] 0 d`) +
      say('cap', `${cap === 'round' ? 1 : 0} J`),
    font: (name, sizeMm) => say('font', `/${name} ${mmText(sizeMm)} Tf`),
  };
}

/** Example: "#ffffff" -> "1 1 1" */
function rgbText(colour: ColourName): string {
  const { light } = colours[colour];
  return [1, 3, 5].map((at) => mmText(Number.parseInt(light.slice(at, at + 2), 16) / 255)).join(' ');
}

function pathOperators({ lines, closed, fill, stroke }: PathInk, pen: Pen): string {
  const path = lines.map((points) => lineText(points, closed)).join('');
  return path === '' ? '' : painted(path, fill, stroke, pen);
}

function lineText(points: readonly Point[], closed: boolean): string {
  const [first, ...others] = points;
  if (first === undefined) return '';
  return `${pointText(first)} m ${others.map((point) => `${pointText(point)} l `).join('')}${closed ? 'h ' : ''}`;
}

/** Filled by the even-odd rule, then stroked. */
function painted(path: string, fill: ColourName | null, stroke: Stroke | null, pen: Pen): string {
  if (fill === null && stroke === null) return '';
  const paint = fill === null ? 'S' : stroke === null ? 'f*' : 'B*';
  return `${fill === null ? '' : pen.fill(fill)}${stroke === null ? '' : pen.stroke(stroke)}${path}${paint}`;
}

function ruledOperators({ strokes, place, stroke }: RuledInk, pen: Pen): string {
  let path = '';
  for (let k = 0; k < strokes.length; k += 4) {
    const at = (i: number) => pointText(paperPoint(place, [strokes[k + i] as number, strokes[k + i + 1] as number]));
    path += `${at(0)} m ${at(2)} l `;
  }
  return path === '' ? '' : painted(path, null, stroke, pen);
}

/** How far the handles of a quarter of a circle reach, over its radius: with it the curve is nowhere off by more than 0.03 %. */
const quarterHandle = (4 / 3) * (Math.SQRT2 - 1);

function discOperators({ centre: [x, y], radiusMm: r, fill, stroke }: DiscInk, pen: Pen): string {
  const on = (alongX: number, alongY: number) => pointText([x + alongX * r, y + alongY * r]);
  const h = quarterHandle;
  const path = [
    `${on(1, 0)} m`,
    `${on(1, h)} ${on(h, 1)} ${on(0, 1)} c`,
    `${on(-h, 1)} ${on(-1, h)} ${on(-1, 0)} c`,
    `${on(-1, -h)} ${on(-h, -1)} ${on(0, -1)} c`,
    `${on(h, -1)} ${on(1, -h)} ${on(1, 0)} c h `,
  ].join(' ');
  return painted(path, fill, stroke, pen);
}

/** How far text starts before the point that it hangs on, over its width. */
const anchorShares = { start: 0, middle: -0.5, end: -1 } as const;

/** Text over its ground, which is the same letters drawn with a wide pen. */
function textOperators(ink: TextInk, { weight, shown, widthMm, share }: Lettering, pen: Pen): string {
  if (shown === '') return '';
  const { style, colour, at, anchor, angleDeg, halo } = ink;
  const fontMm = textFontMm(style);
  const { seen, mute } = faceNames[weight];
  const from: Point = [anchorShares[anchor] * widthMm, textStyles[style].capMm / 2];
  const placed = `${textPlace(at, angleDeg, from)} Tm ${shown}`;
  const [squeezed, released] = share === 1 ? ['', ''] : [`${mmText(100 * share)} Tz `, '100 Tz '];
  const ground =
    halo === null
      ? ''
      : `${pen.stroke(groundStroke(halo))}/Artifact BMC 1 Tr ${pen.font(mute, fontMm)}${placed}0 Tr EMC `;
  return `BT ${squeezed}${ground}${pen.font(seen, fontMm)}${pen.fill(colour)}${placed}${released}ET`;
}

function groundStroke(colour: ColourName): Stroke {
  return { colour, widthMm: 2 * haloMm, dashMm: [], cap: 'butt' };
}

/** The matrix of text turned clockwise about a point, its letters upright though y runs down. @param from start of the text, seen from that point */
function textPlace([x, y]: Point, angleDeg: number, [along, down]: Point): string {
  if (angleDeg === 0) return `1 0 0 -1 ${pointText([x + along, y + down])}`;
  const radians = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(radians), Math.sin(radians)];
  const turn = [cos, sin, sin, -cos].map((value) => String(Math.round(value * 1e6) / 1e6));
  return `${turn.join(' ')} ${pointText([x + cos * along - sin * down, y + sin * along + cos * down])}`;
}

function pointText([x, y]: Point): string {
  return `${mmText(x)} ${mmText(y)}`;
}
