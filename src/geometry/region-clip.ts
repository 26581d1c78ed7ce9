import type { Point } from './point.ts';
import { type Box, boxOf, type Region, type Ring, ringArea, ringContains } from './ring.ts';

/** The pieces of a region on one side of an upright or level line, exact at corners that lie on the line.
 *
 *  Accepts a region whose rings do not cross. Guarantees pieces that add up to the region's floor on that side; where it falls apart
 *  there are several. No library and no overshoot are needed, since a line and rings have no near-misses but the corners on the line,
 *  which count as kept. */
export interface HalfPlane {
  /** 0: the line is upright at x = at; 1: level at y = at. */
  readonly axis: 0 | 1;
  readonly at: number;
  /** 1 keeps what lies beyond the line (larger coordinate), -1 what lies before it. */
  readonly side: 1 | -1;
}

interface Crossing {
  readonly along: number;
  /** How `along` grows with depth into the kept side: of crossings at one place the lesser lies first. */
  readonly slope: number;
  readonly run: number;
  readonly leaves: boolean;
}

interface Run {
  readonly points: Point[];
}

export function regionClip(region: Region, plane: HalfPlane): Region[] {
  const { axis, at, side } = plane;
  const depth = (p: Point) => side * (p[axis] - at);
  const rings = [region.outline, ...region.holes];
  if (rings[0]?.every((p) => depth(p) >= 0)) return [region];
  const kept: Ring[] = [];
  const runs: Run[] = [];
  const crossings: Crossing[] = [];
  rings.forEach((ring, i) => {
    const first = ring.findIndex(
      (p, k) => depth(p) > 0 && depth(ring[(k + ring.length - 1) % ring.length] as Point) <= 0,
    );
    if (first >= 0) ringRuns(ring, first, plane, runs, crossings);
    else if (i > 0 && ring.length > 0 && depth(ring[0] as Point) > 0) kept.push(ring);
  });
  crossings.sort((a, b) => a.along - b.along || a.slope - b.slope);
  const outlines = runsJoin(runs, crossings).filter((ring) => ringArea(ring) > 0);
  return outlines.map((outline) => ({
    outline,
    holes: kept.filter((hole) => outlines.length === 1 || ringContains(outline, hole[0] as Point)),
  }));
}

/** The stretches of a ring on the kept side, each with the places where it comes over the line and leaves over it. */
function ringRuns(ring: Ring, first: number, { axis, at, side }: HalfPlane, runs: Run[], crossings: Crossing[]): void {
  const depth = (p: Point) => side * (p[axis] - at);
  const other = axis === 0 ? 1 : 0;
  // Reckoned from the outer point, whichever way the ring runs: a corner on the line is met at the same place coming and going.
  const onLine = (out: Point, into: Point): { point: Point; along: number; slope: number } => {
    const slope = (into[other] - out[other]) / (depth(into) - depth(out));
    const along = out[other] - slope * depth(out);
    return { point: axis === 0 ? [at, along] : [along, at], along, slope };
  };
  let points: Point[] | null = null;
  for (let k = 0; k <= ring.length; k++) {
    const p = ring[(first + k) % ring.length] as Point;
    const before = ring[(first + k + ring.length - 1) % ring.length] as Point;
    const isIn = depth(p) > 0;
    if (isIn && depth(before) <= 0 && k < ring.length) {
      const enter = onLine(before, p);
      points = [enter.point];
      crossings.push({ along: enter.along, slope: enter.slope, run: runs.length, leaves: false });
    }
    if (isIn && points) points.push(p);
    if (!isIn && points) {
      const leave = onLine(p, before);
      points.push(leave.point);
      crossings.push({ along: leave.along, slope: leave.slope, run: runs.length, leaves: true });
      runs.push({ points });
      points = null;
    }
  }
}

/** Joins the runs along the line: between the first and the second crossing there is floor, between the third and the fourth, and so on. */
function runsJoin(runs: readonly Run[], crossings: readonly Crossing[]): Ring[] {
  const next = new Array<number>(runs.length).fill(-1);
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const [a, b] = [crossings[i] as Crossing, crossings[i + 1] as Crossing];
    if (a.leaves === b.leaves) continue;
    if (a.leaves) next[a.run] = b.run;
    else next[b.run] = a.run;
  }
  const done = new Set<number>();
  const rings: Ring[] = [];
  runs.forEach((_, start) => {
    if (done.has(start)) return;
    const points: Point[] = [];
    for (let run = start; run >= 0 && !done.has(run); run = next[run] as number) {
      done.add(run);
      for (const p of runs[run]?.points ?? []) {
        const last = points[points.length - 1];
        if (!last || last[0] !== p[0] || last[1] !== p[1]) points.push(p);
      }
    }
    const [head, tail] = [points[0], points[points.length - 1]];
    if (head && tail && points.length > 1 && head[0] === tail[0] && head[1] === tail[1]) points.pop();
    if (points.length > 2) rings.push(points);
  });
  return rings;
}

/** The pieces of a region inside an upright box. */
export function regionInBox(region: Region, box: Box): Region[] {
  const planes: HalfPlane[] = [
    { axis: 0, at: box.minX, side: 1 },
    { axis: 0, at: box.maxX, side: -1 },
    { axis: 1, at: box.minY, side: 1 },
    { axis: 1, at: box.maxY, side: -1 },
  ];
  const own = boxOf(region.outline);
  let pieces: Region[] = [region];
  planes.forEach((plane, i) => {
    const inside = [own.minX >= box.minX, own.maxX <= box.maxX, own.minY >= box.minY, own.maxY <= box.maxY][i];
    if (!inside) pieces = pieces.flatMap((piece) => regionClip(piece, plane));
  });
  return pieces;
}
