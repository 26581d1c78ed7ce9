import { zlibSync } from 'fflate';
import PDFDocument from 'pdfkit';
import type { PaperFonts } from './paper-source.ts';
import { rightToLeft } from './words.ts';

/** The one file that knows the PDF library: what it would take from the machine is taken out of its hands. It squeezes with another library in each
 *  engine, which gives other bytes; here all streams are squeezed by one. It takes the day from the clock; here it is given. It puts titles into XML as
 *  they are; that part is left out, as a PDF need not have it. */

/** Points of a PDF in a millimetre. */
export const pointsPerMm = 72 / 25.4;

/** What is used of the library: its types lag behind it. */
interface Library extends AsyncIterable<Uint8Array> {
  readonly page: { readonly fonts: Record<string, unknown>; readonly content: Stored };
  readonly outline: { addItem(title: string, options: { readonly fit: true }): unknown };
  readonly _font: LibraryFont;
  ref: (data?: Stored['data']) => Stored;
  endMetadata: () => void;
  registerFont(name: string, bytes: Uint8Array): unknown;
  font(name: string): unknown;
  file(bytes: Uint8Array, options: Readonly<Record<string, string>>): unknown;
  addPage(options: { readonly size: readonly number[]; readonly margin: 0 }): unknown;
  end(): void;
}

/** An object of the PDF. */
interface Stored {
  data: Record<string, unknown>;
  /** Chunks of its stream. */
  buffer: readonly Uint8Array[];
  write(chunk: Uint8Array): void;
  end(stream?: string): void;
  finalize(): void;
}

interface LibraryFont {
  readonly id: string;
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
  /** Of each glyph of the subset. */
  readonly widths: readonly number[];
  encode(
    text: string,
    features: readonly string[] | undefined,
  ): readonly [codes: readonly string[], places: readonly GlyphPlace[]];
  ref(): Stored;
  embed: () => void;
}

/** Where a glyph stands, in thousandths of the font size. */
export interface GlyphPlace {
  /** To the next glyph. */
  readonly xAdvance: number;
  /** The same where nothing is drawn together or put apart. */
  readonly advanceWidth: number;
  readonly xOffset: number;
  readonly yOffset: number;
}

/** A font of a PDF; what is written with it goes into its subset. */
export interface PdfFont {
  readonly name: string;
  /** The same font for what is no text to a reader. */
  readonly muteName: string;
  has(codePoint: number): boolean;
  /** Glyphs from left to right, each as its code in hexadecimal digits. @param run of one direction, as it is read */
  glyphs(run: string): readonly { readonly code: string; readonly place: GlyphPlace }[];
}

export interface PdfFile {
  readonly fonts: { readonly regular: PdfFont; readonly bold: PdfFont };
  /** A page whose content is in mm from its upper left corner. */
  page(
    about: { readonly widthMm: number; readonly heightMm: number; readonly mark: string | null },
    content: string,
  ): void;
  bytes(): Promise<Uint8Array>;
}

export interface PdfAbout {
  readonly title: string;
  /** Such as 2027-03-01. */
  readonly date: string;
  readonly fonts: PaperFonts;
  readonly attached: {
    readonly name: string;
    readonly type: string;
    readonly about: string;
    readonly bytes: Uint8Array;
  };
}

export function pdfOpen({ title, date, fonts, attached }: PdfAbout): PdfFile {
  const library = libraryOpen(title, date);
  // first in the file, so that nothing that a plan's names could put before it is taken for it
  const { name, type, about, bytes } = attached;
  library.file(bytes, { name, type, description: about, relationship: 'Source' });
  const [regular, bold] = [fontOpen(library, 'regular', fonts.regular), fontOpen(library, 'bold', fonts.bold)];
  return {
    fonts: { regular: regular.font, bold: bold.font },
    page({ widthMm, heightMm, mark }, content) {
      library.addPage({ size: [widthMm * pointsPerMm, heightMm * pointsPerMm], margin: 0 });
      for (const { dictionaries } of [regular, bold]) Object.assign(library.page.fonts, dictionaries);
      library.page.content.write(new TextEncoder().encode(`${pointsPerMm} 0 0 ${pointsPerMm} 0 0 cm\n${content}`));
      if (mark !== null) library.outline.addItem(mark, { fit: true });
    },
    bytes() {
      library.end();
      return bytesOf(library);
    },
  };
}

