import type { Point } from '../../src/geometry/point.ts';
import type { Region, Ring } from '../../src/geometry/ring.ts';
import type { Doorway, Plan } from '../../src/plan/plan.ts';
import {
  area,
  at,
  between,
  circle,
  cross,
  distance,
  inShape,
  lineSegments,
  type Segment,
  type Shape,
  segments,
  shapeLess,
  shapeMeet,
  signedArea,
} from './planar.ts';

/** The floor that a plan must give, worked out from the words of the contract by other means than the product's. */

export interface DoorFloor {
  readonly doorway: Doorway;
  /** Everything that may become floor: as wide as the line, wallMm + 100 mm to each side, off the rooms. */
  readonly reach: Shape;
  /** What lies between two different rooms. */
  readonly floor: Shape;
  /** Ids of the rooms that the opening meets on its two sides. */
  readonly joins: readonly string[];
  /** Whether rooms stand on both sides all along the opening, so that `floor` is the only reading. */
  readonly clear: boolean;
}

export interface ExpectedFloor {
  readonly rooms: readonly { readonly id: string; readonly shape: Shape }[];
  /** Rooms whose outline crosses itself, or lies over another room: their floor has no single reading. */
  readonly muddled: ReadonlySet<string>;
  /** Those among them whose own outline crosses itself. */
  readonly crossing: ReadonlySet<string>;
  readonly doors: readonly DoorFloor[];
  /** Columns, pipes and joinery built off the slab. */
  readonly obstacles: readonly Shape[];
}

export function expectedFloor(plan: Plan): ExpectedFloor {
  const rooms = plan.rooms.map((room) => ({
    id: room.id,
    shape: [{ outline: room.outline, holes: differentRings(room.holes) }],
  }));
  const muddled = new Set(rooms.filter(({ shape }) => isCrossing(shape)).map(({ id }) => id));
  const sound = rooms.filter(({ id }) => !muddled.has(id));
  const crossing: ReadonlySet<string> = new Set(muddled);
  for (const [i, one] of sound.entries()) {
    for (const two of sound.slice(i + 1)) {
      if (area(shapeMeet(one.shape, two.shape)) > 1000) muddled.add(one.id).add(two.id);
    }
  }
  const obstacles = [
    ...plan.columns.map((c) => c.outline),
    ...plan.pipes.map((p) => circle(p.centre, p.diameterMm)),
    ...plan.joinery.filter((j) => j.under === 'built-off-slab').map((j) => j.outline),
  ].map((outline) => [{ outline, holes: [] }]);
  const doors = plan.doorways
    .filter((d) => distance(d.line[0], d.line[1]) > 1)
    .map((doorway) => doorFloor(doorway, sound));
  return { rooms, crossing, muddled, doors, obstacles };
}

/** A hole drawn twice is one hole. */
function differentRings(holes: readonly Ring[]): Ring[] {
  const names = holes.map((ring) => [...ring].map(String).sort().join(' '));
  return holes.filter((_, i) => names.indexOf(names[i] ?? '') === i);
}

/** Whether any ring of a shape meets itself or another of its rings, other than at the corners that it joins. */
export function isCrossing(shape: Shape): boolean {
  if (shape.some((r) => Math.abs(signedArea(r.outline)) < 1)) return true;
  const sides = shape
    .flatMap((r) => [r.outline, ...r.holes].flatMap(segments))
    .map((side) => ({ side, x0: Math.min(side[0][0], side[1][0]), x1: Math.max(side[0][0], side[1][0]) }))
    .sort((a, b) => a.x0 - b.x0);
  for (const [i, one] of sides.entries()) {
    for (let k = i + 1; k < sides.length && at(sides, k).x0 <= one.x1 + 1; k++) {
      if (segmentsCross(one.side, at(sides, k).side)) return true;
    }
  }
  return false;
}

function segmentsCross([a, b]: Segment, [c, d]: Segment): boolean {
  const away = (o: Point, p: Point, q: Point) => Math.sign(cross(o, p, q));
  if (away(a, b, c) * away(a, b, d) < 0 && away(c, d, a) * away(c, d, b) < 0) return true;
  const touches = (p: Point, [s, t]: Segment) =>
    distance(p, s) > 1 && distance(p, t) > 1 && Math.abs(cross(s, t, p)) / distance(s, t) < 0.5 && onStretch(p, [s, t]);
  const ends = (one: Segment) => [one[0], between(one[0], one[1], 0.5), one[1]];
  return ends([a, b]).some((p) => touches(p, [c, d])) || ends([c, d]).some((p) => touches(p, [a, b]));
}

function onStretch(p: Point, [s, t]: Segment): boolean {
  return (p[0] - s[0]) * (t[0] - p[0]) + (p[1] - s[1]) * (t[1] - p[1]) > 0;
}

