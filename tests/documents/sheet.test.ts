import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheetLayout } from '../../src/documents/sheet.ts';
import { textLines, textWidthMm } from '../../src/documents/text-width.ts';

const size = (widthM: number, heightM: number) => ({ minX: 0, minY: 0, maxX: widthM * 1000, maxY: heightM * 1000 });

describe('the sheet', () => {
  it.each([
    ['a bathroom', 2, 3, 20],
    ['a dwelling', 12, 10, 50],
    ['a public building', 45, 25, 100],
    ['a hall', 120, 85, 200],
  ])('shows %s of %i x %i m at 1 : %i or larger', (_name, widthM, heightM, scale) => {
    expect(sheetLayout(size(widthM, heightM)).scale).toBeLessThanOrEqual(scale);
  });

  it('keeps the drawing within its frame and the frame on the paper, at a standard scale', () => {
    const metres = fc.double({ min: 0.1, max: 390, noNaN: true });
    fc.assert(
      fc.property(metres, metres, (widthM, heightM) => {
        const { drawing, strip, widthMm, heightMm, scale } = sheetLayout(size(widthM, heightM));
        expect((widthM * 1000) / scale).toBeLessThanOrEqual(drawing.width);
        expect((heightM * 1000) / scale).toBeLessThanOrEqual(drawing.height);
        expect(drawing.x + drawing.width).toBeLessThan(strip.x);
        expect(strip.x + strip.width).toBeLessThan(widthMm);
        expect(drawing.y + drawing.height).toBeLessThan(heightMm);
        expect([20, 25, 50, 100, 200, 250, 500]).toContain(scale);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('stands up for a floor that is taller than wide', () => {
    const { widthMm, heightMm } = sheetLayout(size(7, 17));
    expect(heightMm).toBeGreaterThan(widthMm);
  });

  it('gives a whole site a sheet too', () => {
    expect(sheetLayout(size(10_000, 10_000)).scale).toBe(20000);
  });
});

describe('lines of text', () => {
  it('fit the width and lose no letter', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 120 }), fc.integer({ min: 12, max: 90 }), (text, width) => {
        const lines = textLines(text, 'sheet-text', width);
        for (const line of lines) expect(textWidthMm(line, 'sheet-text')).toBeLessThanOrEqual(width);
        expect(lines.join('').replace(/\s/gu, '')).toBe(text.replace(/\s/gu, ''));
      }),
      { seed: 8 },
    );
  });
});
