import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';
import { UNIT_SLACK } from '../../../geometry/tolerance.ts';
import { runTo, sideWeight } from '../catch.ts';
import type { AskewCatch, CatchCoordinate, CatchGrout, GroutCatch, GroutCaught } from '../catch-lines.ts';

/** A place on a line, and the unit vector along it. */
interface LineLed {
  readonly from: Point;
  readonly way: Point;
}

/** What grout lines askew to the sheet make of the hand that begins a joint: on a wall it slides along it to the nearest one, elsewhere it goes on to
 *  one, or to where two cross. Not where two walls meet, and not past a guide that is nearer.
 *  Example: a line at 45 degrees through [0, 0], the hand at [1000, 1020] -> [1010, 1010]; on a wall at y 1020 -> [1020, 1020] */
export function askewCatch(grout: GroutCatch): AskewCatch {
  return ({ at, reachMm }, upright, skew) => {
    const walls = upright.filter(({ onSide }) => onSide);
    if (walls.length > 1 || (skew !== null && skew.side.offMm > 0)) return null;
    const lines = grout(at).filter(({ way }) => Math.min(Math.abs(way[0]), Math.abs(way[1])) > UNIT_SLACK);
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
