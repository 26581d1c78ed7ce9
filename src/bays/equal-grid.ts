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
  const first = Math.max(1, Math.ceil(alongMm / (limits.lengthM * 1000) - NEAR_LIMIT));
  return gridsShortest(first, acrossMm, (along) => {
    const across = rowsLeast(alongMm / along, acrossMm, limits);
    return across === null ? null : { along, across, jointMm: (along - 1) * acrossMm + (across - 1) * alongMm };
  });
}

/** Of the grids with one more bay in a row each time those that take least joint, the shortest first.
 *  @param stepMm what the joints of a row more take at the least, mm
 *  @param gridOf the grid with so many bays in a row; null where none keeps the limits */
export function gridsShortest<Grid extends EqualGrid>(
  first: number,
  stepMm: number,
  gridOf: (along: number) => Grid | null,
): Grid[] {
  const found: Grid[] = [];
  let least = Infinity;
  for (let along = first; (along - 1) * stepMm <= least * (1 + MORE_SHARE) && along < first + MOST_ALONG; along++) {
    const grid = gridOf(along);
    if (grid === null) continue;
    least = Math.min(least, grid.jointMm);
    found.push(grid);
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
  const rows = Math.max(1, Math.ceil(acrossMm / heightMost(widthMm, widthMm, limits) - NEAR_LIMIT));
  return isTooWide(widthMm, acrossMm / rows, limits) ? null : rows;
}

/** How high bays may be that are of these widths, by area, side and proportion, mm. */
export function heightMost(narrowestMm: number, widestMm: number, limits: BayLimits): number {
  const { areaM2, lengthM, aspect, aspectFromM } = limits;
  const inProportion = Math.max(narrowestMm * aspect, aspectFromM * 1000);
  return Math.min(lengthM * 1000, (areaM2 * 1e6) / widestMm, inProportion);
}

/** Whether a bay is too wide for its height. */
export function isTooWide(widthMm: number, heightMm: number, { aspect, aspectFromM }: BayLimits): boolean {
  return widthMm > aspectFromM * 1000 * (1 + NEAR_LIMIT) && widthMm > heightMm * aspect * (1 + NEAR_LIMIT);
}
