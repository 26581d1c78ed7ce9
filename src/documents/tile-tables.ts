import { onGrid } from '../geometry/tolerance.ts';
import { type TileFieldReport, tilePieces, type WallCut } from '../plan/analysis.ts';
import type { DrawingRef } from './drawing.ts';
import { type ColumnOf, columnFigure, columnText, plain, type Table, tableOf } from './table.ts';
import type { TableSource } from './tables.ts';
import { cutNarrow } from './tile-items.ts';
import { bondNames, cutSizesText, fieldName, toCutText, wholeComesOff } from './tile-words.ts';
import { namesOf } from './words.ts';

/** The tiler's lists. */

/** One row a field: its tiles, how many are whole and cut, and what to order. Pieces that fall into the perimeter joint are counted apart: they are
 *  among the cut pieces only. */
export function tilesTable({ plan, analysis }: TableSource): Table {
  const names = namesOf(plan, analysis);
  const columns: ColumnOf<TileFieldReport>[] = [
    columnText('Field', (field) => fieldName(field, names)),
    columnText('Room ids', ({ rooms }) => rooms.join(' ')),
    columnText('Rooms', ({ rooms }) => rooms.map(names.room).join(', ')),
    columnFigure('Tile length', 'mm', 1, ({ lengthMm }) => lengthMm),
    columnFigure('Tile width', 'mm', 1, ({ widthMm }) => widthMm),
    columnFigure('Grout', 'mm', 1, ({ groutMm }) => groutMm),
    columnText('Bond', ({ bond }) => bondNames[bond]),
    columnFigure('Turned', 'degrees', 2, ({ angleDeg }) => angleDeg),
    columnFigure('Set-out point x', 'mm', 1, ({ origin }) => origin[0]),
    columnFigure('Set-out point y', 'mm', 1, ({ origin }) => origin[1]),
    columnFigure('Whole tiles', null, 0, ({ full }) => full),
    columnFigure('Cut tiles', null, 0, ({ sawn }) => sawn.cut),
    columnFigure('Cut pieces', null, 0, tilePieces),
    columnFigure('Pieces into the perimeter joint', null, 0, ({ inJoint }) => inJoint),
    columnFigure('Cuts under half', null, 0, ({ sawn }) => sawn.underHalf),
    columnFigure('Slivers, under a third', null, 0, ({ sawn }) => sawn.slivers),
    columnFigure('Smallest cut', 'mm', 1, ({ sawn }) =>
      sawn.smallestCutMm === null ? null : onGrid(sawn.smallestCutMm),
    ),
    columnFigure('Tile faces', 'm2', 2, ({ tileM2 }) => tileM2),
    columnFigure('Grout', 'm2', 2, ({ groutM2 }) => groutM2),
    columnFigure('Tiles to lay', null, 0, ({ laid }) => laid),
    columnFigure('Cuts from off-cuts', null, 0, ({ fromOffCuts }) => fromOffCuts),
    columnFigure('Allowance', '%', 1, ({ allowance }) => allowance * 100),
    columnFigure('Tiles to order', null, 0, ({ order }) => order),
    columnFigure('Boxes', null, 0, ({ boxes }) => boxes),
  ];
  const notes = ['Counted to the faces of walls, things and joints; to order: with the allowance.'];
  return tableOf({ name: 'tiles', title: 'Tiles', notes }, columns, analysis.tiles?.fields ?? [], ({ id, rooms }) => [
    { kind: 'object', id: id ?? 'tiles' },
    ...rooms.map((room): DrawingRef => ({ kind: 'room', id: room })),
  ]);
}

const alongNames: Readonly<Record<WallCut['along'], string>> = {
  wall: 'Wall',
  jamb: 'Jamb',
  column: 'Column',
  pipe: 'Pipe',
  joinery: 'Joinery',
  joint: 'Joint',
};

/** One row a stretch of wall, jamb, thing or joint: the size of the cut along it, and the size to cut it to: less the perimeter joint at a wall or a
 *  thing, less half of the open joint at a joint. Lengths measured on a turned floor are told as the plan's are, to 0.1 mm. */
export function cutsTable({ plan, analysis }: TableSource): Table {
  const names = namesOf(plan, analysis);
  type Row = WallCut & { readonly field: string };
  const rows = (analysis.tiles?.fields ?? []).flatMap((report) =>
    report.cuts.map((cut): Row => ({ ...cut, field: fieldName(report, names) })),
  );
  const isCut = ({ tiles }: Row) => tiles > 0;
  const buildings = new Map(
    analysis.joints.flatMap((joint) => (joint.kind === 'structural' ? [[joint.id, joint]] : [])),
  );
  // a bay ends at the middle of its joint
  const openMm = ({ along, object }: Row) =>
    along === 'joint'
      ? (buildings.get(object ?? '')?.profileMm ?? plan.sealant.widthMm) / 2
      : plan.edgeStrip.thicknessMm;
  const columns: ColumnOf<Row>[] = [
    columnText('Field', ({ field }) => field),
    columnText('Bay', ({ bay }) => bay),
    columnText('Room', ({ room }) => (room === null ? null : names.room(room))),
    columnText('Along', ({ along }) => alongNames[along]),
    columnText('Of', ({ object }) => (object === null ? null : names.ref(object))),
    columnFigure('From x', 'mm', 1, ({ line }) => onGrid(line[0][0])),
    columnFigure('From y', 'mm', 1, ({ line }) => onGrid(line[0][1])),
    columnFigure('To x', 'mm', 1, ({ line }) => onGrid(line[1][0])),
    columnFigure('To y', 'mm', 1, ({ line }) => onGrid(line[1][1])),
    columnFigure('Cut tiles', null, 0, ({ tiles }) => tiles),
    columnText('Cut', (row) => (isCut(row) ? plain(cutSizesText(row)) : 'whole tiles')),
    columnFigure('Smallest cut', 'mm', 1, (row) => (isCut(row) ? onGrid(Math.min(...row.sizesMm)) : null)),
    columnFigure('Whole tile the same way', 'mm', 1, ({ wholeMm }) => onGrid(wholeMm)),
    columnFigure('Comes off for the open joint', 'mm', 1, (row) =>
      isCut(row) ? openMm(row) : onGrid(wholeComesOff(row, openMm(row))),
    ),
    columnText('To cut', (row) => plain(toCutText(row, openMm(row)))),
    columnText('Narrow', (row) => narrowWords[cutNarrow(row) ?? 'wide']),
    columnText('Askew to the tiles', ({ isAskew }) => (isAskew ? 'yes' : 'no')),
  ];
  return tableOf(
    { name: 'cuts', title: 'Cuts at walls, things and joints' },
    columns,
    rows,
    ({ bay, along, object }) => [
      { kind: 'bay', id: bay },
      ...(object === null ? [] : [{ kind: along === 'joint' ? ('joint' as const) : ('object' as const), id: object }]),
    ],
  );
}

const narrowWords = { 'cut-sliver': 'under a third', 'cut-under-half': 'under half', wide: '' } as const;
