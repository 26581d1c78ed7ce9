import { onGrid } from '../geometry/tolerance.ts';
import type { Analysis, RoomQuantities } from '../plan/analysis.ts';
import { jointKinds } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { tilesAtText, whyOffText } from './grout-words.ts';
import { jointPlaces } from './set-out-joint-text.ts';
import { jointKindNames, namesOf } from './words.ts';

/** Tables as RFC 4180 has them: comma, CRLF, UTF-8, one head row with the units. Text and numbers are kept apart, so that
 *  a number stays a number and a text never becomes a formula. */

export type CsvCell = string | number;

/** Starts that a spreadsheet takes for a formula, the wide forms of East Asian keyboards among them. */
const formulaStart = /^\s*[=+\-@\r\uff1d\uff0b\uff0d\uff20]|^[\r\n]/u;

/** Control characters that a field cannot hold: all but the line ends, which stand in quotes. */
const unheld = /(?![\r\n])\p{Cc}/gu;

export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: CsvCell): string {
  if (typeof cell === 'number') return numberCell(cell);
  const held = cell.replace(unheld, ' ');
  const safe = formulaStart.test(held) ? `'${held}` : held;
  return /[",\r\n]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Words of a drawing without the spaces at which no line breaks: a table is searched. */
export function plain(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}

/** To a millionth, which is finer than any figure here and leaves no 0.30000000000000004; empty where there is no number. */
function numberCell(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toFixed(6)) + 0) : '';
}

type Column<Row> = readonly [head: string, cell: (row: Row) => CsvCell];

export function table<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  return csvText([columns.map(([head]) => head), ...rows.map((row) => columns.map(([, cell]) => cell(row)))]);
}

/** One row a room and one for the whole, net and without allowance. */
export function quantitiesCsv(plan: Plan, analysis: Analysis): string {
  const names = namesOf(plan, analysis);
  const { quantities } = analysis;
  type Row = { readonly id: string; readonly name: string; readonly of: RoomQuantities };
  const rows: Row[] = [
    ...quantities.rooms.map((of) => ({ id: of.room, name: names.room(of.room), of })),
    { id: '', name: 'Total', of: quantities },
  ];
  const columns: Column<Row>[] = [
    ['Room id', ({ id }) => id],
    ['Room', ({ name }) => name],
    ['Floor (m2)', ({ of }) => of.floorM2],
    ['Edge strip (m)', ({ of }) => of.edgeStripM],
    ...jointKinds.map((kind): Column<Row> => [`${jointKindNames[kind]} (m)`, ({ of }) => of.jointM[kind]]),
    ['Sealant (l)', ({ of }) => of.sealantLitres],
    ['Screed (m3)', ({ of }) => of.screedM3],
    ['Screed (kg)', ({ of }) => of.screedKg],
    ['Insulation (m2)', ({ of }) => of.insulationM2],
    ['Held to the slab (m2)', ({ of }) => of.slabContactM2],
  ];
  return table(columns, rows);
}

export function jointsCsv(plan: Plan, analysis: Analysis): string {
  const names = namesOf(plan, analysis);
  const places = jointPlaces(plan, analysis);
  const columns: Column<Analysis['joints'][number]>[] = [
    ['Joint', ({ id }) => id],
    ['Kind', ({ kind }) => jointKindNames[kind]],
    ['Between', (joint) => names.joint(joint)],
    ['First bay', ({ bays }) => bays[0]],
    ['Second bay', ({ bays }) => bays[1]],
    ['Run', ({ run }) => run],
    ['Length (m)', ({ lengthM }) => lengthM],
    ['Closing (mm)', ({ closingMm }) => closingMm],
    ['Opening (mm)', ({ openingMm }) => openingMm],
    ['Sliding along the joint (mm)', ({ slidingMm }) => slidingMm],
    ['Closing, worst case (mm)', ({ worstClosingMm }) => worstClosingMm],
    ['Profile (mm)', ({ profileMm }) => profileMm],
    ['Profile takes (mm)', ({ profileTakesMm }) => profileTakesMm],
    ['Sealant needs (mm)', ({ sealantNeedsMm }) => sealantNeedsMm],
    ['On grout line', ({ onGroutLine }) => (onGroutLine === null ? '' : onGroutLine ? 'yes' : 'no')],
    ['Off grout line (mm)', ({ offGroutMm }) => (offGroutMm === null ? '' : onGrid(offGroutMm))],
    ['Tiles cut', ({ onGroutLine, cutsTiles }) => (onGroutLine === null ? '' : cutsTiles)],
    ['Tiles at the joint', (joint) => tilesAtText(joint) ?? ''],
    ['Why off the grout line', (joint) => whyOffText(joint) ?? ''],
    ['Set out from', ({ id }) => plain(places.get(id) ?? '')],
    ['Why', ({ reasons }) => reasons.join('; ')],
    ['Key', ({ key }) => key],
  ];
  return table(columns, analysis.joints);
}

export function baysCsv(plan: Plan, analysis: Analysis): string {
  const names = namesOf(plan, analysis);
  const columns: Column<Analysis['bays'][number]>[] = [
    ['Bay', ({ id }) => id],
    ['Room ids', ({ rooms }) => rooms.join(' ')],
    ['Rooms', ({ rooms }) => rooms.map(names.room).join(', ')],
    ['Area (m2)', ({ areaM2 }) => areaM2],
    ['Length (m)', ({ lengthM }) => lengthM],
    ['Width (m)', ({ widthM }) => widthM],
    ['Length : width (1)', ({ aspect }) => aspect],
    ['Perimeter (m)', ({ perimeterM }) => perimeterM],
    ['Still point x (mm)', ({ stillPoint }) => stillPoint[0]],
    ['Still point y (mm)', ({ stillPoint }) => stillPoint[1]],
    ['Within the limits', ({ within }) => (within ? 'yes' : 'no')],
    ['Key', ({ key }) => key],
  ];
  return table(columns, analysis.bays);
}
