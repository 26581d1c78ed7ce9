import { createRequire } from 'node:module';

/** A second program that reads calendars, by what is used of it: the types that it brings along do not pass the compiler. */
interface CalendarReader {
  parse(text: string): unknown;
  readonly Component: new (parsed: unknown) => CalendarPart;
  readonly Event: new (part: CalendarPart) => CalendarEntry;
}

interface CalendarPart {
  getAllSubcomponents(name: string): readonly CalendarPart[];
}

interface CalendarEntry {
  readonly uid: string;
  readonly summary: string;
  readonly description: string;
  readonly startDate: CalendarDay;
  readonly endDate: CalendarDay;
}

interface CalendarDay {
  readonly isDate: boolean;
  toString(): string;
}

const reader: CalendarReader = createRequire(import.meta.url)('ical.js');

/** Every event of a calendar. Throws where it is none. */
export function calendarRead(text: string): readonly CalendarEntry[] {
  return new reader.Component(reader.parse(text)).getAllSubcomponents('vevent').map((part) => new reader.Event(part));
}
