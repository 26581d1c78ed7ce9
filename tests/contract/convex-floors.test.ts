import { describe, expect, it } from 'vitest';
import { type Chance, createChance } from '../floors/chance.ts';
import { planJson } from '../floors/plan-json.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { analysed } from './analysed.ts';

/** Floors whose walls follow no axis. Each has a layout within the limits: squares of 3.5 m cut it into convex pieces, which have no pockets, no side
 *  over 4.95 m, the squares' diagonal, and so no limit to their proportion, and less than 13 m2. */

type Pair = readonly [number, number];

const floors: Readonly<Record<string, (chance: Chance) => readonly Pair[]>> = {
  'four skew walls': (chance) => {
    const [wide, high] = [chance.number(6000, 20_000), chance.number(4500, 10_000)];
    const off = () => chance.number(-1500, 1500);
    return [
      [off(), off()],
      [wide + off(), off()],
      [wide + off(), high + off()],
      [off(), high + off()],
    ];
  },
  'a parallelogram': (chance) => {
    const [wide, high, lean] = [chance.number(6000, 20_000), chance.number(2000, 8000), chance.number(-3000, 3000)];
    return [
      [lean, 0],
      [wide + lean, 0],
      [wide, high],
      [0, high],
    ];
  },
  'a room that tapers': (chance) => {
    const [wide, high, less] = [chance.number(9000, 22_000), chance.number(1200, 6000), chance.number(0.02, 0.4)];
    return [
      [0, 0],
      [wide, 0],
      [wide, high * (1 - less)],
      [0, high],
    ];
  },
  'a triangle': (chance) => [
    [0, 0],
    [chance.number(5000, 15_000), 0],
    [chance.number(-2000, 12_000), chance.number(4000, 12_000)],
  ],
  'a round end': (chance) => {
    const [long, radius] = [chance.number(6000, 16_000), chance.number(2500, 6000)];
    const end = Array.from({ length: 25 }, (_, i): Pair => {
      const turn = (i / 24 - 0.5) * Math.PI;
      return [long + radius * Math.cos(turn), radius * Math.sin(turn)];
    });
    return [[0, -radius], ...end, [0, radius]];
  },
  'an ellipse': (chance) => {
    const [radius, share] = [chance.number(3000, 11_000), chance.number(0.6, 1)];
    return Array.from({ length: 48 }, (_, i): Pair => {
      const turn = (i / 24) * Math.PI;
      return [radius * Math.cos(turn), radius * share * Math.sin(turn)];
    });
  },
};

describe.each(Object.entries(floors))('%s', (name, floorOf) => {
  it('is split into bays within their limits', () => {
    for (let seed = 0; seed < 8; seed++) {
      const outline = floorOf(createChance(seed)).map(([x, y]): Pair => [Math.round(x), Math.round(y)]);
      const { plan, analysis } = analysed({
        ...planJson(name, [{ id: 'r1', name, outline }]),
        layout: { neckRatio: 0 },
      });
      expect(analysis.bays.filter(({ within }) => !within)).toEqual([]);
      expect(analysisFaults(plan, analysis)).toEqual([]);
    }
  });
});
