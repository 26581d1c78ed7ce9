import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SheetWish, sheetChoose, sheetScales } from '../../src/documents/sheet.ts';
import { beyondMm, sheetGrid } from '../../src/documents/sheet-grid.ts';
import { textLines, textWidthMm } from '../../src/documents/text-width.ts';

const size = (widthM: number, heightM: number) => ({ minX: 0, minY: 0, maxX: widthM * 1000, maxY: heightM * 1000 });
const noWish: SheetWish = { paper: null, scale: null };
const anyStrip = [() => true];
const chosen = (widthM: number, heightM: number, wish = noWish) =>
  sheetChoose(() => size(widthM, heightM), wish, anyStrip);

describe('the sheet', () => {
  it.each([
    ['a bathroom', 2, 3, 20],
    ['a dwelling', 12, 10, 50],
    ['a public building', 45, 25, 100],
    ['a hall', 120, 85, 200],
  ])('shows %s of %i x %i m at 1 : %i or larger', (_name, widthM, heightM, scale) => {
    expect(chosen(widthM, heightM)?.scale).toBeLessThanOrEqual(scale);
  });

  it('keeps the drawing within its frame and the frame on the paper, at a standard scale', () => {
    const metres = fc.double({ min: 0.1, max: 140, noNaN: true });
    fc.assert(
      fc.property(metres, metres, (widthM, heightM) => {
        const layout = chosen(widthM, heightM);
        expect(layout).not.toBeNull();
        if (layout === null) return;
        const { drawing, strip, widthMm, heightMm, scale } = layout;
        expect((widthM * 1000) / scale).toBeLessThanOrEqual(drawing.width);
        expect((heightM * 1000) / scale).toBeLessThanOrEqual(drawing.height);
        expect(drawing.x + drawing.width).toBeLessThan(strip.x);
        expect(strip.x + strip.width).toBeLessThan(widthMm);
        expect(drawing.y + drawing.height).toBeLessThan(heightMm);
        expect(sheetScales).toContain(scale);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('stands up for a floor that is taller than wide', () => {
    const layout = chosen(7, 17);
    expect(layout?.heightMm).toBeGreaterThan(layout?.widthMm ?? Infinity);
  });

  it('is of the paper and scale that are wished for', () => {
    // ISO 216: A2 is 594 x 420 mm. 12 x 10 m at 1 : 100 are 120 x 100 mm
    const layout = chosen(12, 10, { paper: 'A2', scale: 100 });
    expect(layout).toMatchObject({ paper: 'A2', scale: 100, widthMm: 594, heightMm: 420 });
    expect(chosen(12, 10, { paper: null, scale: 20 })?.scale).toBe(20);
    expect(chosen(12, 10, { paper: 'A4', scale: null })?.paper).toBe('A4');
  });

  it('of a wished paper gives way to several where its strip has no room, and the largest does not', () => {
    expect(sheetChoose(() => size(12, 10), { paper: 'A4', scale: null }, [() => false])).toBeNull();
    expect(sheetChoose(() => size(12, 10), noWish, [() => false])?.paper).toContain('A0');
  });

  it('is one of several where the floor does not fit at the wished scale', () => {
    // 12 m at 1 : 20 are 600 mm, and A3 is 420 mm wide
    expect(chosen(12, 10, { paper: 'A3', scale: 20 })).toBeNull();
    // 300 m at 1 : 200 are 1500 mm, and A0 is 1189 mm wide
    expect(chosen(300, 10)).toBeNull();
  });
});

describe('a floor over several sheets', () => {
  const boxes = fc.record({
    widthM: fc.double({ min: 1, max: 400, noNaN: true }),
    heightM: fc.double({ min: 1, max: 400, noNaN: true }),
    paper: fc.constantFrom('A4', 'A3', 'A2', 'A1', 'A0', null),
    scale: fc.constantFrom(20, 25, 50, 100, 200, null),
  });

  it('is parted without a gap: the own parts of the sheets meet, cover all of it, and each shows more than its own', () => {
    fc.assert(
      fc.property(boxes, ({ widthM, heightM, ...wish }) => {
        const box = size(widthM, heightM);
        const grid = sheetGrid(() => box, wish);
        const { columns, rows, cells, window, layout } = grid;
        expect(cells).toHaveLength(columns * rows);
        let area = 0;
        for (const { own, shown, column } of cells) {
          const width = Math.min(own.maxX, box.maxX) - Math.max(own.minX, box.minX);
          const height = Math.min(own.maxY, box.maxY) - Math.max(own.minY, box.minY);
          area += Math.max(0, width) * Math.max(0, height);
          // true to scale: what is shown is the window times the scale
          expect(shown.maxX - shown.minX).toBeCloseTo(window.width * layout.scale, 3);
          expect(shown.maxY - shown.minY).toBeCloseTo(window.height * layout.scale, 3);
          expect(own.minX).toBeGreaterThanOrEqual(shown.minX - 0.001);
          expect(own.maxX).toBeLessThanOrEqual(shown.maxX + 0.001);
          if (column > 0) expect(own.minX - shown.minX).toBeCloseTo(beyondMm * layout.scale, 3);
        }
        expect(area / (widthM * heightM * 1e6)).toBeCloseTo(1, 6);
      }),
      { seed: 9, numRuns: 150 },
    );
  });

  it('is drawn smaller before it takes more sheets than anybody joins', () => {
    const { columns, rows, layout } = sheetGrid(() => size(10_000, 10_000), noWish);
    expect(columns * rows).toBeLessThanOrEqual(150);
    expect(layout.scale).toBeGreaterThan(200);
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
