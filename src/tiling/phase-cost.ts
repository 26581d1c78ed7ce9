import { WELD_MM } from '../geometry/tolerance.ts';
import type { TileGrid } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import { groutLines, tileModule } from '../plan/tile-grid.ts';

/** What a wall or joint square to an axis asks of the phase of the grid. Places along the axis, mm. */
export interface Face {
  readonly at: number;
  /** 1: floor lies beyond it, at greater places; -1: before it. */
  readonly side: 1 | -1;
  readonly lengthMm: number;
  readonly isJoint: boolean;
}

/** What it costs, in metres of joint, that tiles begin at a place of an axis.
 *  @param corners places along the axis that a grout line is wanted at, mm  @param at where a tile begins, mm */
export function phaseCost(
  grid: TileGrid,
  axis: 0 | 1,
  faces: readonly Face[],
  corners: readonly number[],
  at: number,
): number {
  const across = tileModule(grid)[axis === 0 ? 1 : 0];
  const module = tileModule(grid)[axis];
  const size = axis === 0 ? grid.lengthMm : grid.widthMm;
  const bondLets = groutLines(grid).some((lines) => lines.axis === axis);
  const shifts = axis === 0 ? shiftsOf(grid) : [0];
  let cost = 0;
  for (const { at: place, side, lengthMm, isJoint } of faces) {
    const tiles = lengthMm / across / shifts.length;
    for (const shift of shifts) cost += tiles * cutPrice(wrap(place - at - shift, module), side, size);
    // Both bays beside a joint have a face there.
    if (isJoint && bondLets && isOff(place, at, grid, module)) cost += (lengthMm / 2000) * rules.offGroutPrice.value;
  }
  const missed = corners.filter((place) => bondLets && isOff(place, at, grid, module)).length;
  return cost + missed * rules.missedCornerPriceM.value;
}

/** Cost of one tile at a face. @param rest of the face beyond the beginning of the tile there, within its module */
function cutPrice(rest: number, side: 1 | -1, size: number): number {
  const own = side === 1 ? (rest < size ? size - rest : size) : Math.min(rest, size);
  const left = own < WELD_MM ? size : own;
  if (left > size - WELD_MM) return 0;
  const share = left / size;
  const { cutTilePriceM, sliverPriceM, sliverShare, cutLeastShare } = rules;
  if (share < sliverShare.value) return cutTilePriceM.value + sliverPriceM.value;
  return cutTilePriceM.value + (share < cutLeastShare.value ? sliverPriceM.value * rules.underHalfPriceShare.value : 0);
}

function isOff(place: number, at: number, grid: TileGrid, module: number): boolean {
  const rest = wrap(place - at + grid.groutMm / 2, module);
  return Math.min(rest, module - rest) > grid.groutMm / 2 + rules.groutLineSlackMm.value;
}

/** How the courses are shifted, each once. */
function shiftsOf(grid: TileGrid): readonly number[] {
  const [module] = tileModule(grid);
  const found: number[] = [];
  for (let j = 0; j < MOST_SHIFTS; j++) {
    const shift = wrap(j * grid.shiftMm, module);
    if (j > 0 && Math.min(shift, module - shift) < WELD_MM) break;
    found.push(shift);
  }
  return found;
}

const MOST_SHIFTS = 12;

function wrap(v: number, module: number): number {
  return ((v % module) + module) % module;
}
