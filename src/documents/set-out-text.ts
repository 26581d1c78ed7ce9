import { type Point, pointBetween } from '../geometry/point.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Analysis, Joint, TileFieldReport, WallCut } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { groutText, tilesAtText } from './grout-words.ts';
import { type FieldSetOut, lineNumbers } from './set-out-drawing.ts';
import { type JointDistance, jointDistances } from './set-out-joints.ts';
import type { ReferenceLine, SetOutLines } from './set-out-lines.ts';
import { faceSide, sideOf, wallFaces } from './set-out-walls.ts';
import { bondNames, cutSizesText, fieldName, tileSizeText, wholeMmText } from './tile-words.ts';
import { figureText, type Names, namesOf } from './words.ts';

/** What the strip of a set-out sheet says, as blocks that stay together. */
export interface TextBlock {
  /** Begins a part of the strip, with a rule above it. */
  readonly opens: boolean;
  readonly head: string;
  readonly lines: readonly string[];
  /** Facts, each with its own head. */
  readonly facts: readonly (readonly [head: string, text: string])[];
}

function block(head: string, lines: readonly string[], opens = false): TextBlock {
  return { opens, head, lines, facts: [] };
}

export function beforeBlock({ edgeStrip }: Plan): TextBlock {
  return block(
    'Before setting out',
    [
      'Check the size of the tiles delivered before setting out.',
      'Lengths are from finished walls, in whole millimetres.',
      `Cut sizes are to the face of the wall: ${wholeMmText(edgeStrip.thicknessMm)} for the perimeter joint come off each.`,
    ],
    true,
  );
}

export function fieldBlocks(fields: readonly FieldSetOut[], names: Names): readonly TextBlock[] {
  return fields.flatMap(({ report, lines }, i) => [
    { opens: true, head: fieldName(report, names), lines: [], facts: fieldFacts(report) },
    ...(lines === null
      ? [block('No reference lines', ['No tile of this field is laid whole.'])]
      : linesBlocks(lines, lineNumbers(i), names)),
  ]);
}

function fieldFacts(report: TileFieldReport): TextBlock['facts'] {
  const { full, cut, underHalf, slivers, smallestCutMm, laid, fromOffCuts, allowance, order, boxes, angleDeg } = report;
  const count = (value: number) => figureText(value, 0);
  const turned = angleDeg === 0 ? '' : `, turned ${figureText(angleDeg, Number.isInteger(angleDeg) ? 0 : 1)}\u00b0`;
  return [
    ['Tile', tileSizeText(report)],
    ['Bond', `${bondNames[report.bond]}${turned}`],
    ['Whole tiles', count(full)],
    ['Cut tiles', count(cut)],
    ['Narrow cuts', `${count(underHalf)} under half, ${count(slivers)} of them slivers under a third`],
    ['Smallest cut', smallestCutMm === null ? 'none is cut' : wholeMmText(smallestCutMm)],
    ['To lay', `${count(laid)}, with ${count(fromOffCuts)} cuts from off-cuts`],
    [
      'To order',
      `${count(order)} with ${figureText(allowance * 100, 0)}\u00a0% allowance${boxes === null ? '' : `, ${count(boxes)} boxes`}`,
    ],
  ];
}

function linesBlocks(
  { room, lines, check }: SetOutLines,
  numbers: readonly [number, number],
  names: Names,
): readonly TextBlock[] {
  const [first, second] = numbers.map((number) => `line\u00a0${number}`);
  return [
    block(`Line ${numbers[0]}, along the courses`, [referenceText(lines[0], names)]),
    block(`Line ${numbers[1]}, across the courses`, [referenceText(lines[1], names)]),
    block('They cross', [
      `In ${names.room(room.id)}, at a corner of the first whole tile, which is drawn heavier.`,
      check === null
        ? 'The room is too small for a check of the square by lengths.'
        : `Square if ${wholeMmText(check.firstMm)} along ${first} and ${wholeMmText(check.secondMm)} along ${second} are ${wholeMmText(check.acrossMm)} across.`,
    ]),
  ];
}

/** Example: "2340 mm from the lower wall of Hall", or both ends of it where that wall is out of square. */
function referenceText({ line, fromWall, fromCorner }: ReferenceLine, names: Names): string {
  const middle = pointBetween(...line, 0.5);
  const endOf = ([x, y]: readonly [number, number]) => sideOf([x - middle[0], y - middle[1]]);
  const [one, other] = fromWall;
  if (one !== undefined && other !== undefined) {
    const wall = `from the ${faceSide(one.face)} wall of ${names.room(one.face.room)}`;
    const [a, b] = [wholeMmText(one.distanceMm), wholeMmText(other.distanceMm)];
    return a === b
      ? `${a} ${wall}, at both ends.`
      : `${a} at its ${endOf(one.onLine)} end and ${b} at its ${endOf(other.onLine)} end ${wall}.`;
  }
  const places = fromCorner.map(({ side, distanceMm }) => `${wholeMmText(distanceMm)} from the ${side} corner`);
  return `No wall runs along it: it meets the walls ${places.join(' and ')}.`;
}

