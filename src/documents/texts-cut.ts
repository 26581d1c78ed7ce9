import type { TextStyleName } from './styles.ts';
import { textCut, textWidthMm } from './text-width.ts';

/** Room that the end of a text takes of its width where its middle is cut out. */
const endShare = 0.5;
/** More letters of an end have no room anywhere. */
const mostOfEnd = 100;

/** Names that stand side by side, cut short where they are wider. Those that would be cut alike have their middles cut out, so that names that begin alike are
 *  told apart by their ends.  Example: "Grid point north", "Grid point south" -> "Grid\u2026north", "Grid\u2026south" */
export function textsCut(texts: readonly string[], style: TextStyleName, widthMm: number): readonly string[] {
  const cut = texts.map((text) => textCut(text, style, widthMm));
  const alike = new Map<string, Set<string>>();
  for (const [i, short] of cut.entries()) alike.set(short, (alike.get(short) ?? new Set()).add(texts[i] as string));
  return cut.map((short, i) =>
    (alike.get(short)?.size ?? 0) > 1 ? middleCut(texts[i] as string, style, widthMm) : short,
  );
}

function middleCut(text: string, style: TextStyleName, widthMm: number): string {
  const letters = [...text];
  let end = '';
  for (const letter of letters.slice(-mostOfEnd).reverse()) {
    if (textWidthMm(letter + end, style) > endShare * widthMm) break;
    end = letter + end;
  }
  const begin = letters.slice(0, letters.length - [...end].length).join('');
  return textCut(begin, style, widthMm - textWidthMm(end, style)) + end.trimStart();
}
