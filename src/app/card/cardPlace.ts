import type { BoxPx, SizePx } from '../canvas/viewport.ts';

/** Width of the card as its style gives it, its distance from the thing and from the board's edges, px. */
const widthPx = 320;
const gapPx = 20;
const edgePx = 12;
/** On a board narrower than this the card would cover what it is about: it lies along the foot instead, or along the head
 *  where the thing is at the foot. */
const narrowPx = 640;
const lowShare = 0.45;
/** A low board gives it more, so that there is something to read in it. */
const lowLeastPx = 200;

export interface CardPlace {
  readonly left: number;
  readonly top: number;
  readonly maxHeight?: number;
}

/** Where the words of a step have room: at the foot of the board, at its head where the card is at the foot, and beside a card that stands from head to
 *  foot. From which to which place across the board, px. */
export interface WordsRoom {
  readonly at: 'foot' | 'head';
  readonly leftPx: number;
  readonly rightPx: number;
}

/** So much at the head and at the foot the words take, px. */
const wordsPx = 80;

export function wordsRoom({ left, top }: Pick<CardPlace, 'left' | 'top'>, board: SizePx, heightPx: number): WordsRoom {
  const whole = { leftPx: 0, rightPx: board.widthPx };
  if (top + heightPx <= board.heightPx - wordsPx) return { at: 'foot', ...whole };
  if (top >= wordsPx) return { at: 'head', ...whole };
  const right = left + widthPx;
  const isRight = board.widthPx - right > left;
  return { at: 'foot', leftPx: isRight ? right : 0, rightPx: isRight ? board.widthPx : left };
}

/** Beside the thing: to its right or left, level with its middle as far as the board goes; else below or above it; else over
 *  the right edge of the board.
 *  @param thing what must not be covered  @param scene what is lit with it: kept clear too where there is room round it */
export function cardPlace(thing: BoxPx | null, scene: BoxPx | null, board: SizePx, heightPx: number): CardPlace {
  if (board.widthPx < narrowPx) {
    const maxHeight = Math.round(
      Math.max(board.heightPx * lowShare, Math.min(lowLeastPx, board.heightPx - 2 * edgePx)),
    );
    const height = Math.min(heightPx, maxHeight);
    const top = board.heightPx - edgePx - height;
    const overThing = thing !== null && thing.bottomPx > top && thing.topPx > edgePx + height;
    return { left: edgePx, top: overThing ? edgePx : top, maxHeight };
  }
  const most: CardPlace = {
    left: Math.max(edgePx, board.widthPx - edgePx - widthPx),
    top: Math.max(edgePx, board.heightPx - edgePx - heightPx),
  };
  if (thing === null) return { left: most.left, top: edgePx };
  const within = (at: number, upTo: number) => Math.min(upTo, Math.max(edgePx, at));
  const placesRound = ({ leftPx, rightPx, topPx, bottomPx }: BoxPx): readonly CardPlace[] => {
    const left = within((leftPx + rightPx - widthPx) / 2, most.left);
    const top = within((topPx + bottomPx - heightPx) / 2, most.top);
    return [
      { left: rightPx + gapPx, top },
      { left: leftPx - gapPx - widthPx, top },
      { left, top: bottomPx + gapPx },
      { left, top: topPx - gapPx - heightPx },
    ];
  };
  const free = ({ left, top }: CardPlace) => within(left, most.left) === left && within(top, most.top) === top;
  const places = [...(scene === null ? [] : placesRound(scene)), ...placesRound(thing)];
  return places.find(free) ?? { left: most.left, top: within((thing.topPx + thing.bottomPx - heightPx) / 2, most.top) };
}
