import { createStore } from 'zustand/vanilla';
import type { LengthUnit } from '../parts/lengths.ts';

/** Under this key the browser keeps what was chosen by hand. */
const keptKey = 'unit';

/** The unit in which lengths are shown and typed on the board. */
export const unitStore = createStore<{ readonly unit: LengthUnit }>(() => ({ unit: unitKept() }));

export function unitTurn(): void {
  const unit = unitStore.getState().unit === 'mm' ? 'm' : 'mm';
  unitStore.setState({ unit });
  try {
    localStorage.setItem(keptKey, unit);
  } catch {
    // A browser that keeps nothing for the page forgets this too.
  }
}

function unitKept(): LengthUnit {
  try {
    return localStorage.getItem(keptKey) === 'm' ? 'm' : 'mm';
  } catch {
    return 'mm';
  }
}
