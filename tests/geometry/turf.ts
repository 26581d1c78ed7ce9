import {
  booleanPointInPolygon,
  convex,
  kinks,
  lineIntersect,
  lineString,
  multiPoint,
  point,
  polygon,
} from '@turf/turf';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';

/** The functions of an outside library that are planar, as oracles for tests: the only file that imports it. Its measures (area,
 *  length, distance, nearest point, buffer) take coordinates for degrees on a globe and mean nothing in millimetres; none of them
 *  is here. docs/decisions/0005 says why nothing in src needs it. */

type Position = readonly number[];

const pointOf = (position: Position): Point => [position[0] ?? Number.NaN, position[1] ?? Number.NaN];
const positions = (points: readonly Point[]): number[][] => points.map(([x, y]) => [x, y]);
const closed = (ring: Ring): number[][] => positions([...ring, ...ring.slice(0, 1)]);
const opened = (ring: readonly Position[]): Ring => ring.slice(1).map(pointOf);

/** Whether the point lies inside the ring; on its outline is not inside. */
export function turfContains(ring: Ring, place: Point): boolean {
  return booleanPointInPolygon(point([...place]), polygon([closed(ring)]), { ignoreBoundary: true });
}

/** Corners of the convex hull; none where the points lie on a line. */
export function turfHull(points: readonly Point[]): Ring {
  const hull = convex(multiPoint(positions(points)));
  return hull === null ? [] : opened(hull.geometry.coordinates[0] ?? []);
}

/** Where a ring crosses itself. */
export function turfCrossingsOf(ring: Ring): Point[] {
  return kinks(polygon([closed(ring)])).features.map(({ geometry }) => pointOf(geometry.coordinates));
}

/** Where two lines meet. */
export function turfMeetings(a: readonly Point[], b: readonly Point[]): Point[] {
  return lineIntersect(lineString(positions(a)), lineString(positions(b))).features.map(({ geometry }) =>
    pointOf(geometry.coordinates),
  );
}
