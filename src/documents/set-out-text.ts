import { type Point, pointDistance } from '../geometry/point.ts';
import { type TileFieldReport, tilePieces } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { takeOffUnit } from '../plan/take-off.ts';
import { type FieldSetOut, lineNumbers } from './set-out-drawing.ts';
import type { ReferenceLine, SetOutLines } from './set-out-lines.ts';
import { faceSide, sideOf } from './set-out-walls.ts';
import { bondNames, fieldName, tileSizeText, wholeMmText } from './tile-words.ts';
import { figureText, type Names } from './words.ts';

/** What the strip of a set-out sheet says, as blocks that stay together. */
export interface TextBlock {
  /** Begins a part of the strip, with a rule above it. */
  readonly opens: boolean;
  readonly head: string;
  readonly lines: readonly string[];
  /** Facts, each with its own head. */
  readonly facts: readonly (readonly [head: string, text: string])[];
  /** What is told here and counted where there is no room for it. */
  readonly holds?: { readonly what: 'field' | 'room' | 'joint'; readonly count: number };
}

/** A block that begins a part. */
export function opening(head: string, lines: readonly string[]): TextBlock {
  return { opens: true, head, lines, facts: [] };
}

export function block(head: string, lines: readonly string[], holds?: NonNullable<TextBlock['holds']>): TextBlock {
  return { opens: false, head, lines, facts: [], ...(holds && { holds }) };
}

export function beforeBlock({ edgeStrip }: Plan): TextBlock {
  return opening('Before setting out', [
    'Check the size of the tiles delivered before setting out.',
    'Lengths are from finished walls, in whole millimetres.',
    `Cut sizes are to the face of the wall or thing: ${wholeMmText(edgeStrip.thicknessMm)} for the perimeter joint come off there, off whole tiles too, and twice between two walls. A cut no wider than that falls into the joint and is left out.`,
  ]);
}

export function fieldBlocks(fields: readonly FieldSetOut[], names: Names): readonly TextBlock[] {
  return fields.flatMap(({ report, lines }, i) => [
    { ...opening(fieldName(report, names), []), facts: fieldFacts(report), holds: { what: 'field', count: 1 } },
    ...(lines === null
      ? [block('No reference lines', ['No tile of this field is laid whole.'])]
      : linesBlocks(lines, lineNumbers(i), names)),
  ]);
}

function fieldFacts(report: TileFieldReport): TextBlock['facts'] {
  const { full, cut, inJoint, sawn, laid, fromOffCuts, allowance, order, boxes, angleDeg } = report;
  const pieces = tilePieces(report);
  const count = (value: number) => figureText(value, 0);
  const turned = angleDeg === 0 ? '' : `, turned ${figureText(angleDeg, Number.isInteger(angleDeg) ? 0 : 1)}\u00b0`;
  return [
    ['Tile', tileSizeText(report)],
    ['Bond', `${bondNames[report.bond]}${turned}`],
    ['Whole tiles', count(full)],
    ['Cut pieces', `${count(pieces)}, where ${count(cut)} tiles are cut`],
    ...(inJoint === 0 ? [] : [['Left out', `${count(inJoint)} pieces fall into the perimeter joint`] as const]),
    ['Narrow cuts', `${count(sawn.underHalf)} under half, ${count(sawn.slivers)} of them slivers under a third`],
    ['Smallest cut', sawn.smallestCutMm === null ? 'none is cut' : wholeMmText(sawn.smallestCutMm)],
    [
      'To lay',
      `${count(laid)}: ${count(full)} + ${count(pieces)}${inJoint === 0 ? '' : ` \u2212 ${count(inJoint)} left out`} \u2212 ${count(fromOffCuts)} from off-cuts`,
    ],
    [
      'To order',
      `${count(order)} with ${figureText(allowance * 100, 0)}\u00a0% allowance${boxes === null ? '' : `, ${count(boxes)} ${takeOffUnit(boxes, 'boxes')}`}`,
    ],
  ];
}

function linesBlocks(
  { room, corner, lines, check }: SetOutLines,
  numbers: readonly [number, number],
  names: Names,
): readonly TextBlock[] {
  const [first, second] = numbers.map((number) => `line\u00a0${number}`);
  return [
    block(`Line ${numbers[0]}, along the courses`, [referenceText(lines[0], corner, names)]),
    block(`Line ${numbers[1]}, across the courses`, [referenceText(lines[1], corner, names)]),
    block('They cross', [
      `In ${names.room(room.id)}, at a corner of the first whole tile, which is drawn heavier.`,
      check === null
        ? 'The room is too small for a check of the square by lengths.'
        : `Square if ${wholeMmText(check.firstMm)} along ${first} and ${wholeMmText(check.secondMm)} along ${second} are ${wholeMmText(check.acrossMm)} across.`,
    ]),
  ];
}

/** Example: "2340 mm from the lower wall of Hall", or both ends of it where that wall is out of square. */
function referenceText({ line, fromWall, fromCorner }: ReferenceLine, corner: Point, names: Names): string {
  const towards = (from: Point, to: Point) => sideOf([to[0] - from[0], to[1] - from[1]]);
  const [one, other] = fromWall;
  if (one !== undefined && other !== undefined) {
    const wall = `from the ${faceSide(one.face)} wall of ${names.room(one.face.room)}`;
    const [a, b] = [wholeMmText(one.distanceMm), wholeMmText(other.distanceMm)];
    return a === b
      ? `${a} ${wall}, at both ends.`
      : `${a} at its ${towards(other.onLine, one.onLine)} end and ${b} at its ${towards(one.onLine, other.onLine)} end ${wall}.`;
  }
  if (fromCorner.length === 0) {
    const mm = wholeMmText(pointDistance(...line));
    const end = `${wholeMmText(pointDistance(line[0], corner))} from its ${towards(line[1], line[0])} end`;
    return `No straight wall runs along it or meets it: ${mm} from wall to wall, the crossing ${end}.`;
  }
  const places = fromCorner.map(({ side, distanceMm }) => `${wholeMmText(distanceMm)} from the ${side} corner`);
  return `No wall runs along it: it meets ${places.length === 1 ? 'a wall' : 'the walls'} ${places.join(' and ')}.`;
}
