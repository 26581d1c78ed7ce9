import { describe, expect, it } from 'vitest';
import { tensileStrength } from '../../src/movement/restraint.ts';
import { sealantWidthNeeded } from '../../src/movement/sealant.ts';
import { stripTakes } from '../../src/movement/strip.ts';
import { thicknessColumn, thicknessCover, thicknessDeadLoad, thicknessLeast } from '../../src/movement/thickness.ts';
import type { ScreedClassKey } from '../../src/plan/reference.ts';
import { sealantDepth, sealantLitres } from '../../src/takeoff/sealant.ts';

/** DIN 18560-2 and the cement industry handbook: least thickness, mm, at <= 2 kN/m2; <= 3 kN/m2 (point 2 kN); <= 4 kN/m2 (point 3 kN);
 *  <= 5 kN/m2 (point 4 kN). Copied here from the printed table by hand, not from the product's data. */
const printed: readonly (readonly [ScreedClassKey, number, number, number, number])[] = [
  ['CT-C25-F4', 45, 65, 70, 75],
  ['CT-C30-F5', 40, 55, 60, 65],
  ['CA-C25-F4', 45, 65, 70, 75],
  ['CA-C25-F5', 40, 55, 60, 65],
  ['CA-C30-F7', 35, 50, 55, 60],
  ['CAF-C25-F4', 35, 50, 60, 65],
  ['CAF-C25-F5', 35, 45, 50, 55],
  ['CAF-C35-F7', 35, 40, 45, 50],
];

describe.each(printed)('least thickness of %s', (screedClass, ...least) => {
  const areaLoads = [2, 3, 4, 5];
  const pointLoads = [0, 2, 3, 4];

  it('is the printed one at each load', () => {
    const found = areaLoads.map((imposedKPa, i) =>
      thicknessLeast(screedClass, { imposedKPa, pointKN: pointLoads[i] ?? 0, deadAllowanceKPa: null }, 0),
    );
    expect(found).toEqual(least);
  });

  it('is a pipe more with heating pipes of 16 mm in it', () => {
    const loads = { imposedKPa: 2, pointKN: 0, deadAllowanceKPa: null };
    expect(thicknessLeast(screedClass, loads, 16)).toBe(least[0] + 16);
  });
});

describe('the column of the thickness table', () => {
  it.each([
    [1.5, 0, 0],
    [2, 0, 0],
    [2.1, 0, 1],
    [3, 2, 1],
    [4, 0, 2],
    [5, 0, 3],
    // the point load is the heavier
    [2, 3, 2],
    [3, 3, 2],
    [3, 4, 3],
    [1.5, 2, 1],
    // as in a dwelling: 2 kN is no heavier than the 2 kN/m2 that it comes with
    [2, 2, 0],
  ])('at %d kN/m2 with a point load of %d kN is number %d from the left', (imposedKPa, pointKN, column) => {
    expect(thicknessColumn({ imposedKPa, pointKN })).toBe(column);
  });

  it('does not exist beyond 5 kN/m2 or 4 kN', () => {
    expect(thicknessColumn({ imposedKPa: 5.1, pointKN: 0 })).toBeNull();
    expect(thicknessColumn({ imposedKPa: 2, pointKN: 4.5 })).toBeNull();
  });
});

it('65 mm of screed over a pipe of 16 mm leave a cover of 49 mm', () => {
  expect(thicknessCover(65, 16)).toBe(49);
});

it('65 mm of cement screed at 2000 kg/m3 weigh 1.27 kN/m2', () => {
  expect(thicknessDeadLoad(65, 2000)).toBeCloseTo(1.27, 2);
});

it('an 8 mm foam does not give 8 mm: about half of it closes', () => {
  expect(stripTakes(8, 0.5)).toBe(4);
});

it('a screed of class F4 bears 2 N/mm2 in tension, half the flexural class', () => {
  expect(tensileStrength(4)).toBe(2);
});

/** ISO 11600 classes with the least-width basis of BS 6093 and BS 6213: width = movement / capability. */
describe('the sealant width for 1.25 mm of movement', () => {
  it.each([
    [0.25, 5],
    [0.2, 6.25],
    [0.125, 10],
    [0.075, 16.67],
  ])('at a capability of %d is %d mm', (capability, widthMm) => {
    expect(sealantWidthNeeded(1.25, capability)).toBeCloseTo(widthMm, 2);
  });
});

/** Detailing text: half the width, 6 to 13 mm. */
describe('the depth of a sealant line', () => {
  it.each([
    [6, 6],
    [8, 6],
    [12, 6],
    [20, 10],
    [26, 13],
    [40, 13],
  ])('%d mm wide is %d mm', (widthMm, depthMm) => expect(sealantDepth(widthMm)).toBe(depthMm));

  it('makes 0.48 litres of 10 m at 8 mm', () => expect(sealantLitres(10, 8)).toBeCloseTo(0.48, 9));
});
