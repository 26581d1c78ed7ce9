import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateIsEnterable, dateIsReal, dateLater } from '../../src/plan/calendar.ts';

/** Held against the calendar of the language itself (ECMAScript Date, proleptic Gregorian), which the program does not use. */
function isoOf(time: number): string {
  return new Date(time).toISOString().slice(0, 10);
}

const dayMs = 86_400_000;

describe('days of the calendar', () => {
  it('go over the end of a month, a year and a leap day', () => {
    // by hand: 2028 and 2000 are leap years, 2027 and 2100 are none
    expect(dateLater('2027-02-27', 3)).toBe('2027-03-02');
    expect(dateLater('2028-02-27', 3)).toBe('2028-03-01');
    expect(dateLater('2027-12-20', 21)).toBe('2028-01-10');
    expect(dateLater('2100-02-28', 1)).toBe('2100-03-01');
    expect(dateLater('2000-02-28', 1)).toBe('2000-02-29');
    expect(dateLater('2027-03-01', 0)).toBe('2027-03-01');
    expect(dateLater('2027-03-01', 365)).toBe('2028-02-29');
  });

  it('are those that any other calendar counts, for centuries', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: Date.UTC(1600, 0, 1) / dayMs, max: Date.UTC(9000, 0, 1) / dayMs }),
        fc.integer({ min: 0, max: 300_000 }),
        (start, days) => {
          expect(dateLater(isoOf(start * dayMs), days)).toBe(isoOf((start + days) * dayMs));
        },
      ),
    );
  });

  it('are real where a calendar has them and in no other writing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 9999 }),
        fc.integer({ min: 0, max: 14 }),
        fc.integer({ min: 0, max: 33 }),
        (year, month, day) => {
          const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
          const time = Date.UTC(year, month - 1, day);
          expect(dateIsReal(text)).toBe(isoOf(time) === text);
        },
      ),
    );
    for (const text of ['', '2027-3-1', '01.03.2027', '2027-03-01T00:00', ' 2027-03-01', '2027-03-01\n', '20270301'])
      expect(dateIsReal(text), text).toBe(false);
  });
});

it('takes days of the years 1900 to 9000 only, so that what is reckoned from them is still a day', () => {
  expect(['1900-01-01', '2027-03-01', '9000-12-31'].filter(dateIsEnterable)).toHaveLength(3);
  expect(['1899-12-31', '9001-01-01', '9999-12-30', '2027-02-29'].filter(dateIsEnterable)).toEqual([]);
});
