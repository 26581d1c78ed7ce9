import { type Point, pointBetween, pointDistance, vectorLength } from '../geometry/point.ts';
import type { Box, Ring } from '../geometry/ring.ts';
import { segmentWithin } from '../geometry/segment-box.ts';

/** A turned box, mm on paper; angle clockwise on the sheet. */
export interface TurnedBox {
  readonly centre: Point;
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly angleDeg: number;
}

/** How little may run over it: text keeps clear of all, leaders of what ranks as high as is asked. */
export const blockRanks = { line: 0, joint: 1, mark: 2, leader: 3, text: 4 } as const;
export type BlockRank = (typeof blockRanks)[keyof typeof blockRanks];

/** What stands on the sheet already and text keeps clear of. */
export interface Blocks {
  addBox(box: TurnedBox, rank: BlockRank): void;
  /** @param halfMm half the width of the line */
  addLine(points: readonly Point[], halfMm: number, rank: BlockRank): void;
  meets(box: TurnedBox): boolean;
  /** The highest rank of what a line meets; null where it is clear of all. @param halfMm half its width */
  rankMet(from: Point, to: Point, halfMm: number): BlockRank | null;
  /** The same of a level box: thousands are tried for one label. */
  meetsLevel(x: number, y: number, halfWidth: number, halfHeight: number): boolean;
  /** Whether no side of the ring (mm on the plan) runs through the box. */
  clearOf(box: TurnedBox, ring: Ring, paperPerPlan: number): boolean;
}

/** Side of the squares by which blocks are looked up, mm on paper: a few lines of text. */
const cellMm = 12;
/** Cells are numbered row by row; no sheet has this many across. */
const cellsAcross = 2 ** 24;

/** An axis frame: centre, unit vectors along both sides, half lengths. Lines are boxes too, as wide as the pen. */
interface Frame {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
  readonly halfU: number;
  readonly halfV: number;
  /** Half sides of the upright box round it. */
  readonly reachX: number;
  readonly reachY: number;
  readonly rank: BlockRank;
}

/** @param within only what reaches into it is kept, mm on paper: long walls of a floor seen from near are not cut into
 *  pieces far out of view */
export function blocksOf(within?: Box): Blocks {
  const cells = new Map<number, Frame[]>();
  const add = (frame: Frame) => {
    for (const key of cellKeys(frame)) {
      const there = cells.get(key);
      if (there === undefined) cells.set(key, [frame]);
      else there.push(frame);
    }
  };
  const someNear = (x: number, y: number, reachX: number, reachY: number, is: (frame: Frame) => boolean) => {
    const toColumn = Math.floor((x + reachX) / cellMm);
    const toRow = Math.floor((y + reachY) / cellMm);
    for (let i = Math.floor((x - reachX) / cellMm); i <= toColumn; i++) {
      for (let j = Math.floor((y - reachY) / cellMm); j <= toRow; j++) {
        if (cells.get(j * cellsAcross + i)?.some(is)) return true;
      }
    }
    return false;
  };
  return {
    addBox: (box, rank) => add(boxFrame(box, rank)),
    addLine(points, halfMm, rank) {
      for (let i = 1; i < points.length; i++) {
        const side = [points[i - 1] as Point, points[i] as Point] as const;
        const seen = within === undefined ? side : segmentWithin(...side, within);
        if (seen !== null) for (const frame of lineFrames(...seen, halfMm, rank)) add(frame);
      }
    },
    meets(box) {
      const frame = boxFrame(box);
      const { x, y, reachX, reachY } = frame;
      return someNear(x, y, reachX, reachY, (other) => framesMeet(frame, other));
    },
    rankMet(from, to, halfMm) {
      const frame = lineFrame(from, to, halfMm);
      const { x, y, reachX, reachY } = frame;
      let met: BlockRank | null = null;
      someNear(x, y, reachX, reachY, (other) => {
        if ((met !== null && other.rank <= met) || !framesMeet(frame, other)) return false;
        met = other.rank;
        return met === blockRanks.text;
      });
      return met;
    },
    meetsLevel: (x, y, halfX, halfY) => someNear(x, y, halfX, halfY, (other) => levelMeets(other, x, y, halfX, halfY)),
    clearOf(box, ring, paperPerPlan) {
      const frame = boxFrame(box);
      return ring.every((a, i) => {
        const b = ring[(i + 1) % ring.length] as Point;
        return !framesMeet(frame, lineFrame(scaled(a, paperPerPlan), scaled(b, paperPerPlan), 0));
      });
    },
  };
}

