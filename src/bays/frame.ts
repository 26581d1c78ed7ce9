import { type Point, vectorLength } from '../geometry/point.ts';
import { regionCentroid } from '../geometry/region.ts';
import { boxOf, type Region, type Ring } from '../geometry/ring.ts';
import { ALIGN_MM, AXIS_RAD, DIRECTION_DEG, SAME_LINE_MM } from '../geometry/tolerance.ts';

/** A main direction counts if at least this share of the walls' length follows it or stands square to it. */
const LEAST_SHARE = 0.12;
const MOST_DIRECTIONS = 3;

/** Turns, and where `mirrored` mirrors, between the sheet and a frame whose axes follow the walls of a part. */
export interface Frame {
  readonly mirrored: boolean;
  toFrame(p: Point): Point;
  toSheet(p: Point): Point;
}

export function frameOf(angle: number): Frame {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  if (angle === 0) return { mirrored: false, toFrame: (p) => p, toSheet: (p) => p };
  return {
    mirrored: false,
    toFrame: (p) => [p[0] * c + p[1] * s, p[1] * c - p[0] * s],
    toSheet: (p) => [p[0] * c - p[1] * s, p[0] * s + p[1] * c],
  };
}

/** The frame along the walls in which a region always lies the same way, however the plan is turned or mirrored: longer than high, and heavier
 *  to the left and the top. So the same floor gets the same layout.
 *  @param things corners of what stands in the region: where the floor itself lies evenly, they say which way it lies */
export function frameSettled(frame: Frame, region: Region, things: readonly Point[]): Frame {
  const outline = region.outline.map(frame.toFrame);
  const box = boxOf(outline);
  // Cores count: of a rectangle round one they alone say which way it lies.
  const [cx, cy] = regionCentroid({ outline, holes: region.holes.map((hole) => hole.map(frame.toFrame)) });
  const inFrame = things.map(frame.toFrame);
  const offCentre = (centre: number, axis: 0 | 1, from: number, to: number) => {
    const own = centre - (from + to) / 2;
    if (Math.abs(own) > SAME_LINE_MM || inFrame.length === 0) return own;
    return inFrame.reduce((sum, p) => sum + p[axis], 0) / inFrame.length - (from + to) / 2;
  };
  const dx = offCentre(cx, 0, box.minX, box.maxX);
  const dy = offCentre(cy, 1, box.minY, box.maxY);
  const high = box.maxY - box.minY - (box.maxX - box.minX);
  const swap = high > ALIGN_MM || (high > -ALIGN_MM && Math.abs(dy) > Math.abs(dx));
  const [fx, fy] = [dx > 0 ? -1 : 1, dy > 0 ? -1 : 1];
  if (!swap && fx === 1 && fy === 1) return frame;
  return {
    mirrored: swap !== fx * fy < 0,
    toFrame(p) {
      const [x, y] = frame.toFrame(p);
      return swap ? [y * fy, x * fx] : [x * fx, y * fy];
    },
    toSheet([x, y]) {
      return frame.toSheet(swap ? [y * fx, x * fy] : [x * fx, y * fy]);
    },
  };
}

/** A region whose rings begin at their leftmost corner and whose holes stand from left to right: what is listed first is tried first, and that
 *  must not hang on how the plan was drawn. */
export function regionOrdered({ outline, holes }: Region): Region {
  const own = holes.map(ringOrdered).sort((a, b) => placeOrder(a[0] as Point) - placeOrder(b[0] as Point));
  return { outline: ringOrdered(outline), holes: own };
}

function ringOrdered(ring: Ring): Ring {
  let first = 0;
  for (let i = 1; i < ring.length; i++) {
    if (placeOrder(ring[i] as Point) < placeOrder(ring[first] as Point)) first = i;
  }
  return [...ring.slice(first), ...ring.slice(0, first)];
}

/** Rises from left to right and, along an upright wall, from top to bottom, whatever rounding makes of the wall. */
function placeOrder([x, y]: Point): number {
  return x + y / 1000;
}

/** Main wall directions of some regions, the weightiest first, as angles from 0 to a quarter turn, radians.
 *  Directions are taken modulo a quarter turn, since walls mostly stand square to each other. */
export function mainDirections(regions: readonly Region[]): number[] {
  return directionsOf(regions)
    .filter(({ share }, i) => i === 0 || share >= LEAST_SHARE)
    .slice(0, MOST_DIRECTIONS)
    .map(({ angle }) => angle);
}

/** Whether a region has a main wall direction at all: a round one has none. */
export function hasDirection(region: Region): boolean {
  return (directionsOf([region])[0]?.share ?? 0) >= ROUND_SHARE;
}

/** In a round room no direction, or one square to it, has a larger share of the walls than this. */
const ROUND_SHARE = 0.25;

/** All wall directions, the weightiest first, each with its share of the walls' length. */
function directionsOf(regions: readonly Region[]): { readonly angle: number; readonly share: number }[] {
  const quarter = Math.PI / 2;
  const walls = regions.flatMap((region) => [region.outline, ...region.holes].flatMap(ringWalls));
  const total = walls.reduce((sum, wall) => sum + wall.length, 0);
  const left = [...walls].sort((a, b) => b.length - a.length || a.angle - b.angle);
  const found: { angle: number; weight: number }[] = [];
  const tolerance = (DIRECTION_DEG * Math.PI) / 180;
  while (left.length > 0) {
    const lead = left[0] as Wall;
    let weight = 0;
    let offset = 0;
    let square = 0;
    for (let i = left.length - 1; i >= 0; i--) {
      const wall = left[i] as Wall;
      let off = wall.angle - lead.angle;
      if (off > quarter / 2) off -= quarter;
      if (off < -quarter / 2) off += quarter;
      if (Math.abs(off) > tolerance) continue;
      weight += wall.length;
      // Long walls say the direction better than their length: the error of an angle falls with it.
      offset += off * wall.length * wall.length;
      square += wall.length * wall.length;
      left.splice(i, 1);
    }
    const angle = lead.angle + (square > 0 ? offset / square : 0);
    found.push({ angle: ((angle % quarter) + quarter) % quarter, weight });
  }
  return found
    .sort((a, b) => b.weight - a.weight || a.angle - b.angle)
    .map(({ angle, weight }) => ({ angle: snapAngle(angle), share: weight / total }));
}

interface Wall {
  readonly angle: number;
  readonly length: number;
}

function ringWalls(ring: Ring): Wall[] {
  const quarter = Math.PI / 2;
  return ring.map((p, i) => {
    const q = ring[(i + 1) % ring.length] as Point;
    const angle = Math.atan2(q[1] - p[1], q[0] - p[0]);
    return { angle: ((angle % quarter) + quarter) % quarter, length: vectorLength(q[0] - p[0], q[1] - p[1]) };
  });
}

/** A direction within rounding of the sheet's axes is the axis: plans drawn square stay on whole steps. */
function snapAngle(angle: number): number {
  return angle < AXIS_RAD || Math.PI / 2 - angle < AXIS_RAD ? 0 : angle;
}
