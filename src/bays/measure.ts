import { pocketTurn, rectangleRound, ringPockets } from '../geometry/hull.ts';
import type { Point } from '../geometry/point.ts';
import { regionArea } from '../geometry/region.ts';
import { boxOf, type Region, type Ring, ringArea } from '../geometry/ring.ts';
import { LIMIT_SLACK, limitExceeded } from '../plan/exceed.ts';
import type { BayLimits, LayoutWishes } from '../plan/plan.ts';
import { NOTCH_DEG, NOTCH_WITHIN_MM } from './notch.ts';

/** The same for the proportion, whose two sides both round. */
const ASPECT_SLACK = 0.002;

export interface BayRules {
  readonly limits: BayLimits;
  readonly layout: Pick<LayoutWishes, 'reentrantMm' | 'columnMm'>;
}

export interface Breach {
  readonly rule: 'area' | 'length' | 'aspect' | 'reentrant' | 'core';
  /** m2, m, ratio, mm and mm. */
  readonly value: number;
  readonly limit: number;
  readonly at: Point | null;
}

export interface BayFigures {
  readonly areaM2: number;
  readonly lengthM: number;
  readonly widthM: number;
  readonly aspect: number;
  readonly breaches: readonly Breach[];
  /** Whether it passes the aspect limit only because it is no longer than `aspectFromM`. */
  readonly byAllowance: boolean;
}

/** Measures a bay against the rules. `measured` in mm, outline clockwise on the sheet; `notched` is its outer ring with the notches that
 *  columns make filled in, since columns have a rule of their own; `netMm2` where the area is not the region's own. */
export function bayMeasure(
  measured: Region,
  notched: Ring,
  rules: BayRules,
  netMm2 = regionArea(measured),
): BayFigures {
  const { limits, layout } = rules;
  const sides = rectangleRound(measured.outline);
  const areaM2 = netMm2 / 1e6;
  const lengthM = sides.length / 1000;
  const widthM = sides.width / 1000;
  const aspect = widthM > 0 ? lengthM / widthM : Infinity;
  const breaches: Breach[] = [];
  const passes =
    limits.rectangleMayPass === true && aspect <= limits.aspect * (1 + ASPECT_SLACK) && isRectangle(measured, sides);
  if (!passes && limitExceeded(areaM2, limits.areaM2))
    breaches.push({ rule: 'area', value: areaM2, limit: limits.areaM2, at: null });
  if (!passes && limitExceeded(lengthM, limits.lengthM))
    breaches.push({ rule: 'length', value: lengthM, limit: limits.lengthM, at: null });
  const tooLong = aspect > limits.aspect * (1 + ASPECT_SLACK);
  const held = limitExceeded(lengthM, limits.aspectFromM);
  if (tooLong && held) breaches.push({ rule: 'aspect', value: aspect, limit: limits.aspect, at: null });
  for (const pocket of ringPockets(notched)) {
    if (!limitExceeded(pocket.depth, layout.reentrantMm)) continue;
    const turn = pocketTurn(pocket, NOTCH_WITHIN_MM);
    if (limitExceeded(turn.degrees, NOTCH_DEG)) {
      breaches.push({ rule: 'reentrant', value: pocket.depth, limit: layout.reentrantMm, at: turn.at });
    }
  }
  for (const hole of measured.holes) {
    const side = longerSide(hole);
    if (limitExceeded(side, layout.columnMm))
      breaches.push({ rule: 'core', value: side, limit: layout.columnMm, at: hole[0] ?? null });
  }
  return { areaM2, lengthM, widthM, aspect, breaches, byAllowance: tooLong && !held };
}

/** Fills the rectangle round it but for rounding. */
function isRectangle(region: Region, sides: { readonly length: number; readonly width: number }): boolean {
  return ringArea(region.outline) >= sides.length * sides.width * (1 - LIMIT_SLACK);
}

/** Longer side of the least-area rectangle, mm. */
export function longerSide(ring: Ring): number {
  return rectangleRound(ring).length;
}

/** Whether a region is a rectangle that fills its box: the common case, measured without a hull. */
export function isBox(region: Region): boolean {
  if (region.holes.length > 0) return false;
  const box = boxOf(region.outline);
  return ringArea(region.outline) === (box.maxX - box.minX) * (box.maxY - box.minY);
}
