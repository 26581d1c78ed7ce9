import type { Point } from '../geometry/point.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { DoorwayJoint, DoorwayPlace } from './doorway-places.ts';
import { fillInks, type Ink, lineInks } from './ink.ts';
import {
  type Callout,
  calloutInks,
  calloutRows,
  calloutWidthMm,
  type Sketch,
  sketchDimension,
  sketchLine,
  sketchText,
  sketchWidthMm,
} from './sketch-page.ts';
import { box, rowMm } from './strip-pen.ts';
import { textLinesEven } from './text-even.ts';
import { wholeMmText } from './tile-words.ts';
import { textBefore } from './words.ts';

/** The plan of one doorway to scale, its wall laid across the page with the first room above. */

const scales = [10, 20, 25, 50, 100, 200, 500] as const;
/** What of the wall is shown beside a jamb, mm on paper. */
const wallEndMm = 10;
/** Names of rooms stand above and below the wall, clear of it, as its title is of them; the clear width below. */
const besideNameMm = 1.4;
const widthMm = 9;
/** Dimensions stand to the right of the wall, their words to the right of them. */
const dimensionMm = 7;
const wordsMm = 52;
const openingMm = sketchWidthMm - wordsMm - dimensionMm - 3 - 2 * wallEndMm;
const deepestMm = 150;
const mostLines = 3;
const mostNameLines = 2;

/** @param words what is told under the sketch, a paragraph each */
export function doorwaySketch(place: DoorwayPlace, words: readonly string[]): Sketch {
  const { doorway, clearMm, name } = place;
  const scale =
    scales.find((each) => clearMm / each <= openingMm && depthOf(place) / each <= deepestMm) ?? (1000 as const);
  const title = textLinesEven(textBefore(name), 'sheet-head', sketchWidthMm - 30, mostNameLines);
  const titleMm = nameMm(title);
  const lines = words.flatMap((text) => textLinesEven(text, 'sheet-text', sketchWidthMm, mostLines));
  const wallMm = depthOf(place) / scale;
  const names = roomNames(place, scale);
  const [aboveMm, belowMm] = [nameMm(names[0]), nameMm(names[1])];
  // words beside the wall may reach beyond it
  const rows = calloutRows(chainCallouts(place, scale, [0, 0])).flat();
  const overMm = Math.max(aboveMm, rowMm / 2 - Math.min(...rows));
  const underMm = Math.max(belowMm + widthMm, Math.max(...rows) + rowMm / 2 - wallMm);
  const heightMm = titleMm + overMm + wallMm + underMm + lines.length * rowMm + 3;
  const inks = ([x, y]: Point): readonly Ink[] => {
    const wallTop: Point = [x, y + titleMm + overMm];
    const below = wallTop[1] + wallMm;
    const wordsTop = below + underMm;
    return [
      ...title.map((text, i) => sketchText(text, 'sheet-head', [x, y + (besideNameMm + rowMm) / 2 + i * rowMm])),
      sketchText(`1 : ${scale}`, 'sheet-text', [x + sketchWidthMm, y + (besideNameMm + rowMm) / 2], 'end'),
      ...wallInks(place, scale, wallTop),
      ...roomInks(names, x + wallEndMm + clearMm / scale / 2, [wallTop[1] - aboveMm, below + besideNameMm]),
      ...widthInks(place, scale, wallTop, below + belowMm),
      ...chainInks(place, scale, wallTop),
      ...lines.map((text, i) => sketchText(text, 'sheet-text', [x, wordsTop + (i + 0.5) * rowMm])),
    ];
  };
  return { ref: { kind: 'object', id: doorway.id }, scale, heightMm, inks };
}

function depthOf({ depthMm }: DoorwayPlace): number {
  return Math.max(depthMm, 1);
}

/** How far the line of the leaf stands from the first face; in the middle where no face was found. */
function leafMm(place: DoorwayPlace): number {
  const [one, other] = place.sides;
  if (one.leafMm !== null) return one.leafMm;
  return other.leafMm === null ? depthOf(place) / 2 : depthOf(place) - other.leafMm;
}

function jointMm(place: DoorwayPlace, { offLeafMm }: DoorwayJoint): number {
  return leafMm(place) + offLeafMm;
}

function wallInks(place: DoorwayPlace, scale: number, [x, y]: Point): readonly Ink[] {
  const [clear, depth] = [place.clearMm / scale, depthOf(place) / scale];
  const [left, right] = [x + wallEndMm, x + wallEndMm + clear];
  const across = (mm: number): readonly [Point, Point] => [
    [left, y + mm / scale],
    [right, y + mm / scale],
  ];
  return [
    ...fillInks('wall-cut', box(x, y, left, y + depth), []),
    ...fillInks('wall-cut', box(right, y, right + wallEndMm, y + depth), []),
    ...(place.doorway.leaf ? lineInks('leaf', across(leafMm(place))) : []),
    ...alongJoints(place).flatMap((at) => lineInks(`joint-${at.joint.kind}`, across(jointMm(place, at)))),
  ];
}

