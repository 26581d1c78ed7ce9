import type { DrawingRef } from './drawing.ts';
import type { Ink } from './ink.ts';

/** A finished page of paper: what SVG and PDF write out, ink by ink. */
export interface Page {
  /** Such as A3 or A3 standing. */
  readonly paper: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** 50 for 1 : 50; null where nothing on it is to scale. */
  readonly scale: number | null;
  readonly title: string;
  readonly subject: string;
  readonly groups: readonly PageGroup[];
}

export interface PageGroup {
  /** What the inks stand for; null for frame, strip and lists. */
  readonly ref: DrawingRef | null;
  readonly inks: readonly Ink[];
}
