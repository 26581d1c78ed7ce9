import { expect, test } from 'vitest';
import { pourDaysGiven, pourM3, pourVolumeCautions } from '../../src/documents/pour-entered.ts';
import { orderingOf } from '../../src/plan/papers.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { gridSource } from './pour-fixture.ts';

/** Three bays of 4 m by 4 m in a row: at 62.5 mm each is 16 x 0.0625 = 1 m3. */
function given(days: NonNullable<NonNullable<PlanFile['pour']>['days']>) {
  const source = gridSource(3, 1, { pour: { days } });
  return pourDaysGiven(source);
}

test('each caution of the entered days says which day it is about', () => {
  const { cautions } = given([
    { date: '2027-03-02', bays: ['B1', 'gone'] },
    { date: '2027-03-01', bays: ['B2', 'B1'] },
    { bays: [] },
  ]);
  expect(cautions.map(({ index, words }) => [index, words.replace(/[:.].*$/u, '')])).toEqual([
    [0, 'Entered day 1 names a bay known as gone, which the floor does not have any more'],
    [1, 'B1 is named more than once'],
    [2, 'Entered day 3 has no bay and is left out'],
    [1, 'The dates of the entered days do not follow each other'],
  ]);
});

test('days that are entered well need no caution', () => {
  expect(given([{ date: '2027-03-01', bays: ['B1'] }, { bays: ['B2'] }, { date: '2027-03-02', bays: ['B3'] }])).toEqual(
    {
      days: [
        { date: '2027-03-01', bays: ['B1'] },
        { date: null, bays: ['B2'] },
        { date: '2027-03-02', bays: ['B3'] },
      ],
      cautions: [],
      told: [],
      keys: new Map(['B1', 'B2', 'B3'].map((key) => [key, key])),
    },
  );
});

test('what is laid in a day is told with its allowance, and where it is more than the day allows', () => {
  const { plan, analysis, file } = gridSource(3, 1, { order: { screedAllowance: 0.1 } });
  const laidM3 = pourM3(analysis.bays, { plan, order: orderingOf(file) });
  // 3 m3 and 10 % of them.
  expect(laidM3).toBeCloseTo(3.3, 6);
  expect(pourVolumeCautions(analysis.bays, laidM3, { mostM3PerDay: 3.3 })).toEqual([]);
  expect(pourVolumeCautions(analysis.bays, laidM3, { mostM3PerDay: 3 }).join(' ')).toMatch(
    /take 3\.3 m³, the day allows 3 m³/u,
  );
  // 0.12 over 0.1 is not told as 0.1 over 0.1
  expect(pourVolumeCautions([{ id: 'B1' }], 0.12, { mostM3PerDay: 0.1 }).join(' ')).toMatch(
    /B1 alone takes 0\.12 m³, the day allows 0\.1 m³/u,
  );
});
