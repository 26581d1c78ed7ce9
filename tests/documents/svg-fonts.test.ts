import { describe, expect, it } from 'vitest';
import type { Page } from '../../src/documents/page.ts';
import { libraryFont } from '../../src/documents/pdf-file.ts';
import { svgFonts } from '../../src/documents/svg-fonts.ts';
import { shippedFonts } from './paper-fixture.ts';

const fonts = await shippedFonts();

function pageOf(...texts: readonly (readonly ['sheet-text' | 'bay-name', string])[]): Page {
  const about = { paper: 'A4', widthMm: 297, heightMm: 210, scale: 50, title: 'T', subject: 'S', part: 'P' };
  const place = { at: [20, 20], anchor: 'start', angleDeg: 0, halo: null, colour: 'ink' } as const;
  return {
    ...about,
    groups: [{ ref: null, inks: texts.map(([style, text]) => ({ ink: 'text', text, style, ...place })) }],
  };
}

/** The faces as the font library under the PDF library reads them, another than the one that has cut them out. */
function facesIn(css: string) {
  return [...css.matchAll(/font-weight:(\w+);src:url\(data:font\/woff;base64,([^)]+)\)/gu)].map(([, weight, data]) => ({
    weight,
    font: libraryFont(Buffer.from(data ?? '', 'base64')),
  }));
}

const whole = libraryFont(fonts.regular);
const widthOf = (font: typeof whole, letter: string) =>
  (font.layout(letter).glyphs[0]?.advanceWidth ?? Number.NaN) / font.unitsPerEm;

describe('fonts of an SVG', () => {
  it('hold the letters of the page, as wide as in the font that they are of', () => {
    const text = 'Küche Щётка Διάδρομος 3,5 m\u00b2 \u2264 \u00d8';
    const [face] = facesIn(svgFonts(pageOf(['sheet-text', text]), fonts));
    if (face === undefined) throw new Error('no face');
    for (const letter of text.replaceAll(' ', '')) {
      expect(face.font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0), letter).toBe(true);
      expect(widthOf(face.font, letter), letter).toBeCloseTo(widthOf(whole, letter), 6);
    }
    expect(face.font.hasGlyphForCodePoint(0x42f)).toBe(false);
  });

  it('are of the weights that the page has, and none where it has no text', () => {
    const weights = (page: Page) => facesIn(svgFonts(page, fonts)).map(({ weight }) => weight);
    expect(weights(pageOf(['sheet-text', 'a']))).toEqual(['normal']);
    expect(weights(pageOf(['bay-name', 'B1']))).toEqual(['bold']);
    expect(weights(pageOf(['sheet-text', 'a'], ['bay-name', 'B1']))).toEqual(['normal', 'bold']);
    expect(svgFonts(pageOf(), fonts)).toBe('');
  });

  it('leave scripts whose letters join to whoever shows them, and letters that the font has not', () => {
    const css = svgFonts(pageOf(['sheet-text', '\u0645\u0637\u0628\u062e \u05d7\u05d3\u05e8 \u{1f6aa}']), fonts);
    const [face] = facesIn(css);
    for (const codePoint of [0x645, 0x5d7, 0x1f6aa]) expect(face?.font.hasGlyphForCodePoint(codePoint)).toBe(false);
  });

  it('are the same bytes for the same letters in whatever order, and shared by pages of common letters', () => {
    const of = (text: string) => svgFonts(pageOf(['sheet-text', text]), fonts);
    expect(of('\u0416\u00fc a')).toBe(of('a \u00fc\u0416\u0416'));
    expect(of('Bay 1')).toBe(of('Joint 2'));
  });

  it('hold nothing of a hostile name but letters', () => {
    const css = svgFonts(pageOf(['sheet-text', '</style><script>alert(1)</script>";}@import url(http://a)']), fonts);
    expect(css).toMatch(/^(?:@font-face\{[\w:;,()/+=" -]+\})+$/u);
    expect(css.match(/url\(/gu)).toHaveLength(1);
    expect(css).not.toMatch(/https?:|@import|</u);
  });
});
