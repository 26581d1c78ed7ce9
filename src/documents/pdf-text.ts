import bidiFactory from 'bidi-js';
import type { GlyphPlace, PdfFace, PdfGlyph } from './pdf-face.ts';
import { oneLine, rightToLeft } from './words.ts';

/** Glyphs that stand together wherever they stand, from left to right: a word, or what runs to the left. */
export interface TextPiece {
  readonly glyphs: readonly PdfGlyph[];
  /** Width over the font size. */
  readonly widthShare: number;
  readonly stretches: readonly Stretch[];
}

/** Glyphs on one height, in thousandths of the font size. */
interface Stretch {
  readonly rise: number;
  /** What a row of glyphs holds. */
  readonly row: string;
  /** How far right of the pen it begins. */
  readonly from: number;
  /** How far the pen goes back after it. */
  readonly back: number;
}

/** Puts lines of text into the pieces of a face; what it has met before is not shaped again. */
export type TextSetter = (text: string) => readonly TextPiece[];

const bidi = bidiFactory();

/** Seen by nobody: they have done their work once the runs are told apart. */
const unseen = /[\u00ad\u061c\u200b\u200e\u200f\u2060\ufeff]/gu;
/** What a reader is shown for a letter that the font has not. */
const noGlyph = '\ufffd';

export function textSetter(face: Pick<PdfFace, 'has' | 'glyphs'>): TextSetter {
  const words = new Map<string, TextPiece>();
  const wordPiece = (word: string): TextPiece => {
    const piece = words.get(word) ?? pieceOf(face.glyphs(word));
    words.set(word, piece);
    return piece;
  };
  const figures = figureSetter(face);
  const partPiece = (part: string) => (figureFirst.test(part) ? pieceOf(figures(part)) : wordPiece(part));
  // what runs to the left is shaped as a whole: its words stand in an order of their own
  const runPieces = (run: string) =>
    rightToLeft.test(run) ? [pieceOf(face.glyphs(run))] : (run.match(figuresOrWord) ?? []).map(partPiece);
  return (text) => textRuns(textOnPaper(text, face)).flatMap(runPieces);
}

const figuresOrWord = /[\d.,:@ \u00a0-]+|[^\d.,:@ \u00a0-]+ ?/gu;
const figureFirst = /^[\d.,:@ \u00a0-]/u;

/** Figures and marks among them, of which a long list has no end of different ones: each is moved by nothing but the one that follows it, so that they
 *  are shaped two by two. */
export function figureSetter(face: Pick<PdfFace, 'glyphs'>): (figures: string) => readonly PdfGlyph[] {
  const known = new Map<string, PdfGlyph>();
  const first = (pair: string): PdfGlyph => {
    const glyph = known.get(pair) ?? (face.glyphs(pair)[0] as PdfGlyph);
    known.set(pair, glyph);
    return glyph;
  };
  return (figures) => Array.from({ length: figures.length }, (_, i) => first(figures.slice(i, i + 2)));
}

export function pieceOf(glyphs: readonly PdfGlyph[]): TextPiece {
  const stretches: Stretch[] = [];
  let at = 0;
  for (let end = 1; end <= glyphs.length; end++) {
    if (glyphs[end]?.place.yOffset === glyphs[at]?.place.yOffset) continue;
    stretches.push(stretchOf(glyphs.slice(at, end)));
    at = end;
  }
  return { glyphs, widthShare: glyphs.reduce((sum, { place }) => sum + place.xAdvance, 0) / 1000, stretches };
}

function stretchOf(glyphs: readonly PdfGlyph[]): Stretch {
  let row = '';
  let backed = glyphs[0]?.place.xOffset ?? 0;
  for (const { id, place } of glyphs) {
    row = rowJoined(row, backed - place.xOffset, `<${glyphCode(id)}>`);
    backed = backAfter(place);
  }
  return { rise: glyphs[0]?.place.yOffset ?? 0, row, from: glyphs[0]?.place.xOffset ?? 0, back: backed };
}

/** Example: 31 -> "001f" */
export function glyphCode(id: number): string {
  return id.toString(16).padStart(4, '0');
}