function scaled([x, y]: Point, by: number): Point {
  return [x * by, y * by];
}

function boxFrame({ centre, halfWidth, halfHeight, angleDeg }: TurnedBox, rank: BlockRank = blockRanks.line): Frame {
  const radians = (angleDeg * Math.PI) / 180;
  return frame(centre[0], centre[1], Math.cos(radians), Math.sin(radians), halfWidth, halfHeight, rank);
}

function lineFrame(a: Point, b: Point, half: number, rank: BlockRank = blockRanks.line): Frame {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = vectorLength(dx, dy);
  const [ux, uy] = length === 0 ? [1, 0] : [dx / length, dy / length];
  return frame(a[0] + dx / 2, a[1] + dy / 2, ux, uy, length / 2, half, rank);
}

/** By numbers and not by points: hundreds of thousands are looked at for one sheet. */
function frame(x: number, y: number, ux: number, uy: number, halfU: number, halfV: number, rank: BlockRank): Frame {
  const reachX = Math.abs(ux) * halfU + Math.abs(uy) * halfV;
  const reachY = Math.abs(uy) * halfU + Math.abs(ux) * halfV;
  return { x, y, ux, uy, halfU, halfV, reachX, reachY, rank };
}

/** A long line in pieces, so that a slanted one does not fill every cell of its upright box. */
function lineFrames(a: Point, b: Point, half: number, rank: BlockRank): readonly Frame[] {
  const count = Math.max(1, Math.ceil(pointDistance(a, b) / cellMm));
  return Array.from({ length: count }, (_, i) => {
    const at = (k: number) => pointBetween(a, b, k / count);
    return lineFrame(at(i), at(i + 1), half, rank);
  });
}

function cellKeys({ x, y, reachX, reachY }: Frame): readonly number[] {
  const keys: number[] = [];
  for (let i = Math.floor((x - reachX) / cellMm); i <= Math.floor((x + reachX) / cellMm); i++) {
    for (let j = Math.floor((y - reachY) / cellMm); j <= Math.floor((y + reachY) / cellMm); j++)
      keys.push(j * cellsAcross + i);
  }
  return keys;
}

/** Two boxes are apart where a line parallel to a side of one of them runs between them. */
function framesMeet(a: Frame, b: Frame): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  if (Math.abs(dx) > a.reachX + b.reachX || Math.abs(dy) > a.reachY + b.reachY) return false;
  // along a side of one the other reaches so far by the turn between both
  const cos = Math.abs(a.ux * b.ux + a.uy * b.uy);
  const sin = Math.abs(a.ux * b.uy - a.uy * b.ux);
  return (
    Math.abs(dx * a.ux + dy * a.uy) <= a.halfU + cos * b.halfU + sin * b.halfV &&
    Math.abs(dy * a.ux - dx * a.uy) <= a.halfV + sin * b.halfU + cos * b.halfV &&
    Math.abs(dx * b.ux + dy * b.uy) <= b.halfU + cos * a.halfU + sin * a.halfV &&
    Math.abs(dy * b.ux - dx * b.uy) <= b.halfV + sin * a.halfU + cos * a.halfV
  );
}

function levelMeets(
  { x, y, ux, uy, halfU, halfV, reachX, reachY }: Frame,
  atX: number,
  atY: number,
  halfX: number,
  halfY: number,
): boolean {
  const dx = x - atX;
  const dy = y - atY;
  if (Math.abs(dx) > halfX + reachX || Math.abs(dy) > halfY + reachY) return false;
  const cos = Math.abs(ux);
  const sin = Math.abs(uy);
  return (
    Math.abs(dx * ux + dy * uy) <= halfU + cos * halfX + sin * halfY &&
    Math.abs(dy * ux - dx * uy) <= halfV + sin * halfX + cos * halfY
  );
}
