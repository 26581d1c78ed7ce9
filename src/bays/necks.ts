import { type Point, pointDistance, vectorLength } from '../geometry/point.ts';
import { boxOf, type Region, type Ring } from '../geometry/ring.ts';
import { edgesInside, type Interval } from '../geometry/scanline.ts';
import { segmentDistance, segmentNearest } from '../geometry/segment.ts';
import { limitExceeded } from '../plan/exceed.ts';
import type { LayoutWishes } from '../plan/plan.ts';
import { defaults, rules } from '../plan/reference.ts';
import type { Budget } from './budget.ts';
import { frameOf } from './frame.ts';
import { longerSide } from './measure.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';
import type { Part } from './part.ts';

/** How far to either side of a passage its widths are compared, mm. */
const NECK_REACH_MM = rules.neckReachMm.value;

/** Passages narrower than this are gaps of drawing, mm. */
const LEAST_NECK_MM = 50;

/** Sections are taken this far to either side of each corner, where the width may jump, mm. */
const BESIDE_CORNER_MM = 0.5;

/** A chord across floor from a corner that turns in, to another such corner or square to a wall. Places in mm. */
export interface Chord {
  readonly from: Point;
  readonly to: Point;
  readonly widthMm: number;
  /** Numbers of the rings that its ends lie on: 0 the outline, then the holes that count as sides. */
  readonly rings: readonly [number, number];
}

/** A chord at most `neckRatio` of the clear width on both sides. */
export interface Neck extends Chord {
  /** The greatest clear width within 3 m, on the side where that is less, mm. */
  readonly besideMm: number;
}

type NeckRules = Pick<LayoutWishes, 'neckRatio' | 'columnMm'>;

/** The necks of a region, the narrowest first; none where the rule is off, or where no search is left to find them. */
export function regionNecks(region: Region, { neckRatio, columnMm }: NeckRules, budget: Budget): Neck[] {
  if (neckRatio <= 0 || budget.isSpent) return [];
  const rings = regionSides(region, columnMm);

  // Nowhere is the floor wider than from corner to corner of its box.
  const { minX, minY, maxX, maxY } = boxOf(region.outline);
  const mostMm = neckRatio * vectorLength(maxX - minX, maxY - minY);
  const edges = ringEdges(rings);
  return chordsOf(rings, edges, mostMm, budget).flatMap((chord): Neck[] => {
    if (budget.isSpent) return [];
    const besideMm = widthBeside(edges, chord, chord.widthMm / neckRatio, budget);
    return besideMm === null ? [] : [{ ...chord, besideMm }];
  });
}

/** All chords of a region from corners that turn in, the shortest first. */
export function regionChords(region: Region, { columnMm }: NeckRules, budget: Budget): Chord[] {
  const rings = regionSides(region, columnMm);
  return chordsOf(rings, ringEdges(rings), Infinity, budget);
}

/** The rings between which floor narrows. A hole no larger than a column that needs no joint is passed over, as columns are; not one that
 *  is only because the user lets cores stand inside bays. */
function regionSides({ outline, holes }: Region, columnMm: number): Ring[] {
  const most = Math.min(columnMm, defaults.columnMm.value);
  return [outline, ...holes.filter((hole) => limitExceeded(longerSide(hole), most))];
}

/** A joint taken away this near to the middle of a passage was the passage's, mm. */
const TAKEN_MM = rules.takenJointReachMm.value;

/** Whether the user took the joint at this passage away. */
export function neckBarred(part: Pick<Part, 'noJoint' | 'keepClear'>, neck: Chord): boolean {
  const middle: Point = [(neck.from[0] + neck.to[0]) / 2, (neck.from[1] + neck.to[1]) / 2];
  const taken = part.noJoint.some((line) =>
    line.some((p, i) => i > 0 && segmentDistance(line[i - 1] as Point, p, middle) < TAKEN_MM),
  );
  return taken || part.keepClear.some((ring) => chordInside(ringEdges([ring]), neck.from, neck.to));
}

interface Place {
  readonly at: Point;
  readonly ring: number;
}

function cornersIn(ring: Ring): Point[] {
  return ring.filter((p, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    return cornerTurn(a, p, b) < -NOTCH_RAD;
  });
}