/** A row with another behind it. @param back how far the pen goes back between them, in thousandths of the font size */
function rowJoined(row: string, back: number, next: string): string {
  const moved = rounded(back, 10);
  if (moved !== 0) return `${row}${moved}${next}`;
  return row === '' ? next : row.slice(0, -1) + next.slice(1);
}

/** Text of a hostile plan as it can be printed: one line, spaces as a browser sets them, no more than two marks on a letter (more would climb into the
 *  line above), and a sign for each letter that the font has not. */
export function textOnPaper(text: string, face: Pick<PdfFace, 'has'>): string {
  // most of what is printed is such, and has nothing to be mended
  if (/^[!-~]+(?: [!-~]+)*$/u.test(text)) return text;
  const line = oneLine(text)
    .replace(/ +/gu, ' ')
    .replace(/\p{Zs}/gu, ' ')
    .replace(/(\p{M}{2})\p{M}+/gu, '$1');
  let letters = '';
  for (const letter of line) {
    if (face.has(letter.codePointAt(0) ?? 0)) letters += letter;
    else if (!/\p{Cf}|\p{Variation_Selector}/u.test(letter)) letters += noGlyph;
  }
  return letters;
}

/** Pieces of one direction, in the order in which they stand from left to right, each as it is read. The line as a whole runs to the right, as in SVG. */
export function textRuns(text: string): readonly string[] {
  if (!rightToLeft.test(text)) return [text.replace(unseen, '')];
  const { levels } = bidi.getEmbeddingLevels(text, 'ltr');
  const mirrored = bidi.getMirroredCharactersMap(text, levels);
  const runs: { level: number; text: string }[] = [];
  for (let i = 0; i < text.length; i++) {
    const level = levels[i] ?? 0;
    const letter = mirrored.get(i) ?? (text[i] as string);
    const last = runs.at(-1);
    if (last?.level === level) last.text += letter;
    else runs.push({ level, text: letter });
  }
  return runsInOrder(runs).map((run) => (run.level % 2 === 0 ? run.text : runReadable(run.text)).replace(unseen, ''));
}

/** Rule L2 of the Unicode bidirectional algorithm, run by run: from the highest level down to the lowest odd one, what lies at it or above is turned
 *  round. The letters within a run are turned by whoever shapes them. */
function runsInOrder<Run extends { readonly level: number }>(runs: readonly Run[]): readonly Run[] {
  const ordered = [...runs];
  const highest = Math.max(0, ...runs.map(({ level }) => level));
  for (let level = highest; level > 0; level--) {
    for (let start = 0; start < ordered.length; start++) {
      let end = start;
      while ((ordered[end]?.level ?? -1) >= level) end++;
      ordered.splice(start, end - start, ...ordered.slice(start, end).reverse());
      start = Math.max(start, end - 1);
    }
  }
  return ordered;
}

const turnedByShaping = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Nko}]/u;

/** A run without a letter, such as a pair of brackets between Hebrew words, does not tell the font that it runs to the left. */
function runReadable(run: string): string {
  return turnedByShaping.test(run) ? run : [...run].reverse().join('');
}

/** The operators that show pieces one after the other, each glyph where shaping has put it. @param fontMm font size */
export function glyphOperators(pieces: readonly TextPiece[], fontMm: number): string {
  let shown = '';
  let row = '';
  let backed = 0;
  let risen = 0;
  const rowEnd = () => {
    if (row !== '') shown += `[${row}]TJ `;
    row = '';
  };
  for (const stretch of pieces.flatMap(({ stretches }) => stretches)) {
    if (stretch.rise !== risen) {
      rowEnd();
      risen = stretch.rise;
      shown += `${rounded((risen * fontMm) / 1000, 1000)} Ts `;
    }
    row = rowJoined(row, backed - stretch.from, stretch.row);
    backed = stretch.back;
  }
  rowEnd();
  return risen === 0 ? shown : `${shown}0 Ts `;
}

/** How far the pen goes back from where a glyph leaves it to where the next begins. */
function backAfter({ xAdvance, advanceWidth, xOffset }: GlyphPlace): number {
  return advanceWidth + xOffset - xAdvance;
}

function rounded(value: number, parts: number): number {
  return Math.round(value * parts) / parts;
}
