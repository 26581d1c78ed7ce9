import bidiFactory from 'bidi-js';
import type { GlyphPlace, PdfFont } from './pdf-file.ts';
import { oneLine, rightToLeft } from './words.ts';

/** A line of text as the glyphs of a font, from left to right. */
export interface TextGlyphs {
  readonly glyphs: ReturnType<PdfFont['glyphs']>;
  /** Width over the font size. */
  readonly widthShare: number;
}

const bidi = bidiFactory();

/** Seen by nobody: they have done their work once the runs are told apart. */
const unseen = /[\u00ad\u061c\u200b\u200e\u200f\u2060\ufeff]/gu;
/** What a reader is shown for a letter that the font has not. */
const noGlyph = '\ufffd';

export function textGlyphs(text: string, font: PdfFont): TextGlyphs {
  const glyphs = textRuns(textOnPaper(text, font)).flatMap((run) => font.glyphs(run));
  return { glyphs, widthShare: glyphs.reduce((sum, { place }) => sum + place.xAdvance, 0) / 1000 };
}

/** Text of a hostile plan as it can be printed: one line, spaces as a browser sets them, no more than two marks on a letter (more would climb into the
 *  line above), and a sign for each letter that the font has not. */
export function textOnPaper(text: string, font: Pick<PdfFont, 'has'>): string {
  const line = oneLine(text)
    .replace(/ +/gu, ' ')
    .replace(/\p{Zs}/gu, ' ')
    .replace(/(\p{M}{2})\p{M}+/gu, '$1');
  let letters = '';
  for (const letter of line) {
    if (font.has(letter.codePointAt(0) ?? 0)) letters += letter;
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

/** The operators that show glyphs, each where shaping has put it. @param fontMm font size */
export function glyphOperators({ glyphs }: TextGlyphs, fontMm: number): string {
  let shown = '';
  let row = '';
  let codes = '';
  let backed = 0;
  let risen = 0;
  const rowEnd = () => {
    if (codes !== '') row += `<${codes}>`;
    if (row !== '') shown += `[${row}]TJ `;
    row = codes = '';
  };
  for (const { code, place } of glyphs) {
    if (place.yOffset !== risen) {
      rowEnd();
      risen = place.yOffset;
      shown += `${rounded((risen * fontMm) / 1000, 1000)} Ts `;
    }
    const back = rounded(backed - place.xOffset, 10);
    if (back !== 0) {
      row += `${codes === '' ? '' : `<${codes}>`}${back}`;
      codes = '';
    }
    codes += code;
    backed = backAfter(place);
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
