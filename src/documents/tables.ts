import { onGrid } from '../geometry/tolerance.ts';
import type { Analysis, Finding, RoomQuantities } from '../plan/analysis.ts';
import { jointKinds } from '../plan/analysis.ts';
import { figuresRounded } from '../takeoff/figures-rounded.ts';
import { doorwayNames, findingNamed, reasonNamed } from './doorway-places.ts';
import type { DrawingRef } from './drawing.ts';
import { tilesAtText, whyOffText } from './grout-words.ts';
import type { PaperSource } from './paper-source.ts';
import { jointPlaces } from './set-out-joint-text.ts';
import { sourceStanding, sourceWhere } from './source-words.ts';
import { type ColumnOf, columnFigure, columnText, heldDecimals, plain, type Table, tableOf } from './table.ts';
import { jointKindNames, namesOf, severityNames } from './words.ts';

/** The lists of the screed: quantities, joints, bays and findings. */

export type TableSource = Pick<PaperSource, 'plan' | 'analysis'>;

/** One row a room and one for the whole, net and without allowance. As they are written, to their last digit, the rooms add up to the whole. */
export function quantitiesTable({ plan, analysis }: TableSource): Table {
  const names = namesOf(plan, analysis);
  const { quantities } = analysis;
  interface Row {
    readonly id: string | null;
    readonly name: string;
    /** Which of the rooms; of the whole there is none. */
    readonly index: number | null;
  }
  const rows: Row[] = [
    ...quantities.rooms.map(({ room }, index) => ({ id: room, name: names.room(room), index })),
    { id: null, name: 'Total', index: null },
  ];
  const figures = (head: string, unit: string, decimals: number, of: (quantities: RoomQuantities) => number) => {
    const shares = figuresRounded(quantities.rooms.map(of), of(quantities), heldDecimals);
    const cell = ({ index }: Row) => (index === null ? of(quantities) : (shares[index] ?? null));
    return columnFigure<Row>(head, unit, decimals, cell);
  };
  const columns: ColumnOf<Row>[] = [
    columnText('Room id', ({ id }) => id),
    columnText('Room', ({ name }) => name),
    figures('Floor', 'm2', 2, ({ floorM2 }) => floorM2),
    figures('Edge strip', 'm', 2, ({ edgeStripM }) => edgeStripM),
    ...jointKinds.map((kind) => figures(jointKindNames[kind], 'm', 2, ({ jointM }) => jointM[kind])),
    figures('Sealant', 'l', 2, ({ sealantLitres }) => sealantLitres),
    figures('Screed', 'm3', 3, ({ screedM3 }) => screedM3),
    figures('Screed', 'kg', 0, ({ screedKg }) => screedKg),
    figures('Insulation', 'm2', 2, ({ insulationM2 }) => insulationM2),
    figures('Held to the slab', 'm2', 2, ({ slabContactM2 }) => slabContactM2),
  ];
  const about = { name: 'quantities', title: 'Quantities', sums: 1, notes: ['Net, without allowance.'] };
  return tableOf(about, columns, rows, ({ id }) => (id === null ? [] : [{ kind: 'room', id }]));
}

