import { type Point, pointDistance } from '../../geometry/point.ts';
import { UNIT_SLACK } from '../../geometry/tolerance.ts';
import type { CatchGrout } from './catch-lines.ts';

/** A place on a line, and the unit vector along it. */
export interface LineLed {
  readonly from: Point;
  readonly way: Point;
}

/** Where the hand is caught by grout lines, and by which. */
export interface GroutCaught {
  readonly at: Point;
  readonly lines: readonly CatchGrout[];
}

/** Grout lines askew to the sheet: on a wall the hand slides along it to the nearest one; elsewhere it goes on to one, or to where two cross.
 *  @param near the lines next to the hand  @param wall the wall that the hand is on, from the place nearest to it; null: none
 *  Example: a line at 45 degrees through [0, 0], the hand at [1000, 1020] -> [1010, 1010]; on a wall at y 1020 -> [1020, 1020] */
export function groutAskew(
  near: readonly CatchGrout[],
  at: Point,
  reachMm: number,
  wall: LineLed | null,
): GroutCaught | null {
  const askew = near.filter(({ way }) => Math.min(Math.abs(way[0]), Math.abs(way[1])) > UNIT_SLACK);
  if (wall !== null) return lineMet(askew, wall, reachMm);
  const feet = askew.flatMap((line) => lineMet([line], { from: at, way: [-line.way[1], line.way[0]] }, reachMm) ?? []);
  const [nearest] = feet.sort((a, b) => pointDistance(a.at, at) - pointDistance(b.at, at));
  const [line] = nearest?.lines ?? [];
  if (nearest === undefined || line === undefined) return null;
  const crossing = lineMet(
    askew.filter((other) => other !== line),
    { from: nearest.at, way: line.way },
    reachMm,
  );
  return crossing === null ? nearest : { at: crossing.at, lines: [line, ...crossing.lines] };
}

/** Where the nearest of some lines is met along another, within reach. */
function lineMet(lines: readonly CatchGrout[], { from, way }: LineLed, reachMm: number): GroutCaught | null {
  let best: GroutCaught | null = null;
  let least = reachMm;
  for (const line of lines) {
    const run = runTo(from, way, line);
    if (Math.abs(run) > least) continue;
    least = Math.abs(run);
    best = { at: [from[0] + way[0] * run, from[1] + way[1] * run], lines: [line] };
  }
  return best;
}

/** How far along a way a grout line is met, mm; not finite where they run alike. */
export function runTo(from: Point, way: Point, { at, way: run }: CatchGrout): number {
  const [dx, dy] = [at[0] - from[0], at[1] - from[1]];
  return (dx * run[1] - dy * run[0]) / (way[0] * run[1] - way[1] * run[0]);
}
