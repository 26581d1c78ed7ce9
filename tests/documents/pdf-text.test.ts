import bidiFactory from 'bidi-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/documents/pdf-face.ts';
import { libraryFont } from '../../src/documents/pdf-file.ts';
import { figureSetter, glyphOperators, pieceOf, textOnPaper, textRuns } from '../../src/documents/pdf-text.ts';
import { shippedFonts } from './paper-fixture.ts';

const all = { has: () => true };

describe('a line of words in both directions', () => {
  // worked by hand after Unicode Standard Annex 9, rules W1 to L4, in a line that as a whole runs to the right
  it.each([
    ['Latin alone', 'Hall 12 m', ['Hall 12 m']],
    ['a Hebrew name with a figure', 'A \u05d7\u05d3\u05e8 12', ['A ', '12', '\u05d7\u05d3\u05e8 ']],
    ['a Hebrew name before Latin words', '\u05d7\u05d3\u05e8 is ok', ['\u05d7\u05d3\u05e8', ' is ok']],
    ['a pair of brackets', '\u05d0 (\u05d1) c', ['\u05d0 )\u05d1(', ' c']],
    ['a mark that ends the direction', '\u05d0\u200e 5', ['\u05d0', ' 5']],
    ['two figures in Arabic', '\u0645 1 2', ['2', ' ', '1', '\u0645 ']],
  ])('stands in the order that is read: %s', (_what, text, runs) => {
    expect(textRuns(text).filter((run) => run !== '')).toEqual(runs);
  });

  it('stands letter by letter where a second way to order it puts each letter', () => {
    const bidi = bidiFactory();
    const letters = fc.constantFrom(...'ab 12(),.\u05d0\u05d1\u05d2\u0645\u0628');
    fc.assert(
      fc.property(fc.array(letters, { maxLength: 14 }), (parts) => {
        const text = parts.join('');
        const mixed = /[\u05d0-\u05ea\u0621-\u064a]/u;
        const seen = textRuns(text).map((run) => (mixed.test(run) ? [...run].reverse().join('') : run));
        expect(seen.join('')).toBe(bidi.getReorderedString(text, bidi.getEmbeddingLevels(text, 'ltr')));
      }),
      { seed: 11, numRuns: 500 },
    );
  });
});

describe('a line of words on paper', () => {
  it('has the spaces that a browser sets: one for several, none at the ends, and held ones as they are', () => {
    expect(textOnPaper('  a   b\u00a0\u00a0c ', all)).toBe('a b  c');
  });

  it('piles no more than two marks on a letter', () => {
    expect(textOnPaper('Z\u0303\u0342\u0342\u0342x', all)).toBe('Z\u0303\u0342x');
  });

  it('drops signs that nobody sees and the font has not, and shows a sign for a letter', () => {
    expect(textOnPaper('a\u2060b\u6f22', { has: (code) => code < 128 })).toBe('ab\ufffd');
  });
});

describe('glyphs', () => {
  const place = { xAdvance: 600, advanceWidth: 600, xOffset: 0, yOffset: 0 };
  const shown = (...places: Partial<typeof place>[]) =>
    glyphOperators(
      [pieceOf(places.map((over, i) => ({ id: i + 1, codePoints: [], place: { ...place, ...over } })))],
      10,
    );

  it('are written in one row where nothing moves them', () => {
    expect(shown({}, {})).toBe('[<00010002>]TJ ');
  });

  it('are drawn together by what shaping takes off, in thousandths of the font size (ISO 32000-1, 9.4.3)', () => {
    expect(shown({ xAdvance: 550 }, {})).toBe('[<0001>50<0002>]TJ ');
  });

  it('have marks set back, raised, and the pen where it was before', () => {
    // a mark 300 back and 150 up that takes no room of its own: 150 thousandths of 10 mm are 1.5 mm
    expect(shown({}, { xAdvance: 0, xOffset: -300, yOffset: 150 }, {})).toBe(
      '[<0001>]TJ 1.5 Ts [300<0002>]TJ 0 Ts [300<0003>]TJ ',
    );
  });
});

describe('figures', () => {
  it.each(['regular', 'bold'] as const)(
    'set two by two stand as the font library sets them as a whole: %s',
    async (weight) => {
      const face = faceOf(libraryFont((await shippedFonts())[weight]));
      const figures = figureSetter(face);
      fc.assert(
        fc.property(
          fc.string({ unit: fc.constantFrom(...'0123456789.,:@- \u00a0'), minLength: 1, maxLength: 12 }),
          (text) => {
            expect(figures(text)).toEqual(face.glyphs(text));
          },
        ),
        { seed: 3, numRuns: 500 },
      );
    },
  );
});
