import { useLayoutEffect } from 'react';
import type { SizePx } from '../canvas/viewport.ts';
import { cardId } from '../state/thing.ts';
import { type CardPlace, wordsRoom } from './cardPlace.ts';

interface WordsClearProps {
  readonly place: CardPlace;
  readonly heightPx: number;
  /** The board as far as no tray lies over it. */
  readonly free: SizePx;
}

/** Keeps the words of a step off the card: tells the styles of the board where they have room. */
export function WordsClear({ place: { left, top }, heightPx, free }: WordsClearProps) {
  useLayoutEffect(() => {
    const desk = document.getElementById(cardId)?.parentElement;
    if (desk == null) return;
    const { at, leftPx, rightPx } = wordsRoom({ left, top }, free, heightPx);
    desk.dataset.words = at;
    desk.style.setProperty('--words-left', `${leftPx}px`);
    desk.style.setProperty('--words-right', `${desk.clientWidth - rightPx}px`);
    return () => {
      delete desk.dataset.words;
      desk.style.removeProperty('--words-left');
      desk.style.removeProperty('--words-right');
    };
  }, [left, top, heightPx, free]);
  return null;
}
