import { zlibSync } from 'fflate';
import PDFDocument from 'pdfkit';
import type { LibraryFont, PdfFace, PdfGlyph } from './pdf-face.ts';
import { glyphCode } from './pdf-text.ts';
import { squeezeLevel } from './squeeze.ts';

/** The file that knows how the PDF library writes: what it would take from the machine is taken out of its hands. It squeezes with another library in each
 *  engine, which gives other bytes; here all streams are squeezed by one. It takes the day from the clock; here it is given. It puts titles into XML as
 *  they are; that part is left out, as a PDF need not have it. */

/** Points of a PDF in a millimetre. */
export const pointsPerMm = 72 / 25.4;

/** A font as text is set with it. To open it takes some time: it is done once for all files, which take it in place of its bytes. */
export function libraryFont(bytes: Uint8Array): LibraryFont {
  const library = new PDFDocument({ font: null, autoFirstPage: false } as never);
  library.registerFont('font', bytes as never);
  library.font('font');
  return (library as unknown as Library)._font.font;
}

/** What is used of the library: its types lag behind it. */
interface Library extends AsyncIterable<Uint8Array> {
  readonly page: {
    readonly fonts: Record<string, unknown>;
    readonly content: Stored;
    readonly dictionary: Pick<Stored, 'data'>;
  };
  readonly outline: { addItem(title: string, options: { readonly fit: true }): unknown };
  readonly _font: EmbeddedFont;
  ref: (data?: Stored['data']) => Stored;
  endMetadata: () => void;
  registerFont(name: string, font: LibraryFont): unknown;
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
  end(stream?: string | Uint8Array): void;
  finalize(): void;
}

interface EmbeddedFont {
  readonly font: LibraryFont;
  readonly subset: { includeGlyph(id: number): number };
  toUnicodeCmap: () => Stored;
  ref(): Stored;
  embed: () => void;
}

export interface PdfFaces {
  readonly regular: PdfFace;
  readonly bold: PdfFace;
}

/** How pages call the faces; the second for what is no text to a reader. */
export const faceNames = {
  regular: { seen: 'F1', mute: 'F1m' },
  bold: { seen: 'F2', mute: 'F2m' },
} as const;

/** What stands on a page, ready to go into any file. */
export interface PdfContent {
  /** Its operators, squeezed. */
  readonly bytes: Uint8Array;
  readonly glyphs: PdfGlyphs;
}

/** Of each face those that are written, each once, in the order in which they are first met. */
export type PdfGlyphs = Readonly<Record<keyof PdfFaces, readonly PdfGlyph[]>>;

/** @param operators in mm from the upper left corner, y down */
export function pdfContent(operators: string, heightMm: number, glyphs: PdfGlyphs): PdfContent {
  const bytes = `q ${pointsPerMm} 0 0 ${-pointsPerMm} 0 ${heightMm * pointsPerMm} cm\n${operators}\nQ`;
  return { bytes: squeeze(new TextEncoder().encode(bytes)), glyphs };
}

export interface PdfFile {
  /** @param contents what stands on it, and what is written over it */
  page(
    about: { readonly widthMm: number; readonly heightMm: number; readonly mark: string | null },
    contents: readonly [main: PdfContent, ...over: readonly PdfContent[]],
  ): void;
  bytes(): Promise<Uint8Array>;
}

export interface PdfFileAbout {
  readonly title: string;
  /** Such as 2027-03-01. */
  readonly date: string;
  readonly faces: PdfFaces;
  readonly attached: {
    readonly name: string;
    readonly type: string;
    readonly about: string;
    readonly bytes: Uint8Array;
  };
}

