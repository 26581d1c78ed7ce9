import { oneLine } from '../../documents/words.ts';
import { type Point, pointDirection } from '../../geometry/point.ts';
import { type Ring, ringCentroid } from '../../geometry/ring.ts';
import { ringOutward } from '../../geometry/ring-edges.ts';
import { type Joint, jointIsFound } from '../../plan/analysis.ts';
import type { PlanFile } from '../../plan/schema.ts';

/** A corner that the hand is caught by. */
export interface CatchCorner {
  readonly at: Point;
  /** What it belongs to, such as "Hall". */
  readonly of: string;
  /** So far from the corner that it was made from, a wall's depth on, mm; 0: the corner itself. */
  readonly offMm: number;
}

/** A side that the hand is caught by. */
export interface CatchSide {
  readonly a: Point;
  readonly b: Point;
  readonly of: string;
  /** So far outside the side that it was made from, mm; 0: the side itself. */
  readonly offMm: number;
}

/** All that the plan offers to catch the hand. */
export interface Catches {
  readonly corners: readonly CatchCorner[];
  readonly sides: readonly CatchSide[];
  /** Grout lines; none where joints are not what is led. */
  readonly grout?: GroutCatches;
}

/** An upright (0) or level (1) line that catches a coordinate of the hand. */
export interface CatchCoordinate {
  readonly axis: 0 | 1;
  readonly at: number;
  readonly onSide: boolean;
}

/** A side askew to the sheet that catches the hand, and where. */
export interface CatchSkew {
  readonly side: CatchSide;
  readonly at: Point;
}

/** Where grout lines catch the hand, and which. */
export interface GroutCaught {
  readonly at: Point;
  readonly lines: readonly CatchGrout[];
}

/** What grout lines make of the hand that leads a joint. */
export interface GroutCatches {
  /** The straight ones next to a place, one of each direction. */
  readonly near: (at: Point) => readonly CatchGrout[];
  /** Where those askew to the sheet catch the hand that begins a joint.
   *  @param upright what catches its coordinates else  @param skew the side that catches it where those do not */
  readonly askew: (
    hand: { readonly at: Point; readonly reachMm: number },
    upright: readonly CatchCoordinate[],
    skew: CatchSkew | null,
  ) => GroutCaught | null;
  /** The nearest one square to the way that the hand is led, and how far along it is met, mm; null where none is nearer than what was met before.
   *  @param atMm how far along the hand is  @param nearestMm how far from there what was met before is */
  readonly across: (
    hand: Point,
    lead: Lead,
    atMm: number,
    nearestMm: number,
  ) => { readonly run: number; readonly line: CatchGrout } | null;
}

/** A way that the hand is led along. */
export interface Lead {
  readonly from: Point;
  /** Unit vector. */
  readonly way: Point;
  /** No run is shorter, mm. */
  readonly least: number;
}

/** A grout line that runs straight through its field. */
export interface CatchGrout {
  /** A point of it, so far along that a line from there to the hand is seen. */
  readonly at: Point;
  /** Unit vector along it. */
  readonly way: Point;
}

/** @param wallMm depth of a wall: each side of a room catches at this distance outside it, too */
export function catchesOf(file: PlanFile, wallMm: number): Catches {
  const corners: CatchCorner[] = [];
  const sides: CatchSide[] = [];
  const ringTake = (ring: Ring, of: string, offMm: number) => {
    const outward = ringOutward(ring);
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length] ?? a;
      corners.push({ at: a, of, offMm: 0 });
      if (offMm > 0) corners.push(...cornersOff(ring, i, offMm).map((at) => ({ at, of, offMm })));
      sides.push({ a, b, of, offMm: 0 });
      if (offMm > 0) sides.push(sideOff({ a, b, of }, outward[i] ?? [0, 0], offMm));
    });
  };
  for (const room of file.rooms) {
    const of = oneLine(room.name ?? room.id);
    ringTake(room.outline, of, wallMm);
    for (const hole of room.holes ?? []) ringTake(hole, `the hole in ${of}`, 0);
  }
  for (const { id, outline } of file.columns ?? []) {
    ringTake(outline, `column ${id}`, 0);
    corners.push({ at: ringCentroid(outline), of: `the middle of column ${id}`, offMm: 0 });
  }
  for (const { id, name, outline } of file.joinery ?? []) ringTake(outline, oneLine(name ?? id), 0);
  for (const { id, centre } of file.pipes ?? []) corners.push({ at: centre, of: `pipe ${id}`, offMm: 0 });
  for (const { id, line } of [...(file.drawnJoints ?? []), ...(file.structuralJoints ?? [])]) {
    for (const at of line) corners.push({ at, of: `joint ${id}`, offMm: 0 });
    for (const [i, b] of line.slice(1).entries()) {
      sides.push({ a: line[i] as Point, b, of: `joint ${id}`, offMm: 0 });
    }
  }
  return { corners, sides };
}

/** What catches the hand that draws a joint: the joints that were found, too. */
export function catchesWithJoints({ corners, sides, ...more }: Catches, joints: readonly Joint[]): Catches {
  const found = joints
    .filter(jointIsFound)
    .flatMap(({ id, line }) =>
      line.slice(1).map((b, i): CatchSide => ({ a: line[i] as Point, b, of: `joint ${id}`, offMm: 0 })),
    );
  return { corners, sides: [...sides, ...found], ...more };
}

/** The plan without some of its things: what is being moved does not catch itself. */
export function fileWithout(file: PlanFile, ids: readonly string[]): PlanFile {
  const lists = Object.entries(file).map(([key, value]) => [
    key,
    Array.isArray(value) ? value.filter(({ id }: { readonly id: string }) => !ids.includes(id)) : value,
  ]);
  return Object.fromEntries(lists) as PlanFile;
}

/** Where a neighbour's corner lies beyond a wall: a wall's depth on along either side of the corner, and along both. */
function cornersOff(ring: Ring, corner: number, offMm: number): readonly Point[] {
  const [x, y] = ring[corner] as Point;
  const before = pointDirection(ring[(corner + ring.length - 1) % ring.length] as Point, [x, y]);
  const after = pointDirection(ring[(corner + 1) % ring.length] as Point, [x, y]);
  const [bx, by, ax, ay] = [...before, ...after].map((way) => way * offMm) as [number, number, number, number];
  return [
    [x + bx, y + by],
    [x + ax, y + ay],
    [x + bx + ax, y + by + ay],
  ];
}

/** The side moved outwards. */
function sideOff({ a, b, of }: Omit<CatchSide, 'offMm'>, [outX, outY]: Point, offMm: number): CatchSide {
  const move = ([x, y]: Point): Point => [x + outX * offMm, y + outY * offMm];
  return { a: move(a), b: move(b), of, offMm };
}
