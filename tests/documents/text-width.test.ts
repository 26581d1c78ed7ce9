import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textCut, textLines, textLinesFirst, textWidthMm } from '../../src/documents/text-width.ts';

const style = 'sheet-text';

/** Words of narrow and wide letters, some longer than any line here, and signs as wide as a phrase. */
const texts = fc
  .array(
    fc.constantFrom('i', 'l.', 'W', 'mW', 'Hall', 'two\u00a0words', '\ufdfd', 'Kitchen'.repeat(9), '\ud83d\udd25'),
    {
      maxLength: 30,
    },
  )
  .map((words) => words.join(' '));
const widthsMm = fc.double({ min: 1, max: 60, noNaN: true });

const bare = (text: string) => text.replaceAll(' ', '');
/** A line of one character may be wider than its room: less cannot stand there. */
const fits = (line: string, widthMm: number) => [...line].length === 1 || textWidthMm(line, style) <= widthMm;

describe('text in lines', () => {
  it('has all of its letters, in lines that fit and take as much as they can', () => {
    fc.assert(
      fc.property(texts, widthsMm, (text, widthMm) => {
        const lines = textLines(text, style, widthMm);
        expect(bare(lines.join(''))).toBe(bare(text));
        const words = new Set(text.split(' '));
        for (const [i, line] of lines.entries()) {
          expect(fits(line, widthMm)).toBe(true);
          const next = lines[i + 1]?.split(' ')[0];
          // what begins the next line is a word of the text, or a part of one that is longer than a line
          if (next !== undefined && words.has(next))
            expect(textWidthMm(`${line} ${next}`, style)).toBeGreaterThan(widthMm);
        }
      }),
    );
  });

  it('shows its first lines, and says by an ellipsis in the last that it goes on', () => {
    fc.assert(
      fc.property(texts, widthsMm, fc.integer({ min: 1, max: 5 }), (text, widthMm, most) => {
        const all = textLines(text, style, widthMm);
        const first = textLinesFirst(text, style, widthMm, most);
        if (all.length <= most) {
          expect(first).toEqual(all);
          return;
        }
        expect(first.slice(0, -1)).toEqual(all.slice(0, most - 1));
        expect(first).toHaveLength(most);
        expect(first.at(-1)).toBe(textCut(all.slice(most - 1).join(' '), style, widthMm));
        expect(first.at(-1)).toMatch(/\u2026$/u);
      }),
    );
  });

  it('is cut to its room before an ellipsis, with one letter more too wide', () => {
    fc.assert(
      fc.property(texts, widthsMm, (text, widthMm) => {
        const cut = textCut(text, style, widthMm);
        if (textWidthMm(text, style) <= widthMm) {
          expect(cut).toBe(text);
          return;
        }
        const letters = [...cut.slice(0, -1)];
        expect(cut.endsWith('\u2026') && text.startsWith(letters.join(''))).toBe(true);
        if (letters.length > 0) expect(textWidthMm(cut, style)).toBeLessThanOrEqual(widthMm);
        const [next = ''] = text.slice(letters.join('').length);
        if (next.trim() !== '') {
          const more = [...text].slice(0, letters.length + 1).join('');
          expect(textWidthMm(`${more}\u2026`, style)).toBeGreaterThan(widthMm);
        }
      }),
    );
  });
});
