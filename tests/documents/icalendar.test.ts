import { describe, expect, it } from 'vitest';
import { calendarText } from '../../src/documents/icalendar.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { sourceHeating } from '../../src/documents/records-start.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { calendarRead } from './calendar-reader.ts';
import { demoText, paperSourceOf } from './paper-fixture.ts';
import { gridSource } from './pour-fixture.ts';

/** Read by a second program (ical.js), and held against RFC 5545. */
function eventsOf(source: PaperSource) {
  const text = calendarText(source);
  if (text === null) throw new Error('no calendar');
  return calendarRead(text).map((event) => {
    return {
      uid: event.uid,
      kind: event.uid.replace(/-[0-9a-f]{16}@.*$/, ''),
      from: event.startDate.toString(),
      until: event.endDate.toString(),
      isAllDay: event.startDate.isDate && event.endDate.isDate,
      summary: event.summary.replaceAll('\u00a0', ' '),
      description: event.description.replaceAll('\u00a0', ' '),
    };
  });
}

function laid(over: Partial<PlanFile> = {}): PaperSource {
  return gridSource(2, 1, { records: { laidOn: '2027-03-01', highestSupplyC: 40 }, ...over });
}

describe('the calendar', () => {
  it('begins the heating of a cement screed 21 days after laying, with its steps, and calls to a test afterwards', () => {
    // EN 1264-4 as restated: 21 days; steps from memory: 3 days and 4. The end of a whole-day event is the day after it (RFC 5545, 3.6.1)
    expect(eventsOf(laid()).map(({ kind, from, until }) => [kind, from, until])).toEqual([
      ['first-heating', '2027-03-22', '2027-03-23'],
      ['first-heating-step-1', '2027-03-22', '2027-03-25'],
      ['first-heating-step-2', '2027-03-25', '2027-03-29'],
      ['dryness-test', '2027-03-29', '2027-03-30'],
    ]);
  });

  it('has whole days only and tells each what it is', () => {
    const events = eventsOf(laid());
    expect(events.every(({ isAllDay }) => isAllDay)).toBe(true);
    const [first, low, high, test] = events;
    expect(first?.description).toContain('Do not start if: the screed is younger than 21 days');
    expect(low?.summary).toContain('20 to 25 \u00b0C');
    expect(high?.summary).toContain('40 \u00b0C');
    expect(test?.summary).toContain('releases nothing');
    expect(test?.description).toContain('only a dryness test');
  });

  it('never has a day for covering', () => {
    for (const { summary } of eventsOf(laid())) expect(summary).not.toMatch(/cover|tile|release[sd]? for/i);
  });

  it('has the pour day by day, and counts the heating from its last day where that is later', () => {
    const pour = {
      access: [0, 2000] as const,
      days: [
        { date: '2027-03-03', bays: ['B2'] },
        { date: '2027-03-05', bays: ['B1'] },
      ],
    };
    const events = eventsOf(laid({ pour }));
    expect(events.slice(0, 3).map(({ kind, from }) => [kind, from])).toEqual([
      ['pour-1', '2027-03-03'],
      ['pour-2', '2027-03-05'],
      ['first-heating', '2027-03-26'],
    ]);
    expect(events[0]?.description).toContain('Stop of work at J1');
    expect(events[2]?.description).toContain('days are counted from the later');
  });

  it('takes the last day of the pour for the laying date where every bay has its day', () => {
    const days = [
      { date: '2027-03-03', bays: ['B2'] },
      { date: '2027-03-05', bays: ['B1'] },
    ];
    const kinds = (pour: PlanFile['pour']) => eventsOf(gridSource(2, 1, { pour })).map(({ kind }) => kind);
    expect(kinds({ days })).toContain('first-heating');
    expect(kinds({ days: days.slice(0, 1) })).toEqual(['pour-1']);
  });

  it('has no day of heating while bays are to be poured on days without a date, whatever laying date is entered before', () => {
    const days = [{ date: '2027-03-03', bays: ['B2'] }];
    // entered as laid on 1 March, and poured on 3 March at least: B1 follows on a day that nobody knows
    expect(eventsOf(laid({ pour: { days } })).map(({ kind }) => kind)).toEqual(['pour-1']);
    const heating = sourceHeating(laid({ pour: { days } }));
    expect(heating.laidOn).toBeNull();
    expect(heating.cautions.join(' ')).toContain('enter the dates of all days');
  });

  it('is not made where no day is entered', () => {
    expect(calendarText(gridSource(2, 1))).toBeNull();
  });

  it('keeps its events through changes of their days, and apart from those of other plans', () => {
    const uids = (source: PaperSource) => eventsOf(source).map(({ uid }) => uid);
    expect(uids(laid({ records: { laidOn: '2027-05-01' } }))).toEqual(uids(laid()));
    const source = laid();
    const other = { ...source, plan: { ...source.plan, name: 'Another' } };
    expect(uids(other).some((uid) => uids(source).includes(uid))).toBe(false);
    // two houses have a ground floor each: told apart by project or number, else by their rooms
    const inProject = (project: string) => laid({ papers: { project } });
    expect(uids(inProject('House 1')).some((uid) => uids(inProject('House 2')).includes(uid))).toBe(false);
    const withRooms = (change: (room: Plan['rooms'][number]) => Plan['rooms'][number]) => ({
      ...source,
      plan: { ...source.plan, rooms: source.plan.rooms.map(change) },
    });
    expect(uids(withRooms((room) => ({ ...room, name: 'Attic' }))).some((uid) => uids(source).includes(uid))).toBe(
      false,
    );
    // a revision that moves a wall is of the same floor: its days take the place of those of before
    const moved = withRooms((room) => ({ ...room, outline: room.outline.map(([x, y]) => [x + 100, y] as const) }));
    expect(uids(moved)).toEqual(uids(source));
    expect(new Set(uids(source)).size).toBe(uids(source).length);
  });

  it('is the same bytes for the same plan and day', () => {
    expect(calendarText(laid())).toBe(calendarText(laid()));
    expect(calendarText(laid())).toContain('DTSTAMP:20270301T000000Z\r\n');
    expect(calendarText(laid({ papers: { date: '2027-02-11' } }))).toContain('DTSTAMP:20270211T000000Z\r\n');
  });

  it('counts its revisions, so that a calendar sees which of two is the later', () => {
    // RFC 5545, 3.8.7.4
    const sequences = (revisions: number) =>
      calendarText(
        laid({ papers: { revisions: Array.from({ length: revisions }, (_, i) => ({ mark: `R${i}` })) } }),
      )?.match(/^SEQUENCE:\d+(?=\r\n)/gmu);
    expect(new Set(sequences(0))).toEqual(new Set(['SEQUENCE:0']));
    expect(new Set(sequences(2))).toEqual(new Set(['SEQUENCE:2']));
  });

  it('has no event beyond the last day that a calendar file can hold', () => {
    expect(calendarText(laid({ records: { laidOn: '9999-12-31' } }))).toBeNull();
  });
});

