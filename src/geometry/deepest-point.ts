import type { Point } from './point.ts';
import { regionCentroid, regionContains } from './region.ts';
import { boxOf, type Region, type Ring } from './ring.ts';
import { segmentDistance } from './segment.ts';

/** How much further from the boundary a place must lie to be worth finding, as a share of the region's shorter extent. */
const precisionShare = 0.01;
/** Bounds on the work: for outlines that no square covers well, such as a comb of slivers, and for those of very many corners. */
const mostSquares = 4000;
const mostDistances = 1e7;

interface Square {
  readonly centre: Point;
  readonly half: number;
  /** Distance from the centre to the boundary, negative outside. */
  readonly depth: number;
  /** No point of the square lies deeper than this. */
  readonly bound: number;
}

/** The point of a region that lies furthest from its boundary, to 1 % of the region's shorter extent, and its distance
 *  from it (in the unit of the corners). Where many points are equally deep, as along the middle of a corridor, the area
 *  centroid or the one met first.
 *  @param contentShare a point this share less deep than the deepest will do, so that the area centroid is kept where it lies
 *  nearly as deep
 *
 *  Squares over the region are divided as long as one of them could hold a deeper point than the best yet, the most
 *  promising first. Example: a square of 4 -> its middle, depth 2. */
export function regionDeepestPoint(
  region: Region,
  contentShare = 0,
): { readonly point: Point; readonly depth: number } {
  const box = boxOf(region.outline);
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const extent = Math.min(width, height);
  let best = squareAt(region, regionCentroid(region), 0);
  if (!(extent > 0)) return { point: best.centre, depth: Math.max(best.depth, 0) };

  const worthwhile = () => best.depth + Math.max(extent * precisionShare, best.depth * contentShare);
  const queue = new SquareQueue();
  const columns = Math.min(Math.ceil(width / extent), 64);
  const rows = Math.min(Math.ceil(height / extent), 64);
  const half = Math.max(width / columns, height / rows) / 2;
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      const x = box.minX + ((i + 0.5) / columns) * width;
      const y = box.minY + ((j + 0.5) / rows) * height;
      queue.add(squareAt(region, [x, y], half));
    }
  }
  const corners = region.holes.reduce((sum, hole) => sum + hole.length, region.outline.length);
  for (let left = Math.min(mostSquares, mostDistances / corners); left > 0; left--) {
    const square = queue.takeBest();
    if (square === undefined || square.bound <= worthwhile()) break;
    if (square.depth > worthwhile()) best = square;
    const quarter = square.half / 2;
    for (const dx of [-quarter, quarter]) {
      for (const dy of [-quarter, quarter]) {
        const next = squareAt(region, [square.centre[0] + dx, square.centre[1] + dy], quarter);
        if (next.bound > worthwhile()) queue.add(next);
      }
    }
  }
  return { point: best.centre, depth: Math.max(best.depth, 0) };
}

function squareAt(region: Region, centre: Point, half: number): Square {
  const distance = Math.min(...[region.outline, ...region.holes].map((ring) => ringDistance(ring, centre)));
  const depth = regionContains(region, centre) ? distance : -distance;
  return { centre, half, depth, bound: depth + half * Math.SQRT2 };
}

/** Distance from a point to the nearest side of the ring. */
function ringDistance(ring: Ring, point: Point): number {
  let least = Infinity;
  let before = ring[ring.length - 1] ?? point;
  for (const corner of ring) {
    least = Math.min(least, segmentDistance(before, corner, point));
    before = corner;
  }
  return least;
}

/** A binary heap with the greatest bound on top. */
class SquareQueue {
  private readonly squares: Square[] = [];

  add(square: Square): void {
    const { squares } = this;
    let at = squares.length;
    squares.push(square);
    while (at > 0) {
      const above = (at - 1) >> 1;
      const parent = squares[above] as Square;
      if (parent.bound >= square.bound) break;
      squares[at] = parent;
      at = above;
    }
    squares[at] = square;
  }

  takeBest(): Square | undefined {
    const { squares } = this;
    const top = squares[0];
    const last = squares.pop();
    if (last === undefined || squares.length === 0) return top;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= squares.length) break;
      const other = squares[child + 1];
      if (other !== undefined && other.bound > (squares[child] as Square).bound) child++;
      const below = squares[child] as Square;
      if (below.bound <= last.bound) break;
      squares[at] = below;
      at = child;
    }
    squares[at] = last;
    return top;
  }
}
