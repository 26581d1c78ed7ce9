import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import type { TileGrid } from '../../src/plan/plan.ts';
import { at, type Bounds, boundsOf, inShape, rings, type Segment, type Shape, segments, signedArea } from './planar.ts';

/** Tiles one by one, by the words of the contract: a corner of a tile stands at the set-out point, tiles repeat every length and grout along the
 *  grid and every width and grout across it, y down the sheet, the angle turns from x towards y. Slow and plain: every tile is laid on the floor. */

/** The grid's own axes. */
export interface TilePlane {
  readonly to: (p: Point) => Point;
  readonly from: (p: Point) => Point;
}

export interface PlaneTile {
  readonly name: string;
  readonly bounds: Bounds;
}

export function tilePlane({ origin: [ox, oy], angleDeg }: Pick<TileGrid, 'origin' | 'angleDeg'>): TilePlane {
  // Whole turns come off first: 1e6 degrees would lose digits.
  const radians = ((angleDeg % 360) * Math.PI) / 180;
  const [c, s] = [Math.cos(radians), Math.sin(radians)];
  return {
    to: ([x, y]) => [c * (x - ox) + s * (y - oy), c * (y - oy) - s * (x - ox)],
    from: ([x, y]) => [ox + c * x - s * y, oy + s * x + c * y],
  };
}

export function shapeInPlane(shape: Shape, plane: TilePlane): Shape {
  return shape.map(({ outline, holes }) => ({
    outline: outline.map(plane.to),
    holes: holes.map((hole) => hole.map(plane.to)),
  }));
}

/** Every tile whose box meets the bounds. */
export function* tilesOver(grid: TileGrid, bounds: Bounds): Generator<PlaneTile> {
  yield* grid.bond === 'herringbone' ? herringbone(grid, bounds) : coursed(grid, bounds);
}

function* coursed({ lengthMm, widthMm, groutMm, shiftMm }: TileGrid, b: Bounds): Generator<PlaneTile> {
  const [along, across] = [lengthMm + groutMm, widthMm + groutMm];
  for (let j = Math.floor((b.y0 - widthMm) / across); j * across <= b.y1; j++) {
    const shift = (j * shiftMm) % along;
    for (let i = Math.floor((b.x0 - lengthMm - shift) / along); i * along + shift <= b.x1; i++) {
      const [x, y] = [i * along + shift, j * across];
      const bounds = { x0: x, y0: y, x1: x + lengthMm, y1: y + widthMm };
      if (meet(bounds, b)) yield { name: `${i} of course ${j}`, bounds };
    }
  }
}

/** Level tiles in stairs: each the width of a tile right and down of the one before; one length right and up begins the next stair. At the head of
 *  every level tile stands an upright one, with its head on the level tile's long side. */
function* herringbone({ lengthMm, widthMm, groutMm }: TileGrid, b: Bounds): Generator<PlaneTile> {
  const [long, short] = [lengthMm + groutMm, widthMm + groutMm];
  const reach = long + short;
  // x - y tells the stair, x + y the step on it
  const stairs = [(b.x0 - b.y1 - 2 * reach) / (2 * long), (b.x1 - b.y0 + 2 * reach) / (2 * long)] as const;
  const steps = [(b.x0 + b.y0 - 2 * reach) / (2 * short), (b.x1 + b.y1 + 2 * reach) / (2 * short)] as const;
  for (let stair = Math.floor(stairs[0]); stair <= stairs[1]; stair++) {
    for (let step = Math.floor(steps[0]); step <= steps[1]; step++) {
      const [x, y] = [stair * long + step * short, step * short - stair * long];
      const level = { x0: x, y0: y, x1: x + lengthMm, y1: y + widthMm };
      const upright = { x0: x, y0: y + short, x1: x + widthMm, y1: y + short + lengthMm };
      if (meet(level, b)) yield { name: `level ${stair} ${step}`, bounds: level };
      if (meet(upright, b)) yield { name: `upright ${stair} ${step}`, bounds: upright };
    }
  }
}

function meet(a: Bounds, b: Bounds): boolean {
  return a.x1 >= b.x0 && a.x0 <= b.x1 && a.y1 >= b.y0 && a.y0 <= b.y1;
}

export function boundsIn({ x0, y0, x1, y1 }: Bounds, by: number): Bounds | null {
  return x1 - x0 > 2 * by && y1 - y0 > 2 * by ? { x0: x0 + by, y0: y0 + by, x1: x1 - by, y1: y1 - by } : null;
}

export function boundsArea({ x0, y0, x1, y1 }: Bounds): number {
  return (x1 - x0) * (y1 - y0);
}

/** Area of a shape inside upright bounds: each ring cut side by side. What is cut off leaves a thread along the bounds, which has no area. */
export function areaInBounds(shape: Shape, bounds: Bounds): number {
  let sum = 0;
  for (const region of shape) {
    rings(region).forEach((ring, i) => {
      const inside = Math.abs(signedArea(ringInBounds(ring, bounds)));
      sum += i === 0 ? inside : -inside;
    });
  }
  return sum;
}

const nowhere: Ring = [[0, 0]];

function ringInBounds(ring: Ring, { x0, y0, x1, y1 }: Bounds): Ring {
  let points: readonly Point[] = ring;
  for (const [axis, place, side] of [
    [0, x0, 1],
    [0, x1, -1],
    [1, y0, 1],
    [1, y1, -1],
  ] as const) {
    points = halfOf(points, axis, place, side);
    if (points.length < 3) return nowhere;
  }
  return points;
}

