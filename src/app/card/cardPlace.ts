import type { BoxPx, SizePx } from '../canvas/viewport.ts';

/** Width of the card as its style gives it, its distance from the thing and from the board's edges, px. */
const widthPx = 288;
const gapPx = 20;
const edgePx = 12;
/** The line of cautions along the foot of the board. */
const footPx = 32;
/** Where the tray slides over the board, it takes so much of it. */
const slideOverBelowPx = 900;
const slidPx = 360;

export interface CardPlace {
  readonly left: number;
  readonly top: number;
}

/** Beside the thing: to its right, else to its left, else over the right edge of the board; level with its middle as far
 *  as the board goes. */
export function cardPlace(thing: BoxPx | null, board: SizePx, heightPx: number, trayOpen: boolean): CardPlace {
  const slidOver = trayOpen && board.widthPx < slideOverBelowPx && board.widthPx === window.innerWidth;
  const rightPx = board.widthPx - edgePx - (slidOver ? Math.min(slidPx, board.widthPx / 2) : 0);
  const mostLeft = Math.max(edgePx, rightPx - widthPx);
  if (thing === null) return { left: mostLeft, top: edgePx };
  const right = thing.rightPx + gapPx;
  const left = thing.leftPx - gapPx - widthPx;
  const beside = right <= mostLeft ? right : left >= edgePx ? left : mostLeft;
  const middle = (thing.topPx + thing.bottomPx) / 2 - heightPx / 2;
  const lowest = Math.max(edgePx, board.heightPx - footPx - heightPx);
  return {
    left: Math.min(mostLeft, Math.max(edgePx, beside)),
    top: Math.min(lowest, Math.max(edgePx, middle)),
  };
}