function alongJoints({ joints }: DoorwayPlace): readonly DoorwayJoint[] {
  return joints.filter(({ fromMm }) => fromMm[0] !== null || fromMm[1] !== null);
}

type RoomNames = readonly [readonly string[], readonly string[]];

/** Of the rooms before and behind the opening, as wide as that. */
function roomNames({ sides: [one, other], clearMm }: DoorwayPlace, scale: number): RoomNames {
  const lines = ({ name }: typeof one) => textLinesEven(name, 'sheet-text', clearMm / scale - 2, mostNameLines);
  return [lines(one), lines(other)];
}

function nameMm(lines: readonly string[]): number {
  return lines.length * rowMm + besideNameMm;
}

function roomInks(names: RoomNames, middle: number, tops: readonly [number, number]): readonly Ink[] {
  return names.flatMap((lines, i) => {
    const top = tops[i] ?? 0;
    return lines.map((line, k) => sketchText(line, 'sheet-text', [middle, top + (k + 0.5) * rowMm], 'middle'));
  });
}

/** Clear width, from jamb to jamb. */
function widthInks(place: DoorwayPlace, scale: number, [x, y]: Point, top: number): readonly Ink[] {
  const [left, right] = [x + wallEndMm, x + wallEndMm + place.clearMm / scale];
  const wallBottom = y + depthOf(place) / scale;
  const line = top + widthMm - 2.5;
  return [
    sketchLine([left, wallBottom + 1], [left, line + 1.5]),
    sketchLine([right, wallBottom + 1], [right, line + 1.5]),
    ...sketchDimension([
      [left, line],
      [right, line],
    ]),
    sketchText(`${wholeMmText(place.clearMm)} clear`, 'sheet-text', [(left + right) / 2, line - 3], 'middle'),
  ];
}

function faceName({ room, name }: DoorwayPlace['sides'][number]): string {
  return room === null ? 'the other face' : textBefore(name);
}

interface Link {
  readonly fromMm: number;
  readonly toMm: number;
  readonly words: string;
}

interface Stop {
  readonly atMm: number;
  readonly name: string;
}

/** Where joints run, those of one line together; without any the leaf. */
function stopsOf(place: DoorwayPlace): readonly Stop[] {
  const stops: Stop[] = [];
  const joints = alongJoints(place)
    .map((at) => ({ atMm: jointMm(place, at), name: at.joint.id }))
    .sort((a, b) => a.atMm - b.atMm);
  for (const joint of joints) {
    const last = stops[stops.length - 1];
    if (last === undefined || joint.atMm - last.atMm >= EQUAL_LENGTH_MM) stops.push(joint);
    else stops[stops.length - 1] = { ...last, name: `${last.name}, ${joint.name}` };
  }
  if (stops.length > 0 || !place.doorway.leaf || place.leaf === 'unknown') return stops;
  return [{ atMm: leafMm(place), name: 'Leaf' }];
}

/** From face to joint to face; the depth alone where nothing stands in it. */
function chainOf(place: DoorwayPlace): readonly Link[] {
  const [one, other] = place.sides;
  const depth = depthOf(place);
  const stops = stopsOf(place).map(({ atMm, name }) => ({ atMm: Math.min(Math.max(atMm, 0), depth), name }));
  const [first, last] = [stops[0], stops[stops.length - 1]];
  if (first === undefined || last === undefined) {
    return [{ fromMm: 0, toMm: depth, words: `${wholeMmText(depth)} depth of the wall` }];
  }
  return [
    { fromMm: 0, toMm: first.atMm, words: `${wholeMmText(first.atMm)} from ${faceName(one)}` },
    ...stops.slice(1).map(({ atMm, name }, i) => {
      const before = stops[i] as Stop;
      const words = `${wholeMmText(atMm - before.atMm)} from ${before.name} to ${name}`;
      return { fromMm: before.atMm, toMm: atMm, words };
    }),
    { fromMm: last.atMm, toMm: depth, words: `${wholeMmText(depth - last.atMm)} from ${faceName(other)}` },
  ];
}

/** Line at which the leaders of the words beside the wall bend, from its left end. */
function bendMm({ clearMm }: DoorwayPlace, scale: number): number {
  return 2 * wallEndMm + clearMm / scale + dimensionMm;
}

function chainCallouts(place: DoorwayPlace, scale: number, [x, y]: Point): readonly Callout[] {
  const bend = bendMm(place, scale);
  return chainOf(place).map(({ fromMm, toMm, words }) => ({
    from: [x + bend, y + (fromMm + toMm) / 2 / scale] as const,
    lines: textLinesEven(words, 'sheet-text', calloutWidthMm(bend), mostLines),
  }));
}

function chainInks(place: DoorwayPlace, scale: number, [x, y]: Point): readonly Ink[] {
  const bend = x + bendMm(place, scale);
  const places = [0, ...chainOf(place).map(({ toMm }) => toMm)].map((mm) => y + mm / scale);
  return [
    ...places.map((at) => sketchLine([bend - dimensionMm + 1, at], [bend + 1.5, at])),
    ...sketchDimension(places.map((at): Point => [bend, at])),
    ...calloutInks(chainCallouts(place, scale, [x, y]), bend),
  ];
}