function halfOf(points: readonly Point[], axis: 0 | 1, place: number, side: 1 | -1): readonly Point[] {
  if (points.every((p) => side * (p[axis] - place) >= 0)) return points;
  const kept: Point[] = [];
  points.forEach((p, i) => {
    const q = at(points, i + 1);
    const [dp, dq] = [side * (p[axis] - place), side * (q[axis] - place)];
    if (dp >= 0) kept.push(p);
    if (dp > 0 === dq > 0 || dp === 0 || dq === 0) return;
    const other = axis === 0 ? 1 : 0;
    const along = p[other] + ((q[other] - p[other]) * dp) / (dp - dq);
    kept.push(axis === 0 ? [place, along] : [along, place]);
  });
  return kept;
}

/** Whether a stretch passes through the inside of bounds. */
export function entersBounds([p, q]: Segment, { x0, y0, x1, y1 }: Bounds): boolean {
  let [from, to] = [0, 1];
  for (const [start, end, low, high] of [
    [p[0], q[0], x0, x1],
    [p[1], q[1], y0, y1],
  ] as const) {
    if (start === end) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const shares = [(low - start) / (end - start), (high - start) / (end - start)] as const;
    from = Math.max(from, Math.min(...shares));
    to = Math.min(to, Math.max(...shares));
  }
  return from < to;
}

/** What a tile is on a floor. A tile that a wall enters by about the width of a weld (1 mm) may be taken for either: `may` counts those too. */
export interface TileVerdict {
  readonly whole: 'yes' | 'may' | 'no';
  readonly cut: 'yes' | 'may' | 'no';
  readonly areaMm2: number;
  /** Into how many pieces it may be cut at the most. */
  readonly mostPieces: number;
}

/** @param shape floor in the grid's own axes */
export function tileVerdict(shape: Shape, tile: Bounds): TileVerdict {
  const areaMm2 = areaInBounds(shape, tile);
  if (areaMm2 < 1e-3) return { whole: 'no', cut: 'no', areaMm2: 0, mostPieces: 0 };
  if (areaMm2 > boundsArea(tile) - 1e-3) return { whole: 'yes', cut: 'no', areaMm2, mostPieces: 0 };
  const covers = (by: number) => {
    const inner = boundsIn(tile, by);
    return inner === null ? null : areaInBounds(shape, inner) > boundsArea(inner) - 1e-3;
  };
  const [tight, loose] = [covers(0.95), covers(1.05)];
  const whole = tight === true ? 'yes' : loose === false ? 'no' : 'may';
  const inner = boundsIn(tile, 2);
  const isThick = inner !== null && areaInBounds(shape, inner) > 25;
  // Beside a straight side, within a tile, lies one piece: there are no more pieces than sides of the floor that enter it.
  const entering = shape.flatMap(rings).flatMap(segments);
  const mostPieces = Math.max(1, entering.filter((side) => entersBounds(side, tile)).length);
  return { whole, cut: whole === 'yes' ? 'no' : whole === 'no' && isThick ? 'yes' : 'may', areaMm2, mostPieces };
}

export interface TileCount {
  readonly whole: readonly [least: number, most: number];
  readonly cut: readonly [least: number, most: number];
  /** Of the cut tiles: a tile that a joint parts gives one on each side. */
  readonly pieces: readonly [least: number, most: number];
  readonly areaMm2: number;
}

/** Tiles of a grid on pieces of floor that joints part (on the sheet): whole on one of them, or cut. */
export function tilesCount(grid: TileGrid, pieces: readonly Shape[]): TileCount {
  const plane = tilePlane(grid);
  const tiles = new Map<string, TileVerdict[]>();
  let areaMm2 = 0;
  for (const piece of pieces) {
    const shape = shapeInPlane(piece, plane);
    for (const { name, bounds } of tilesOver(grid, boundsOf(shape.flatMap(({ outline }) => outline)))) {
      const verdict = tileVerdict(shape, bounds);
      areaMm2 += verdict.areaMm2;
      if (verdict.areaMm2 > 0) tiles.set(name, [...(tiles.get(name) ?? []), verdict]);
    }
  }
  const [whole, cut, parts]: [[number, number], [number, number], [number, number]] = [
    [0, 0],
    [0, 0],
    [0, 0],
  ];
  for (const verdicts of tiles.values()) {
    const has = (what: 'whole' | 'cut', says: TileVerdict['cut']) => verdicts.some((v) => v[what] === says);
    if (has('whole', 'yes')) whole[0]++;
    if (has('whole', 'yes') || has('whole', 'may')) whole[1]++;
    if (has('cut', 'yes')) cut[0]++;
    if (has('cut', 'yes') || has('cut', 'may')) cut[1]++;
    for (const verdict of verdicts) {
      if (verdict.cut === 'yes') parts[0]++;
      if (verdict.cut !== 'no') parts[1] += verdict.mostPieces;
    }
  }
  return { whole, cut, pieces: parts, areaMm2 };
}

/** Whether a tile of the grid has these corners (on the sheet), and lies on the floor. */
export function isTileOn(grid: TileGrid, corners: Ring, floor: readonly Shape[]): boolean {
  const plane = tilePlane(grid);
  const box = boundsOf(corners.map(plane.to));
  const near = (a: Bounds) =>
    [a.x0 - box.x0, a.x1 - box.x1, a.y0 - box.y0, a.y1 - box.y1].every((d) => Math.abs(d) < 0.01);
  if (![...tilesOver(grid, box)].some(({ bounds }) => near(bounds))) return false;
  const inner = boundsIn(box, 1.05);
  if (inner === null) return floor.some((shape) => inShape(shapeInPlane(shape, plane), [box.x0, box.y0]));
  return floor.some((shape) => areaInBounds(shapeInPlane(shape, plane), inner) > boundsArea(inner) - 1e-3);
}
