import { boxIndexOf } from '../geometry/box-index.ts';
import { type Point, pointDistance, vectorLength } from '../geometry/point.ts';
import { boxAround, boxOf, type Ring, ringContains } from '../geometry/ring.ts';
import { segmentDistance, segmentNearest } from '../geometry/segment.ts';
import { limitExceeded } from '../plan/exceed.ts';
import type { Doorway } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';

/** What a doorway adds to the floor. Places in mm. */
export interface DoorwayFloor {
  /** The floor of the opening between the rooms; empty where they share the edge that the line lies on. */
  readonly floor: Ring;
  /** Its joints, jamb to jamb: the doorway's own, and one at the face of a room whose tongue would be too deep. */
  readonly joints: readonly DoorwayJoint[];
  /** The lines of the two jambs, from room to room. */
  readonly jambs: readonly [readonly [Point, Point], readonly [Point, Point]];
  /** Numbers of the rooms on either side; the same twice where the opening joins a room to itself. */
  readonly rooms: readonly [number, number];
}

export interface DoorwayJoint {
  readonly line: readonly Point[];
  /** Depth of the tongue of floor that the joint parts from its room, mm; null for the doorway's own joint. */
  readonly tongueMm: number | null;
}

export interface DoorwayReach {
  /** The widest first; several where something stands in the opening. */
  readonly joins: readonly DoorwayFloor[];
  /** Numbers of all rooms within reach of the line. */
  readonly reached: readonly number[];
}

export interface RoomRings {
  readonly room: number;
  readonly rings: readonly Ring[];
}

/** The tongue of floor between a doorway's joint and the room is a notch beyond this, mm. */
const TONGUE_MM = rules.doorwayTongueMm.value;

/** Where openings meet or overlap, with no wall between them, and their joints do not: a joint from the end of the one to the other, along
 *  what would be their jamb, so that floor passes between them nowhere.
 *  @param doorways by doorway: the openings that it makes */
export function jointsBetween(
  doorways: readonly (readonly DoorwayFloor[])[],
): { readonly doorway: number; readonly line: readonly [Point, Point] }[] {
  const openings = doorways.flatMap((joins, doorway) => joins.map((join) => ({ doorway, join })));
  const index = boxIndexOf(openings.map(({ join }) => boxOf(join.joints.flatMap(({ line }) => line))));
  return openings.flatMap(({ doorway, join }) => {
    const near = index.near(boxAround(boxOf(join.floor), LEAST_SPAN_MM)).flatMap((i) => openings[i] ?? []);
    // Ends of other joints that lie in this opening or on its side, each brought to this one's joint.
    return near.flatMap((other) => {
      if (other.join === join) return [];
      const ends = other.join.joints.flatMap(({ line }) => [line[0] as Point, line[line.length - 1] as Point]);
      return ends
        .filter((end) => ringDistance(join.floor, end) <= LEAST_SPAN_MM)
        .map((end) => ({ doorway, line: [end, nearestOn(join, end)] as const }))
        .filter(({ line: [a, b] }) => pointDistance(a, b) > 0);
    });
  });
}

/** Nought inside the ring. */
function ringDistance(ring: Ring, p: Point): number {
  if (ringContains(ring, p)) return 0;
  return Math.min(...ring.map((a, i) => segmentDistance(a, ring[(i + 1) % ring.length] as Point, p)));
}

function nearestOn({ joints }: DoorwayFloor, p: Point): Point {
  const places = joints.flatMap(({ line }) => line.slice(1).map((b, i) => segmentNearest(line[i] as Point, b, p)));
  return places.reduce((best, place) => (place.distance < best.distance ? place : best)).at;
}

/** Spans of less than this across an opening are no floor of their own, mm. */
const LEAST_SPAN_MM = 1;

interface Side {
  readonly room: number;
  /** Line of the room's edge over the slab, as s at its start and end. */
  readonly from: number;
  readonly to: number;
}

interface Slab {
  readonly t0: number;
  readonly t1: number;
  readonly low: Side;
  readonly high: Side;
}

/** The floor between the rooms along the doorway's line: at each place along the line the gap nearest to it that has a room within
 *  wallMm + 100 mm on either side. Works in t (along the line) and s (square to it). */
export function doorwayReach(doorway: Doorway, rooms: readonly RoomRings[]): DoorwayReach {
  const [a, b] = doorway.line;
  const width = vectorLength(b[0] - a[0], b[1] - a[1]);
  if (width < LEAST_SPAN_MM) return { joins: [], reached: [] };
  const u: Point = [(b[0] - a[0]) / width, (b[1] - a[1]) / width];
  const local = (p: Point): Point => [
    (p[0] - a[0]) * u[0] + (p[1] - a[1]) * u[1],
    (p[1] - a[1]) * u[0] - (p[0] - a[0]) * u[1],
  ];
  const world = ([t, s]: Point): Point => [a[0] + t * u[0] - s * u[1], a[1] + t * u[1] + s * u[0]];
  const reach = doorway.wallMm + rules.doorwayReachMm.value;
  const sides = rooms.map(({ room, rings }) => ({ room, rings: rings.map((ring) => ring.map(local)) }));
  const breaks = breaksAlong(sides, width, reach);
  const reached = new Set<number>();
  const slabs: Slab[] = [];
  for (let i = 0; i + 1 < breaks.length; i++) {
    const slab = slabAcross(sides, breaks[i] as number, breaks[i + 1] as number, reach, reached);
    if (slab) slabs.push(slab);
  }
  const joins = stripsOf(slabs).map((strip) => stripFloor(strip, doorway.leaf, world));
  return { joins, reached: [...reached].sort((p, q) => p - q) };
}