export function pdfOpen({ title, date, faces, attached }: PdfFileAbout): PdfFile {
  const library = libraryOpen(title, date);
  // first in the file, so that nothing that a plan's names could put before it is taken for it
  const { name, type, about, bytes } = attached;
  library.file(bytes, { name, type, description: about, relationship: 'Source' });
  const used = { regular: faceUse(library, 'regular', faces), bold: faceUse(library, 'bold', faces) };
  return {
    page({ widthMm, heightMm, mark }, [main, ...over]) {
      library.addPage({ size: [widthMm * pointsPerMm, heightMm * pointsPerMm], margin: 0 });
      for (const { dictionaries } of [used.regular, used.bold]) Object.assign(library.page.fonts, dictionaries);
      for (const { glyphs } of [main, ...over]) {
        used.regular.take(glyphs.regular);
        used.bold.take(glyphs.bold);
      }
      const { content, dictionary } = library.page;
      // in place of the matrix with which the library begins a page
      content.buffer = [main.bytes];
      content.data.Filter = 'FlateDecode';
      const streams = over.map(({ bytes }) => endedStream(library, bytes, 'squeezed'));
      if (streams.length > 0) dictionary.data.Contents = [content, ...streams];
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
    if (stored.buffer.length > 0 && stored.data.Filter === undefined) {
      stored.buffer = [squeeze(bytesJoin(stored.buffer))];
      stored.data.Filter = 'FlateDecode';
    }
    finalize.call(stored);
  };
  return stored;
}

function squeeze(bytes: Uint8Array): Uint8Array {
  return zlibSync(bytes, { level: squeezeLevel });
}

/** A face in a file. */
interface FaceUse {
  /** By the names that pages call them. */
  readonly dictionaries: Readonly<Record<string, Stored>>;
  take(glyphs: readonly PdfGlyph[]): void;
}

function faceUse(library: Library, weight: keyof PdfFaces, faces: PdfFaces): FaceUse {
  library.registerFont(weight, faces[weight].font);
  library.font(weight);
  const held = library._font;
  const taken = new Map<number, PdfGlyph>();
  const mute = library.ref();
  const { embed } = held;
  held.embed = () => {
    const glyphs = [...taken.values()].sort((a, b) => a.id - b.id);
    const codes = glyphCodes(library, held, glyphs);
    const { ref } = library;
    library.ref = (data) => ref(data?.Subtype === 'CIDFontType2' ? { ...data, ...codes } : data);
    held.toUnicodeCmap = () =>
      endedStream(
        library,
        readMap(glyphs, ({ codePoints }) => codePoints),
      );
    embed.call(held);
    library.ref = ref;
    // in which every glyph reads as a space: what is written with it is neither found nor copied a second time
    mute.data = {
      ...held.ref().data,
      ToUnicode: endedStream(
        library,
        readMap(glyphs, () => [0x20]),
      ),
    };
    mute.end();
  };
  const { seen, mute: muteName } = faceNames[weight];
  return {
    dictionaries: { [seen]: held.ref(), [muteName]: mute },
    take(glyphs) {
      for (const glyph of glyphs) if (!taken.has(glyph.id)) taken.set(glyph.id, glyph);
    },
  };
}
/** What leads from the numbers of a font's own glyphs, which pages use, to those of the subset in the file; ISO 32000-1, 9.7.4. */
function glyphCodes(library: Library, { subset }: EmbeddedFont, glyphs: readonly PdfGlyph[]): Stored['data'] {
  const map = new Uint8Array(2 * (1 + (glyphs.at(-1)?.id ?? 0)));
  for (const { id } of glyphs) new DataView(map.buffer).setUint16(2 * id, subset.includeGlyph(id));
  return {
    W: glyphs.flatMap(({ id, place }) => [id, [place.advanceWidth]]),
    CIDToGIDMap: endedStream(library, map),
  };
}

function endedStream(library: Library, content: string | Uint8Array, state?: 'squeezed'): Stored {
  const stored = library.ref(state && { Filter: 'FlateDecode' });
  stored.end(content);
  return stored;
}

/** Most entries that one list of such a map may have. */
const mostListed = 100;

/** What glyphs read as; ISO 32000-1, 9.10.3. */
function readMap(glyphs: readonly PdfGlyph[], read: (glyph: PdfGlyph) => readonly number[]): string {
  const codes = glyphs.map((glyph) => `<${glyphCode(glyph.id)}> <${read(glyph).map(utf16Text).join('')}>`);
  const lists: string[] = [];
  for (let at = 0; at < codes.length; at += mostListed) {
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

/** Example: 0x1f6c1 -> "d83ddec1" */
function utf16Text(codePoint: number): string {
  const text = String.fromCodePoint(codePoint);
  return Array.from({ length: text.length }, (_, i) => text.charCodeAt(i).toString(16).padStart(4, '0')).join('');
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
