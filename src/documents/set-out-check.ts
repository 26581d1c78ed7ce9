import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import type { Things } from './set-out-things.ts';
import { type Face, faceMet } from './set-out-walls.ts';

/** Three sides of a triangle that is square if they are as 3 : 4 : 5. */
export interface SquareCheck {
  readonly onFirst: Point;
  readonly onSecond: Point;
  readonly firstMm: number;
  readonly secondMm: number;
  readonly acrossMm: number;
}

/** A third of the shorter leg, mm: 3 x 4 x 5 m is 1000. The longest that fits is the sharpest check, and no longer than a tape. */
const checkUnitsMm = [2000, 1500, 1200, 1000, 800, 600, 500, 400, 300, 200, 150, 100];

export interface CrossedLines {
  readonly corner: Point;
  /** Unit vectors of the two lines. */
  readonly ways: readonly [Point, Point];
  /** From wall to wall. */
  readonly lines: readonly [readonly [Point, Point], readonly [Point, Point]];
}

/** The longest check of two lines that nothing stands in; where something stands in each, the longest that no wall runs through. */
export function squareCheck(lines: CrossedLines, faces: readonly Face[], things: Things): SquareCheck | null {
  const isOpen = (a: Point, b: Point) =>
    (faceMet(faces, a, pointDirection(a, b))?.distanceMm ?? Infinity) >= pointDistance(a, b);
  const isClear = (a: Point, b: Point) =>
    isOpen(a, b) && !things.between(lines.corner, a) && !things.between(lines.corner, b) && !things.between(a, b);
  return checkWhere(lines, isClear) ?? checkWhere(lines, isOpen);
}

function checkWhere(
  { corner, ways, lines }: CrossedLines,
  isFree: (a: Point, b: Point) => boolean,
): SquareCheck | null {
  for (const unit of checkUnitsMm) {
    for (const legs of [
      [4, 3],
      [3, 4],
    ] as const) {
      const arms = ways.map((way, i) => armEnds(corner, way, lines[i as 0 | 1], legs[i as 0 | 1] * unit));
      for (const onFirst of arms[0] ?? []) {
        for (const onSecond of arms[1] ?? []) {
          if (!isFree(onFirst, onSecond)) continue;
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
