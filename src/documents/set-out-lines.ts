import { lineWithin } from '../geometry/line-clip.ts';
import { type Point, pointBetween, pointDirection, pointDistance } from '../geometry/point.ts';
import { regionArea, regionContains } from '../geometry/region.ts';
import { boxMiddle, boxOf, type Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Analysis, TileFieldReport } from '../plan/analysis.ts';
import type { Plan, Room } from '../plan/plan.ts';
import { gridFrame } from '../plan/tile-grid.ts';
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

/** Three sides of a triangle that is square if they are as 3 : 4 : 5. */
export interface SquareCheck {
  readonly onFirst: Point;
  readonly onSecond: Point;
  readonly firstMm: number;
  readonly secondMm: number;
  readonly acrossMm: number;
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
  const lineAlong = (way: Point) => referenceLine(room, own, corner, way);
  const lines = [lineAlong(ways[0]), lineAlong(ways[1])] as const;
  return { room, corner, lines, check: squareCheck(own, corner, ways, lines) };
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

/** From wall to wall, over open floor between rooms as well; where no wall ends it, as far as its room goes. */
function referenceLine(room: Room, faces: readonly Face[], corner: Point, [ux, uy]: Point): ReferenceLine {
  const stretches = lineWithin(corner, [ux, uy], [room.outline, ...room.holes]);
  const off = ([from, to]: readonly [number, number]) => Math.max(0, from, -to);
  const [[from, to] = [0, 0]] = [...stretches].sort((a, b) => off(a) - off(b));
  const [before, beyond] = [faceMet(faces, corner, [-ux, -uy]), faceMet(faces, corner, [ux, uy])];
  const at = (mm: number): Point => [corner[0] + ux * mm, corner[1] + uy * mm];
  const line = [at(before === null ? from : -before.distanceMm), at(beyond?.distanceMm ?? to)] as const;
  const fromWall = wallMeasures(line, [ux, uy], faces);
  const fromCorner = fromWall.length > 0 ? [] : line.map((end) => cornerMeasure(end, faces));
  return { line, fromWall, fromCorner: fromCorner.filter((measure) => measure !== null) };
}

/** Less in common with a line than this, mm, and a wall is none to measure from. */
const leastCommonMm = 500;
/** Distances are taken so far from the ends, as a share of what wall and line have in common: at the ends other walls are in the way. */
const endShare = 0.08;

/** From the wall that accompanies the line the longest. */
function wallMeasures(line: readonly [Point, Point], way: Point, faces: readonly Face[]): readonly WallMeasure[] {
  const along = ([x, y]: Point) => (x - line[0][0]) * way[0] + (y - line[0][1]) * way[1];
  const length = pointDistance(...line);
  let best: { readonly face: Face; readonly from: number; readonly to: number; readonly away: number } | null = null;
  for (const face of faces) {
    const away = faceDistance(face, pointBetween(...line, 0.5));
    if (!faceIsAlong(face, way) || away <= 0) continue;
    const ends = face.line.map(along);
    const [from, to] = [Math.max(0, Math.min(...ends)), Math.min(length, Math.max(...ends))];
    if (to - from < leastCommonMm) continue;
    // walls that go along equally far differ by rounding: the nearer one is taken
    const longer = best === null ? 1 : Math.round(to - from) - Math.round(best.to - best.from);
    if (best === null || longer > 0 || (longer === 0 && away < best.away)) best = { face, from, to, away };
  }
  if (best === null) return [];
  const { face, from, to } = best;
  return [endShare, 1 - endShare].map((share) => {
    const onLine = pointBetween(...line, (from + share * (to - from)) / length);
    const distanceMm = faceDistance(face, onLine);
    const onWall: Point = [onLine[0] - face.into[0] * distanceMm, onLine[1] - face.into[1] * distanceMm];
    return { face, onWall, onLine, distanceMm };
  });
}

/** Along the wall that the line meets, from its nearer corner. */
function cornerMeasure(end: Point, faces: readonly Face[]): CornerMeasure | null {
  const [met] = [...faces].sort((a, b) => lineDistance(a, end) - lineDistance(b, end));
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

/** A third of the shorter leg, mm: 3 x 4 x 5 m is 1000. The longest that fits is the sharpest check, and no longer than a tape. */
const checkUnitsMm = [2000, 1500, 1200, 1000, 800, 600, 500, 400, 300, 200, 150, 100];

function squareCheck(
  faces: readonly Face[],
  corner: Point,
  ways: readonly [Point, Point],
  lines: readonly [ReferenceLine, ReferenceLine],
): SquareCheck | null {
  for (const unit of checkUnitsMm) {
    for (const legs of [
      [4, 3],
      [3, 4],
    ] as const) {
      const arms = ways.map((way, i) => armEnds(corner, way, lines[i]?.line ?? [], legs[i as 0 | 1] * unit));
      for (const onFirst of arms[0] ?? []) {
        for (const onSecond of arms[1] ?? []) {
          if (!isOpen(faces, onFirst, onSecond)) continue;
          return { onFirst, onSecond, firstMm: legs[0] * unit, secondMm: legs[1] * unit, acrossMm: 5 * unit };
        }
      }
    }
  }
  return null;
}

/** Places on a line so far from the corner, both ways, where it reaches so far. */
function armEnds(corner: Point, way: Point, line: readonly Point[], mm: number): readonly Point[] {
  return [1, -1].flatMap((sign): Point[] => {
    const reach = Math.max(0, ...line.map(([x, y]) => sign * ((x - corner[0]) * way[0] + (y - corner[1]) * way[1])));
    return reach >= mm ? [[corner[0] + sign * way[0] * mm, corner[1] + sign * way[1] * mm]] : [];
  });
}

/** Whether no wall stands between two places on the floor. */
function isOpen(faces: readonly Face[], a: Point, b: Point): boolean {
  return (faceMet(faces, a, pointDirection(a, b))?.distanceMm ?? Infinity) >= pointDistance(a, b);
}
