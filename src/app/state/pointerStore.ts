import { createStore } from 'zustand/vanilla';
import type { Point } from '../../geometry/point.ts';

/** Where the hand is, mm of the plan; null while it is off the board. Apart from the board's state: it changes with
 *  every move of the hand, and only its reading looks at it. */
export const pointerStore = createStore<PointerState>(() => ({ at: null, led: false }));

interface PointerState {
  readonly at: Point | null;
  /** Arrow keys lead it: it is shown and spoken. */
  readonly led: boolean;
}
