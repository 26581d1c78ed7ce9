import { type Point, pointBetween } from '../../../geometry/point.ts';
import { type Box, boxOf, type Ring } from '../../../geometry/ring.ts';
import { ringOutward } from '../../../geometry/ring-edges.ts';
import { EQUAL_LENGTH_MM, SAME_LINE_MM } from '../../../geometry/tolerance.ts';
import { objectsMoved } from '../../../plan/edits/move.ts';
import { objectFind, objectPoints, objectRings, objectsOf } from '../../../plan/edits/objects.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { refusalWords } from '../choose/refusals.ts';
import { objectNoun } from '../nouns.ts';
import { type Dimension, type Dimensioned, tooLong, wayWords } from './dimension.ts';

type Way = Point;

const ways: readonly Way[] = [
  [-1, 0],
  [1, 0],
  [0, -1],
  [0, 1],
];

/** The free way from a face of a box, mm. */
interface Clear {
  readonly way: Way;
  readonly from: Point;
  readonly lengthMm: number;
}

/** The clear distances of a thing to the left, to the right, above and below: from the face of its upright box to the next wall, column or joinery
 *  that faces it. The least distance over the whole face counts, not the one from its middle. None where the thing touches, stands in a wall, or
 *  stands on no floor on that side. A typed distance moves the thing.
 *  Example: a column from x 1000 to 1300 in a room from x 0 to 4000 -> 1000 to the left, 2700 to the right */
export function clearDimensions(file: PlanFile, id: string): readonly Dimension[] {
  const found = objectFind(file, id);
  if (found === null) return [];
  const box = boxOf(objectPoints(found));
  const noun = objectNoun(file, id);
  const clears = ways.map((way) => clearTo(file, id, box, way));
  return clears.flatMap((clear): Dimension[] => {
    if (clear === null) return [];
    const { way, from, lengthMm } = clear;
    const opposite = clears.find((each) => each !== null && each.way[0] === -way[0] && each.way[1] === -way[1]);
    const ownMm = way[0] === 0 ? box.maxY - box.minY : box.maxX - box.minX;
    const mostMm = opposite ? lengthMm + ownMm + opposite.lengthMm : Infinity;
    return [
      {
        key: wayWords(way),
        name: `From ${noun} ${wayWords(way)}`,
        from,
        to: [from[0] + way[0] * lengthMm, from[1] + way[1] * lengthMm],
        lengthMm,
        aside: null,
        stems: [false, false],
        depthMm: Infinity,
        edit: (mm) => (mm > mostMm ? tooLong('The floor ends there', mostMm) : cleared(file, id, clear, mm)),
      },
    ];
  });
}

function cleared(file: PlanFile, id: string, { way, lengthMm }: Clear, mm: number): Dimensioned {
  const by = lengthMm - mm;
  const after = objectsMoved(file, [id], [way[0] * by, way[1] * by]);
  if (after === file && Math.abs(by) >= EQUAL_LENGTH_MM) {
    return { kind: 'refused', words: refusalWords('off-sheet') };
  }
  return { kind: 'done', step: { name: `Move ${objectNoun(file, id)}`, file: after } };
}

function clearTo(file: PlanFile, id: string, box: Box, way: Way): Clear | null {
  const sweep = sweepOf(box, way);
  let facing: Met | null = null;
  let turned: Met | null = null;
  const take = (ring: Ring, isWall: boolean, isHole: boolean) => {
    if (!sweepReaches(sweep, boxOf(ring))) return;
    const outward = ringOutward(ring);
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length] as Point;
      const [nx, ny] = outward[i] as Point;
      // The floor lies inside of an outline, outside of everything else.
      const towards = (nx * way[0] + ny * way[1]) * (isWall && !isHole ? 1 : -1) > 0;
      if (!towards && !isWall) return;
      const met = sweepMeets(sweep, a, b);
      if (met === null) return;
      if (towards && (facing === null || met.lengthMm < facing.lengthMm)) facing = met;
      if (!towards && (turned === null || met.lengthMm < turned.lengthMm)) turned = met;
    });
  };
  for (const found of objectsOf(file)) {
    if (found.object.id === id) continue;
    const isWall = found.list === 'rooms';
    if (!isWall && found.list !== 'columns' && found.list !== 'joinery') continue;
    for (const [i, ring] of objectRings(found).entries()) take(ring, isWall, i > 0);
  }
  return clearOf(sweep, way, facing, turned);
}

/** A wall seen from behind means that the thing is on no floor; rooms that share a side have one of each there. */
function clearOf({ start, low, high }: Sweep, way: Way, facing: Met | null, turned: Met | null): Clear | null {
  if (facing === null || facing.lengthMm < EQUAL_LENGTH_MM) return null;
  if (turned !== null && turned.lengthMm < facing.lengthMm - EQUAL_LENGTH_MM) return null;
  const middle = (low + high) / 2;
  const isOver = facing.low <= middle && middle <= facing.high;
  const across = isOver ? middle : (facing.low + facing.high) / 2;
  const from: Point = way[0] === 0 ? [across, start * way[1]] : [start * way[0], across];
  return { way, from, lengthMm: facing.lengthMm };
}

/** What a face of a box sweeps over: from its place along the way on, between two places across it. */
interface Sweep {
  readonly axis: 0 | 1;
  readonly sign: number;
  readonly start: number;
  readonly low: number;
  readonly high: number;
}

/** How far the sweep comes, and between which places across it meets. */
interface Met {
  readonly lengthMm: number;
  readonly low: number;
  readonly high: number;
}

function sweepOf({ minX, minY, maxX, maxY }: Box, [dx, dy]: Way): Sweep {
  if (dy === 0) return { axis: 0, sign: dx, start: dx < 0 ? -minX : maxX, low: minY, high: maxY };
  return { axis: 1, sign: dy, start: dy < 0 ? -minY : maxY, low: minX, high: maxX };
}

function sweepReaches({ axis, sign, start, low, high }: Sweep, { minX, minY, maxX, maxY }: Box): boolean {
  const [least, most] = axis === 0 ? [minY, maxY] : [minX, maxX];
  const far = axis === 0 ? Math.max(minX * sign, maxX * sign) : Math.max(minY * sign, maxY * sign);
  return far >= start - SAME_LINE_MM && most > low && least < high;
}

function sweepMeets({ axis, sign, start, low, high }: Sweep, a: Point, b: Point): Met | null {
  const other = axis === 0 ? 1 : 0;
  const [first, last] = a[other] <= b[other] ? [a, b] : [b, a];
  const [from, to] = [Math.max(low, first[other]), Math.min(high, last[other])];
  if (to - from <= SAME_LINE_MM) return null;
  const runMm = last[other] - first[other];
  const along = (across: number) => pointBetween(first, last, (across - first[other]) / runMm)[axis] * sign;
  const [p, q] = [along(from), along(to)];
  if (Math.max(p, q) < start - SAME_LINE_MM) return null;
  const lengthMm = Math.max(0, Math.min(p, q) - start);
  if (Math.abs(p - q) <= SAME_LINE_MM) return { lengthMm, low: from, high: to };
  const at = p < q ? from : to;
  return { lengthMm, low: at, high: at };
}
