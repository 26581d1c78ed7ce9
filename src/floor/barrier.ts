import type { Point } from '../geometry/point.ts';

/** A line across a part that the search chose, on grid steps. */
export interface Cut {
  readonly kind: 'neck' | 'field';
  readonly line: readonly Point[];
}

/** A joint that stands whatever the search does. */
export type StandingBarrier =
  | { readonly kind: 'structural' | 'drawn'; readonly id: string }
  | {
      readonly kind: 'doorway';
      readonly id: string;
      /** Depth of the tongue of floor that it parts from its room, mm; null for the doorway's own joint. */
      readonly tongueMm: number | null;
    }
  | { readonly kind: 'zone'; readonly rooms: readonly [number, number] };

/** The joint along an edge of the plane. */
export type Barrier = StandingBarrier | { readonly kind: 'neck' | 'field'; readonly cut: Cut };

export function isStanding(barrier: Barrier): barrier is StandingBarrier {
  return barrier.kind !== 'neck' && barrier.kind !== 'field';
}
