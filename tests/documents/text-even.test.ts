import { describe, expect, it } from 'vitest';
import { textLinesEven } from '../../src/documents/text-even.ts';
import { textLinesFirst, textWidthMm } from '../../src/documents/text-width.ts';

const style = 'sheet-text';
const texts = [
  'joint profile 10 mm wide, 62 mm deep, down to the insulation; mesh cut',
  'edge strip 8 mm, trimmed; neither adhesive nor grout bridges it',
  'The foil of the strip lies on the insulation, so that no screed runs behind it',
  'sealant 8 mm wide, 6 mm deep, bonded on two sides only',
];
const widths = Array.from({ length: 100 }, (_, i) => 40 + i);

describe('few lines of a text', () => {
  it('are no more than its width asks for, none wider, and hold the same words in their order', () => {
    for (const text of texts) {
      for (const width of widths) {
        const lines = textLinesEven(text, style, width, 4);
        expect(lines.length).toBe(textLinesFirst(text, style, width, 4).length);
        expect(lines.join(' ')).toBe(text);
        for (const line of lines) expect(textWidthMm(line, style)).toBeLessThanOrEqual(width);
      }
    }
  });

  // by hand: the longest of these words is about 20 mm wide, so that a line before the last can spare one as long as there are two lines
  it('leave no word hanging on a line of its own', () => {
    for (const text of texts) {
      for (const width of widths) {
        const lines = textLinesEven(text, style, width, 4);
        if (lines.length === 2)
          expect(lines[1]?.split(' ').length, `${width}: ${lines.join(' / ')}`).toBeGreaterThan(1);
      }
    }
  });

  it('are left as they are where the last of them does not hang', () => {
    const text = 'one two three four one two three';
    const width = textWidthMm('one two three four', style) + 0.01;
    expect(textLinesEven(text, style, width, 3)).toEqual(['one two three four', 'one two three']);
  });

  it('break no word that has room on a line, and cut what has none as other lines do', () => {
    const word = 'Waterproofingmembrane';
    const width = textWidthMm(word, style) + 1;
    expect(textLinesEven(`${word} it`, style, width, 3)).toEqual([word, 'it']);
    for (const text of ['x'.repeat(10_000), 'long words '.repeat(900), '\u202e\u0007'])
      expect(textLinesEven(text, style, 50, 3)).toEqual(textLinesFirst(text, style, 50, 3));
  });
});
