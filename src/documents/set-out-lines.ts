import { lineWithin } from '../geometry/line-clip.ts';
import { type Point, pointBetween, pointDistance } from '../geometry/point.ts';
import { regionArea, regionContains } from '../geometry/region.ts';
import { boxMiddle, boxOf, type Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Analysis, TileFieldReport } from '../plan/analysis.ts';
import type { Plan, Room } from '../plan/plan.ts';
import { gridFrame } from '../plan/tile-grid.ts';
import { type SquareCheck, squareCheck } from './set-out-check.ts';
import { type Things, thingsOf } from './set-out-things.ts';
import { type Face, faceDistance, faceIsAlong, faceMet, type Side, sideOf } from './set-out-walls.ts';

/** Two lines square to each other through a corner of the first whole tile, and what they are set out and checked by. */
export interface SetOutLines {
  readonly room: Room;
  /** Where they cross: the corner of the first whole tile. */
  readonly corner: Point;
  /** Along the courses, then across them. */
  readonly lines: readonly [ReferenceLine, ReferenceLine];
  readonly check: SquareCheck | null;
}

export interface ReferenceLine {
  /** From wall to wall of the room. */
  readonly line: readonly [Point, Point];
  /** From a wall that runs its way, measured square to that wall, near both ends of what they have in common. */
  readonly fromWall: readonly WallMeasure[];
  /** Where no wall runs its way: from a corner of the room along the wall to where the line meets it, at both ends. */
  readonly fromCorner: readonly CornerMeasure[];
}

export interface WallMeasure {
  readonly face: Face;
  readonly onWall: Point;
  readonly onLine: Point;
  readonly distanceMm: number;
}

export interface CornerMeasure {
  readonly corner: Point;
  /** Which corner of the room, as the sheet is read. */
  readonly side: Side;
  readonly onLine: Point;
  /** The wall between them, its room on the right. */
  readonly alongWall: Face['line'];
  readonly into: Point;
  readonly distanceMm: number;
}

/** Null where no tile of the field is whole. */
export function setOutLines(
  plan: Plan,
  field: TileFieldReport,
  faces: readonly Face[],
  { joints, bays }: Pick<Analysis, 'joints' | 'bays'>,
): SetOutLines | null {
  if (field.firstTile === null) return null;
  const room = roomOf(plan, field, field.firstTile);
  const { toSheet } = gridFrame({ origin: [0, 0], angleDeg: field.angleDeg });
  const ways = [toSheet([1, 0]), toSheet([0, 1])] as const;
  const onJoints = (at: Point) => joints.filter(({ line }) => ways.some((way) => isOnLine(line, at, way))).length;
  const [corner] = [...field.firstTile].sort((a, b) => onJoints(a) - onJoints(b));
  if (corner === undefined || room === undefined) return null;
  const open = new Set(bays.flatMap((bay) => (bay.rooms.includes(room.id) ? bay.rooms : [room.id])));
  const own = faces.filter((face) => open.has(face.room));
  const things = thingsOf(plan);
  const lineAlong = (way: Point) => referenceLine(lineAcross(room, own, corner, way), way, own, things);
  const lines = [lineAlong(ways[0]), lineAlong(ways[1])] as const;
  const check = squareCheck({ corner, ways, lines: [lines[0].line, lines[1].line] }, own, things);
  return { room, corner, lines, check };
}

/** A joint nearer to a line than this all along, mm, would be drawn under it: another corner of the tile is taken if one has none. */
const nearJointMm = 100;

function isOnLine(line: readonly Point[], at: Point, [ux, uy]: Point): boolean {
  return line.every(([x, y]) => Math.abs((x - at[0]) * uy - (y - at[1]) * ux) < nearJointMm);
}

/** The room that the first whole tile lies in; the largest of the field where it lies between two. */
function roomOf(plan: Plan, field: TileFieldReport, tile: Ring): Room | undefined {
  const middle = pointBetween(tile[0] as Point, tile[2] ?? (tile[0] as Point), 0.5);
  const own = plan.rooms.filter(({ id }) => field.rooms.includes(id));
  return own.find((room) => regionContains(room, middle)) ?? [...own].sort((a, b) => regionArea(b) - regionArea(a))[0];
}

