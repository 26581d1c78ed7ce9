import { dateIsReal, dateLater } from '../plan/calendar.ts';
import { papersOf, pourOf } from '../plan/papers.ts';
import { planIsHeated } from '../plan/plan.ts';
import { shortened } from './drawing-labels.ts';
import { drynessText, type FirstHeating, type HeatingDay, heatingSupplyText } from './first-heating.ts';
import type { PaperSource } from './paper-source.ts';
import { pourRule } from './pour-papers.ts';
import { type PourLot, pourPlanOf } from './pour-plan.ts';
import { sourceHeating, startBans } from './records-start.ts';
import { cautionsOf, figureText, type Names, namesOf, oneLine } from './words.ts';

/** The days of pour and first heating as a calendar (RFC 5545): whole days, in no time zone.
 *  @returns null where no date is entered that an event could stand on */
export function calendarText(source: PaperSource): string | null {
  const events = [...pourEvents(source), ...heatingEvents(source)].filter(
    ({ from, days }) => dateIsReal(from) && dateIsReal(dateLater(from, days)),
  );
  if (events.length === 0) return null;
  const papers = papersOf(source.file);
  const context: EventContext = {
    plan: source.plan.name,
    floor: floorHash(source),
    stamp: `${dateDigits(papers.date ?? source.date)}T000000Z`,
    sequence: papers.revisions.length,
    cautions: cautionsOf(papers, source.analysis),
  };
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Screed bays//Papers of a plan//EN',
    'CALSCALE:GREGORIAN',
    ...events.flatMap((event) => eventLines(event, context)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

interface CalendarEvent {
  /** What it is, the same through all changes of its day. */
  readonly kind: string;
  readonly from: string;
  readonly days: number;
  readonly summary: string;
  readonly description: readonly string[];
}

function pourEvents(source: PaperSource): readonly CalendarEvent[] {
  // a large floor is not planned for nothing
  if (pourOf(source.file).days.every(({ date }) => date === null)) return [];
  const names = namesOf(source.plan, source.analysis);
  return pourPlanOf(source).lots.flatMap((lot) => (lot.date === null ? [] : [pourEvent(lot, lot.date, names)]));
}

function pourEvent(
  { day, bays, rooms, orderM3, loads, dams, cautions }: PourLot,
  date: string,
  names: Names,
): CalendarEvent {
  return {
    kind: `pour-${day}`,
    from: date,
    days: 1,
    summary: `Pour, day ${day}: ${shortened(rooms.map(names.room).join(', '))}`,
    description: [
      `Bays in order: ${bays.map(({ id }) => id).join(', ')}.`,
      `Screed with allowance: ${figureText(orderM3, 1)} m\u00b3, ${loads} ${loads === 1 ? 'load' : 'loads'}.`,
      ...(dams.length === 0 ? [] : [`Stop of work at ${dams.map(({ joint }) => joint).join(', ')}. ${pourRule}`]),
      ...cautions,
    ],
  };
}

function heatingEvents(source: PaperSource): readonly CalendarEvent[] {
  const heating = sourceHeating(source);
  const { days, after, told, dryness } = heating;
  const isHeated = planIsHeated(source.plan);
  const [first] = days;
  if (!isHeated || first === undefined || first.date === null || after.date === null) return [];
  return [
    {
      kind: 'first-heating',
      from: first.date,
      days: 1,
      summary: 'Earliest first heating',
      description: [`Do not start if: ${startBans(heating).join('; ')}.`, ...heating.cautions, ...told],
    },
    ...stepEvents(heating),
    {
      kind: 'dryness-test',
      from: after.date,
      days: 1,
      summary: 'Reminder: dryness test at the marked points. This day releases nothing',
      description: [drynessText(dryness, source.plan)],
    },
  ];
}

function stepEvents(heating: FirstHeating): readonly CalendarEvent[] {
  const steps = new Map<number, HeatingDay[]>();
  for (const day of heating.days) steps.set(day.step, [...(steps.get(day.step) ?? []), day]);
  return [...steps.values()].flatMap((days): CalendarEvent[] => {
    const [first] = days;
    if (first === undefined || first.date === null) return [];
    return [
      {
        kind: `first-heating-step-${first.step}`,
        from: first.date,
        days: days.length,
        summary: `First heating, step ${first.step}: supply at ${heatingSupplyText(first)}`,
        description: [
          'At the earliest: it moves with the first day of heating. Readings go into the first-heating record each day.',
          ...heating.cautions,
        ],
      },
    ];
  });
}

interface EventContext {
  readonly plan: string;
  readonly floor: string;
  readonly stamp: string;
  /** Revisions of the sheets: the later of two calendars has more (RFC 5545, 3.8.7.4). */
  readonly sequence: number;
  readonly cautions: readonly string[];
}

function eventLines(
  { kind, from, days, summary, description }: CalendarEvent,
  { plan, floor, stamp, sequence, cautions }: EventContext,
): readonly string[] {
  const name = shortened(oneLine(plan));
  return [
    'BEGIN:VEVENT',
    `UID:${kind}-${floor}@screed-bays.invalid`,
    `DTSTAMP:${stamp}`,
    `SEQUENCE:${sequence}`,
    `DTSTART;VALUE=DATE:${dateDigits(from)}`,
    `DTEND;VALUE=DATE:${dateDigits(dateLater(from, days))}`,
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped([name, ...description, ...cautions].join('\n'))}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** What tells floors apart on one calendar (RFC 5545, 3.8.4.7) and stays through revisions: what they are called, and where neither project nor number
 *  is entered, as many plans are called ground floor, their rooms too. */
function floorHash({ file, plan }: PaperSource): string {
  const { project, number } = papersOf(file);
  const isCalled = oneLine(project) !== '' || oneLine(number) !== '';
  const rooms = isCalled ? [] : plan.rooms.map(({ id, name }) => [id, name]);
  return textHash(JSON.stringify([project, number, plan.name, rooms]));
}

/** Example: 2027-03-01 -> 20270301 */
function dateDigits(date: string): string {
  return date.replaceAll('-', '');
}

/** TEXT of RFC 5545, 3.3.11. */
function escaped(text: string): string {
  return text
    .split('\n')
    .map((line) => oneLine(line).replace(/[\\;,]/g, (sign) => `\\${sign}`))
    .join('\\n');
}

/** Octets of a line, its break not counted (RFC 5545, 3.1). */
const mostOctets = 75;

/** A line in pieces of so many octets, each after the first beginning with a space; no character is parted. */
function folded(line: string): string {
  let out = '';
  let octets = 0;
  for (const character of line) {
    const own = utf8Octets(character);
    if (octets + own > mostOctets) {
      out += '\r\n ';
      octets = 1;
    }
    out += character;
    octets += own;
  }
  return out;
}

function utf8Octets(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}

const fnvPrime = 0x01000193;

/** FNV-1a over the text's UTF-16 units, twice with different beginnings: 64 bits, so that plans on one calendar do not meet. */
function textHash(text: string): string {
  return [0x811c9dc5, 0x9747b28c]
    .map((seed) => {
      let hash = seed;
      for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), fnvPrime);
      return (hash >>> 0).toString(16).padStart(8, '0');
    })
    .join('');
}
