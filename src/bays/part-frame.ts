import type { Point } from '../geometry/point.ts';
import { boxOf, type Ring } from '../geometry/ring.ts';
import { DIRECTION_DEG } from '../geometry/tolerance.ts';
import { type Frame, frameOf, frameSettled, hasDirection, mainDirections, regionOrdered } from './frame.ts';
import { groutAngle, groutMiddle, groutTurn } from './grout.ts';
import type { Part, PartCut } from './part.ts';

/** The main directions of the walls; of the grout where its lines nearly follow one, so that joints run along them exactly, and besides where they are
 *  only a little askew to one, or the room is round: joints in grout meet such walls nearly square. */
export function partDirections({ region, grout }: Part): number[] {
  const walls = mainDirections([region]);
  if (grout === null) return walls;
  const own = groutAngle(grout);
  const isWithin = (angle: number, mostDeg: number) => {
    const off = Math.abs(angle - own);
    return Math.min(off, Math.PI / 2 - off) <= (mostDeg * Math.PI) / 180;
  };
  const along = walls.map((angle) => (isWithin(angle, DIRECTION_DEG) ? own : angle));
  const isAskew = walls.every((angle) => !isWithin(angle, ASKEW_MOST_DEG));
  return [...new Set(isAskew && hasDirection(region) ? along : [...along, own])];
}

/** Joints that meet a wall within so much of square leave no sharp corners. */
const ASKEW_MOST_DEG = 12;

/** The frame along a direction in which the part always lies the same way. */
export function partFrame(part: Part, angle: number): Frame {
  const frame = frameOf(angle);
  const things = thingsIn(part);
  return frameSettled(
    frame,
    part.region,
    part.grout ? [...things, groutMiddle(part.grout, part.region, frame)] : things,
  );
}

/** Corners of what bears on the search beside the floor itself. */
function thingsIn({ columns, keepClear, joinery, mouths, noJoint, hints }: Part): Point[] {
  return [...columns.map((column) => column.ring), ...keepClear, ...joinery, ...mouths, ...noJoint, ...hints].flat();
}

/** The part as it lies in a frame. */
export function partTurn(part: Part, frame: Frame): Part {
  const turn = (ring: Ring): Ring => (frame.mirrored ? ring.map(frame.toFrame).reverse() : ring.map(frame.toFrame));
  return {
    ...part,
    region: regionOrdered({ outline: turn(part.region.outline), holes: part.region.holes.map(turn) }),
    columns: part.columns.map((column) => {
      const ring = turn(column.ring);
      return { ...column, ring, box: boxOf(ring) };
    }),
    mouths: part.mouths.map(([a, b]): readonly [Point, Point] => [frame.toFrame(a), frame.toFrame(b)]),
    keepClear: part.keepClear.map(turn),
    noJoint: part.noJoint.map(turn),
    joinery: part.joinery.map(turn),
    hints: part.hints.map(turn),
    grout: part.grout && groutTurn(part.grout, frame),
  };
}

/** The same cuts in a frame, and back. */
export function cutsTurn(cuts: readonly PartCut[], turn: (p: Point) => Point): PartCut[] {
  return cuts.map((cut) => ({ ...cut, from: turn(cut.from), to: turn(cut.to) }));
}

/** Columns of the region; those that a neck joint touches have theirs. */
export function columnsInside(part: Part, necks: readonly PartCut[]): Part['columns'] {
  const box = boxOf(part.region.outline);
  return part.columns
    .filter((c) => c.box.minX < box.maxX && c.box.maxX > box.minX && c.box.minY < box.maxY && c.box.maxY > box.minY)
    .map((c) => {
      const touched = necks.some(({ from, to }) => {
        const n = boxOf([from, to]);
        return n.minX <= c.box.maxX && n.maxX >= c.box.minX && n.minY <= c.box.maxY && n.maxY >= c.box.minY;
      });
      return touched ? { ...c, needsJoint: false } : c;
    });
}
