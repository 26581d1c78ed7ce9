import type { Agreement, AgreementWay } from '../analysis/agreement.ts';
import { areaText, figureText, type Names, oneLine } from '../documents/words.ts';
import { type Analysis, jointIsInRoom, type TileFieldReport, tilePieces } from '../plan/analysis.ts';
import { rules } from '../plan/reference.ts';
import { tableLines } from './table-lines.ts';

/** The tiles of each field, and how the joints lie in them. */
export function tileLines({ tiles, joints }: Analysis, names: Names): readonly string[] {
  if (tiles === null) return [];
  const inJoint = tiles.inJoint === 0 ? [] : ['- into perimeter joint'];
  const heads = [
    'Field',
    'Tile mm',
    'Bond',
    'Whole',
    '+ pieces',
    ...inJoint,
    '- from off-cuts',
    '= to lay',
    'To order',
    'Boxes',
    'Tiles cut',
    'Pieces under half',
    'Slivers',
    'Smallest mm',
  ];
  const rows = tiles.fields.map((field) => [
    fieldName(field, names),
    `${figureText(field.lengthMm, 0)} x ${figureText(field.widthMm, 0)} + ${figureText(field.groutMm, 0)}`,
    field.bond,
    ...[
      ...[field.full, tilePieces(field), ...inJoint.map(() => field.inJoint)],
      ...[field.fromOffCuts, field.laid, field.order],
    ].map((count) => figureText(count, 0)),
    field.boxes === null ? '-' : figureText(field.boxes, 0),
    ...[field.sawn.cut, field.sawn.underHalf, field.sawn.slivers].map((count) => figureText(count, 0)),
    field.sawn.smallestCutMm === null ? '-' : figureText(field.sawn.smallestCutMm, 0),
  ]);
  const tileM2 = tiles.fields.reduce((sum, field) => sum + field.tileM2, 0);
  const found = joints.filter((joint) => jointIsInRoom(joint) && joint.onGroutLine !== null);
  const lengthM = found.reduce((sum, joint) => sum + joint.lengthM, 0);
  const onM = found.filter((joint) => joint.onGroutLine).reduce((sum, joint) => sum + joint.lengthM, 0);
  return [
    `Tiles: ${areaText(tileM2)} of tile faces`,
    ...tableLines([heads, ...rows], `lll${'r'.repeat(heads.length - 3)}`),
    found.length === 0
      ? '  No joint within a room lies under tiles.'
      : `  On grout lines: ${figureText(onM, 1)} m of ${figureText(lengthM, 1)} m of joints within rooms that lie under tiles`,
  ];
}

function fieldName({ id, rooms }: TileFieldReport, names: Names): string {
  if (id === null) return 'The floor';
  return oneLine(`${id}: ${rooms.map(names.room).join(', ')}`);
}

const wayWords: Readonly<Record<AgreementWay, string>> = {
  'as-is': 'As it is',
  joints: 'Move the joints',
  'set-out': 'Move the set-out point',
  both: 'Move both',
};

/** The ways to make joints and tiles agree, each with what it costs. */
export function agreementLines(agreements: readonly Agreement[]): readonly string[] {
  const heads = [
    'Way',
    'Joints within rooms m',
    'Of these on grout',
    'All joints off grout m',
    'Cut tiles',
    'Slivers',
    'Sum m',
    'Change',
  ];
  const rows = agreements.map(({ way, price, onGroutShare, setOuts, aim }) => [
    wayWords[way],
    figureText(price.jointM, 1),
    onGroutShare === null ? '-' : `${figureText(onGroutShare * 100, 0)} %`,
    figureText(price.offGroutM, 1),
    figureText(price.cutTiles, 0),
    figureText(price.slivers, 0),
    figureText(price.totalM, 1),
    [
      ...(aim === null ? [] : [`aim ${aim}`]),
      ...setOuts.map(({ field, origin: [x, y] }) => `${field === null ? 'tiles' : oneLine(field)} from ${x}, ${y}`),
    ].join('; '),
  ]);
  const { offGroutPrice, cutTilePriceM, sliverPriceM } = rules;
  return [
    'Joints and tiles brought together',
    ...tableLines([heads, ...rows], 'lrrrrrrl'),
    `  Joints within rooms: intermediate, across necks and drawn. Those of the building and between zones count among all joints off grout only; doorway joints stay under the leaf and do not count. In the sum a metre off a grout line counts as ${offGroutPrice.value} m more, a cut tile as ${cutTilePriceM.value} m, a sliver as ${sliverPriceM.value} m.`,
  ];
}
