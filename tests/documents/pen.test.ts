import { describe, expect, it, test } from 'vitest';
import { itemInks, markInks } from '../../src/documents/ink.ts';
import { penShare } from '../../src/documents/pen.ts';
import { textWidthMm } from '../../src/documents/text-width.ts';

describe('a pen', () => {
  it.each([
    [20, 1],
    [50, 1],
    [100, 1],
    [200, 0.75],
    [500, 0.45],
    [5000, 0.45],
  ])('has at 1 : %i its share %f of the full weight', (scale, share) => {
    expect(penShare(1 / scale)).toBeCloseTo(share, 9);
  });

  it('draws a floor edge of 0.9 mm with 0.675 mm at 1 : 200', () => {
    const points = [
      [0, 0],
      [9000, 0],
    ] as const;
    const edge = {
      shape: 'line',
      layer: 'edges',
      style: 'edge-wall',
      points,
      ref: { kind: 'edge', id: 'E1' },
    } as const;
    const [ink] = itemInks(edge, { paperPerPlan: 1 / 200, offsetMm: [0, 0] });
    expect(ink).toMatchObject({ stroke: { widthMm: expect.closeTo(0.675, 9) } });
  });
});

describe('a still point', () => {
  const inks = (scale: number) =>
    itemInks(
      {
        shape: 'mark',
        layer: 'marks',
        style: 'still-point',
        at: [0, 0],
        text: null,
        clearMm: 5000,
        ref: { kind: 'bay', id: 'B1' },
      },
      { paperPerPlan: 1 / scale, offsetMm: [0, 0] },
    );

  it('of a bay 5 m wide is drawn at 1 : 200 and left out at 1 : 500, where it would crowd out the name', () => {
    expect(inks(200).length).toBeGreaterThan(0);
    expect(inks(500)).toEqual([]);
  });
});

test('a number of three figures has room in its pin', () => {
  // The disc of a note is 2.7 mm in radius to the middle of its line of 0.35 mm.
  const withinMm = 2 * (2.7 - 0.35 / 2);
  for (const text of ['9', '42', '188']) {
    const ink = markInks({ style: 'pin-note', text }, [0, 0]).at(-1);
    if (ink?.ink !== 'text') throw new Error('a pin without its number');
    expect(textWidthMm(text, ink.style)).toBeLessThan(withinMm);
  }
});