/** The doorway's own axes: x along its line, y through the wall. */
interface Axes {
  readonly to: (p: Point) => Point;
  readonly from: (p: Point) => Point;
}

function axesOf(doorway: Doorway): Axes {
  const [a, b] = doorway.line;
  const d = distance(a, b);
  const u: Point = [(b[0] - a[0]) / d, (b[1] - a[1]) / d];
  return {
    to: (p) => [(p[0] - a[0]) * u[0] + (p[1] - a[1]) * u[1], (p[1] - a[1]) * u[0] - (p[0] - a[0]) * u[1]],
    from: (p) => [a[0] + p[0] * u[0] - p[1] * u[1], a[1] + p[0] * u[1] + p[1] * u[0]],
  };
}

function doorFloor(doorway: Doorway, rooms: readonly { id: string; shape: Shape }[]): DoorFloor {
  const axes = axesOf(doorway);
  const width = distance(doorway.line[0], doorway.line[1]);
  const half = doorway.wallMm + 100;
  const box: Region = {
    outline: (
      [
        [0, -half],
        [width, -half],
        [width, half],
        [0, half],
      ] as const
    ).map(axes.from),
    holes: [],
  };
  const inside = rooms
    .map(({ id, shape }) => ({ id, shape: shapeMeet(shape, [box]) }))
    .filter(({ shape }) => shape.length > 0);
  const reach = shapeLess(
    [box],
    inside.map(({ shape }) => shape),
  );
  const gaps = roomGaps(inside, axes, width);
  const floor = gaps.flatMap(({ quad }) =>
    Math.abs(signedArea(quad)) > 1 ? [{ outline: quad.map(axes.from), holes: [] }] : [],
  );
  const joins = [...new Set(gaps.flatMap(({ rooms: pair }) => pair))];
  const covered = gaps.reduce((sum, { width: w }) => sum + w, 0);
  return { doorway, reach, floor, joins, clear: Math.abs(covered - width) < 2 };
}

interface Gap {
  readonly rooms: readonly [string, string];
  readonly quad: readonly Point[];
  readonly width: number;
}

/** Upright slabs of the opening between two different rooms, in the doorway's axes. */
function roomGaps(rooms: readonly { id: string; shape: Shape }[], axes: Axes, width: number): Gap[] {
  const sides = rooms.flatMap(({ id, shape }) =>
    shape.flatMap((r) =>
      [r.outline, ...r.holes].flatMap(segments).map(([a, b]) => ({ id, a: axes.to(a), b: axes.to(b) })),
    ),
  );
  const cuts = [...new Set([0, width, ...sides.flatMap(({ a, b }) => [a[0], b[0]])])]
    .filter((x) => x >= 0 && x <= width)
    .sort((a, b) => a - b);
  return cuts.slice(1).flatMap((x1, i) => {
    const x0 = at(cuts, i);
    if (x1 - x0 < 0.5) return [];
    const yAt = (side: { a: Point; b: Point }, x: number) =>
      side.a[1] + ((x - side.a[0]) / (side.b[0] - side.a[0])) * (side.b[1] - side.a[1]);
    const xm = (x0 + x1) / 2;
    const crossing = sides.filter(({ a, b }) => (a[0] - xm) * (b[0] - xm) < 0).sort((s, t) => yAt(s, xm) - yAt(t, xm));
    return crossing.slice(1).flatMap((upper, k) => {
      const lower = at(crossing, k);
      if (k % 2 === 0 || lower.id === upper.id) return [];
      const quad: Point[] = [
        [x0, yAt(lower, x0)],
        [x1, yAt(lower, x1)],
        [x1, yAt(upper, x1)],
        [x0, yAt(upper, x0)],
      ];
      return [{ rooms: [lower.id, upper.id] as const, quad, width: x1 - x0 }];
    });
  });
}

/** Stretches of a line that lie inside a shape, found by cutting the line wherever it meets the shape's sides. */
export function lineInside(line: readonly Point[], shape: Shape): Segment[] {
  const sides = shape.flatMap((r) => [r.outline, ...r.holes].flatMap(segments));
  return lineSegments(line).flatMap(([a, b]) => {
    const shares = [0, 1];
    for (const [c, d] of sides) {
      const denominator = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
      if (denominator === 0) continue;
      const t = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / denominator;
      if (t > 0 && t < 1) shares.push(t);
    }
    shares.sort((s, t) => s - t);
    return shares.slice(1).flatMap((share, i) => {
      const from = at(shares, i);
      return inShape(shape, between(a, b, (from + share) / 2))
        ? [[between(a, b, from), between(a, b, share)] as const]
        : [];
    });
  });
}