function breaksAlong(sides: readonly RoomRings[], width: number, reach: number): number[] {
  const breaks = [0, width];
  for (const { rings } of sides) {
    for (const ring of rings) {
      for (const [t, s] of ring) if (t > 0 && t < width && Math.abs(s) <= 2 * reach) breaks.push(t);
    }
  }
  breaks.sort((p, q) => p - q);
  return breaks.filter((t, i) => i === 0 || t - (breaks[i - 1] as number) >= LEAST_SPAN_MM / 10 || t === width);
}

/** The gap between two rooms over one slab of the line, where no corner of a room lies inside the slab. */
function slabAcross(
  sides: readonly RoomRings[],
  t0: number,
  t1: number,
  reach: number,
  reached: Set<number>,
): Slab | null {
  const middle = (t0 + t1) / 2;
  const walls: (Side & { at: number; opens: boolean })[] = [];
  for (const { room, rings } of sides) {
    const hits: { at: number; from: number; to: number }[] = [];
    for (const ring of rings) {
      for (let i = 0; i < ring.length; i++) {
        const p = ring[i] as Point;
        const q = ring[(i + 1) % ring.length] as Point;
        if (p[0] > middle === q[0] > middle) continue;
        const sAt = (t: number) => p[1] + ((q[1] - p[1]) * (t - p[0])) / (q[0] - p[0]);
        hits.push({ at: sAt(middle), from: sAt(t0), to: sAt(t1) });
      }
    }
    hits.sort((p, q) => p.at - q.at);
    hits.forEach((hit, i) => {
      walls.push({ room, ...hit, opens: i % 2 === 0 });
      const other = hits[i ^ 1];
      if (other && Math.min(hit.at, other.at) <= reach && Math.max(hit.at, other.at) >= -reach) reached.add(room);
    });
  }
  walls.sort((p, q) => p.at - q.at || Number(p.opens) - Number(q.opens));
  let best: Slab | null = null;
  let nearest = Infinity;
  let depth = 0;
  walls.forEach((wall, i) => {
    depth += wall.opens ? 1 : -1;
    const next = walls[i + 1];
    if (depth !== 0 || !next || wall.at < -reach || next.at > reach) return;
    const off = Math.max(0, wall.at, -next.at);
    if (off < nearest) {
      nearest = off;
      best = { t0, t1, low: wall, high: next };
    }
  });
  return best;
}

/** Runs of slabs that follow each other, the longest first. */
function stripsOf(slabs: readonly Slab[]): Slab[][] {
  const runs: Slab[][] = [];
  for (const slab of slabs) {
    const run = runs[runs.length - 1];
    const last = run?.[run.length - 1];
    if (run && last && slab.t0 - last.t1 < LEAST_SPAN_MM && touches(last, slab)) run.push(slab);
    else runs.push([slab]);
  }
  const length = (run: readonly Slab[]) => (run[run.length - 1]?.t1 ?? 0) - (run[0]?.t0 ?? 0);
  return runs.filter((run) => length(run) >= LEAST_SPAN_MM).sort((a, b) => length(b) - length(a));
}

function touches(a: Slab, b: Slab): boolean {
  return Math.max(a.low.to, b.low.from) <= Math.min(a.high.to, b.high.from) + LEAST_SPAN_MM;
}

function stripFloor(strip: readonly Slab[], hasLeaf: boolean, world: (p: Point) => Point): DoorwayFloor {
  const low = strip.flatMap(({ t0, t1, low: side }): Point[] => [
    [t0, side.from],
    [t1, side.to],
  ]);
  const high = strip.flatMap(({ t0, t1, high: side }): Point[] => [
    [t0, side.from],
    [t1, side.to],
  ]);
  const first = strip[0] as Slab;
  const last = strip[strip.length - 1] as Slab;
  const from = Math.max(...low.map((p) => p[1]));
  const to = Math.min(...high.map((p) => p[1]));
  const across = (at: number): Point[] => [
    [first.t0, at],
    [last.t1, at],
  ];
  const crooked = Math.abs(from) <= Math.abs(to) ? low : high;
  const joints =
    from <= to
      ? jointPlaces(from, to, hasLeaf).map(({ at, tongueMm }) => ({ line: across(at), tongueMm }))
      : [{ line: crooked, tongueMm: null }];
  const thick = Math.max(...high.map((p, i) => p[1] - (low[i] as Point)[1]));
  return {
    floor: thick < LEAST_SPAN_MM ? [] : [...low, ...[...high].reverse()].map(world),
    joints: joints.map(({ line, tongueMm }) => ({ line: line.map(world), tongueMm })),
    jambs: [
      [world(low[0] as Point), world(high[0] as Point)],
      [world(low[low.length - 1] as Point), world(high[high.length - 1] as Point)],
    ],
    rooms: [first.low.room, first.high.room],
  };
}

/** Where joints run across an opening whose rooms end at `from` and `to`, mm from the doorway's line. The joint lies under the leaf, or as near to
 *  the line as the opening goes. A tongue too deep to be left to its room is parted from it by a second joint at the room's face: the
 *  joint moved there would leave the other room a tongue that is deeper still. Without a leaf, joints at both faces do without one between.
 *  Source: sources.json#doorway-tongue. Example: from -40 to 460 -> 0 and 460 */
function jointPlaces(
  from: number,
  to: number,
  hasLeaf: boolean,
): { readonly at: number; readonly tongueMm: number | null }[] {
  const own = Math.min(Math.max(0, from), to);
  const faces = [from, to]
    .map((at) => ({ at, tongueMm: Math.abs(at - own) }))
    .filter(({ tongueMm }) => limitExceeded(tongueMm, TONGUE_MM));
  return hasLeaf || faces.length < 2 ? [{ at: own, tongueMm: null }, ...faces] : faces;
}
