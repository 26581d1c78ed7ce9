import { boardStore } from './boardStore.ts';
import { cardId, type Thing } from './thing.ts';

/** The choice whose card was asked for before it was there. */
let asked: readonly Thing[] | null = null;

/** Goes into the card of what is chosen: at once, or as soon as it is there, since what shows it may be on its way. */
export function cardEnter(): void {
  const card = document.getElementById(cardId);
  if (card === null) asked = boardStore.getState().chosen;
  else card.focus();
}

/** A card has come: whether it is the one that was asked for. */
export function cardIsAsked(): boolean {
  const isAsked = asked !== null && asked === boardStore.getState().chosen;
  asked = null;
  return isAsked;
}
