import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { regionArea, regionIsBoxed } from '../geometry/region.ts';
import { boxOf, type Region, type Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { CLIP_SLACK_MM, SAME_LINE_MM, WELD_MM } from '../geometry/tolerance.ts';
import type { CutTile } from './laid.ts';
import { isInJoint, type Side } from './perimeter-joint.ts';
import { tileBox } from './rows.ts';
import type { Stretch } from './stretches.ts';

/** One piece of a cut tile. */
export interface CutPiece {
  /** Of its tile. */
  readonly key: string;
  readonly areaMm2: number;
  readonly sides: readonly CutSide[];
  /** The least size square to one of its cut sides, mm, and that as a share of a whole tile the same way. */
  readonly leastMm: number;
  readonly leastShare: number;
  /** What is left along the tile's length and its width, mm. */
  readonly sizeMm: Point;
  /** Whether it is cut across one way only, so that what falls off is as good as a tile of that size. */
  readonly isPlain: boolean;
  /** Whether all of it falls into the perimeter joint, so that it is not laid. */
  readonly isInJoint: boolean;
}

/** A side along which a tile was cut. */
export interface CutSide {
  readonly stretch: Stretch;
  readonly sizeMm: number;
  readonly wholeMm: number;
  readonly isAskew: boolean;
}

/** A stretch in the grid's own axes. */
export interface GridStretch {
  readonly stretch: Stretch;
  readonly points: readonly Point[];
}

/** What bounds the pieces of a bay, and how wide the perimeter joint and how long a tile is. */
export interface CutBounds {
  readonly stretches: readonly GridStretch[];
  readonly jointMm: number;
  readonly lengthMm: number;
}

/** The pieces of cut tiles, each measured square to the sides along which it was cut. */
export function cutPieces(tile: CutTile, bounds: CutBounds): CutPiece[] {
  return tile.pieces.flatMap((piece) => pieceOf(tile, piece, bounds) ?? []);
}

function pieceOf(tile: CutTile, piece: Region, { stretches, jointMm, lengthMm }: CutBounds): CutPiece | null {
  const { row, i } = tile;
  const box = tileBox(row, i);
  const fixed: Side[] = [];
  const found: CutSide[] = [];
  const lengths = new Map<Stretch, number>();
  for (const ring of [piece.outline, ...piece.holes]) {
    ring.forEach((p, k) => {
      const q = ring[(k + 1) % ring.length] as Point;
      if (isOnBox(p, q, box)) return;
      const stretch = stretchAt(stretches, p, q);
      const [ux, uy] = pointDirection(p, q);
      if (stretch === null || (ux === 0 && uy === 0)) return;
      if (stretch.along !== 'joint' && stretch.along !== 'pipe') fixed.push([p, q]);
      lengths.set(stretch, (lengths.get(stretch) ?? 0) + pointDistance(p, q));
      const wholeMm = Math.abs(uy) * row.size[0] + Math.abs(ux) * row.size[1];
      const sizeMm = reachFrom(piece.outline, p, [-uy, ux]);
      const isAskew = Math.min(Math.abs(ux), Math.abs(uy)) * Math.max(row.size[0], row.size[1]) > WELD_MM;
      if (sizeMm < wholeMm - WELD_MM) found.push({ stretch, sizeMm, wholeMm, isAskew });
    });
  }
  const own = boxOf(piece.outline);
  const extent: Point = [own.maxX - own.minX, own.maxY - own.minY];
  // What is thinner than a weld is what rounding left of a tile that lies beyond the wall; so is a leg of a larger piece, and a notch of that depth.
  const thinnest = WELD_MM;
  const thick = found.filter(({ sizeMm }) => sizeMm >= thinnest);
  if (Math.min(extent[0], extent[1]) < thinnest || (found.length > 0 && thick.length === 0)) return null;
  const sides = thick.filter(({ stretch }) => (lengths.get(stretch) ?? 0) >= thinnest);
  // A hole for a pipe is drilled: it makes no narrow piece.
  const walls = sides.filter(({ stretch }) => stretch.along !== 'pipe');
  const isUpright = row.size[0] !== lengthMm;
  return {
    key: tile.key,
    areaMm2: regionArea(piece),
    sides,
    leastMm: Math.min(Infinity, ...walls.map(({ sizeMm }) => sizeMm)),
    leastShare: Math.min(1, ...walls.map(({ sizeMm, wholeMm }) => sizeMm / wholeMm)),
    sizeMm: isUpright ? [extent[1], extent[0]] : extent,
    isPlain: regionIsBoxed(piece, WELD_MM) && isCutOneWay(extent, row.size),
    isInJoint: isInJoint(piece, fixed, jointMm),
  };
}

/** Whether a side of a piece is a side of its tile. */
function isOnBox(p: Point, q: Point, { minX, maxX, minY, maxY }: ReturnType<typeof boxOf>): boolean {
  const on = (a: number, b: number, at: number) => Math.abs(a - at) < CLIP_SLACK_MM && Math.abs(b - at) < CLIP_SLACK_MM;
  return on(p[0], q[0], minX) || on(p[0], q[0], maxX) || on(p[1], q[1], minY) || on(p[1], q[1], maxY);
}

/** The stretch that a side of a piece of floor lies along; null where there is none. */
export function stretchAt(stretches: readonly GridStretch[], p: Point, q: Point): Stretch | null {
  const middle: Point = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
  let best: Stretch | null = null;
  let nearest = SAME_LINE_MM;
  for (const { stretch, points } of stretches) {
    for (let k = 1; k < points.length; k++) {
      const [a, b] = [points[k - 1] as Point, points[k] as Point];
      // A curve has hundreds of pieces, nearly all of them far away.
      if (isBeyond(a[0], b[0], middle[0], nearest) || isBeyond(a[1], b[1], middle[1], nearest)) continue;
      const distance = segmentDistance(a, b, middle);
      if (distance < nearest) [best, nearest] = [stretch, distance];
    }
  }
  return best;
}

function isBeyond(a: number, b: number, at: number, by: number): boolean {
  return (a > at + by && b > at + by) || (a < at - by && b < at - by);
}

/** How far an outline reaches from a place in a direction, mm. */
function reachFrom(ring: Ring, from: Point, [nx, ny]: Point): number {
  return ring.reduce((most, [x, y]) => Math.max(most, (x - from[0]) * nx + (y - from[1]) * ny), 0);
}

function isCutOneWay([width, height]: Point, [wholeWidth, wholeHeight]: Point): boolean {
  const cutX = width < wholeWidth - WELD_MM;
  const cutY = height < wholeHeight - WELD_MM;
  return cutX !== cutY;
}
