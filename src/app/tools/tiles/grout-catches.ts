import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';
import { DIRECTION_DEG, UNIT_SLACK } from '../../../geometry/tolerance.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { sideWeight } from '../catch.ts';
import type { CatchCoordinate, CatchGrout, GroutCatches, GroutCaught } from '../catch-lines.ts';
import { groutCatch } from './grout.ts';

/** What the grout lines of a plan make of the hand.
 *  @param line only those that run the way of this line, end to end  @param under of the field there, not of that under the place asked for */
export function groutCatches(file: PlanFile, line?: readonly Point[], under?: Point): GroutCatches {
  const lines = groutCatch(file, line);
  const near = (at: Point) => lines(at, under);
  return { near, askew: askewCatch(near), across: acrossCatch(near) };
}

const mostSlant = Math.sin((DIRECTION_DEG * Math.PI) / 180);

function acrossCatch(near: GroutCatches['near']): GroutCatches['across'] {
  return (hand, { from, way, least }, atMm, nearestMm) => {
    let met: ReturnType<GroutCatches['across']> = null;
    let nearest = nearestMm;
    for (const line of near(hand)) {
      if (Math.abs(way[0] * line.way[0] + way[1] * line.way[1]) > mostSlant) continue;
      const run = runTo(from, way, line);
      const off = Math.abs(run - atMm) * sideWeight;
      if (run <= least || off > nearest) continue;
      nearest = off;
      met = { run, line };
    }
    return met;
  };
}

/** How far along a way a grout line is met, mm; not finite where they run alike. */
function runTo(from: Point, way: Point, { at, way: run }: CatchGrout): number {
  const [dx, dy] = [at[0] - from[0], at[1] - from[1]];
  return (dx * run[1] - dy * run[0]) / (way[0] * run[1] - way[1] * run[0]);
}

/** A place on a line, and the unit vector along it. */
interface LineLed {
  readonly from: Point;
  readonly way: Point;
}

/** What grout lines askew to the sheet make of the hand that begins a joint: on a wall it slides along it to the nearest one, elsewhere it goes on to
 *  one, or to where two cross. Not where two walls meet, and not past a guide that is nearer.
 *  Example: a line at 45 degrees through [0, 0], the hand at [1000, 1020] -> [1010, 1010]; on a wall at y 1020 -> [1020, 1020] */
function askewCatch(near: GroutCatches['near']): GroutCatches['askew'] {
  return ({ at, reachMm }, upright, skew) => {
    const walls = upright.filter(({ onSide }) => onSide);
    if (walls.length > 1 || (skew !== null && skew.side.offMm > 0)) return null;
    const lines = near(at).filter(({ way }) => Math.min(Math.abs(way[0]), Math.abs(way[1])) > UNIT_SLACK);
    const [wall] = walls;
    if (skew !== null) {
      return lineMet(lines, { from: skew.at, way: pointDirection(skew.side.a, skew.side.b) }, reachMm);
    }
    if (wall !== undefined) return lineMet(lines, wallLed(wall, at), reachMm);
    const guidesMm = upright.map((guide) => Math.abs(guide.at - at[guide.axis]) / sideWeight);
    return onFloor(lines, at, Math.min(reachMm, ...guidesMm));
  };
}

function wallLed(wall: CatchCoordinate, [x, y]: Point): LineLed {
  return wall.axis === 0 ? { from: [wall.at, y], way: [0, 1] } : { from: [x, wall.at], way: [1, 0] };
}

function onFloor(lines: readonly CatchGrout[], at: Point, reachMm: number): GroutCaught | null {
  const feet = lines.flatMap((line) => lineMet([line], { from: at, way: [-line.way[1], line.way[0]] }, reachMm) ?? []);
  const [nearest] = feet.sort((a, b) => pointDistance(a.at, at) - pointDistance(b.at, at));
  const [line] = nearest?.lines ?? [];
  if (nearest === undefined || line === undefined) return null;
  const others = lines.filter((other) => other !== line);
  const crossing = lineMet(others, { from: nearest.at, way: line.way }, reachMm);
  return crossing === null ? nearest : { at: crossing.at, lines: [line, ...crossing.lines] };
}

/** Where the nearest of some lines is met along another, within reach. */
function lineMet(lines: readonly CatchGrout[], { from, way }: LineLed, reachMm: number): GroutCaught | null {
  let best: GroutCaught | null = null;
  let least = reachMm;
  for (const line of lines) {
    const run = runTo(from, way, line);
    if (!(Math.abs(run) <= least)) continue;
    least = Math.abs(run);
    best = { at: [from[0] + way[0] * run, from[1] + way[1] * run], lines: [line] };
  }
  return best;
}
