import { regionContains } from '../geometry/region.ts';
import { roundedText } from '../plan/figure-words.ts';
import { type NamedPoint, recordsOf } from '../plan/papers.ts';
import { type Plan, planIsHeated, type Room } from '../plan/plan.ts';
import { drynessText, type FirstHeating, heatingMomentText } from './first-heating.ts';
import type { Form } from './form.ts';
import type { PaperSource } from './paper-source.ts';
import { pointCautionTexts } from './point-cautions.ts';
import { someText } from './pour-days.ts';
import { aboutFields, emptyRows, head, signatures, text, toFill } from './records-parts.ts';
import { sourceStanding, sourceWhere } from './source-words.ts';
import { type ColumnOf, columnText, type Table, tableOf } from './table.ts';
import { namesOf, oneLine } from './words.ts';

/** How the screed dries, and what releases it. */
export function drynessForm(source: PaperSource, { dryness, after }: FirstHeating): Form {
  const { plan } = source;
  const { source: key, value, range } = dryness;
  const least = range?.[0];
  const older = least !== undefined && least < value ? ` Older texts ask for ${roundedText(least, 2)} CM-%.` : '';
  const heated = planIsHeated(plan);
  return {
    title: 'Drying and dryness record',
    subject: oneLine(plan.name),
    blocks: [
      aboutFields(source, [
        [
          'Dry enough to cover',
          `at most ${roundedText(value, 2)} CM-%, or what the maker of the covering asks for where that is less`,
        ],
      ]),
      text(
        drynessText(dryness, plan),
        `The limit is that of heated screed: ${sourceWhere(key)} (${sourceStanding(key)}).${older}${plan.rooms.every((room) => room.heated) ? '' : ' It is kept in rooms that are not heated as well.'}`,
        ...(heated
          ? [`The first test is worth its while after the first heating, from ${heatingMomentText(after)} on.`]
          : []),
      ),
      text(...pointWords(source)),
      head('Drying'),
      { kind: 'table', table: dryingTable() },
      head('Dryness test'),
      { kind: 'table', table: testTable(source) },
      signatures('Screed', 'Tiling', 'Site manager'),
    ],
  };
}

function pointWords(source: PaperSource): readonly string[] {
  const { plan, analysis, file } = source;
  const { testPoints } = recordsOf(file);
  const isHeated = planIsHeated(plan);
  const rule = `at least one for each ${isHeated ? 'heating zone and ' : ''}room (common practice)`;
  const clear = isHeated ? ', clear of the pipes' : '';
  if (testPoints.length === 0)
    return [
      `No test point is marked: mark them on the plan and on the floor, ${rule}${clear}, before the screed is laid.`,
    ];
  const names = namesOf(plan, analysis);
  const without = plan.rooms.filter((room) => room.heated && !testPoints.some((point) => roomOf(plan, point) === room));
  return [
    `Samples are taken at the marked points only${clear}.`,
    ...pointCautionTexts(source, { kind: 'test', most: mostCautions }),
    ...(without.length === 0
      ? []
      : [`No point is marked in ${someText(without.map(({ id }) => names.room(id)))}: ${rule}.`]),
  ];
}

const mostCautions = 12;

function roomOf({ rooms }: Plan, { at }: NamedPoint): Room | undefined {
  return rooms.find((room) => regionContains(room, at));
}

const dryingRows = 8;

function dryingTable(): Table {
  const columns = ['Date', 'Air', 'Air humidity', 'Screed', 'Ventilated, heated', 'Initials'] as const;
  const units: Readonly<Partial<Record<(typeof columns)[number], string>>> = {
    Air: '\u00b0C',
    'Air humidity': '%',
    Screed: '\u00b0C',
  };
  return tableOf(
    { name: 'drying', title: 'Drying' },
    columns.map((each) => toFill<null>(each, units[each] ?? null)),
    emptyRows(dryingRows),
  );
}

interface TestRow {
  readonly point: string | null;
  readonly room: string | null;
}

const leastSpares = 4;

/** The marked points, and as many rows again for tests that are repeated; without points a row for each heated room. */
function testTable({ plan, analysis, file }: PaperSource): Table {
  const names = namesOf(plan, analysis);
  const { testPoints } = recordsOf(file);
  const marked = testPoints.map((point): TestRow => {
    const room = roomOf(plan, point);
    return { point: oneLine(point.name), room: room === undefined ? null : names.room(room.id) };
  });
  const unmarked = plan.rooms
    .filter((room) => room.heated)
    .map((room): TestRow => ({ point: null, room: names.room(room.id) }));
  const known = marked.length > 0 ? marked : unmarked;
  const spare = emptyRows(Math.max(leastSpares, marked.length)).map((): TestRow => ({ point: null, room: null }));
  const columns: ColumnOf<TestRow>[] = [
    { ...columnText<TestRow>('Point', ({ point }) => point), toFill: true },
    columnText('Room', ({ room }) => room),
    toFill('Date'),
    toFill('Reading', 'CM-%'),
    toFill('Method'),
    toFill('Released, yes or no'),
    toFill('By'),
  ];
  return tableOf({ name: 'dryness', title: 'Dryness test' }, columns, [...known, ...spare]);
}