/** Joints with what is said of each; those of one run that say the same stand together. */
export function jointBlocks(
  plan: Plan,
  analysis: Analysis,
  distances: ReadonlyMap<string, readonly JointDistance[]>,
): readonly TextBlock[] {
  const names = namesOf(plan, analysis);
  const jambs = jambCuts(analysis);
  const groups = new Map<string, { readonly joints: Joint[]; readonly name: string; readonly place: string }>();
  for (const joint of analysis.joints) {
    const name = names.joint(joint);
    const place = placeText(joint, distances.get(joint.id) ?? [], analysis, names);
    const key = [joint.run, joint.kind, name, place, groutText(joint), joint.tilesAt].join('\n');
    const group = groups.get(key) ?? { joints: [], name, place };
    groups.set(key, group);
    group.joints.push(joint);
  }
  const blocks = [...groups.values()].map(({ joints, name, place }) =>
    block(`${joints.map(({ id }) => id).join(', ')} ${name}`, [place, tileText(joints, jambs)].filter(isText)),
  );
  const head = block(
    'Joints',
    [
      'From the walls on both sides, square to the joint at its middle; in a doorway from the faces of its own wall.',
      'Off by: from the nearest grout line that runs its way.',
      jointLineText(plan, analysis),
    ],
    true,
  );
  return blocks.length === 0 ? [] : [head, ...blocks];
}

/** What is left open in the tiling over each joint. On a grout line that is narrower than the sealant the tiles on both sides stand back for it.
 *  Example: sealant of 8 mm, grout of 3 -> 2.5 mm */
function jointLineText({ sealant: { widthMm } }: Plan, { tiles }: Analysis): string {
  const backs = (tiles?.fields ?? []).map(({ groutMm }) => (widthMm - groutMm) / 2).filter((backMm) => backMm > 0);
  const back =
    backs.length === 0
      ? ''
      : `: on a grout line the tiles on both sides stand back by ${[...new Set(backs.map((mm) => figureText(mm, 1)))].join(' or ')}\u00a0mm`;
  return `Each is left open in the tiling, straight and right over the joint in the screed, for ${figureText(widthMm, 1)}\u00a0mm of sealant${back}. A joint of the building takes its own profile.`;
}

/** Where each joint lies, by its id: what tables say of it. */
export function jointPlaces(plan: Plan, analysis: Analysis): ReadonlyMap<string, string> {
  const names = namesOf(plan, analysis);
  const distances = jointDistances(plan, analysis, wallFaces(analysis));
  return new Map(
    analysis.joints.map((joint) => [joint.id, placeText(joint, distances.get(joint.id) ?? [], analysis, names)]),
  );
}

function isText(text: string): boolean {
  return text !== '';
}

/** Example: "upper wall 6600 mm, lower wall 4800 mm"; of a doorway "60 mm and 140 mm from the faces of the two rooms", in the order of its name. */
function placeText(joint: Joint, distances: readonly JointDistance[], { bays }: Analysis, names: Names): string {
  const rooms = joint.bays.map((id) => bays.find((bay) => bay.id === id)?.rooms ?? []);
  const [one, other] = rooms.map((own) => distances.find(({ room, ownWall }) => ownWall && own.includes(room)));
  if (one !== undefined && other !== undefined && one !== other && names.jointAcross(joint))
    return `${wholeMmText(one.distanceMm)} and ${wholeMmText(other.distanceMm)} from the faces of the two rooms`;
  const isPlain = new Set(rooms.flat()).size === 1;
  return distances
    .map((distance) => {
      const { room, side, ownWall } = distance;
      const isNamed = isPlain && rooms[0]?.includes(room);
      const wall = ownWall ? 'face' : `${side} wall`;
      return `${wall}${isNamed ? '' : ` of ${names.room(room)}`} ${lengthText(distance)}`;
    })
    .join(', ');
}

function lengthText({ distanceMm, ends: [a, b] }: JointDistance): string {
  if (a === undefined || b === undefined) return wholeMmText(distanceMm);
  return `${wholeMmText(a.distanceMm)} at its ${a.side} end and ${wholeMmText(b.distanceMm)} at its ${b.side} end`;
}

function tileText(joints: readonly Joint[], jambs: ReadonlyMap<string, readonly WallCut[]>): string {
  const [first] = joints;
  if (first === undefined || first.onGroutLine === null) return 'no tiles here';
  const cutsTiles = joints.reduce((sum, joint) => sum + joint.cutsTiles, 0);
  const cuts = joints.flatMap(({ id }) => jambs.get(id) ?? []).flatMap(({ sizesMm }) => sizesMm);
  const sizesMm = [...cuts].sort((a, b) => a - b);
  const atJambs = sizesMm.length === 0 ? null : `at the jambs ${cutSizesText({ sizesMm, isAskew: false })}`;
  return [groutText(first), tilesAtText({ ...first, cutsTiles }), atJambs].filter((part) => part !== null).join('; ');
}

/** Cuts at the jambs of each doorway joint. */
function jambCuts({ joints, tiles }: Analysis): ReadonlyMap<string, readonly WallCut[]> {
  const cuts = (tiles?.fields ?? []).flatMap((field) =>
    field.cuts.filter(({ along, tiles: count }) => along === 'jamb' && count > 0),
  );
  const isAt = ({ line: [a, b] }: WallCut, end: Point | undefined) =>
    end !== undefined && segmentDistance(a, b, end) <= WELD_MM;
  const doorways = joints.filter(({ kind }) => kind === 'doorway');
  return new Map(
    doorways.map(({ id, line, bays }) => [
      id,
      cuts.filter((cut) => bays.includes(cut.bay) && (isAt(cut, line[0]) || isAt(cut, line[line.length - 1]))),
    ]),
  );
}
