import { type Point, pointDistance } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { edgesInside, type Interval } from '../geometry/scanline.ts';
import { segmentDistance, segmentNearest } from '../geometry/segment.ts';
import { rules } from '../plan/reference.ts';
import { frameOf } from './frame.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';
import type { Part } from './part.ts';

/** How far to either side of a passage its widths are compared, mm. */
const NECK_REACH_MM = rules.neckReachMm.value;

/** Passages narrower than this are gaps of drawing, mm. */
const LEAST_NECK_MM = 50;

/** Sections are taken this far to either side of each corner, where the width may jump, mm. */
const BESIDE_CORNER_MM = 0.5;

export interface Neck {
  readonly from: Point;
  readonly to: Point;
  readonly widthMm: number;
}

/** The narrowest passage of a region: a chord from a corner that turns in to another such corner or square to a wall, at most
 *  `neckRatio` of the clear width on both sides within 3 m. Null where there is none, or the rule is off.
 *  @param skip passages to leave out */
export function regionNeck(region: Region, neckRatio: number, skip: (neck: Neck) => boolean): Neck | null {
  if (neckRatio <= 0) return null;
  const rings = [region.outline, ...region.holes];
  const corners = rings.flatMap(cornersIn);
  if (corners.length === 0) return null;
  const candidates = chordsOf(rings, corners).sort((a, b) => a.widthMm - b.widthMm);
  for (const neck of candidates) {
    if (isNeck(rings, neck, neckRatio) && !skip(neck)) return neck;
  }
  return null;
}

/** A joint taken away this near to the middle of a passage was the passage's, mm. */
const TAKEN_MM = 300;

/** Whether the user took the joint at this passage away. */
export function neckBarred(part: Pick<Part, 'noJoint' | 'keepClear'>, neck: Neck): boolean {
  const middle: Point = [(neck.from[0] + neck.to[0]) / 2, (neck.from[1] + neck.to[1]) / 2];
  const taken = part.noJoint.some((line) =>
    line.some((p, i) => i > 0 && segmentDistance(line[i - 1] as Point, p, middle) < TAKEN_MM),
  );
  return taken || part.keepClear.some((ring) => chordInside([ring], neck.from, neck.to));
}

function cornersIn(ring: Ring): Point[] {
  return ring.filter((p, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    return cornerTurn(a, p, b) < -NOTCH_RAD;
  });
}

function chordsOf(rings: readonly Ring[], corners: readonly Point[]): Neck[] {
  const edges = ringEdges(rings);
  return corners.flatMap((corner) => {
    const ends = corners.filter((other) => other !== corner);
    for (const [a, b] of edges) {
      const { at, share } = segmentNearest(a, b, corner);
      if (share > 0 && share < 1) ends.push(at);
    }
    // A passage is narrow at the corner: of all that lies over against it only the nearest can be its other side.
    return ends
      .map((to): Neck => ({ from: corner, to, widthMm: pointDistance(corner, to) }))
      .filter(({ widthMm }) => widthMm >= LEAST_NECK_MM)
      .sort((p, q) => p.widthMm - q.widthMm)
      .slice(0, NEAREST_ENDS)
      .filter(({ from, to }) => chordInside(rings, from, to));
  });
}

const NEAREST_ENDS = 10;

type Edge = readonly [Point, Point];

function ringEdges(rings: readonly Ring[]): Edge[] {
  return rings.flatMap((ring) => ring.map((p, i): Edge => [p, ring[(i + 1) % ring.length] as Point]));
}

/** Whether the chord runs inside the rings all the way. */
function chordInside(rings: readonly Ring[], from: Point, to: Point): boolean {
  const frame = frameOf(Math.atan2(to[1] - from[1], to[0] - from[0]));
  const [x0, y] = frame.toFrame(from);
  const [x1] = frame.toFrame(to);
  const turned = ringEdges(rings).map(([a, b]): Edge => [frame.toFrame(a), frame.toFrame(b)]);
  // Just beside the chord on both sides: it may start at a corner and follow no wall.
  return [-BESIDE_CORNER_MM, BESIDE_CORNER_MM].every((off) =>
    edgesInside(turned, 1, y + off).some(([a, b]) => a <= x0 + CHORD_END_MM && b >= x1 - CHORD_END_MM),
  );
}

/** What a chord may lack at its ends beside a skew wall, mm. */
const CHORD_END_MM = 10;

function isNeck(rings: readonly Ring[], neck: Neck, ratio: number): boolean {
  const frame = frameOf(Math.atan2(neck.to[1] - neck.from[1], neck.to[0] - neck.from[0]) - Math.PI / 2);
  const [at, from] = frame.toFrame(neck.from);
  const near = ringEdges(rings)
    .map(([a, b]): Edge => [frame.toFrame(a), frame.toFrame(b)])
    .filter(([a, b]) => Math.min(a[0], b[0]) <= at + NECK_REACH_MM && Math.max(a[0], b[0]) >= at - NECK_REACH_MM);
  const start: Interval = [from, from + neck.widthMm];
  const wanted = neck.widthMm / ratio;
  return [1, -1].every((side) => widthReaches(near, at, side, start, wanted));
}

/** Whether the floor on one side of a chord, followed away from it, becomes as wide as wanted within reach. */
function widthReaches(edges: readonly Edge[], at: number, side: number, start: Interval, wanted: number): boolean {
  const offsets = edges
    .map(([p]) => (p[0] - at) * side)
    .filter((d) => d > -BESIDE_CORNER_MM && d < NECK_REACH_MM)
    .flatMap((d) => [d - BESIDE_CORNER_MM, d + BESIDE_CORNER_MM]);
  const places = [...offsets, NECK_REACH_MM].filter((d) => d > 0 && d <= NECK_REACH_MM).sort((a, b) => a - b);
  let open: Interval[] = [start];
  for (const [i, d] of places.entries()) {
    if (i > 0 && d - (places[i - 1] as number) < BESIDE_CORNER_MM) continue;
    const next = edgesInside(edges, 0, at + side * d).filter(([a, b]) => open.some(([p, q]) => a < q && b > p));
    if (next.length === 0) return false;
    if (next.some(([a, b]) => b - a >= wanted)) return true;
    open = next;
  }
  return false;
}
