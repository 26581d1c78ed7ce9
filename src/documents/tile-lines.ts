import type { Point } from '../geometry/point.ts';
import { type Box, boxOf, type Region, type Ring } from '../geometry/ring.ts';
import { type Interval, lineInside } from '../geometry/scanline.ts';
import type { TileGrid } from '../plan/plan.ts';
import { type GridFrame, gridFrame, tileModule } from '../plan/tile-grid.ts';

/** Grout lines of one piece of floor as the fewest strokes that show the bond: through lines from wall to wall, and where courses are shifted or
 *  tiles lie at right angles one short stroke a tile.
 *
 *  Two bounds keep a wrong size from filling the memory: beyond them the short strokes are left out, or all. */
const mostLines = 5000;
const mostShort = 100_000;

/** Straight strokes as x1, y1, x2, y2, one after the other, mm on the plan: 30,000 of them go from the worker to the board at the cost of one copy. */
export type Strokes = Float64Array<ArrayBuffer>;

export function groutStrokes(grid: TileGrid, region: Region): Strokes {
  const frame = gridFrame(grid);
  const floor = floorOf([region.outline, ...region.holes].map((ring) => ring.map(frame.toGrid)));
  const strokes: number[] = [];
  const pen = penOf(strokes, frame);
  if (grid.bond === 'herringbone') herringboneStrokes(grid, floor, pen);
  else courseStrokes(grid, floor, pen);
  return new Float64Array(strokes);
}

/** A floor in the grid's own axes, and where upright (0) and level (1) lines run in it. */
interface Floor {
  readonly box: Box;
  readonly inside: (axis: 0 | 1, at: number) => readonly Interval[];
}

function floorOf(rings: readonly Ring[]): Floor {
  const known = [new Map<number, readonly Interval[]>(), new Map<number, readonly Interval[]>()] as const;
  return {
    box: boxOf(rings[0] ?? []),
    inside(axis, at) {
      // The uprights of shifted courses come back every few courses: places that differ by rounding are one.
      const key = Math.round(at * 1000);
      const found = known[axis].get(key) ?? lineInside(rings, axis, at);
      known[axis].set(key, found);
      return found;
    },
  };
}

/** Draws what of a line from `from` to `to` lies on the floor. */
type Pen = (axis: 0 | 1, at: number, inside: readonly Interval[], from: number, to: number) => void;

function penOf(strokes: number[], { toSheet }: GridFrame): Pen {
  return (axis, at, inside, from, to) => {
    for (const [low, high] of inside) {
      const [start, end] = [Math.max(low, from), Math.min(high, to)];
      if (!(end > start)) continue;
      const ends: readonly [Point, Point] =
        axis === 1
          ? [
              [start, at],
              [end, at],
            ]
          : [
              [at, start],
              [at, end],
            ];
      const [[x1, y1], [x2, y2]] = [toSheet(ends[0]), toSheet(ends[1])];
      strokes.push(x1, y1, x2, y2);
    }
  };
}

function courseStrokes(grid: TileGrid, floor: Floor, pen: Pen): void {
  const [along, across] = tileModule(grid);
  const before = -grid.groutMm / 2;
  const { minX, minY, maxX, maxY } = floor.box;
  for (const y of places(before, across, minY, maxY)) pen(1, y, floor.inside(1, y), -Infinity, Infinity);
  if (grid.shiftMm === 0) {
    for (const x of places(before, along, minX, maxX)) pen(0, x, floor.inside(0, x), -Infinity, Infinity);
    return;
  }
  if ((maxX - minX) * (maxY - minY) > mostShort * along * across) return;
  for (let course = Math.floor((minY - before) / across); course * across + before < maxY; course++) {
    const top = course * across + before;
    const shift = (course * grid.shiftMm) % along;
    for (const x of places(before + shift, along, minX, maxX)) pen(0, x, floor.inside(0, x), top, top + across);
  }
}

/** `first + k * step` between two bounds; none where there would be too many. */
function places(first: number, step: number, low: number, high: number): readonly number[] {
  const from = Math.ceil((low - first) / step);
  const count = Math.floor((high - first) / step) - from + 1;
  if (!(count > 0 && count <= mostLines)) return [];
  return Array.from({ length: count }, (_, k) => first + (from + k) * step);
}

/** With a tile's length and width a and b, grout included, a level tile lies at p * (b, b) + q * (a, -a) and an upright one b below it. The left side
 *  of the level tile goes on as that of the upright one, and the top of the upright as that of the next level one: a stroke of a + b each way for
 *  each pair of tiles shows all of them. */
function herringboneStrokes(grid: TileGrid, floor: Floor, pen: Pen): void {
  const [a, b] = tileModule(grid);
  const { minX, minY, maxX, maxY } = floor.box;
  if ((maxX - minX) * (maxY - minY) > mostShort * a * b) return;
  const [left, right] = [minX - a - b, maxX + b];
  const [top, bottom] = [minY - a - b, maxY + b];
  const before = -grid.groutMm / 2;
  for (let q = Math.floor((left - bottom) / (2 * a)); q <= Math.ceil((right - top) / (2 * a)); q++) {
    const first = Math.ceil(Math.max(left - q * a, top + q * a) / b);
    const last = Math.floor(Math.min(right - q * a, bottom + q * a) / b);
    for (let p = first; p <= last; p++) {
      const [x, y] = [p * b + q * a + before, p * b - q * a + before];
      pen(0, x, floor.inside(0, x), y, y + a + b);
      pen(1, y + b, floor.inside(1, y + b), x, x + a + b);
    }
  }
}
