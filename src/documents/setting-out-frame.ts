import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { regionArea, regionCentroid } from '../geometry/region.ts';
import type { Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { EQUAL_LENGTH_MM, STRAIGHT_MM, WELD_MM } from '../geometry/tolerance.ts';
import type { Joint } from '../plan/analysis.ts';
import { type GridLine, type NamedPoint, type Papers, papersOf } from '../plan/papers.ts';
import { type PaperSource, perSource } from './paper-source.ts';
import { type Face, faceSide, sideOf, wallFaces } from './set-out-walls.ts';
import { textCutWithin } from './texts-cut.ts';
import { namesOf, oneLine, textBefore } from './words.ts';

/** Two lines square to each other from which joints are set out by running dimensions. */
export interface SetOutFrame {
  readonly by: 'base-points' | 'grid-lines' | 'walls';
  /** Whose walls they are; null where the frame is that of the whole floor. */
  readonly room: string | null;
  readonly origin: Point;
  /** Unit vectors: x is measured along, y square to it, both towards the floor. */
  readonly along: Point;
  readonly across: Point;
  /** Such as "Base point 1". */
  readonly from: string;
  /** The same with names in full, for lists. */
  readonly fromInFull: string;
  /** Which way x and y run. */
  readonly ways: string;
}

/** Places of the sheet as a frame has them, x and y in mm. */
export function frameFigures({ origin, along, across }: SetOutFrame, [px, py]: Point): Point {
  const [dx, dy] = [px - origin[0], py - origin[1]];
  return [dx * along[0] + dy * along[1], dx * across[0] + dy * across[1]];
}

/** A place of the sheet from its x and y in a frame. */
export function framePoint({ origin, along, across }: SetOutFrame, [x, y]: Point): Point {
  return [origin[0] + x * along[0] + y * across[0], origin[1] + x * along[1] + y * across[1]];
}

/** Of two base points, else of the building's grid; null where the plan has neither. */
export function floorFrame({ file, plan, analysis }: PaperSource): SetOutFrame | null {
  const { basePoints, gridLines } = papersOf(file);
  const middle = floorMiddle(analysis.bays);
  return baseFrame(basePoints, middle) ?? gridFrame(gridLines, { middle, corners: floorCorners(plan) });
}

function floorCorners({ rooms }: PaperSource['plan']): readonly Point[] {
  return rooms.flatMap(({ outline }) => outline);
}

/** The middle of all bays together. */
function floorMiddle(bays: PaperSource['analysis']['bays']): Point {
  let [sum, x, y] = [0, 0, 0];
  for (const bay of bays) {
    const area = regionArea(bay);
    const [cx, cy] = regionCentroid(bay);
    [sum, x, y] = [sum + area, x + cx * area, y + cy * area];
  }
  return sum === 0 ? [0, 0] : [x / sum, y / sum];
}

/** The two base points that a line is laid through: the first, and the next that lies elsewhere; null where there are none. */
export function basePair(points: readonly NamedPoint[]): readonly [NamedPoint, NamedPoint] | null {
  const [first] = points;
  const second = points.find(({ at }) => first !== undefined && pointDistance(first.at, at) > WELD_MM);
  return first === undefined || second === undefined ? null : [first, second];
}

/** x from the first base point to the next, y square to it on the side that more of the floor lies on. */
function baseFrame(points: Papers['basePoints'], floor: Point): SetOutFrame | null {
  const pair = basePair(points);
  if (pair === null) return null;
  const [first, second] = pair;
  const along = pointDirection(first.at, second.at);
  const across = squareTowards(along, first.at, floor);
  const isRight = along[0] * across[1] - along[1] * across[0] > 0;
  const [one, two] = [pointName(first), pointName(second)];
  return {
    by: 'base-points',
    room: null,
    origin: first.at,
    along,
    across,
    from: `Base point ${one}`,
    fromInFull: `Base point ${nameInFull(first.name)}`,
    ways: `x along the line from ${one} to ${two}, y square to it to the ${isRight ? 'right' : 'left'}, seen from ${one}`,
  };
}

interface GridFloor {
  readonly middle: Point;
  readonly corners: readonly Point[];
}

/** From where two grid lines cross that are square to each other, x along the one that lies more level on the sheet; from the end of one where no two do. */
function gridFrame(lines: readonly GridLine[], floor: GridFloor): SetOutFrame | null {
  const [base, other] = baseLines(lines);
  if (base === undefined) return null;
  const way = pointDirection(base.from, base.to);
  const along = ([x, y]: Point) => (x - base.from[0]) * way[0] + (y - base.from[1]) * way[1];
  const offMm = other === undefined ? 0 : along(other.from);
  const origin: Point = [base.from[0] + offMm * way[0], base.from[1] + offMm * way[1]];
  const name = gridName(base);
  const from = (nameOf: (line: GridLine) => string) =>
    other === undefined
      ? `Grid line ${nameOf(base)}, its ${sideOf([-way[0], -way[1]])} end`
      : `Grid lines ${nameOf(base)} and ${nameOf(other)}`;
  const x = other === undefined ? lineWay(way, origin, floor.middle) : floorWay(way, origin, floor);
  const across = floorWay([-way[1], way[0]], origin, floor);
  return {
    by: 'grid-lines',
    room: null,
    origin,
    along: x,
    across,
    from: from(gridName),
    fromInFull: from((line) => nameInFull(line.name)),
    ways: `x along ${name}${other === undefined ? '' : ` from ${gridName(other)}`} ${wayText(x)}, y square to it ${wayText(across)} on the plan`,
  };
}

/** Of a line's two ways the one towards the floor; where the floor lies on both sides of the origin, to the right or downwards as the sheet is read. */
function floorWay([ux, uy]: Point, [ox, oy]: Point, { middle, corners }: GridFloor): Point {
  const figure = ([x, y]: Point) => (x - ox) * ux + (y - oy) * uy;
  const isAhead = corners.some((corner) => figure(corner) > EQUAL_LENGTH_MM);
  const isBehind = corners.some((corner) => figure(corner) < -EQUAL_LENGTH_MM);
  const isKept = isAhead && isBehind ? (Math.abs(ux) >= Math.abs(uy) ? ux : uy) > 0 : figure(middle) >= 0;
  return isKept ? [ux, uy] : [-ux, -uy];
}

/** Along a line of its own, unless the middle of the floor lies before its beginning. */
function lineWay([ux, uy]: Point, [ox, oy]: Point, [x, y]: Point): Point {
  return (x - ox) * ux + (y - oy) * uy < 0 ? [-ux, -uy] : [ux, uy];
}

/** As it is seen on the drawing. Example: [0, 1] -> "downwards" */
function wayText(way: Point): string {
  const side = sideOf(way);
  return side === 'upper' ? 'upwards' : side === 'lower' ? 'downwards' : `to the ${side}`;
}

/** The line that x runs along, and the one that it begins at. */
function baseLines(lines: readonly GridLine[]): readonly GridLine[] {
  const usable = gridLinesUsable(lines);
  const [first] = usable;
  if (first === undefined) return [];
  const crossing = usable.find((line) => isSquare(first, line));
  if (crossing === undefined) return [first];
  const isLevel = ({ from, to }: GridLine) => Math.abs(to[0] - from[0]) >= Math.abs(to[1] - from[1]);
  return isLevel(first) ? [first, crossing] : [crossing, first];
}

/** Grid lines that joints are set out from; none where base points go before them. */
export function frameLines({ file }: Pick<PaperSource, 'file'>): ReadonlySet<GridLine> {
  const { basePoints, gridLines } = papersOf(file);
  return new Set(basePair(basePoints) === null ? baseLines(gridLines) : []);
}

/** Lines askew to the one that joints are set out from, where none is square to it: they are drawn and do not serve. */
export function linesAskew(
  source: Pick<PaperSource, 'file'>,
): { readonly base: GridLine; readonly askew: readonly GridLine[] } | null {
  const [base, ...others] = [...frameLines(source)];
  if (base === undefined || others.length > 0) return null;
  const way = pointDirection(base.from, base.to);
  const askew = gridLinesUsable(papersOf(source.file).gridLines).filter(({ from, to }) => {
    const [ux, uy] = pointDirection(from, to);
    return Math.abs(way[0] * uy - way[1] * ux) * pointDistance(from, to) > EQUAL_LENGTH_MM;
  });
  return askew.length === 0 ? null : { base, askew };
}

/** Those that have a length. */
export function gridLinesUsable(lines: readonly GridLine[]): readonly GridLine[] {
  return lines.filter(({ from, to }) => pointDistance(from, to) > WELD_MM);
}

function isSquare(line: GridLine, { from, to }: GridLine): boolean {
  const [ux, uy] = pointDirection(line.from, line.to);
  return Math.abs((to[0] - from[0]) * ux + (to[1] - from[1]) * uy) <= EQUAL_LENGTH_MM;
}

function squareTowards([ux, uy]: Point, from: Point, to: Point): Point {
  const isRight = (to[1] - from[1]) * ux - (to[0] - from[0]) * uy >= 0;
  return isRight ? [-uy, ux] : [uy, -ux];
}

/** Widest name of a point, line or room in a text, mm on paper. */
const widestNameMm = 64;
/** No name in use is wider than this, mm: what is goes on without end and would fill a list. */
const endlessNameMm = 300;

function nameInFull(name: string): string {
  return textCutWithin(oneLine(name), 'sheet-text', endlessNameMm);
}

export function pointName({ name }: Pick<NamedPoint, 'name'>): string {
  return textBefore(textCutWithin(oneLine(name), 'sheet-text', widestNameMm));
}

/** Of a room, as short as that of a point. */
export function roomName(source: PaperSource, id: string): string {
  return textBefore(textCutWithin(namesFor(source).room(id), 'sheet-text', widestNameMm));
}

const namesFor = perSource(({ plan, analysis }: PaperSource) => namesOf(plan, analysis));

export function gridName({ name }: GridLine): string {
  return textBefore(textCutWithin(oneLine(name), 'sheet-text', widestNameMm));
}

/** Of every room with a straight wall: along the one that most of its joints follow, or the longest of those, from a corner of it. Dimensions are from
 *  the face that the plan names: that of the edge strip stands in front of the wall. */
export const roomFrames = perSource(({ file, plan, analysis }: PaperSource): ReadonlyMap<string, SetOutFrame> => {
  const names = namesOf(plan, analysis);
  const stripMm = papersOf(file).face === 'strip' ? plan.edgeStrip.thicknessMm : 0;
  const byRoom = new Map<string, Face[]>();
  for (const face of wallFaces(analysis)) {
    const own = byRoom.get(face.room) ?? [];
    byRoom.set(face.room, own);
    own.push(face);
  }
  const jointsIn = roomJoints(analysis);
  const outlines = new Map(plan.rooms.map(({ id, outline, holes }) => [id, [outline, ...holes]]));
  const frames = new Map<string, SetOutFrame>();
  for (const [room, faces] of byRoom) {
    const base = baseWall(faces, jointsIn.get(room) ?? []);
    if (base !== null)
      frames.set(room, wallFrame({ base, faces, outlines: outlines.get(room) ?? [], name: names.room(room), stripMm }));
  }
  return frames;
});

/** The joints of the bays of each room. */
function roomJoints({ bays, joints }: PaperSource['analysis']): ReadonlyMap<string, readonly Joint[]> {
  const roomsOf = new Map(bays.map(({ id, rooms }) => [id, rooms]));
  const found = new Map<string, Joint[]>();
  for (const joint of joints) {
    for (const room of new Set(joint.bays.flatMap((id) => roomsOf.get(id) ?? []))) {
      const own = found.get(room);
      if (own === undefined) found.set(room, [joint]);
      else own.push(joint);
    }
  }
  return found;
}

/** The wall that one figure is enough for most joints from; walls that are as good as each other differ by rounding, and the first one is taken. */
function baseWall(faces: readonly Face[], joints: readonly Joint[]): Face | null {
  const [best] = faces
    .filter(({ isCurve }) => !isCurve)
    .map((face) => ({
      face,
      jointMm: Math.round(followedMm(face, joints)),
      mm: Math.round(pointDistance(...face.line)),
    }))
    .sort((a, b) => b.jointMm - a.jointMm || b.mm - a.mm);
  return best?.face ?? null;
}

/** Length of the joints that run along a wall or square to it. */
function followedMm({ line, into: [ix, iy] }: Face, joints: readonly Joint[]): number {
  const [ux, uy] = pointDirection(...line);
  let sum = 0;
  for (const { line: course } of joints) {
    const [a, b] = [course[0], course[course.length - 1]];
    if (a === undefined || b === undefined || course.length > 2) continue;
    const off = Math.min(
      Math.abs((b[0] - a[0]) * ux + (b[1] - a[1]) * uy),
      Math.abs((b[0] - a[0]) * ix + (b[1] - a[1]) * iy),
    );
    if (off <= 2 * STRAIGHT_MM) sum += pointDistance(a, b);
  }
  return sum;
}

interface FrameWall {
  readonly base: Face;
  /** All of its room. */
  readonly faces: readonly Face[];
  readonly outlines: readonly Ring[];
  readonly name: string;
  readonly stripMm: number;
}

function wallFrame({ base, faces, outlines, name, stripMm }: FrameWall): SetOutFrame {
  const { room, line, into } = base;
  const ends = [line, [line[1], line[0]] as const].map(([start, end]) => ({
    start,
    along: pointDirection(start, end),
  }));
  // where the sheet begins to be read, unless only the other end is a corner to hold a tape into
  ends.sort((a, b) => Math.round(a.start[0] - b.start[0]) || a.start[1] - b.start[1]);
  const corner = ends.find(({ start, along }) => faces.some((face) => isWallAt(face, start, along)));
  const { start, along } = corner ?? (ends[0] as (typeof ends)[number]);
  const endMm = corner === undefined ? 0 : stripMm;
  const wall = `${faceSide(base)} wall`;
  const end = corner === undefined && isJamb(outlines, start) ? 'jamb' : 'end';
  const from = `${wall} from its ${sideOf([-along[0], -along[1]])} ${end}`;
  return {
    by: 'walls',
    room,
    origin: [start[0] + endMm * along[0] + stripMm * into[0], start[1] + endMm * along[1] + stripMm * into[1]],
    along,
    across: into,
    from: `${textCutWithin(name, 'sheet-text', widestNameMm)}, ${from}`,
    fromInFull: `${nameInFull(name)}, ${from}`,
    ways: `x along the ${wall}, y square to it`,
  };
}

/** Whether a wall stands at the end of another and looks along it. */
function isWallAt({ line, into }: Face, end: Point, [ux, uy]: Point): boolean {
  return segmentDistance(...line, end) <= WELD_MM && into[0] * ux + into[1] * uy > Math.SQRT1_2;
}

/** Whether a wall ends at an opening: the outline of the room runs on in its line. */
function isJamb(outlines: readonly Ring[], end: Point): boolean {
  return outlines.some((ring) =>
    ring.some((a, i) => {
      const b = ring[(i + 1) % ring.length] as Point;
      const isInside = Math.min(pointDistance(a, end), pointDistance(b, end)) > jambMm;
      return isInside && segmentDistance(a, b, end) <= WELD_MM;
    }),
  );
}

/** An opening is wider than this, mm: less is how corners of the plan and of the floor differ. */
const jambMm = 100;
