import { describe, expect, it } from 'vitest';
import { groutGrids, groutLinesBetween } from '../../src/bays/grout-grid.ts';

const limits = { areaM2: 40, lengthM: 8, aspect: 2, aspectFromM: 5 };
const rows = (firstMm: number, spacingMm: number) => ({ normal: [1, 0] as const, firstMm, spacingMm });

/** Expected by hand. */
describe('grids of bays parted in grout', () => {
  it('parts a strip as wide as one bay at whole tiles', () => {
    // Equal parts would be at 8,000 and 16,000 mm; in tiles every 605 mm a bay of 8 m is 13 tiles at most, and 24 m is 39.7 of them,
    // so three bays leave 24,000 - 26 x 605 = 8,270 mm over the limit: four bays, nearest to 6, 12 and 18 m at 10, 20 and 30 tiles.
    const [best] = groutGrids(
      { from: 0, to: 24000, rows: rows(0, 605) },
      { from: 0, to: 5000, rows: rows(0, 605) },
      limits,
    );
    expect(best).toEqual({ along: 4, across: 1, jointMm: 15000, lines: [6050, 12100, 18150] });
  });

  it('lays 100 x 100 m no bay over 40 m2, and every line a whole number of tiles from the start', () => {
    const side = { from: 0, to: 100000, rows: rows(300, 603) };
    for (const { along, across, lines, jointMm } of groutGrids(side, side, limits)) {
      expect(lines).toHaveLength(along - 1);
      for (const line of lines) expect((line - 300) % 603).toBeCloseTo(0, 6);
      const widest = Math.max(...[...lines, 100000].map((line, i) => line - (lines[i - 1] ?? 0)));
      expect(widest).toBeLessThanOrEqual(8000);
      expect((100000 / across) * widest).toBeLessThanOrEqual(40e6);
      expect(jointMm).toBe((along - 1 + across - 1) * 100000);
    }
  });

  it('counts a joint where no grout line runs as often as the search does, and lays it as it likes', () => {
    // The strip of 5 m needs no joint along it; across it three bays of 8 m, at three times their length.
    const [best] = groutGrids({ from: 0, to: 24000, rows: null }, { from: 0, to: 5000, rows: rows(0, 605) }, limits);
    expect(best).toEqual({ along: 3, across: 1, jointMm: 30000, lines: [8000, 16000] });
  });

  it('finds none where a tile is longer than a bay may be', () => {
    const side = { from: 0, to: 24000, rows: rows(0, 9000) };
    expect(groutGrids(side, { ...side, to: 5000 }, limits)).toEqual([]);
  });

  it('parts a side between rows of columns that it does not follow', () => {
    // Bays at most 5,265 mm high may be 40 / 5.265 = 7.597 m wide, 18 tiles of 405 mm or 7,290 mm; 52 m take eight such, nearest to equal.
    const lines = groutLinesBetween({ from: 0, to: 52000, rows: rows(0, 405) }, [0, 5265, 10125, 14985], limits);
    expect(lines).toEqual([16, 32, 48, 64, 80, 96, 112].map((tiles) => tiles * 405));
  });
});
