import { type Point, pointBetween, pointDirection, pointDistance } from '../geometry/point.ts';
import type { Box, Ring } from '../geometry/ring.ts';
import { segmentWithin } from '../geometry/segment-box.ts';

/** A turned box, mm on paper; angle clockwise on the sheet. */
export interface TurnedBox {
  readonly centre: Point;
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly angleDeg: number;
}

/** What stands on the sheet already and text keeps clear of. */
export interface Blocks {
  addBox(box: TurnedBox): void;
  /** @param halfMm half the width of the line */
  addLine(points: readonly Point[], halfMm: number): void;
  meets(box: TurnedBox): boolean;
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
  return {
    addBox: (box) => add(boxFrame(box)),
    addLine(points, halfMm) {
      for (let i = 1; i < points.length; i++) {
        const side = [points[i - 1] as Point, points[i] as Point] as const;
        const seen = within === undefined ? side : segmentWithin(...side, within);
        if (seen !== null) for (const frame of lineFrames(...seen, halfMm)) add(frame);
      }
    },
    meets(box) {
      const frame = boxFrame(box);
      return cellKeys(frame).some((key) => cells.get(key)?.some((other) => framesMeet(frame, other)) ?? false);
    },
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

function boxFrame({ centre, halfWidth, halfHeight, angleDeg }: TurnedBox): Frame {
  const radians = (angleDeg * Math.PI) / 180;
  return frame(centre, [Math.cos(radians), Math.sin(radians)], halfWidth, halfHeight);
}

function lineFrame(a: Point, b: Point, half: number): Frame {
  const length = pointDistance(a, b);
  const along: Point = length === 0 ? [1, 0] : pointDirection(a, b);
  return frame(pointBetween(a, b, 0.5), along, length / 2, half);
}

function frame([x, y]: Point, [ux, uy]: Point, halfU: number, halfV: number): Frame {
  const reachX = Math.abs(ux) * halfU + Math.abs(uy) * halfV;
  const reachY = Math.abs(uy) * halfU + Math.abs(ux) * halfV;
  return { x, y, ux, uy, halfU, halfV, reachX, reachY };
}

/** A long line in pieces, so that a slanted one does not fill every cell of its upright box. */
function lineFrames(a: Point, b: Point, half: number): readonly Frame[] {
  const count = Math.max(1, Math.ceil(pointDistance(a, b) / cellMm));
  return Array.from({ length: count }, (_, i) => {
    const at = (k: number) => pointBetween(a, b, k / count);
    return lineFrame(at(i), at(i + 1), half);
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
  const apart = (nx: number, ny: number) => Math.abs(dx * nx + dy * ny) > frameReach(a, nx, ny) + frameReach(b, nx, ny);
  return !(apart(a.ux, a.uy) || apart(-a.uy, a.ux) || apart(b.ux, b.uy) || apart(-b.uy, b.ux));
}

function frameReach({ ux, uy, halfU, halfV }: Frame, nx: number, ny: number): number {
  return Math.abs(ux * nx + uy * ny) * halfU + Math.abs(ux * ny - uy * nx) * halfV;
}