export function jointsTable(source: TableSource): Table {
  const { plan, analysis } = source;
  const doorways = doorwayNames(source);
  const names = namesOf(plan, analysis);
  const places = jointPlaces(plan, analysis);
  const columns: ColumnOf<Analysis['joints'][number]>[] = [
    columnText('Joint', ({ id }) => id),
    columnText('Kind', ({ kind }) => jointKindNames[kind]),
    columnText('Between', (joint) => names.joint(joint)),
    columnText('First bay', ({ bays }) => bays[0]),
    columnText('Second bay', ({ bays }) => bays[1]),
    columnText('Run', ({ run }) => run),
    columnFigure('Length', 'm', 2, ({ lengthM }) => lengthM),
    columnFigure('Closing', 'mm', 1, ({ closingMm }) => closingMm),
    columnFigure('Opening', 'mm', 1, ({ openingMm }) => openingMm),
    columnFigure('Sliding along the joint', 'mm', 1, ({ slidingMm }) => slidingMm),
    columnFigure('Closing, worst case', 'mm', 1, ({ worstClosingMm }) => worstClosingMm),
    columnFigure('Profile', 'mm', 0, ({ profileMm }) => profileMm),
    columnFigure('Profile takes', 'mm', 1, ({ profileTakesMm }) => profileTakesMm),
    columnFigure('Sealant needs', 'mm', 1, ({ sealantNeedsMm }) => sealantNeedsMm),
    columnText('On grout line', ({ onGroutLine }) => (onGroutLine === null ? null : onGroutLine ? 'yes' : 'no')),
    columnFigure('Off grout line', 'mm', 1, ({ offGroutMm }) => (offGroutMm === null ? null : onGrid(offGroutMm))),
    columnFigure('Tiles cut', null, 0, ({ onGroutLine, cutsTiles }) => (onGroutLine === null ? null : cutsTiles)),
    columnText('Tiles at the joint', tilesAtText),
    columnText('Why off the grout line', whyOffText),
    columnText('Set out from', ({ id }) => plain(places.get(id) ?? '')),
    columnText('Why', ({ reasons }) => reasons.map((reason) => reasonNamed(reason, doorways)).join('; ')),
    columnText('Key', ({ key }) => key),
  ];
  return tableOf({ name: 'joints', title: 'Joint list' }, columns, analysis.joints, ({ id }) => [
    { kind: 'joint', id },
  ]);
}

export function baysTable({ plan, analysis }: TableSource): Table {
  const names = namesOf(plan, analysis);
  const columns: ColumnOf<Analysis['bays'][number]>[] = [
    columnText('Bay', ({ id }) => id),
    columnText('Room ids', ({ rooms }) => rooms.join(' ')),
    columnText('Rooms', ({ rooms }) => rooms.map(names.room).join(', ')),
    columnFigure('Area', 'm2', 2, ({ areaM2 }) => areaM2),
    columnFigure('Length', 'm', 2, ({ lengthM }) => lengthM),
    columnFigure('Width', 'm', 2, ({ widthM }) => widthM),
    columnFigure('Length : width', '1', 2, ({ aspect }) => aspect),
    columnFigure('Perimeter', 'm', 2, ({ perimeterM }) => perimeterM),
    columnFigure('Still point x', 'mm', 0, ({ stillPoint }) => stillPoint[0]),
    columnFigure('Still point y', 'mm', 0, ({ stillPoint }) => stillPoint[1]),
    columnText('Within the limits', ({ within }) => (within ? 'yes' : 'no')),
    columnText('Key', ({ key }) => key),
  ];
  return tableOf({ name: 'bays', title: 'Bay list' }, columns, analysis.bays, ({ id }) => [{ kind: 'bay', id }]);
}

/** One row a finding, numbered as its pin on the drawing is. */
export function findingsTable(source: TableSource): Table {
  const { plan, analysis } = source;
  const doorways = doorwayNames(source);
  const names = namesOf(plan, analysis);
  type Row = { readonly finding: Finding; readonly index: number };
  const rows = analysis.findings.map((finding, index): Row => ({ finding, index }));
  const columns: ColumnOf<Row>[] = [
    columnFigure('Number', null, 0, ({ index }) => index + 1),
    columnText('Severity', ({ finding }) => severityNames[finding.severity][0]),
    columnText('Finding', ({ finding }) => plain(findingNamed(finding, doorways))),
    columnText('About', ({ finding }) => finding.refs.map((id) => doorways.get(id) ?? names.ref(id)).join('; ')),
    columnFigure('Place x', 'mm', 0, ({ finding: { at } }) => (at === null ? null : onGrid(at[0]))),
    columnFigure('Place y', 'mm', 0, ({ finding: { at } }) => (at === null ? null : onGrid(at[1]))),
    columnText('Source', ({ finding }) => sourceWhere(finding.source)),
    columnText('Standing of the source', ({ finding }) => sourceStanding(finding.source)),
    columnText('Code', ({ finding }) => finding.code),
  ];
  const refs = ({ index }: Row): DrawingRef[] => [{ kind: 'finding', id: String(index) }];
  return tableOf({ name: 'findings', title: 'Findings' }, columns, rows, refs);
}
