/** Days of the Gregorian calendar (ISO 8601) as text such as 2027-03-01: no clock and no time zone. */

const pattern = /^(\d{4})-(\d{2})-(\d{2})$/u;
const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
/** Days in 400 years, after which the calendar is the same again. */
const cycleDays = 146_097;

/** Whether a text is a day that there is. Example: 2027-02-28 -> true; 2027-02-29 -> false */
export function dateIsReal(text: string): boolean {
  const [year, month, day] = partsOf(text);
  return month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
}

/** Years of the days that can be entered: far enough from the last year that has four digits for all that is reckoned from it. */
export const dateYears = { first: 1900, last: 9000 } as const;

/** Whether a text is a day that can be entered. */
export function dateIsEnterable(text: string): boolean {
  const [year] = partsOf(text);
  return dateIsReal(text) && year >= dateYears.first && year <= dateYears.last;
}

/** @param date a real day, 0001 to 9999   @returns the day so many days later. Example: 2027-02-27, 3 -> 2027-03-02 */
export function dateLater(date: string, days: number): string {
  let [year, month, day] = partsOf(date);
  year += 400 * Math.floor(days / cycleDays);
  day += days - cycleDays * Math.floor(days / cycleDays);
  for (let length = daysIn(year, month); day > length; length = daysIn(year, month)) {
    day -= length;
    month += 1;
    if (month > 12) [year, month] = [year + 1, 1];
  }
  const digits = (value: number, count: number) => String(value).padStart(count, '0');
  return `${digits(year, 4)}-${digits(month, 2)}-${digits(day, 2)}`;
}

function partsOf(text: string): readonly [year: number, month: number, day: number] {
  const [, year, month, day] = pattern.exec(text) ?? [];
  return [Number(year), Number(month), Number(day)];
}

function daysIn(year: number, month: number): number {
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return month === 2 && isLeap ? 29 : (monthDays[month - 1] ?? 0);
}
