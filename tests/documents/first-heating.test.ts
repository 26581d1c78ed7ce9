import { describe, expect, it } from 'vitest';
import { firstHeatingOf, heatingSupplyText } from '../../src/documents/first-heating.ts';
import { type Records, recordsOf } from '../../src/plan/papers.ts';
import type { ScreedClassKey } from '../../src/plan/reference.ts';
import { planOf } from './fixture.ts';

const nothing = recordsOf({ format: 'screed-bays/plan', version: 1, name: '', rooms: [] });

function heatingOf(screedClass: ScreedClassKey, records: Partial<Records> = {}, highestC = 45) {
  const plan = planOf();
  return firstHeatingOf(
    {
      ...plan,
      screed: { ...plan.screed, class: screedClass },
      temperatures: { ...plan.temperatures, highestC },
    },
    { ...nothing, ...records },
  );
}

describe('first heating', () => {
  it.each([
    // EN 1264-4 as restated in trade literature: 21 days cement, 7 days calcium sulfate
    ['CT-C25-F4', '2027-03-01', '2027-03-22'],
    ['CT-C25-F4', '2028-02-10', '2028-03-02'], // over a leap day: 19 days to 29 February, 2 more
    ['CT-C25-F4', '2027-02-10', '2027-03-03'],
    ['CT-C25-F4', '2027-12-15', '2028-01-05'],
    ['CA-C25-F5', '2027-02-26', '2027-03-05'],
    ['CAF-C25-F5', '2027-03-01', '2027-03-08'],
  ] as const)('of %s laid on %s begins on %s at the earliest', (screedClass, laidOn, date) => {
    expect(heatingOf(screedClass, { laidOn }).days[0]?.date).toBe(date);
  });

  it.each([
    // the later of standard and data sheet
    [null, 21],
    [0, 21],
    [14, 21],
    [21, 21],
    [28, 28],
  ])('of cement waits for the later of 21 days and the %s days of the data sheet', (dataSheetDays, days) => {
    expect(heatingOf('CT-C25-F4', { dataSheetDays }).waitDays).toBe(days);
  });

  it('holds 20 to 25 degrees for three days and the highest supply for four', () => {
    // EN 1264-4, from memory
    const { days } = heatingOf('CT-C25-F4', { laidOn: '2027-03-01', highestSupplyC: 40 });
    expect(days.map((day) => [day.date, heatingSupplyText(day).replace('\u00a0', ' ')])).toEqual([
      ['2027-03-22', '20 to 25 \u00b0C'],
      ['2027-03-23', '20 to 25 \u00b0C'],
      ['2027-03-24', '20 to 25 \u00b0C'],
      ['2027-03-25', '40 \u00b0C'],
      ['2027-03-26', '40 \u00b0C'],
      ['2027-03-27', '40 \u00b0C'],
      ['2027-03-28', '40 \u00b0C'],
    ]);
  });

  it('is counted in days where no laying date is entered, and says so', () => {
    const { days, after, told } = heatingOf('CT-C25-F4');
    expect(days.map(({ day, date }) => [day, date])).toEqual([21, 22, 23, 24, 25, 26, 27].map((day) => [day, null]));
    expect(after).toEqual({ day: 28, date: null });
    expect(told.join(' ')).toContain('is not known');
  });

  it('takes the highest temperature of the plan where no supply temperature is entered, and says so', () => {
    const { days, told } = heatingOf('CT-C25-F4', {}, 43);
    expect(days.at(-1)?.mostC).toBe(43);
    expect(told.join(' ')).toContain('stands in for it');
    expect(heatingOf('CT-C25-F4', { highestSupplyC: 43 }).told.join(' ')).not.toContain('stands in');
  });

  it('never asks for more than the screed bears, and says that the design does', () => {
    // EN 1264-4 as restated: 55 degrees next to the pipes
    const hot = heatingOf('CT-C25-F4', { highestSupplyC: 60 });
    expect(hot.days.at(-1)?.mostC).toBe(55);
    expect(hot.cautions.join(' ').replaceAll('\u00a0', ' ')).toMatch(/60 \u00b0C, passes the 55 \u00b0C/);
    expect(heatingOf('CT-C25-F4', { highestSupplyC: 55 }).cautions).toEqual([]);
  });

  it('never asks for more than a low design supply', () => {
    const { days } = heatingOf('CT-C25-F4', { highestSupplyC: 22 });
    expect(days.every(({ mostC }) => mostC <= 22)).toBe(true);
    expect(days[0]).toMatchObject({ leastC: 20, mostC: 22 });
  });

  it.each([
    ['CT-C25-F4', '1.8 CM-%'],
    ['CA-C25-F5', '0.5 CM-%'],
    ['CAF-C25-F5', '0.5 CM-%'],
  ] as const)('of %s gives no day for covering: only a test of at most %s releases', (screedClass, limit) => {
    // EN 1264-4:2021 as restated in trade literature
    const { told, after } = heatingOf(screedClass, { laidOn: '2027-03-01' });
    expect(told.join(' ')).toContain(`only a dryness test at the marked points does, at most ${limit}`);
    expect(Object.keys(after)).toEqual(['day', 'date']);
  });

  it('is not sooner for any thickness', () => {
    const plan = planOf();
    for (const thicknessMm of [35, 65, 120]) {
      const heating = firstHeatingOf({ ...plan, screed: { ...plan.screed, thicknessMm } }, nothing);
      expect(heating.waitDays).toBe(21);
      expect(heating.told.join(' ')).toContain('none makes the wait shorter');
    }
  });

  it('says of each source how far it can be relied on', () => {
    const { sources } = heatingOf('CT-C25-F4');
    expect(sources).toContain('EN 1264-4 (published, as restated in trade literature)');
    expect(sources.some((text) => text.includes('from memory'))).toBe(true);
  });
});