/** Names that break out of a line, a field or a character. */
const hostile: readonly string[] = [
  'A; B, C\\D',
  'END:VEVENT\r\nEND:VCALENDAR\nBEGIN:VALARM',
  '\u0414\u043e\u043c \u043d\u0430 \u0443\u0433\u043b\u0443 \u2014 \u03a0\u03cc\u03c1\u03c4\u03b1 '.repeat(30),
  '\u{1f3e0}'.repeat(200),
  'x'.repeat(10_000),
  '\u202eright to left\u2066',
  '\ud800 half a character \u0000\u0007\u0085\u2028',
  '=1+1',
  '<script>',
  '',
];

describe.each(hostile.map((name) => [JSON.stringify(name.slice(0, 30)), name] as const))(
  'a plan and room named %s',
  (_, name) => {
    const source = laid({ pour: { days: [{ date: '2027-03-01', bays: ['B1', 'B2'] }] } });
    const [room] = source.plan.rooms;
    if (room === undefined) throw new Error('a room');
    const named = { ...source, plan: { ...source.plan, name, rooms: [{ ...room, name }] } };
    const text = calendarText(named) ?? '';

    it('leaves the calendar whole', () => {
      expect(eventsOf(named).map(({ kind }) => kind)).toEqual([
        'pour-1',
        'first-heating',
        'first-heating-step-1',
        'first-heating-step-2',
        'dryness-test',
      ]);
    });

    it('is folded at 75 octets, and no character is parted', () => {
      const bytes = Buffer.from(text, 'utf8');
      expect(text.endsWith('\r\n')).toBe(true);
      const lines = bytes.toString('latin1').split('\r\n');
      for (const line of lines) {
        expect(line.length).toBeLessThanOrEqual(75);
        expect(line).not.toMatch(/[\r\n]/);
        // each line by itself is text: a parted character would not be
        expect(() => new TextDecoder('utf-8', { fatal: true }).decode(Buffer.from(line, 'latin1'))).not.toThrow();
      }
    });
  },
);

it('a short name with commas and semicolons comes back as it was entered', () => {
  const source = laid();
  const named = { ...source, plan: { ...source.plan, name: 'A; B, C\\D' } };
  expect(eventsOf(named)[0]?.description.split('\n')[0]).toBe('A; B, C\\D');
});

it('a demo floor with a laying date has a calendar', () => {
  const source = paperSourceOf(demoText('1-dwelling'), { records: { laidOn: '2027-12-20' } });
  // by hand: 20 December and 21 days is 10 January
  expect(eventsOf(source)[0]?.from).toBe('2028-01-10');
});
