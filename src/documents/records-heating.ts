import { roundedText } from '../plan/figure-words.ts';
import { recordsOf } from '../plan/papers.ts';
import type { Room } from '../plan/plan.ts';
import { type FirstHeating, type HeatingDay, heatingMomentText, heatingSupplyText } from './first-heating.ts';
import type { Form } from './form.ts';
import type { PaperSource } from './paper-source.ts';
import { aboutFields, checks, emptyRows, head, signatures, text, toFill } from './records-parts.ts';
import { startBans } from './records-start.ts';
import { type ColumnOf, columnFigure, columnText, type Table, tableOf } from './table.ts';
import { namesOf, oneLine } from './words.ts';

/** The heating's own records. */

export function firstHeatingForm(source: PaperSource, heating: FirstHeating): Form {
  const { days, laidOn, after, told, cautions, sources } = heating;
  const [first] = days;
  const { dataSheet } = recordsOf(source.file);
  return {
    title: 'First-heating record',
    subject: oneLine(source.plan.name),
    blocks: [
      aboutFields(source, [
        ['Data sheet', oneLine(dataSheet)],
        ['Laid on (last bay)', laidOn ?? ''],
        ['Earliest first heating', first === undefined ? '' : heatingMomentText(first)],
      ]),
      ...(cautions.length === 0 ? [] : [text(...cautions)]),
      text(...told),
      head('Do not start if'),
      text(...startBans(heating).map((ban) => `\u2013 ${ban}`)),
      checks('None of this holds: looked at in every room on the day'),
      text(
        'The supply is read in the morning and in the evening at the manifold; the screed at the marked points. A step that is not reached is held a day longer. It does not go on where a crack opens.',
      ),
      { kind: 'table', table: daysTable(days) },
      text(
        `From ${heatingMomentText(after)} on the floor cools down slowly to its usual temperature. That is no release: the dryness record is.`,
      ),
      text(`Days and temperatures: ${sources.join('; ')}.`),
      signatures('Heating', 'Screed', 'Site manager'),
    ],
  };
}

function daysTable(days: readonly HeatingDay[]): Table {
  const columns: ColumnOf<HeatingDay>[] = [
    columnFigure('Day after laying', null, 0, ({ day }) => day),
    days.every(({ date }) => date !== null) ? columnText('Date', ({ date }) => date) : toFill('Date'),
    columnText('Wanted supply', heatingSupplyText),
    toFill('Supply', '\u00b0C'),
    toFill('Return', '\u00b0C'),
    toFill('Room', '\u00b0C'),
    toFill('Screed at points', '\u00b0C'),
    toFill('Initials'),
  ];
  return tableOf({ name: 'first-heating', title: 'First heating, day by day' }, columns, days);
}

/** Test pressure and time are not said: those of the standard in force and of the maker of the pipes are written in. */
export function balancingForm(source: PaperSource): Form {
  const { plan } = source;
  const heated = plan.rooms.filter((room) => room.heated);
  return {
    title: 'Pressure test and balancing record',
    subject: oneLine(plan.name),
    blocks: [
      aboutFields(source, [
        [
          'Pipe',
          plan.heating === null
            ? ''
            : `${roundedText(plan.heating.pipeOutsideMm, 1)} mm outside, ${roundedText(plan.heating.pipeSpacingMm, 0)} mm apart`,
        ],
        ['Manifold', ''],
      ]),
      head('Pressure test'),
      text(
        'Test pressure and time are those of the standard in force and of the maker of the pipes. The pipes stay under pressure while the screed is laid.',
      ),
      {
        kind: 'fields',
        fields: [
          'Tested with (water, air)',
          'Test pressure, bar',
          'Begun (date, time)',
          'Ended (date, time)',
          'Pressure at the end, bar',
          'Protected against frost by',
          'Pressure while the screed was laid, bar',
        ].map((each) => [each, '']),
      },
      checks(
        'All joints of pipes were looked at and are tight',
        'No pipe is damaged or lifted',
        'Pressure was read while the screed was laid',
      ),
      head('Balancing'),
      { kind: 'table', table: circuitsTable(source, heated) },
      signatures('Heating', 'Site manager'),
    ],
  };
}

/** A large room has several circuits. */
const spareCircuits = 4;

function circuitsTable({ plan, analysis }: PaperSource, heated: readonly Room[]): Table {
  const names = namesOf(plan, analysis);
  const columns: ColumnOf<Room | null>[] = [
    toFill('Circuit'),
    columnText('Room', (room) => room && names.room(room.id)),
    toFill('Length', 'm'),
    toFill('Flow wanted', 'l/min'),
    toFill('Valve set'),
    toFill('Flow read', 'l/min'),
    toFill('Initials'),
  ];
  return tableOf({ name: 'balancing', title: 'Circuits' }, columns, [...heated, ...emptyRows(spareCircuits)]);
}
