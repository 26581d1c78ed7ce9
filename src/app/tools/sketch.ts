import type { Point } from '../../geometry/point.ts';

/** What a tool draws over the board while it is in hand, in mm of the plan. It is no part of the drawing: it goes with
 *  the gesture. */
export interface Sketch {
  readonly marks: readonly SketchMark[];
}

export type SketchTone =
  /** Under the hand. */
  | 'hand'
  /** A line that the hand was caught by. */
  | 'guide'
  /** What a list lights. */
  | 'lit'
  /** What cannot be. */
  | 'wrong';

export type SketchMark =
  | { readonly mark: 'line'; readonly points: readonly Point[]; readonly closed: boolean; readonly tone: SketchTone }
  /** What lies within the outlines and without their holes, in any order. */
  | { readonly mark: 'area'; readonly rings: readonly (readonly Point[])[]; readonly tone: SketchTone }
  /** A place that can be taken hold of. */
  | { readonly mark: 'corner' | 'side' | 'dot' | 'cross'; readonly at: Point; readonly tone: SketchTone }
  /** A length: a line between two marks, so far beside the stretch that it measures, px. */
  | {
      readonly mark: 'dimension';
      readonly ends: readonly [Point, Point];
      readonly asidePx: Point;
      readonly stems: readonly [boolean, boolean];
      readonly tone: SketchTone;
    }
  /** What a guide says, beside its place; of several above each other. */
  | { readonly mark: 'words'; readonly at: Point; readonly text: string; readonly tone: SketchTone };

export function sketchLine(points: readonly Point[], tone: SketchTone = 'hand'): SketchMark {
  return { mark: 'line', points, closed: false, tone };
}

export function sketchRing(points: readonly Point[], tone: SketchTone = 'hand'): SketchMark {
  return { mark: 'line', points, closed: true, tone };
}
