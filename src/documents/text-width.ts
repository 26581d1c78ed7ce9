import type { LabelForm } from './drawing.ts';
import { leading, type TextStyleName, textFontMm, textStyles } from './styles.ts';

/** Widths of characters over the font size, after the widest of the usual sans serifs, so that text never runs past the
 *  room that was kept for it whichever of them the reader's machine has. */
const widths: readonly (readonly [characters: RegExp, share: number])[] = [
  [/[ijl|'’.,:;!]/u, 0.34],
  [/[ \u00a0ftrI()[\]/\\-]/u, 0.42],
  [/[\d+=<>−–×~]/u, 0.65],
  [/[W@%]/u, 1.03],
  [/[mwMQO\u0416\u041c\u0424\u0428\u0429\u042e\u042b\u0436\u043c\u0444\u0448\u0449\u044e\u044b]/u, 0.97],
  [/[A-Z&]/u, 0.72],
  [/[a-z·²³°]/u, 0.62],
  // single signs that stand for a phrase, and wedges
  [/[\ufdfd\u{12000}-\u{1254f}]/u, 10],
  [/[\u2e3a\u2e3b\ufdf0-\ufdfc]/u, 3],
  [/[\u0900-\u1dff\u2e80-\uffdc\u{10000}-\u{3ffff}]/u, 1.02],
];
const otherShare = 0.75;
const boldShare = 1.1;

function shareInTable(character: string): number {
  return widths.find(([set]) => set.test(character))?.[1] ?? otherShare;
}

/** The letters that nearly all text is made of, looked up once. */
const usualShares: readonly number[] = Array.from({ length: 0x250 }, (_, code) =>
  shareInTable(String.fromCharCode(code)),
);

function characterShare(character: string): number {
  return usualShares[character.codePointAt(0) ?? 0] ?? shareInTable(character);
}

/** Shares of a text that goes on behind text of so many. */
function sharesWith(shares: number, text: string): number {
  let sum = shares;
  for (const character of text) sum += characterShare(character);
  return sum;
}

function sharesMm(shares: number, style: TextStyleName): number {
  return shares * textFontMm(style) * (textStyles[style].weight === 'bold' ? boldShare : 1);
}

/** @returns width of one line of text, mm on paper */
export function textWidthMm(text: string, style: TextStyleName): number {
  return sharesMm(sharesWith(0, text), style);
}

export interface FormSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Size of lines of text set under each other, mm on paper. */
export function formSize(form: LabelForm): FormSize {
  let widthMm = 0;
  let heightMm = 0;
  for (const { text, style, asWideAs } of form) {
    widthMm = Math.max(widthMm, textWidthMm(text, style), asWideAs === undefined ? 0 : textWidthMm(asWideAs, style));
    heightMm += textFontMm(style) * leading;
  }
  return { widthMm, heightMm };
}

/** Middle of each line below the middle of the block, mm on paper. */
export function formRows(form: LabelForm): readonly number[] {
  let top = -formSize(form).heightMm / 2;
  return form.map(({ style }) => {
    const height = textFontMm(style) * leading;
    top += height;
    return top - height / 2;
  });
}

/** Text that is cut short where it is wider. Example: "Reading room of the library" -> "Reading room of\u2026" */
export function textCut(text: string, style: TextStyleName, widthMm: number): string {
  if (textWidthMm(text, style) <= widthMm) return text;
  const ellipsis = '\u2026';
  let cut = '';
  let shares = 0;
  for (const character of text) {
    shares += characterShare(character);
    if (sharesMm(shares + characterShare(ellipsis), style) > widthMm) break;
    cut += character;
  }
  return cut.trimEnd() + ellipsis;
}

/** The first few lines of a text, the last of them cut short where more would follow. */
export function textLinesFirst(text: string, style: TextStyleName, widthMm: number, most: number): readonly string[] {
  const lines: string[] = [];
  for (const line of linesOf(text, style, widthMm)) {
    lines.push(line);
    // the line that is cut, one that may begin with a narrower character than did not fit before it, and one to be sure of being too wide
    if (lines.length === most + 2) break;
  }
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), textCut(lines.slice(most - 1).join(' '), style, widthMm)];
}

/** Text broken at spaces so that each line fits, but not at those that hold words together; a word longer than a line is
 *  broken where the line ends. */
export function textLines(text: string, style: TextStyleName, widthMm: number): readonly string[] {
  return [...linesOf(text, style, widthMm)];
}

/** Whether its words stand one space apart, and nothing before or after them. */
const isEven = (text: string) => /^\S+(?:[ \u00a0]\S+)*$/u.test(text);

/** Line by line, since names of ten thousand letters are cut after a few. Widths are summed along the way: a line is not measured anew for
 *  each character. */
function* linesOf(text: string, style: TextStyleName, widthMm: number): Generator<string> {
  const isWider = (shares: number) => sharesMm(shares, style) > widthMm;
  if (isEven(text) && !isWider(sharesWith(0, text))) return yield text;
  let line = '';
  let shares = 0;
  for (const word of text.split(/[^\S\u00a0]+/u).filter((part) => part !== '')) {
    const before = line === '' ? '' : `${line} `;
    const longer = sharesWith(line === '' ? 0 : shares + characterShare(' '), word);
    if (!isWider(longer)) {
      line = before + word;
      shares = longer;
      continue;
    }
    if (line !== '') yield line;
    line = '';
    shares = 0;
    for (const character of word) {
      const share = characterShare(character);
      if (line !== '' && isWider(shares + share)) {
        yield line;
        line = '';
        shares = 0;
      }
      line += character;
      shares += share;
    }
  }
  if (line !== '') yield line;
}
