import { oneLine } from './words.ts';
import { xmlText } from './xml-text.ts';

/** How a sheet is printed: as wide as the paper, or two where it would be too small to read, each page with the head, what it is of and the cautions. */

interface Paper {
  /** Number of the size in the file format. */
  readonly code: number;
  readonly orientation: 'portrait' | 'landscape';
  readonly widthMm: number;
}

/** A4 standing, A4 and A3 lying. */
const papers: readonly Paper[] = [
  { code: 9, orientation: 'portrait', widthMm: 210 },
  { code: 9, orientation: 'landscape', widthMm: 297 },
  { code: 8, orientation: 'landscape', widthMm: 420 },
];
const largest: Paper = { code: 8, orientation: 'landscape', widthMm: 420 };

const marginMm = 10;
const inchMm = 25.4;
/** A digit of the usual text: 7 of 96 dots an inch. */
const digitMm = (7 * inchMm) / 96;
/** Text of 10 points is made no smaller than this share of it where a larger paper helps. */
const leastShare = 0.7;
/** And goes over two sheets of the largest rather than being smaller than this share. */
const leastOneSheet = 0.6;

export interface PrintedSheet {
  /** Printed over every page. */
  readonly title: string;
  /** Printed under every page. */
  readonly cautions: readonly string[];
  /** Of the columns, in digits. */
  readonly widths: readonly number[];
}

/** How many sheets of paper a table takes side by side: 1 or 2. */
export function printSheets(widths: readonly number[]): number {
  return wideMm(widths) * leastOneSheet > largest.widthMm - 2 * marginMm ? 2 : 1;
}

function wideMm(widths: readonly number[]): number {
  return widths.reduce((sum, width) => sum + width, 0) * digitMm;
}

export function printXml({ title, cautions, widths }: PrintedSheet): { readonly fit: string; readonly setUp: string } {
  const leastMm = wideMm(widths) * leastShare;
  const { code, orientation } = papers.find(({ widthMm }) => widthMm - 2 * marginMm >= leastMm) ?? largest;
  const [side, end, strip] = [marginMm, 18, 8].map((mm) => (mm / inchMm).toFixed(3));
  return {
    fit: '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>',
    setUp: [
      `<pageMargins left="${side}" right="${side}" top="${end}" bottom="${end}" header="${strip}" footer="${strip}"/>`,
      `<pageSetup paperSize="${code}" orientation="${orientation}" fitToWidth="${printSheets(widths)}" fitToHeight="0" pageOrder="overThenDown"/>`,
      `<headerFooter scaleWithDoc="0"><oddHeader>&amp;L&amp;9${marginText(title)}&amp;R&amp;9&amp;A</oddHeader>`,
      `<oddFooter>&amp;L&amp;7${cautions.map(marginText).join('\n')}&amp;R&amp;9Page &amp;P of &amp;N</oddFooter></headerFooter>`,
    ].join(''),
  };
}

const longestMargin = 120;

/** Words in the margin of a page, where an & begins a code. Words that begin with a digit would change the size before them. */
function marginText(text: string): string {
  const characters = [...oneLine(text)];
  const cut = characters.length <= longestMargin ? characters : [...characters.slice(0, longestMargin), '\u2026'];
  return xmlText(
    cut
      .join('')
      .replaceAll('&', '&&')
      .replace(/^(?=\d)/u, ' '),
  );
}
