import { CLIP_SLACK_MM, WELD_MM } from '../geometry/tolerance.ts';
import type { TileGrid } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import type { CutPiece } from './cut-pieces.ts';

export interface TileOrder {
  readonly laid: number;
  readonly fromOffCuts: number;
  readonly order: number;
  readonly boxes: number | null;
}

/** How many tiles are sawn, and to be ordered, for the pieces that are laid. Pieces of one tile, parted by a joint, come from one tile. Of the others, two that are cut across the
 *  same way come from one tile where they and the saw cut fit in it: each then has one of its edges as made, to lie against its neighbour. A piece
 *  that is cut both ways, notched or askew takes a tile of its own.
 *  Example: tiles of 600, 10 whole, cuts of 250 and 340, saw 3 mm -> 11 laid, one from an off-cut; 10 % more: 13 to order */
export function tileOrder(grid: TileGrid, whole: number, pieces: readonly CutPiece[]): TileOrder {
  const byTile = new Map<string, CutPiece[]>();
  for (const piece of pieces) byTile.set(piece.key, [...(byTile.get(piece.key) ?? []), piece]);
  const alone = [...byTile.values()].flatMap((own) => (own.length === 1 ? own : []));
  const kerf = rules.sawKerfMm.value;
  const isPlainAlong = ({ sizeMm: [along] }: CutPiece) => along < grid.lengthMm - WELD_MM;
  const plain = alone.filter(({ isPlain }) => isPlain);
  const paired =
    pairs(
      plain.filter(isPlainAlong).map(({ sizeMm }) => sizeMm[0]),
      grid.lengthMm - kerf,
    ) +
    pairs(
      plain.filter((piece) => !isPlainAlong(piece)).map(({ sizeMm }) => sizeMm[1]),
      grid.widthMm - kerf,
    );
  const sawn = byTile.size - paired;
  const laid = whole + sawn;
  const order = Math.ceil(roundedUp(laid * (1 + grid.allowance)));
  return {
    laid,
    fromOffCuts: pieces.length - sawn,
    order,
    boxes: grid.tilesPerBox === null ? null : Math.ceil(order / grid.tilesPerBox),
  };
}

/** What a sum of shares is, less what rounding adds: 110 and not 110.00000000000001. */
function roundedUp(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

/** Most pairs whose sizes together fit: the largest with the largest that still fits beside it is never better than with the smallest. */
function pairs(sizes: readonly number[], mostMm: number): number {
  const sorted = [...sizes].sort((a, b) => a - b);
  let count = 0;
  for (let low = 0, high = sorted.length - 1; low < high; high--) {
    // What is left of a tile beside a cut fits it to the hair.
    if ((sorted[low] as number) + (sorted[high] as number) <= mostMm + CLIP_SLACK_MM) {
      count++;
      low++;
    }
  }
  return count;
}
