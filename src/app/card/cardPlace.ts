import type { BoxPx, SizePx } from '../canvas/viewport.ts';

/** Width of the card as its style gives it, its distance from the thing and from the board's edges, px. */
const widthPx = 320;
const gapPx = 20;
const edgePx = 12;
/** On a board narrower than this the card would cover what it is about: it lies along the foot instead. */
const narrowPx = 640;
const lowShare = 0.45;

export interface CardPlace {
  readonly left: number;
  readonly top: number;
  readonly maxHeight?: number;
}

/** Beside the thing: to its right, else to its left, else over the right edge of the board; level with its middle as far
 *  as the board goes.
 *  @param thing what must not be covered  @param scene what is lit with it: kept clear too where there is room beside it */
export function cardPlace(thing: BoxPx | null, scene: BoxPx | null, board: SizePx, heightPx: number): CardPlace {
  if (board.widthPx < narrowPx) {
    const maxHeight = Math.round(board.heightPx * lowShare);
    return { left: edgePx, top: board.heightPx - edgePx - Math.min(heightPx, maxHeight), maxHeight };
  }
  const mostLeft = Math.max(edgePx, board.widthPx - edgePx - widthPx);
  if (thing === null) return { left: mostLeft, top: edgePx };
  const beside = [scene, thing]
    .flatMap((box) => (box === null ? [] : [box.rightPx + gapPx, box.leftPx - gapPx - widthPx]))
    .find((left) => left >= edgePx && left <= mostLeft);
  const middle = (thing.topPx + thing.bottomPx) / 2 - heightPx / 2;
  const lowest = Math.max(edgePx, board.heightPx - edgePx - heightPx);
  return {
    left: beside ?? mostLeft,
    top: Math.min(lowest, Math.max(edgePx, middle)),
  };
}
