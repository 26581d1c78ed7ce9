import { onGrid } from '../geometry/tolerance.ts';
import { type Analysis, type TileFieldReport, tilePieces, type WallCut } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { type CsvCell, plain, table } from './csv.ts';
import { cutNarrow } from './tile-items.ts';
import { bondNames, cutSizesText, fieldName, toCutText, wholeComesOff } from './tile-words.ts';
import { namesOf } from './words.ts';

type Column<Row> = readonly [head: string, cell: (row: Row) => CsvCell];

/** One row a field: its tiles, how many are whole and cut, and what to order. Pieces that fall into the perimeter joint are counted apart: they are
 *  among the cut pieces only. */
export function tilesCsv(plan: Plan, analysis: Analysis): string {
  const names = namesOf(plan, analysis);
  const columns: Column<TileFieldReport>[] = [
    ['Field', (field) => fieldName(field, names)],
    ['Room ids', ({ rooms }) => rooms.join(' ')],
    ['Rooms', ({ rooms }) => rooms.map(names.room).join(', ')],
    ['Tile length (mm)', ({ lengthMm }) => lengthMm],
    ['Tile width (mm)', ({ widthMm }) => widthMm],
    ['Grout (mm)', ({ groutMm }) => groutMm],
    ['Bond', ({ bond }) => bondNames[bond]],
    ['Turned (degrees)', ({ angleDeg }) => angleDeg],
    ['Set-out point x (mm)', ({ origin }) => origin[0]],
    ['Set-out point y (mm)', ({ origin }) => origin[1]],
    ['Whole tiles', ({ full }) => full],
    ['Cut tiles', ({ sawn }) => sawn.cut],
    ['Cut pieces', tilePieces],
    ['Pieces into the perimeter joint', ({ inJoint }) => inJoint],
    ['Cuts under half', ({ sawn }) => sawn.underHalf],
    ['Slivers, under a third', ({ sawn }) => sawn.slivers],
    ['Smallest cut (mm)', ({ sawn }) => (sawn.smallestCutMm === null ? '' : onGrid(sawn.smallestCutMm))],
    ['Tile faces (m2)', ({ tileM2 }) => tileM2],
    ['Grout (m2)', ({ groutM2 }) => groutM2],
    ['Tiles to lay', ({ laid }) => laid],
    ['Cuts from off-cuts', ({ fromOffCuts }) => fromOffCuts],
    ['Allowance (%)', ({ allowance }) => allowance * 100],
    ['Tiles to order', ({ order }) => order],
    ['Boxes', ({ boxes }) => boxes ?? ''],
  ];
  return table(columns, analysis.tiles?.fields ?? []);
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
export function cutsCsv(plan: Plan, analysis: Analysis): string {
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
  const columns: Column<Row>[] = [
    ['Field', ({ field }) => field],
    ['Bay', ({ bay }) => bay],
    ['Room', ({ room }) => (room === null ? '' : names.room(room))],
    ['Along', ({ along }) => alongNames[along]],
    ['Of', ({ object }) => (object === null ? '' : names.ref(object))],
    ['From x (mm)', ({ line }) => onGrid(line[0][0])],
    ['From y (mm)', ({ line }) => onGrid(line[0][1])],
    ['To x (mm)', ({ line }) => onGrid(line[1][0])],
    ['To y (mm)', ({ line }) => onGrid(line[1][1])],
    ['Cut tiles', ({ tiles }) => tiles],
    ['Cut', (row) => (isCut(row) ? plain(cutSizesText(row)) : 'whole tiles')],
    ['Smallest cut (mm)', (row) => (isCut(row) ? onGrid(Math.min(...row.sizesMm)) : '')],
    ['Whole tile the same way (mm)', ({ wholeMm }) => onGrid(wholeMm)],
    [
      'Comes off for the open joint (mm)',
      (row) => (isCut(row) ? openMm(row) : onGrid(wholeComesOff(row, openMm(row)))),
    ],
    ['To cut', (row) => plain(toCutText(row, openMm(row)))],
    ['Narrow', (row) => narrowWords[cutNarrow(row) ?? 'wide']],
    ['Askew to the tiles', ({ isAskew }) => (isAskew ? 'yes' : 'no')],
  ];
  return table(columns, rows);
}

const narrowWords = { 'cut-sliver': 'under a third', 'cut-under-half': 'under half', wide: '' } as const;
