import { edgesWalk } from '../geometry/chain-walk.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import { onGrid } from '../geometry/tolerance.ts';
import type { EdgeLine, JointLine } from '../plan/analysis.ts';
import { rules } from '../plan/reference.ts';

/** Edge strip that is laid in one go: along walls and round things, past the ends of movement joints, from doorway to doorway. */
export interface StripRun {
  /** All round, where it closes. */
  readonly lengthMm: number;
  /** How far from its start it turns a corner, rising. A curve of many small turns has none. */
  readonly cornersMm: readonly number[];
  /** It ends where it began. It then begins where its ends lie best over each other: in the middle of its longest straight. */
  readonly closes: boolean;
}

/** The edges of one room chained to runs. The strip goes on where a movement joint meets the wall; it is cut with the screed at a joint of the building.
 *  @param buildingJoints joints of the building   @param overlapMm of the ends of a run that closes */
export function stripRuns(
  edges: readonly Pick<EdgeLine, 'line'>[],
  buildingJoints: readonly Pick<JointLine, 'line'>[],
  overlapMm: number,
): readonly StripRun[] {
  const points: Point[] = [];
  const numbers = new Map<string, number>();
  const number = (point: Point) => {
    const known = numbers.get(placeKey(point));
    if (known !== undefined) return known;
    numbers.set(placeKey(point), points.length);
    return points.push(point) - 1;
  };
  const sides = edges.flatMap(({ line }) =>
    line.slice(1).flatMap((to, i) => {
      const side = [number(line[i] as Point), number(to)] as const;
      return side[0] === side[1] ? [] : [side];
    }),
  );
  const cuts = new Set(
    buildingJoints.flatMap(({ line }) => [line[0], line.at(-1)].map((end) => end && numbers.get(placeKey(end)))),
  );
  return edgesWalk(sides, (point) => cuts.has(point)).map((walk) =>
    runOf(
      walk.map((at) => points[at] as Point),
      overlapMm,
    ),
  );
}

function placeKey([x, y]: Point): string {
  return `${onGrid(x)} ${onGrid(y)}`;
}

function runOf(line: readonly Point[], overlapMm: number): StripRun {
  const first = line[0] as Point;
  const closes = line.length > 2 && placeKey(first) === placeKey(line.at(-1) as Point);
  let lengthMm = 0;
  const cornersMm: number[] = closes && isCorner(line.at(-2) as Point, first, line[1] as Point) ? [0] : [];
  for (let i = 1; i < line.length; i++) {
    lengthMm += pointDistance(line[i - 1] as Point, line[i] as Point);
    const next = line[i + 1];
    if (next && isCorner(line[i - 1] as Point, line[i] as Point, next)) cornersMm.push(lengthMm);
  }
  return closes
    ? { lengthMm, cornersMm: cornersFrom(cornersMm, lengthMm, overlapMm), closes }
    : { lengthMm, cornersMm, closes };
}

/** Corners counted from where a closed run begins: half an overlap before the middle of its longest straight. */
function cornersFrom(corners: readonly number[], lengthMm: number, overlapMm: number): readonly number[] {
  const straights = corners.map((from, i) => ({
    from,
    mm: (corners[i + 1] ?? lengthMm + (corners[0] as number)) - from,
  }));
  const longest = straights.reduce((best, each) => (each.mm > best.mm ? each : best), { from: 0, mm: 0 });
  const start = longest.from + (longest.mm - overlapMm) / 2;
  return corners.map((at) => (((at - start) % lengthMm) + lengthMm) % lengthMm).sort((a, b) => a - b);
}

function isCorner(before: Point, at: Point, after: Point): boolean {
  const [ax, ay] = [at[0] - before[0], at[1] - before[1]];
  const [bx, by] = [after[0] - at[0], after[1] - at[1]];
  const turnDeg = (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
  return turnDeg >= rules.reentrantTurnDeg.value;
}