function libraryOpen(title: string, date: string): Library {
  const info = { Title: title, Producer: 'screed-bays', Creator: 'screed-bays', CreationDate: dayOf(date) };
  const options = {
    compress: false,
    font: null,
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: 'en',
    displayTitle: true,
  };
  const library = new PDFDocument({ ...options, info } as never) as unknown as Library;
  const stored = library.ref.bind(library);
  library.ref = (data) => squeezed(stored(data));
  library.endMetadata = () => undefined;
  return library;
}

/** A day as the library asks for it, without the clock's type: it is written as text and asked for its time once, for an id. */
function dayOf(date: string): object {
  const text = `D:${date.replaceAll('-', '')}000000Z`;
  return Object.assign(new String(text), { getTime: () => text });
}

/** An object whose stream is squeezed when it is written out. */
function squeezed(stored: Stored): Stored {
  const { finalize } = stored;
  stored.finalize = () => {
    if (stored.buffer.length > 0) {
      stored.buffer = [zlibSync(bytesJoin(stored.buffer), { level: 4 })];
      stored.data.Filter = 'FlateDecode';
    }
    finalize.call(stored);
  };
  return stored;
}

interface OpenFont {
  readonly font: PdfFont;
  /** By the names that pages call them. */
  readonly dictionaries: Readonly<Record<string, Stored>>;
}

function fontOpen(library: Library, name: string, bytes: Uint8Array): OpenFont {
  library.registerFont(name, bytes);
  library.font(name);
  const held = library._font;
  const font: PdfFont = {
    name: held.id,
    muteName: `${held.id}m`,
    has: (codePoint) => held.font.hasGlyphForCodePoint(codePoint),
    glyphs(run) {
      // word by word and remembered, but for what runs to the left: its words would stand in their order
      const [codes, places] = held.encode(run, rightToLeft.test(run) ? [] : undefined);
      return codes.map((code, i) => ({ code, place: places[i] as GlyphPlace }));
    },
  };
  return { font, dictionaries: { [font.name]: held.ref(), [font.muteName]: muteOf(library, held) } };
}

/** A second dictionary of a font, in which every glyph reads as a space: what is written with it is neither found nor copied a second time. */
function muteOf(library: Library, held: LibraryFont): Stored {
  const [mute, reads] = [library.ref(), library.ref()];
  const { embed } = held;
  held.embed = () => {
    embed.call(held);
    mute.data = { ...held.ref().data, ToUnicode: reads };
    mute.end();
    reads.end(spacesMap(held.widths.length));
  };
  return mute;
}

/** Most entries that one list of such a map may have. */
const mostListed = 100;

function spacesMap(glyphs: number): string {
  const codes = Array.from({ length: glyphs }, (_, i) => `<${i.toString(16).padStart(4, '0')}> <0020>`);
  const lists: string[] = [];
  for (let at = 0; at < glyphs; at += mostListed) {
    const listed = codes.slice(at, at + mostListed);
    lists.push(`${listed.length} beginbfchar`, ...listed, 'endbfchar');
  }
  return [
    '/CIDInit /ProcSet findresource begin 12 dict begin begincmap',
    '/CMapName /Adobe-Identity-UCS def /CMapType 2 def',
    '1 begincodespacerange <0000> <ffff> endcodespacerange',
    ...lists,
    'endcmap CMapName currentdict /CMap defineresource pop end end',
  ].join('\n');
}

async function bytesOf(library: Library): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of library) chunks.push(chunk);
  return bytesJoin(chunks);
}

function bytesJoin(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
