/** A face of type as lines of text are set in it. Its glyphs go by the numbers that the font itself gives them, so that what is set once is right in
 *  every file; which of them go into a file, under what numbers, is settled when it is closed (`pdf-file.ts`). */
export interface PdfFace {
  readonly font: LibraryFont;
  has(codePoint: number): boolean;
  /** Glyphs from left to right. @param run of one direction, as it is read */
  glyphs(run: string): readonly PdfGlyph[];
}

export interface PdfGlyph {
  /** Its number in the font. */
  readonly id: number;
  /** What it reads as. */
  readonly codePoints: readonly number[];
  readonly place: GlyphPlace;
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

/** What is used of the font library under the PDF library, in units of the font. */
export interface LibraryFont {
  readonly unitsPerEm: number;
  _glyphs: Record<number, unknown>;
  getGlyph: (id: number, codePoints?: readonly number[]) => unknown;
  hasGlyphForCodePoint(codePoint: number): boolean;
  layout(
    text: string,
    features?: readonly string[],
  ): {
    readonly glyphs: readonly {
      readonly id: number;
      readonly codePoints: readonly number[];
      readonly advanceWidth: number;
    }[];
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  };
}

export function faceOf(font: LibraryFont): PdfFace {
  glyphsTellApart(font);
  const known = new Map<number, boolean>();
  const shares = 1000 / font.unitsPerEm;
  return {
    font,
    has(codePoint) {
      const has = known.get(codePoint) ?? font.hasGlyphForCodePoint(codePoint);
      known.set(codePoint, has);
      return has;
    },
    glyphs(run) {
      const { glyphs, positions } = font.layout(run);
      return glyphs.map(({ id, codePoints, advanceWidth }, i): PdfGlyph => {
        const { xAdvance = 0, xOffset = 0, yOffset = 0 } = positions[i] ?? {};
        const place = {
          xAdvance: xAdvance * shares,
          advanceWidth: advanceWidth * shares,
          xOffset: xOffset * shares,
          yOffset: yOffset * shares,
        };
        return { id, codePoints, place };
      });
    },
  };
}

/** Of its own accord a font remembers of a glyph what it read as when it was first met, in whatever text that was. */
function glyphsTellApart(font: LibraryFont): void {
  const { getGlyph } = font;
  const known = new Map<string, unknown>();
  font.getGlyph = (id, codePoints = []) => {
    const key = `${id} ${codePoints}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    font._glyphs = {};
    const glyph = getGlyph.call(font, id, codePoints);
    known.set(key, glyph);
    return glyph;
  };
}
