import type { TextStyleName } from './styles.ts';
import { textLinesFirst, textWidthMm } from './text-width.ts';

/** A last line that is shorter than this share of the room hangs: a word on its own, often. */
const hangingShare = 0.3;
/** Of more lines nobody sees one that hangs. */
const mostEvened = 4;
/** Less than any printer draws. */
const hairMm = 0.01;

/** The first few lines of a text, no more than the room asks for: the last of few takes words from those before it rather than hang, and no word is
 *  broken for it. */
export function textLinesEven(text: string, style: TextStyleName, widthMm: number, most: number): readonly string[] {
  const lines = textLinesFirst(text, style, widthMm, most);
  const count = lines.length;
  const within = (mm: number) => textLinesFirst(text, style, mm, count + 1);
  // where more would follow, the last line is cut and as long as can be
  if (count < 2 || count > mostEvened || within(widthMm).length > count) return lines;
  const wordMm = longestMm(
    lines.flatMap((line) => line.split(' ')),
    style,
  );
  let even = lines;
  while (longestMm(even.slice(-1), style) < hangingShare * widthMm) {
    const narrowerMm = longestMm(even.slice(0, -1), style) - hairMm;
    const narrower = narrowerMm < wordMm ? [] : within(narrowerMm);
    if (narrower.length !== count) break;
    even = narrower;
  }
  return even;
}

function longestMm(texts: readonly string[], style: TextStyleName): number {
  return Math.max(...texts.map((text) => textWidthMm(text, style)));
}
