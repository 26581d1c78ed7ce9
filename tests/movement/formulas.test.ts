import { describe, expect, it } from 'vitest';
import { bayBody, bayIsUnder, bayUnder, footprintOf } from '../../src/movement/bay-body.ts';
import { bayStrain, bayTemperatures, planClimate } from '../../src/movement/bay-strain.ts';
import { edgeMovement } from '../../src/movement/edge-movement.ts';
import { figureExceeds } from '../../src/movement/figure.ts';
import { regionsCentre } from '../../src/movement/held-place.ts';
import { bayOutward } from '../../src/movement/outward.ts';
import { strainMoisture, strainMovement, strainStress, strainThermal } from '../../src/movement/strain.ts';
import { bayOf, planOf, rectangle } from './grid-split.ts';

/** The examples that stand beside the formulas. */

const rooms = [{ id: 'r1', name: 'Hall', outline: rectangle(0, 0, 8000, 5000) }];
const bay = bayBody(bayOf('B1', ['r1'], rectangle(0, 0, 8000, 5000)));

describe('strain', () => {
  it('of 12e-6 1/K over 25 K is 0.3e-3, and 1.2 mm over 4 m', () => {
    expect(strainThermal(12e-6, 25)).toBeCloseTo(0.3e-3, 12);
    expect(strainMovement(0.3e-3, 4000)).toBeCloseTo(1.2, 9);
  });

  it('of 0.5 mm/m of shrinkage is 0.5e-3', () => expect(strainMoisture(0.5)).toBeCloseTo(0.5e-3, 12));

  it('of 0.3e-3 that is held is 6 N/mm2 at 20,000 N/mm2', () => expect(strainStress(0.3e-3, 20_000)).toBeCloseTo(6, 9));

  it('of a bay heated from 15 to 45 C with shrinkage to come grows by 0.36e-3 and shortens by 0.5e-3', () => {
    const screed = { expansionPerK: 12e-6, shrinkageMmPerM: 0.5 };
    const plan = planOf({ screed, temperatures: { layingC: 15, highestC: 45, lowestC: 15 }, rooms });
    const strain = bayStrain(bay, planClimate(plan));
    expect(strain.growing).toBeCloseTo(0.36e-3, 12);
    expect(strain.shortening).toBeCloseTo(0.5e-3, 12);
  });
});

describe('the temperatures of a bay', () => {
  const sunZones = [{ id: 'u1', outline: rectangle(7000, 0, 2000, 5000), highestC: 55 }];

  it('laid at 15 C, heated to 45 C, in the sun at 55 C and never under 5 C, are 40 K of warming and 10 K of cooling', () => {
    const plan = planOf({ temperatures: { layingC: 15, highestC: 45, lowestC: 5 }, rooms, sunZones });
    expect(bayTemperatures(bay, planClimate(plan))).toEqual({ warmingK: 40, coolingK: 10 });
  });

  it('laid hotter than it will ever be again are no warming at all', () => {
    const plan = planOf({ temperatures: { layingC: 30, highestC: 25, lowestC: 15 }, rooms });
    expect(bayTemperatures(bay, planClimate(plan))).toEqual({ warmingK: 0, coolingK: 15 });
  });
});

describe('the temperatures of a bay over two rooms', () => {
  const across = bayBody(bayOf('B1', ['r1', 'r2'], rectangle(0, 0, 8000, 5000)));
  const climate = (one: object, two: object, sun: readonly object[] = []) =>
    planClimate(
      planOf({
        rooms: [
          { id: 'r1', name: 'Hall', outline: rectangle(0, 0, 4000, 5000), temperatures: one },
          { id: 'r2', name: 'Porch', outline: rectangle(4000, 0, 4000, 5000), temperatures: two },
        ],
        sunZones: sun.map((zone, i) => ({ id: `u${i}`, outline: rectangle(7000, 0, 500, 500), highestC: 0, ...zone })),
      }),
    );

  it('are cooling of 10 K where each falls by 10 K from its own laying, though 20 K lie between them', () => {
    const plan = climate({ layingC: 25, highestC: 25, lowestC: 15 }, { layingC: 15, highestC: 15, lowestC: 5 });
    expect(bayTemperatures(across, plan)).toEqual({ warmingK: 0, coolingK: 10 });
  });

  it('are warming of 20 K where that is the most that any of them warms from its own laying', () => {
    const plan = climate({ layingC: 25, highestC: 45, lowestC: 25 }, { layingC: 10, highestC: 28, lowestC: 10 });
    expect(bayTemperatures(across, plan)).toEqual({ warmingK: 20, coolingK: 0 });
  });

  it('are those of the sun from the laying of each: the whole bay moves with what the sun does to it', () => {
    const plan = climate({ layingC: 25, highestC: 45 }, { layingC: 10, highestC: 28 }, [{ highestC: 50 }]);
    expect(bayTemperatures(across, plan).warmingK).toBe(40);
  });
});

