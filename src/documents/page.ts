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
  /** The paper that it is a page of, as a list of contents names it. */
  readonly part: string;
  readonly groups: readonly PageGroup[];
  /** Where it goes out together with other papers: what it is by itself, so that it is set once for both. */
  readonly bound?: BoundPage;
}

interface BoundPage {
  readonly alone: Page;
  /** What is written over it. */
  readonly over: PageGroup;
  /** What leads a reader to it from the outline; null where the page before is of the same part. */
  readonly mark: string | null;
}

export interface PageGroup {
  /** What the inks stand for; null for frame, strip and lists. */
  readonly ref: DrawingRef | null;
  readonly inks: readonly Ink[];
}
