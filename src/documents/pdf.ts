import type { Page } from './page.ts';
import { type PaperFonts, perSource } from './paper-source.ts';
import { faceOf } from './pdf-face.ts';
import { libraryFont, type PdfContent, type PdfFaces, pdfContent, pdfOpen } from './pdf-file.ts';
import { pdfInker } from './pdf-inks.ts';
import { planFileName } from './plan-data.ts';
import type { ToldShare } from './plan-document.ts';
import { oneLine } from './words.ts';

export interface PdfAbout {
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
  { title, date, planText, fonts }: PdfAbout,
  told: ToldShare = () => {},
): Promise<Uint8Array> {
  const bytes = new TextEncoder().encode(planText);
  const attached = { name: planFileName, type: 'application/json', about: 'The plan, to be opened again', bytes };
  const { faces, contentOf } = setterOf(fonts);
  const file = pdfOpen({ title: oneLine(title), date, faces, attached });
  for (const [i, page] of pages.entries()) {
    told(i / pages.length);
    const { widthMm, heightMm, bound } = page;
    const { alone, over } = bound ?? { alone: page, over: null };
    const written = over === null ? [] : [contentOf({ ...page, groups: [over] })];
    file.page({ widthMm, heightMm, mark: pages.length === 1 ? null : pageMark(page) }, [contentOf(alone), ...written]);
  }
  return file.bytes();
}

/** What leads to it from the outline; null where nothing does. */
function pageMark({ title, subject, bound }: Page): string | null {
  if (bound === undefined) return oneLine(`${title}: ${subject}`);
  return bound.mark === null ? null : oneLine(bound.mark);
}

/** Sets pages in the faces of some fonts: a page that goes into several files is set once. */
const setterOf = perSource((fonts: PaperFonts) => {
  const faces: PdfFaces = { regular: faceOf(libraryFont(fonts.regular)), bold: faceOf(libraryFont(fonts.bold)) };
  const inked = pdfInker(faces);
  const contentOf = perSource((page: Page): PdfContent => {
    const { operators, glyphs } = inked(page.groups.flatMap(({ inks }) => inks));
    return pdfContent(operators, page.heightMm, glyphs);
  });
  return { faces, contentOf };
});
