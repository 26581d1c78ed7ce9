import { type Point, pointBetween, pointDirection, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { type Box, boxOf } from '../geometry/ring.ts';
import { rayMeets } from '../geometry/segment.ts';
import { DIRECTION_DEG, WELD_MM } from '../geometry/tolerance.ts';
import type { Analysis } from '../plan/analysis.ts';
import { perSource } from './paper-source.ts';

/** Faces of finished walls: what a tape is held against. */
export interface Face {
  readonly room: string;
  /** From end to end; doorways in it and joints that meet it do not end it. */
  readonly line: readonly [Point, Point];
  /** Unit vector from the wall into the room. */
  readonly into: Point;
  /** Whether it is one side of a curve: it stands in the way, but nobody finds it by itself to measure along it or from its ends. */
  readonly isCurve: boolean;
}

/** A wall shorter than this is a nib or a jamb: nothing is measured from it, mm. */
const shortestMm = 300;
/** A wall goes on beyond a gap no wider than a doorway, mm; further off it is another one: piers in a row are no wall. */
const widestGapMm = 2500;
/** So far inside a wall its bay is looked for, mm. */
const besideMm = 5;

export const wallFaces = perSource(facesMade);

function facesMade({ edges, bays }: Pick<Analysis, 'edges' | 'bays'>): readonly Face[] {
  const floors = new Map(bays.map((bay) => [bay.id, { outline: bay.outline, holes: bay.holes }]));
  const faces = edges.flatMap(({ along, room, bay, line }) =>
    line.slice(1).flatMap((b, i): Face[] => {
      const a = line[i] as Point;
      const floor = floors.get(bay);
      if (along !== 'wall' || floor === undefined || pointDistance(a, b) < WELD_MM) return [];
      const [ux, uy] = pointDirection(a, b);
      const [x, y] = pointBetween(a, b, 0.5);
      const right: Point = [-uy, ux];
      const isRight = regionContains(floor, [x + right[0] * besideMm, y + right[1] * besideMm]);
      // the floor on the right of every face, so that those of one wall run the same way
      const face = isRight ? ([a, b] as const) : ([b, a] as const);
      return [{ room, line: face, into: isRight ? right : [uy, -ux], isCurve: isOfCurve(line, i) }];
    }),
  );
  const byRoom = new Map<string, Face[]>();
  for (const face of faces) byRoom.set(face.room, [...(byRoom.get(face.room) ?? []), face]);
  return [...byRoom.values()]
    .flatMap(facesJoined)
    .filter(({ line, isCurve }) => isCurve || pointDistance(...line) >= shortestMm);
}

/** Sides of a curve are shorter than this, mm, and turn by an angle between these from one to the next, degrees. */
const curveSideMm = 1000;
const curveTurnsDeg = [DIRECTION_DEG, 30] as const;

/** Whether the side of a line from its point i on is one of the sides of a curve. */
function isOfCurve(line: readonly Point[], i: number): boolean {
  const closes = pointDistance(line[0] as Point, line[line.length - 1] as Point) < WELD_MM;
  const count = line.length - 1;
  const side = (k: number) => {
    const at = closes ? (k + count) % count : k;
    const [a, b] = [line[at], line[at + 1]];
    return a === undefined || b === undefined || pointDistance(a, b) > curveSideMm ? null : pointDirection(a, b);
  };
  const own = side(i);
  if (own === null) return false;
  return [side(i - 1), side(i + 1)].some((next) => {
    if (next === null) return false;
    const turnDeg =
      Math.abs(Math.atan2(own[0] * next[1] - own[1] * next[0], own[0] * next[0] + own[1] * next[1]) * 180) / Math.PI;
    return turnDeg > curveTurnsDeg[0] && turnDeg <= curveTurnsDeg[1];
  });
}

/** Faces of one room that lie in one line are one wall. */
function facesJoined(faces: readonly Face[]): readonly Face[] {
  const joined: Face[] = [];
  for (const face of faces) {
    const at = joined.findIndex((other) => facesAgree(other, face));
    const other = joined[at];
    if (other === undefined) joined.push(face);
    else joined[at] = { ...other, line: lineRound(other, face) };
  }
  // what was joined late may now reach what came early
  return joined.length === faces.length ? joined : facesJoined(joined);
}

function facesAgree(a: Face, b: Face): boolean {
  if (a.isCurve || b.isCurve || a.into[0] * b.into[0] + a.into[1] * b.into[1] <= 0) return false;
  const [long, short] = pointDistance(...a.line) >= pointDistance(...b.line) ? [a, b] : [b, a];
  const gapMm = Math.min(...a.line.flatMap((p) => b.line.map((q) => pointDistance(p, q))));
  return gapMm <= widestGapMm && short.line.every((end) => Math.abs(faceDistance(long, end)) <= WELD_MM);
}

function lineRound({ line: [a, b] }: Face, { line }: Face): readonly [Point, Point] {
  const [ux, uy] = pointDirection(a, b);
  const ends = [a, b, ...line].sort((p, q) => (p[0] - q[0]) * ux + (p[1] - q[1]) * uy);
  return [ends[0] as Point, ends[ends.length - 1] as Point];
}

/** How far a place stands in front of a wall, or of the line that it lies in, square to it, mm. */
export function faceDistance({ line: [[x, y]], into }: Face, place: Point): number {
  return (place[0] - x) * into[0] + (place[1] - y) * into[1];
}

/** Whether a wall runs the same way, within what walls are out of square. */
export function faceIsAlong({ line: [a, b] }: Face, [wx, wy]: Point): boolean {
  const [ux, uy] = pointDirection(a, b);
  return Math.abs(ux * wy - uy * wx) <= Math.sin((DIRECTION_DEG * Math.PI) / 180);
}

/** Faces by rooms with what they reach: of a thousand rooms a ray looks only at those that it passes. */
export type FaceRooms = readonly { readonly box: Box; readonly faces: readonly Face[] }[];

export function faceRooms(faces: readonly Face[]): FaceRooms {
  const byRoom = new Map<string, Face[]>();
  for (const face of faces) {
    const own = byRoom.get(face.room);
    if (own === undefined) byRoom.set(face.room, [face]);
    else own.push(face);
  }
  return [...byRoom.values()].map((own) => ({ box: boxOf(own.flatMap(({ line }) => line)), faces: own }));
}

/** Faces of the rooms that a ray passes, or passes by no further than `besideMm`. */
export function facesAlong(rooms: FaceRooms, from: Point, way: Point, besideMm: number): readonly Face[] {
  const found: Face[] = [];
  for (const { box, faces } of rooms) if (boxIsPassed(box, from, way, besideMm)) found.push(...faces);
  return found;
}

function boxIsPassed({ minX, minY, maxX, maxY }: Box, [x, y]: Point, [dx, dy]: Point, besideMm: number): boolean {
  // from its middle the box reaches so far square to the ray and along it
  const [toX, toY] = [(minX + maxX) / 2 - x, (minY + maxY) / 2 - y];
  const [halfX, halfY] = [(maxX - minX) / 2, (maxY - minY) / 2];
  const aside = Math.abs(toX * dy - toY * dx);
  const ahead = toX * dx + toY * dy + Math.abs(dx) * halfX + Math.abs(dy) * halfY;
  return ahead >= -besideMm && aside <= Math.abs(dy) * halfX + Math.abs(dx) * halfY + besideMm;
}

export interface FaceMet {
  readonly face: Face;
  readonly distanceMm: number;
}

/** The first wall that is met from a place one way; a wall is met in its doorways as well, where a straightedge is laid across. */
export function faceMet(faces: readonly Face[], from: Point, way: Point): FaceMet | null {
  let first: FaceMet | null = null;
  for (const face of faces) {
    if (face.into[0] * way[0] + face.into[1] * way[1] >= 0) continue;
    const distanceMm = rayMeets(from, way, ...face.line);
    if (distanceMm === null || distanceMm < WELD_MM) continue;
    if (first === null || distanceMm < first.distanceMm) first = { face, distanceMm };
  }
  return first;
}

const sides = ['right', 'lower right', 'lower', 'lower left', 'left', 'upper left', 'upper', 'upper right'] as const;
export type Side = (typeof sides)[number];

/** What lies that way as the sheet is read. Example: [0, -1] -> "upper" */
export function sideOf([dx, dy]: Point): Side {
  const eighth = Math.round((Math.atan2(dy, dx) * 4) / Math.PI);
  return sides[(eighth + 8) % 8] as Side;
}

/** On which side of its room a wall stands. */
export function faceSide({ into: [x, y] }: Face): Side {
  return sideOf([-x, -y]);
}
