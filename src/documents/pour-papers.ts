import { roundedText } from '../plan/figure-words.ts';
import { orderingOf, pourOf } from '../plan/papers.ts';
import { planIsHeated } from '../plan/plan.ts';
import type { Form, FormBlock } from './form.ts';
import type { PaperSource } from './paper-source.ts';
import { type PourLot, pourPlanOf } from './pour-plan.ts';
import { type ColumnOf, columnFigure, columnText, type Table, tableOf } from './table.ts';
import { figureText, heldSpace, type Names, namesOf, oneLine } from './words.ts';

/** The pour plan on paper: a row a day, and a form to lay by. */

export const pourRule = 'Every stop of work lies on a movement joint; none lies inside a bay.';

/** One row a day. */
export function pourTable(source: PaperSource): Table {
  const { exit, lots, told } = pourPlanOf(source);
  const names = namesOf(source.plan, source.analysis);
  const isEntered = pourOf(source.file).access !== null;
  const assumed = isEntered || exit === null ? '' : `, assumed from ${exit.bay}`;
  // with the first day: a file of rows alone has no notes
  const remarks = told.filter((words) => words !== exit?.words);
  const columns: ColumnOf<PourLot>[] = [
    ...lotColumns(names, lots),
    columnFigure('Area', 'm2', 2, ({ areaM2 }) => areaM2),
    columnFigure('Screed net', 'm3', 2, ({ netM3 }) => netM3),
    columnFigure('Screed net', 'kg', 0, ({ netKg }) => netKg),
    columnFigure('With allowance', 'm3', 2, ({ orderM3 }) => orderM3),
    columnFigure('Loads', null, 0, ({ loads }) => loads),
    columnText('Stop of work at joints', damsText),
    columnFigure('Stop of work', 'm', 2, damsM),
    columnText('Way to the access', (lot) => `${wayText(lot)}${assumed}`),
    columnText('Cautions', ({ cautions }) => cautions.join(' ')),
    ...(remarks.length === 0
      ? []
      : [columnText<PourLot>('Remarks on all days', (lot) => (lot === lots[0] ? remarks.join(' ') : null))]),
  ];
  const about = { name: 'pour-plan', title: 'Pour plan', notes: [pourRule, ...told, ...measureNotes(source)] };
  return tableOf(about, columns, lots, lotRefs);
}

/** @returns the plan of the days, to lay by and to sign */
export function pourForm(source: PaperSource): Form {
  const { plan, analysis } = source;
  const { lots, told } = pourPlanOf(source);
  const cautions = lots.flatMap(({ day, cautions: own }) => own.map((text) => `Day ${day}: ${text}`));
  const signed: readonly FormBlock[] = [
    { kind: 'head', text: 'Each day before the screed comes' },
    { kind: 'checks', items: dayChecks },
    { kind: 'signatures', parties: ['Screed', 'Site manager'] },
  ];
  return {
    title: 'Pour plan',
    subject: oneLine(plan.name),
    blocks: [
      { kind: 'text', lines: [pourRule, ...told, ...measureNotes(source)] },
      ...(cautions.length === 0
        ? []
        : [{ kind: 'head', text: 'Cautions' } as const, { kind: 'text', lines: cautions } as const]),
      { kind: 'table', table: layTable(lots, namesOf(plan, analysis)) },
      ...signed,
    ],
  };
}

/** Common practice, no source. */
const dayChecks: readonly string[] = [
  'The profiles at the stop of work stand plumb over the full depth and are held so that screed laid against them does not move them.',
  'Nothing is laid beyond the stop of work; what spills over is cleared before it sets.',
  'The way to the access lies over bays that are not laid yet.',
  'Fresh screed is closed off until the data sheet lets it be walked on.',
  'Level marks of the bays of the day are set and checked.',
];

function layTable(lots: readonly PourLot[], names: Names): Table {
  const columns: ColumnOf<PourLot>[] = [
    ...lotColumns(names, lots),
    columnFigure('With allowance', 'm3', 1, ({ orderM3 }) => orderM3),
    columnFigure('Loads', null, 0, ({ loads }) => loads),
    columnText('Stop of work at joints', damsText),
    { ...columnText<PourLot>('Laid on', () => null), toFill: true },
    { ...columnText<PourLot>('By', () => null), toFill: true },
  ];
  return tableOf({ name: 'pour-days', title: 'Days' }, columns, lots, lotRefs);
}

function lotColumns(names: Names, lots: readonly PourLot[]): readonly ColumnOf<PourLot>[] {
  const isDated = lots.some(({ date }) => date !== null);
  return [
    columnFigure('Day', null, 0, ({ day }) => day),
    ...(isDated ? [columnText<PourLot>('Date', ({ date }) => date)] : []),
    columnText('Bays in order', ({ bays }) => bays.map(({ id }) => id).join(', ')),
    columnText('Rooms', ({ rooms }) => rooms.map(names.room).join(', ')),
  ];
}

function lotRefs({ bays, dams }: PourLot) {
  return [
    ...bays.map(({ id }) => ({ kind: 'bay', id }) as const),
    ...dams.map(({ joint }) => ({ kind: 'joint', id: joint }) as const),
  ];
}

function damsText({ dams }: PourLot): string {
  return dams.map(({ joint }) => joint).join(', ');
}

function damsM({ dams }: PourLot): number {
  return dams.reduce((sum, { lengthM }) => sum + lengthM, 0);
}

function wayText({ sealed }: PourLot): string {
  return sealed.length === 0 ? 'open' : 'over fresh screed';
}

function measureNotes({ plan, file }: PaperSource): readonly string[] {
  const { screedAllowance, loadM3 } = orderingOf(file);
  const { mostM3PerDay } = pourOf(file);
  return [
    `At most ${roundedText(mostM3PerDay, 2)}${heldSpace}m\u00b3 in a day, allowance included.`,
    `Screed is reckoned ${roundedText(plan.screed.thicknessMm, 1)}${heldSpace}mm thick everywhere, with an allowance of ${figureText(100 * screedAllowance, 0)}${heldSpace}%${planIsHeated(plan) ? '; what pipes displace is left in' : ''}.`,
    `A load is ${roundedText(loadM3, 2)}${heldSpace}m\u00b3; loads are whole for each day by itself.`,
  ];
}
