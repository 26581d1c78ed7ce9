import { createStore } from 'zustand/vanilla';
import type { PlanClip } from '../../plan/edits/copy.ts';
import { resting } from './choose/resting.ts';
import type { OpeningDrag, Stance, TileTools } from './stance.ts';
import { firstWishes, type Wishes } from './wishes.ts';

/** What the hand holds. Nothing here is saved or undone. */
export interface ToolState {
  readonly stance: Stance;
  readonly wishes: Wishes;
  /** What is typed for the run under the hand; null where nothing is. */
  readonly typed: string | null;
  /** What was copied. */
  readonly clip: PlanClip | null;
  /** Null until the later parts of the screen are there. */
  readonly tiles: TileTools | null;
  readonly opening: OpeningDrag | null;
}

export const toolStore = createStore<ToolState>(() => ({
  stance: resting(),
  wishes: firstWishes,
  typed: null,
  clip: null,
  tiles: null,
  opening: null,
}));

export function wish(change: Partial<Wishes>): void {
  toolStore.setState(({ wishes }) => ({ wishes: { ...wishes, ...change } }));
}
