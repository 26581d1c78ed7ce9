import { type Point, pointDistance } from '../geometry/point.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { DrawingItem, DrawingRef, MarkItem } from './drawing.ts';
import { gridEndMm, marks } from './symbols.ts';

/** Lettered ends of grid lines: circles that stand clear of each other, of the lines and of what is marked beside them. */

/** Free space between one end and the next, mm on paper. */
const endGapMm = 0.6;

/** Lines closer together than this have no room for the ends of all, mm on paper. */
export const endsApartMm = 2 * gridEndMm + endGapMm;

export interface GridEnd {
  readonly at: Point;
  /** Unit vector off the line. */
  readonly out: Point;
  readonly text: string;
  readonly ref: DrawingRef;
  /** The stretch that is drawn of its line. */
  readonly drawn: readonly [Point, Point];
}

/** @param besides places that are marked: an end stands off their symbols as well */
export function gridEndItems(
  ends: readonly GridEnd[],
  besides: readonly Point[],
  scale: number,
): readonly DrawingItem[] {
  const placed: Point[] = [];
  const stubs: (readonly [Point, Point])[] = [];
  return ends.flatMap((end): DrawingItem[] => {
    const others = ends.flatMap(({ drawn }) => (drawn === end.drawn ? [] : [drawn]));
    const at = endPlace(end, { placed, lines: [...others, ...stubs], besides }, scale);
    placed.push(at);
    const mark: MarkItem = { shape: 'mark', layer: 'marks', style: 'grid-end', at, text: end.text, ref: end.ref };
    if (pointDistance(end.at, at) <= gridEndMm * scale + WELD_MM) return [mark];
    stubs.push([end.at, at]);
    return [{ shape: 'line', layer: 'areas', style: 'grid-line', points: [end.at, at], ref: end.ref }, mark];
  });
}

/** Sideways an end is tried at so many steps each way, half an end each, before it is moved further out. */
const stepsAside = 8;
/** Half a mark beside a grid line, mm on paper: rings of an origin and base points are the largest. */
const markHalfMm = Math.max(marks['running-origin'].reachMm.up, marks['base-point'].reachMm.up);

interface Standing {
  readonly placed: readonly Point[];
  readonly lines: readonly (readonly [Point, Point])[];
  readonly besides: readonly Point[];
}

/** The middle of the circle of an end: straight on where that is free, else aside and further out, clear of the other lines too where it can be. */
function endPlace({ at: [x, y], out: [ux, uy] }: GridEnd, { placed, lines, besides }: Standing, scale: number): Point {
  const apartMm = endsApartMm * scale;
  const radiusMm = (gridEndMm + endGapMm / 2) * scale;
  const isApart = (place: Point) =>
    placed.every((other) => pointDistance(other, place) >= apartMm - WELD_MM) &&
    besides.every((mark) => pointDistance(mark, place) >= radiusMm + markHalfMm * scale);
  const isClear = (place: Point) =>
    lines.every(([a, b]) => segmentDistance(a, b, place) >= gridEndMm * scale - WELD_MM) &&
    placed.every((other) => segmentDistance([x, y], place, other) >= gridEndMm * scale - WELD_MM);
  const asides = Array.from({ length: stepsAside + 1 }, (_, i) => i).flatMap((i) => (i === 0 ? [0] : [i, -i]));
  // what is marked at the end itself is passed straight on
  const isMarked = besides.some((mark) => pointDistance(mark, [x, y]) < markHalfMm * scale);
  const firstMm = gridEndMm + (isMarked ? markHalfMm + endGapMm : 0);
  let apart: Point | null = null;
  // each end that stands already is passed by two rows
  for (let row = 0; row <= 2 * (placed.length + besides.length); row += 1) {
    for (const aside of asides) {
      const [outMm, asideMm] = [firstMm * scale + (row * apartMm) / 2, aside * radiusMm];
      const place: Point = [x + ux * outMm - uy * asideMm, y + uy * outMm + ux * asideMm];
      if (!isApart(place)) continue;
      if (isClear(place)) return place;
      if (aside === 0) apart ??= place;
    }
    if (apart !== null && row >= rowsTried) break;
  }
  return apart ?? [x + ux * firstMm * scale, y + uy * firstMm * scale];
}

/** So many rows out a place that is clear of all lines is looked for. */
const rowsTried = 6;