/** Chords no wider than `mostMm`, the shortest first. */
function chordsOf(rings: readonly Ring[], edges: readonly Edge[], mostMm: number, budget: Budget): Chord[] {
  const corners = rings.flatMap((own, ring) => cornersIn(own).map((at): Place => ({ at, ring })));
  const chords = corners.flatMap((corner) => {
    if (budget.isSpent) return [];
    budget.spend((corners.length + edges.length) * STEPS_PER_END);
    const ends = corners.filter((other) => other !== corner);
    for (const [ring, own] of rings.entries()) {
      for (const [a, b] of ringEdges([own])) {
        const { at, share } = segmentNearest(a, b, corner.at);
        if (share > 0 && share < 1) ends.push({ at, ring });
      }
    }
    // A passage is narrow at the corner: of all that lies over against it only the nearest can be its other side.
    return ends
      .map(
        ({ at, ring }): Chord => ({
          from: corner.at,
          to: at,
          widthMm: pointDistance(corner.at, at),
          rings: [corner.ring, ring],
        }),
      )
      .filter(({ widthMm }) => widthMm >= LEAST_NECK_MM && widthMm <= mostMm)
      .sort((p, q) => p.widthMm - q.widthMm)
      .slice(0, NEAREST_ENDS)
      .filter(({ from, to }) => chordInside(edges, from, to));
  });
  return chords.sort((p, q) => p.widthMm - q.widthMm);
}

const NEAREST_ENDS = 10;

/** An end of a chord is looked for on every wall, and the nearest are followed past every wall. */
const STEPS_PER_END = 2;

type Edge = readonly [Point, Point];

function ringEdges(rings: readonly Ring[]): Edge[] {
  return rings.flatMap((ring) => ring.map((p, i): Edge => [p, ring[(i + 1) % ring.length] as Point]));
}

/** Whether the chord runs inside the edges of rings all the way. */
function chordInside(edges: readonly Edge[], from: Point, to: Point): boolean {
  const frame = frameOf(Math.atan2(to[1] - from[1], to[0] - from[0]));
  const [x0, y] = frame.toFrame(from);
  const [x1] = frame.toFrame(to);
  const turned = edges.map(([a, b]): Edge => [frame.toFrame(a), frame.toFrame(b)]);
  // Just beside the chord on both sides: it may start at a corner and follow no wall.
  return [-BESIDE_CORNER_MM, BESIDE_CORNER_MM].every((off) =>
    edgesInside(turned, 1, y + off).some(([a, b]) => a <= x0 + CHORD_END_MM && b >= x1 - CHORD_END_MM),
  );
}

/** What a chord may lack at its ends beside a skew wall, mm. */
const CHORD_END_MM = 10;

/** The greatest clear width of the floor on both sides of a chord, followed away from it within reach; of the two the lesser, mm; null where
 *  that is under `leastMm`. */
function widthBeside(
  edges: readonly Edge[],
  { from, to, widthMm }: Chord,
  leastMm: number,
  budget: Budget,
): number | null {
  const frame = frameOf(Math.atan2(to[1] - from[1], to[0] - from[0]) - Math.PI / 2);
  const [at, start] = frame.toFrame(from);
  const near = edges
    .map(([a, b]): Edge => [frame.toFrame(a), frame.toFrame(b)])
    .filter(([a, b]) => Math.min(a[0], b[0]) <= at + NECK_REACH_MM && Math.max(a[0], b[0]) >= at - NECK_REACH_MM);
  budget.spend(edges.length * STEPS_PER_END);
  let least = Infinity;
  for (const side of [1, -1]) {
    least = Math.min(least, widestOn(near, at, side, [start, start + widthMm], budget));
    if (least < leastMm) return null;
  }
  return least;
}

/** Widths are taken across every wall near by. */
const STEPS_PER_WALL = 0.1;
const STEPS_PER_WIDTH = 3;

function widestOn(edges: readonly Edge[], at: number, side: number, start: Interval, budget: Budget): number {
  const offsets = edges
    .map(([p]) => (p[0] - at) * side)
    .filter((d) => d > -BESIDE_CORNER_MM && d < NECK_REACH_MM)
    .flatMap((d) => [d - BESIDE_CORNER_MM, d + BESIDE_CORNER_MM]);
  const places = [...offsets, NECK_REACH_MM].filter((d) => d > 0 && d <= NECK_REACH_MM).sort((a, b) => a - b);
  let open: Interval[] = [start];
  let widest = 0;
  for (const [i, d] of places.entries()) {
    if (open.length === 0) break;
    if (i > 0 && d - (places[i - 1] as number) < BESIDE_CORNER_MM) continue;
    const clear = edgesInside(edges, 0, at + side * d);
    budget.spend(edges.length * STEPS_PER_WALL + clear.length * STEPS_PER_WIDTH);
    open = clear.filter(([a, b]) => open.some(([p, q]) => a < q && b > p));
    widest = Math.max(widest, ...open.map(([a, b]) => b - a));
  }
  return widest;
}
