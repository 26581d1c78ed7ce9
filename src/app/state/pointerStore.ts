import { createStore } from 'zustand/vanilla';
import type { Point } from '../../geometry/point.ts';

/** Where the pointer is, mm of the plan; null while it is off the board. Apart from the board's state: it changes with
 *  every move of the hand, and only its reading looks at it. */
export const pointerStore = createStore<{ readonly at: Point | null }>(() => ({ at: null }));
