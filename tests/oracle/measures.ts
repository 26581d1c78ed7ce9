import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import {
  at,
  between,
  cross,
  distance,
  distanceToSegment,
  distanceToSegments,
  hull,
  type Segment,
  segments,
  signedArea,
} from './planar.ts';

/** Length and width of a ring, and its pockets, by the definitions of the contract alone. Lengths in mm. */

export interface Sides {
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** Rectangles flush with a side of the hull. */
function rectangles(ring: Ring): Sides[] {
  const corners = hull(ring);
  return segments(corners)
    .filter(([a, b]) => distance(a, b) > 0)
    .map(([a, b]) => {
      const d = distance(a, b);
      const u: Point = [(b[0] - a[0]) / d, (b[1] - a[1]) / d];
      const along = corners.map((p) => p[0] * u[0] + p[1] * u[1]);
      const across = corners.map((p) => p[1] * u[0] - p[0] * u[1]);
      const one = Math.max(...along) - Math.min(...along);
      const two = Math.max(...across) - Math.min(...across);
      return { lengthMm: Math.max(one, two), widthMm: Math.min(one, two) };
    });
}

/** Sides of the least-area rectangle; among those within 0.2 % of the least area the longest. Where a rectangle lies
 *  on the brink of the 0.2 % both answers are given. */
export function leastRectangle(ring: Ring): Sides[] {
  const all = rectangles(ring);
  const least = Math.min(...all.map((r) => r.lengthMm * r.widthMm));
  return [0.0019, 0.002, 0.0021].map((share) =>
    all
      .filter((r) => r.lengthMm * r.widthMm <= least * (1 + share))
      .reduce((best, r) => (r.lengthMm > best.lengthMm ? r : best)),
  );
}

/** Whether a pocket is a notch; `unsure` where the words of the rule allow both readings. */
export type Verdict = 'none' | 'fault' | 'unsure';

const gatherMm = 300;
const turnDeg = 20;

/** Deepest fault among the pockets of a ring. A figure within 2 % of its limit is left open. */
export function pocketVerdict(ring: Ring, reentrantMm: number): Verdict {
  const path = signedArea(ring) > 0 ? ring : [...ring].reverse();
  const onHull = new Set(hull(path).map((p) => `${p[0]} ${p[1]}`));
  const isOnHull = (p: Point) => onHull.has(`${p[0]} ${p[1]}`);
  const start = path.findIndex(isOnHull);
  const turned = [...path.slice(start), ...path.slice(0, start)];
  let verdict: Verdict = 'none';
  let pocket: Point[] = [at(turned, 0)];
  for (const p of [...turned.slice(1), at(turned, 0)]) {
    pocket.push(p);
    if (!isOnHull(p)) continue;
    const found = pocket.length > 2 ? onePocket(pocket, reentrantMm) : 'none';
    if (found === 'fault' || (found === 'unsure' && verdict === 'none')) verdict = found;
    if (verdict === 'fault') return verdict;
    pocket = [p];
  }
  return verdict;
}

function onePocket(pocket: readonly Point[], reentrantMm: number): Verdict {
  const mouth: Segment = [at(pocket, 0), at(pocket, -1)];
  const depth = Math.max(...pocket.map((p) => distanceToSegment(p, mouth)));
  if (depth < reentrantMm * 0.98 - 0.5) return 'none';
  const [low, high] = gatheredTurns(pocket);
  if (high < turnDeg * 0.98) return 'none';
  return low > turnDeg * 1.02 && depth > reentrantMm * 1.02 + 0.5 ? 'fault' : 'unsure';
}

/** Largest turn into the bay within 300 mm of ring, degrees: net of turns the other way, and gross. */
function gatheredTurns(pocket: readonly Point[]): readonly [number, number] {
  const inner = pocket.slice(1, -1).map((p, i) => {
    const a = at(pocket, i);
    const b = at(pocket, i + 2);
    const dot = (p[0] - a[0]) * (b[0] - p[0]) + (p[1] - a[1]) * (b[1] - p[1]);
    return { p, into: (-Math.atan2(cross(a, p, b), dot) * 180) / Math.PI };
  });
  let net = 0;
  let gross = 0;
  for (let i = 0; i < inner.length; i++) {
    let run = 0;
    let netHere = 0;
    let grossHere = 0;
    for (let k = i; k < inner.length && run <= gatherMm; k++) {
      const turn = at(inner, k);
      netHere += turn.into;
      grossHere += Math.max(0, turn.into);
      net = Math.max(net, netHere);
      gross = Math.max(gross, grossHere);
      const next = inner[k + 1];
      if (next === undefined) break;
      run += distance(turn.p, next.p);
    }
  }
  return [net, gross];
}

/** The ring with each stretch along a column replaced by the straight line that cuts the column's notch off. */
export function ringWithoutNotches(ring: Ring, columns: readonly Ring[]): Ring {
  const touching = columns.map(segments);
  // along the side of one column: a wall from column to column has its ends on columns as well
  const along = (p: Point, q: Point) =>
    touching.some((sides) => [p, q, between(p, q, 0.5)].every((r) => distanceToSegments(r, sides) < 0.5));
  const keep = ring.filter((p, i) => !(along(at(ring, i - 1), p) && along(p, at(ring, i + 1))));
  return keep.length >= 3 ? keep : ring;
}
