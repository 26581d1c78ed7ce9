import type { Point } from '../../src/geometry/point.ts';
import type { Region, Ring } from '../../src/geometry/ring.ts';
import { lineInside } from './expected-floor.ts';
import { leastRectangle, ringWithoutNotches } from './measures.ts';
import {
  area,
  at,
  between,
  cross,
  distance,
  distanceToSegment,
  inShape,
  rings,
  type Segment,
  segments,
  shapeMeet,
  signedArea,
} from './planar.ts';
import { figure, isInDoorway, type Scene, type SceneBay } from './scene.ts';

/** A bay is nowhere at most `neckRatio` as wide as on both sides within 3 m, or a finding about a neck names it. Widths are read off by walking
 *  away from the narrow place in small steps; what is near the limits of the rule, or has two readings, is left open. */
export function neckFaults(scene: Scene): string[] {
  const { neckRatio } = scene.plan.layout;
  if (neckRatio <= 0 || scene.floor.muddled.size > 0) return [];
  const told = new Set(scene.analysis.findings.filter((f) => f.code === 'neck-unjointed').flatMap((f) => f.refs));
  return scene.bays
    .filter((b) => !isInDoorway(b) && !told.has(b.bay.id))
    .flatMap((b) => {
      const narrow = narrowest(floorOf(scene, b), neckRatio * 0.97);
      return narrow ? [`${b.bay.id} narrows to ${figure(narrow)} mm and no finding says so`] : [];
    });
}

/** What a bay narrows between: its outline and its cores. Columns and pipes are passed over, and so is a hole no larger than a column that
 *  needs no joint. */
function floorOf({ plan }: Scene, { bay, sides }: SceneBay): Region {
  const columns = plan.columns.map((c) => c.outline);
  const beside = columns.filter((c) => c.some((p) => sides.some((s) => distanceToSegment(p, s) < 1)));
  const cores = [...plan.rooms.flatMap((r) => r.holes), ...plan.joinery.map((j) => j.outline)];
  const isCore = (hole: Ring) =>
    at(leastRectangle(hole), 1).lengthMm > Math.min(plan.layout.columnMm, 400) * 1.01 &&
    cores.some((c) => area(shapeMeet([{ outline: hole, holes: [] }], [{ outline: c, holes: [] }])) > 1000);
  return { outline: ringWithoutNotches(bay.measured, beside), holes: bay.holes.filter(isCore) };
}

const reachMm = 2900;
const stepMm = 20;
const leastMm = 60;
const turnDeg = 21;
const touchMm = 1;

/** Width of the narrowest place that is a neck beyond doubt; null where none is. */
function narrowest(floor: Region, ratio: number): number | null {
  const corners = cornersInto(floor);
  const sides = rings(floor).flatMap(segments);
  const chords = corners
    .flatMap((corner) => [
      ...corners.map((other): Segment => [corner, other]),
      ...sides.flatMap((side) => footOn(side, corner).map((foot): Segment => [corner, foot])),
    ])
    .map((chord) => ({ chord, widthMm: distance(...chord) }))
    .filter(({ widthMm }) => widthMm > leastMm)
    .sort((one, two) => one.widthMm - two.widthMm);
  const found = chords.find(
    ({ chord, widthMm }) =>
      isAcross(floor, chord) && [1, -1].every((way) => widens(floor, chord, way, widthMm / ratio)),
  );
  return found?.widthMm ?? null;
}

/** Corners at which the wall turns into the floor. */
function cornersInto(floor: Region): Point[] {
  return rings(floor).flatMap((ring, i) => {
    const sign = Math.sign(signedArea(ring)) * (i === 0 ? 1 : -1);
    return ring.filter((p, k) => {
      const [a, b] = [at(ring, k - 1), at(ring, k + 1)];
      const dot = (p[0] - a[0]) * (b[0] - p[0]) + (p[1] - a[1]) * (b[1] - p[1]);
      return (-sign * Math.atan2(cross(a, p, b), dot) * 180) / Math.PI > turnDeg;
    });
  });
}

/** The foot of the plumb line from a point, where it falls within a side. */
function footOn([a, b]: Segment, p: Point): Point[] {
  const share = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / distance(a, b) ** 2;
  return share > 0 && share < 1 ? [between(a, b, share)] : [];
}

/** Whether a chord lies on floor all the way, and floor on both sides of it. */
function isAcross(floor: Region, [a, b]: Segment): boolean {
  const away = awayFrom([a, b]);
  return [1, -1].every((way) =>
    Array.from({ length: 19 }, (_, i) => between(a, b, (i + 1) / 20)).every((p) => inShape([floor], away(p, way))),
  );
}

/** Steps square to a chord. */
function awayFrom([a, b]: Segment): (p: Point, mm: number) => Point {
  const d = distance(a, b);
  return ([x, y], mm) => [x - ((b[1] - a[1]) / d) * mm, y + ((b[0] - a[0]) / d) * mm];
}

/** Whether floor that hangs together with a chord becomes as wide as wanted on one side of it. */
function widens(floor: Region, [a, b]: Segment, way: number, wantedMm: number): boolean {
  const away = awayFrom([a, b]);
  const farMm = distance(a, b) + wantedMm;
  const [left, right] = [between(a, b, -farMm / distance(a, b)), between(a, b, 1 + farMm / distance(a, b))];
  let open: readonly (readonly [number, number])[] = [[farMm, farMm + distance(a, b)]];
  for (let mm = stepMm / 2; mm < reachMm && open.length > 0; mm += stepMm) {
    const line: Segment = [away(left, way * mm), away(right, way * mm)];
    // Stretches that only meet in a corner do not hang together.
    open = stretches(line, floor).filter(([p, q]) => open.some(([s, t]) => p < t - touchMm && q > s + touchMm));
    if (open.some(([p, q]) => q - p >= wantedMm)) return true;
  }
  return false;
}

/** Where a line runs on floor, as distances from its start; stretches that follow each other are one. */
function stretches(line: Segment, floor: Region): readonly (readonly [number, number])[] {
  const joined: [number, number][] = [];
  for (const [p, q] of lineInside(line, [floor])) {
    const [from, to] = [distance(line[0], p), distance(line[0], q)];
    const last = joined.at(-1);
    if (last !== undefined && from - last[1] < 0.01) last[1] = to;
    else joined.push([from, to]);
  }
  return joined;
}
