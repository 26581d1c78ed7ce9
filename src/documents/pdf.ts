import type { Page } from './page.ts';
import type { PaperFonts } from './paper-source.ts';
import { pdfOpen } from './pdf-file.ts';
import { pdfInker } from './pdf-inks.ts';
import { planFileName } from './plan-data.ts';
import { oneLine } from './words.ts';

export interface PdfContent {
  readonly title: string;
  /** Day that it carries, such as 2027-03-01. */
  readonly date: string;
  /** The plan file, which travels inside. */
  readonly planText: string;
  readonly fonts: PaperFonts;
}

/** Pages as one PDF, each of its own size, text in fonts that lie inside. The same pages and content give the same bytes, wherever it is made. */
export async function pagesPdf(
  pages: readonly Page[],
  { title, date, planText, fonts }: PdfContent,
): Promise<Uint8Array> {
  const bytes = new TextEncoder().encode(planText);
  const attached = { name: planFileName, type: 'application/json', about: 'The plan, to be opened again', bytes };
  const file = pdfOpen({ title: oneLine(title), date, fonts, attached });
  const inked = pdfInker(file.fonts);
  for (const { widthMm, heightMm, title: name, subject, groups } of pages) {
    const mark = pages.length === 1 ? null : oneLine(`${name}: ${subject}`);
    file.page({ widthMm, heightMm, mark }, inked(groups.flatMap(({ inks }) => inks)));
  }
  return file.bytes();
}
