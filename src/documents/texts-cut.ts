import type { TextStyleName } from './styles.ts';
import { textCut, textWidthMm } from './text-width.ts';

/** Names that are cut short and still told apart. */

/** Room that the end of a text takes of its width where its middle is cut out. */
const endShare = 0.5;
/** The same of its beginning where only what differs in it is of use. */
const beginShare = 0.35;
/** More letters of an end have no room anywhere. */
const mostOfEnd = 100;

/** A text with its middle cut out where it is wider: names that begin alike mostly end in other words.
 *  Example: "Base mark on the landing, nail 2" -> "Base mark on\u2026g, nail 2" */
export function textCutWithin(text: string, style: TextStyleName, widthMm: number): string {
  if (textWidthMm(text, style) <= widthMm) return text;
  const letters = [...text];
  let end = '';
  for (const letter of letters.slice(-mostOfEnd).reverse()) {
    if (textWidthMm(letter + end, style) > endShare * widthMm) break;
    end = letter + end;
  }
  const begin = letters.slice(0, letters.length - [...end].length).join('');
  return textCut(begin, style, widthMm - textWidthMm(end, style)) + end.trimStart();
}

/** Names that stand side by side, cut short where they are wider. Those that would be cut alike begin anew, after a few letters, with the word in which they
 *  differ.  Example: "Grid point north", "Grid point south" -> "Gri\u2026north", "Gri\u2026south" */
export function textsCut(texts: readonly string[], style: TextStyleName, widthMm: number): readonly string[] {
  const shown = texts.map((text) => textCut(text, style, widthMm));
  // three names may differ in pairs, each pair in another word
  for (let round = 0; round < 3; round++) {
    for (const group of alikeOf(texts, shown)) {
      const from = differsFrom(group.map((i) => texts[i] as string));
      for (const i of group) shown[i] = partShown(texts[i] as string, from, style, widthMm);
    }
  }
  return shown;
}

/** Places of names that are other names and shown alike, group by group. */
function alikeOf(texts: readonly string[], shown: readonly string[]): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>();
  for (const [i, text] of shown.entries()) {
    const group = groups.get(text);
    if (group === undefined) groups.set(text, [i]);
    else group.push(i);
  }
  return [...groups.values()].filter((group) => new Set(group.map((i) => texts[i])).size > 1);
}

/** A word is begun anew where it differs within so many letters. */
const mostOfWord = 6;

/** Where the word begins, by its letter, in which texts are not alike; of a long word where they differ. */
function differsFrom(texts: readonly string[]): number {
  const [first = [], ...others] = texts.map((text) => [...text]);
  let at = 0;
  while (at < first.length && others.every((letters) => letters[at] === first[at])) at++;
  const word = first.slice(0, at).lastIndexOf(' ') + 1;
  return at - word <= mostOfWord ? word : at;
}

function partShown(text: string, from: number, style: TextStyleName, widthMm: number): string {
  const letters = [...text];
  const begin = textCut(letters.slice(0, from).join(''), style, beginShare * widthMm);
  const rest = letters.slice(from).join('');
  const cut = begin.endsWith('\u2026') || begin === '' ? begin : `${begin.trimEnd()} `;
  const part = cut + textCut(rest, style, widthMm - textWidthMm(cut, style));
  return textWidthMm(part, style) <= widthMm ? part : textCut(text, style, widthMm);
}