describe('a bay under something', () => {
  it('of 4 x 3 m under its right metre is 1 x 3 m', () => {
    const under = bayUnder(
      bayBody(bayOf('B1', ['r1'], rectangle(0, 0, 4000, 3000))),
      footprintOf(rectangle(3000, 0, 4000, 3000)),
    );
    expect(regionsCentre(under)).toEqual({ areaMm2: 3e6, centre: [3500, 1500] });
  });

  it('is not under what only touches it, drawn square or skew', () => {
    expect(bayIsUnder(bay, footprintOf(rectangle(8000, 0, 1000, 5000)))).toBe(false);
    expect(
      bayIsUnder(
        bay,
        footprintOf([
          [8000, 0],
          [9000, 0],
          [8000, 5000],
        ]),
      ),
    ).toBe(false);
    // the box of this one covers the bay's corner, the triangle itself does not
    expect(
      bayIsUnder(
        bay,
        footprintOf([
          [9000, 4500],
          [9000, 6000],
          [7500, 6000],
        ]),
      ),
    ).toBe(false);
    expect(
      bayIsUnder(
        bay,
        footprintOf([
          [9000, 0],
          [9000, 6000],
          [6000, 6000],
        ]),
      ),
    ).toBe(true);
  });
});

describe('out of a bay', () => {
  it('over its upper side is up the sheet, whichever way round the bay is drawn', () => {
    expect(bayOutward(bay, [0, 0], [8000, 0])).toEqual([0, -1]);
    const turned = bayBody(bayOf('B1', ['r1'], rectangle(0, 0, 8000, 5000).toReversed()));
    expect(bayOutward(turned, [0, 0], [8000, 0])).toEqual([0, -1]);
  });

  it('over a part of a side is the same', () => {
    expect(bayOutward(bay, [8000, 4000], [8000, 1000])).toEqual([1, 0]);
  });

  it('over the side of a column in it is into the column', () => {
    for (const ring of [rectangle(4000, 2000, 400, 400), rectangle(4000, 2000, 400, 400).toReversed()]) {
      const around = bayBody(bayOf('B1', ['r1'], rectangle(0, 0, 8000, 5000), [ring]));
      const [x, y] = bayOutward(around, [4000, 2000], [4400, 2000]);
      expect(x).toBeCloseTo(0, 12);
      expect(y).toBe(1);
    }
  });
});

it('the mean of 1 m2 at x = 0 and 3 m2 at x = 4 m is at 3 m', () => {
  const regions = [rectangle(-500, -500, 1000, 1000), rectangle(3500, -1500, 1000, 3000)].map((outline) => ({
    outline,
    holes: [],
  }));
  expect(regionsCentre(regions)).toEqual({ areaMm2: 4e6, centre: [3000, 0] });
});

it('the short side of a free bay of 8 x 5 m moves out by 1.2 mm, held at its far side by 2.4 mm', () => {
  const strain = { growing: 0.3e-3, shortening: 0 };
  const side = [
    [8000, 0],
    [8000, 5000],
  ] as const;
  expect(edgeMovement(side, { body: bay, strain, stillPoint: [4000, 2500] })).toBeCloseTo(1.2, 9);
  expect(edgeMovement(side, { body: bay, strain, stillPoint: [0, 2500] })).toBeCloseTo(2.4, 9);
});

it('5.1 mm pass 5 mm, 5 mm do not', () => {
  expect(figureExceeds(5.1, 5)).toBe(true);
  expect(figureExceeds(5, 5)).toBe(false);
});
