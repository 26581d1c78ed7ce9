import { NEAR_LIMIT } from '../geometry/tolerance.ts';
import type { BayLimits } from '../plan/plan.ts';

/** A rectangle in equal bays: how many stand in a row along it, and how many rows there are across. */
export interface EqualGrid {
  readonly along: number;
  readonly across: number;
  readonly jointMm: number;
}

/** The grids of equal bays within the limits that take least joint, and those that take next to nothing more, the shortest first.
 *  Where the rectangle is many bays long and wide, straight rows hardly do better.
 *  @param alongMm, acrossMm sides of the rectangle, mm
 *  @returns none where no grid keeps the limits
 *  Example: 60 m by 60 m at 40 m2, 8 m and 2 : 1 -> 9 by 10 and 10 by 9, each 1,020 m of joint */
export function equalGrids(alongMm: number, acrossMm: number, limits: BayLimits): EqualGrid[] {
  const found: EqualGrid[] = [];
  let least = Infinity;
  const first = Math.max(1, Math.ceil(alongMm / (limits.lengthM * 1000) - NEAR_LIMIT));
  for (let along = first; (along - 1) * acrossMm <= least * (1 + MORE_SHARE) && along < first + MOST_ALONG; along++) {
    const across = rowsLeast(alongMm / along, acrossMm, limits);
    if (across === null) continue;
    const jointMm = (along - 1) * acrossMm + (across - 1) * alongMm;
    least = Math.min(least, jointMm);
    found.push({ along, across, jointMm });
  }
  return found
    .filter((grid) => grid.jointMm <= least * (1 + MORE_SHARE))
    .sort((a, b) => a.jointMm - b.jointMm || a.along - b.along)
    .slice(0, MOST_GRIDS);
}

/** Grids that take no more than this share beside the least are as good a start. */
const MORE_SHARE = 0.01;
const MOST_GRIDS = 3;

/** So many numbers of bays in a row are looked at, from the fewest that the side allows. */
const MOST_ALONG = 200;

/** The fewest rows in which bays of a width keep the limits; null where none do. */
function rowsLeast(widthMm: number, acrossMm: number, limits: BayLimits): number | null {
  const { areaM2, lengthM, aspect, aspectFromM } = limits;
  const from = aspectFromM * 1000;
  const most = Math.min(lengthM * 1000, (areaM2 * 1e6) / widthMm, Math.max(widthMm * aspect, from));
  const rows = Math.max(1, Math.ceil(acrossMm / most - NEAR_LIMIT));
  const heightMm = acrossMm / rows;
  return widthMm > from * (1 + NEAR_LIMIT) && widthMm > heightMm * aspect * (1 + NEAR_LIMIT) ? null : rows;
}