/** From wall to wall through a place, over open floor between rooms as well; where no wall ends it, as far as its room goes. */
export function lineAcross(
  room: Room,
  faces: readonly Face[],
  corner: Point,
  [ux, uy]: Point,
): readonly [Point, Point] {
  const stretches = lineWithin(corner, [ux, uy], [room.outline, ...room.holes]);
  const off = ([from, to]: readonly [number, number]) => Math.max(0, from, -to);
  const [[from, to] = [0, 0]] = [...stretches].sort((a, b) => off(a) - off(b));
  const [before, beyond] = [faceMet(faces, corner, [-ux, -uy]), faceMet(faces, corner, [ux, uy])];
  const at = (mm: number): Point => [corner[0] + ux * mm, corner[1] + uy * mm];
  return [at(before === null ? from : -before.distanceMm), at(beyond?.distanceMm ?? to)];
}

function referenceLine(
  line: readonly [Point, Point],
  way: Point,
  faces: readonly Face[],
  things: Things,
): ReferenceLine {
  const fromWall = wallMeasures(line, way, faces, things);
  const fromCorner = fromWall.length > 0 ? [] : line.map((end) => cornerMeasure(end, faces));
  return { line, fromWall, fromCorner: fromCorner.filter((measure) => measure !== null) };
}

/** Less in common with a line than this, mm, and a wall is none to measure from. */
const leastCommonMm = 500;
/** Distances are taken so far from the ends, as a share of what wall and line have in common: at the ends other walls are in the way. */
const endShare = 0.08;
/** ... and where something stands in the way there, at the first of so many places on the way to the middle where nothing does. */
const clearTries = 20;

/** From the wall that accompanies the line the longest. */
function wallMeasures(
  line: readonly [Point, Point],
  way: Point,
  faces: readonly Face[],
  things: Things,
): readonly WallMeasure[] {
  const along = ([x, y]: Point) => (x - line[0][0]) * way[0] + (y - line[0][1]) * way[1];
  const length = pointDistance(...line);
  let best: { readonly face: Face; readonly from: number; readonly to: number; readonly away: number } | null = null;
  for (const face of faces) {
    const away = faceDistance(face, pointBetween(...line, 0.5));
    if (face.isCurve || !faceIsAlong(face, way) || away <= 0) continue;
    const ends = face.line.map(along);
    const [from, to] = [Math.max(0, Math.min(...ends)), Math.min(length, Math.max(...ends))];
    if (to - from < leastCommonMm) continue;
    // walls that go along equally far differ by rounding: the nearer one is taken
    const longer = best === null ? 1 : Math.round(to - from) - Math.round(best.to - best.from);
    if (best === null || longer > 0 || (longer === 0 && away < best.away)) best = { face, from, to, away };
  }
  if (best === null) return [];
  const { face, from, to } = best;
  const measureAt = (share: number): WallMeasure => {
    const onLine = pointBetween(...line, (from + share * (to - from)) / length);
    const distanceMm = faceDistance(face, onLine);
    const onWall: Point = [onLine[0] - face.into[0] * distanceMm, onLine[1] - face.into[1] * distanceMm];
    return { face, onWall, onLine, distanceMm };
  };
  return [endShare, 1 - endShare].map((end) => {
    const tries = Array.from({ length: clearTries }, (_, k) => measureAt(end + ((0.5 - end) * k) / clearTries));
    return tries.find(({ onWall, onLine }) => !things.between(onWall, onLine)) ?? measureAt(end);
  });
}

/** Along the wall that the line meets, from its nearer corner. */
function cornerMeasure(end: Point, faces: readonly Face[]): CornerMeasure | null {
  const [met] = faces.filter(({ isCurve }) => !isCurve).sort((a, b) => lineDistance(a, end) - lineDistance(b, end));
  if (met === undefined || lineDistance(met, end) > WELD_MM) return null;
  const [corner = end] = [...met.line].sort((a, b) => pointDistance(a, end) - pointDistance(b, end));
  const middle = boxMiddle(boxOf(faces.flatMap(({ line }) => line)));
  const side = sideOf([corner[0] - middle[0], corner[1] - middle[1]]);
  const [first, last] = met.line;
  const runsOn = pointDistance(first, corner) < pointDistance(last, corner);
  const alongWall = runsOn ? ([corner, end] as const) : ([end, corner] as const);
  return { corner, side, onLine: end, alongWall, into: met.into, distanceMm: pointDistance(corner, end) };
}

function lineDistance({ line: [a, b] }: Face, p: Point): number {
  return segmentDistance(a, b, p);
}
