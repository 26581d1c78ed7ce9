import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textWidthMm } from '../../src/documents/text-width.ts';
import { textCutWithin, textsCut } from '../../src/documents/texts-cut.ts';
import { hostileTexts } from './table-fixture.ts';

const cut = (...texts: readonly string[]) => textsCut(texts, 'sheet-head', 24);

describe('names cut side by side', () => {
  it('stay whole where they fit, and are cut at their ends where that tells them apart', () => {
    expect(cut('North', 'South')).toEqual(['North', 'South']);
    expect(cut('Corner of the reading room', 'Stair')).toEqual(['Corner of\u2026', 'Stair']);
  });

  it('that begin alike are told apart by their ends', () => {
    const [north = '', south = '', stair] = cut('Measuring point north', 'Measuring point south', 'Stair');
    expect(north).toMatch(/^M.*\u2026north$/u);
    expect(south).toMatch(/^M.*\u2026south$/u);
    expect(stair).toBe('Stair');
  });

  it('that end alike too are told apart by the word in which they differ', () => {
    const [left = '', right = ''] = cut('Nail in the landing left above', 'Nail in the landing right above');
    expect([left, right].map((text) => /\u2026(left|right)/u.exec(text)?.[1])).toEqual(['left', 'right']);
    const three = cut('Nail north east high', 'Nail north west high', 'Nail north west low');
    expect(new Set(three).size).toBe(3);
  });

  it('of one long word are told apart by the letters in which they differ', () => {
    const word = 'W'.repeat(30);
    const shown = cut(`${word}1`, `${word}2`);
    expect(shown.map((text) => text.slice(-1))).toEqual(['1', '2']);
  });

  it('alone in a sentence keep their beginnings and their ends', () => {
    expect(textCutWithin('Stair', 'sheet-text', 64)).toBe('Stair');
    expect(textCutWithin('Base mark on the stair landing wall, north east nail 2', 'sheet-text', 64)).toMatch(
      /^Base mark.*\u2026.*nail 2$/u,
    );
  });

  it('that are the same stay the same', () => {
    const twice = 'Measuring point north of the stair';
    expect(new Set(cut(twice, twice)).size).toBe(1);
  });

  it('are never wider than their room, whatever they hold', () => {
    const text = fc.oneof(
      fc.string({ maxLength: 60, unit: 'grapheme' }),
      fc.constantFrom(...hostileTexts.map(([, held]) => held)),
    );
    fc.assert(
      fc.property(fc.array(text, { maxLength: 6 }), fc.constantFrom(5.4, 24, 30), (texts, widthMm) => {
        const short = textsCut(
          texts.flatMap((each) => [`${'Measuring point '.repeat(3)}${each}`, each]),
          'sheet-head',
          widthMm,
        );
        for (const each of short) expect(textWidthMm(each, 'sheet-head')).toBeLessThanOrEqual(widthMm + 1e-9);
      }),
    );
  });
});
