import type { Point } from '../geometry/point.ts';
import type { Box, Region, Ring } from '../geometry/ring.ts';
import type { BayLimits, LayoutWishes } from '../plan/plan.ts';

/** A piece of floor that the standing joints leave whole, in a frame whose axes follow its walls: what the search splits. Places in mm.
 *  Everything that bears on the search is in here and nothing else, so that equal parts have equal layouts. */
export interface Part {
  /** The rooms' floor with columns and pipes filled in and without doorways; holes are cores, shafts and built-off joinery. */
  readonly region: Region;
  readonly limits: BayLimits;
  readonly layout: LayoutWishes;
  readonly columns: readonly PartColumn[];
  /** Stretches of the outline where the floor goes on into a doorway: a joint does better not to end there. */
  readonly mouths: readonly (readonly [Point, Point])[];
  /** No intermediate joint may run inside. */
  readonly keepClear: readonly Ring[];
  /** No intermediate joint may run along. */
  readonly noJoint: readonly (readonly Point[])[];
  /** Joints keep out of these while they can. */
  readonly joinery: readonly Ring[];
  /** Places worth a line without being obstacles, such as edges of sun zones. */
  readonly hints: readonly Ring[];
  /** Grout lines to lay joints in; null where the layout does not go by them. */
  readonly grout: PartGrout | null;
}

export interface PartColumn {
  readonly ring: Ring;
  readonly box: Box;
  readonly areaMm2: number;
  /** Whether it is large enough to need a joint. */
  readonly needsJoint: boolean;
}

/** A stretch of joint across a part. */
export interface PartCut {
  readonly kind: 'field' | 'neck';
  readonly from: Point;
  readonly to: Point;
}

/** Straight grout lines over a part, all of one direction: every place p with normal . p = firstMm + k * spacingMm. */
export interface GroutRows {
  /** Of length 1; along an axis exactly where the lines run square to it. */
  readonly normal: Point;
  /** From 0 up to the spacing. */
  readonly firstMm: number;
  readonly spacingMm: number;
}

/** The grout lines that joints of a part are to lie in. */
export interface PartGrout {
  readonly rows: readonly GroutRows[];
  /** A joint no further from the middle of a line than this lies in it. */
  readonly reachMm: number;
  /** Which bays are paid for that no one would lay for the sake of a joint in grout: strips while a layout is sought, all that is too narrow or too
   *  small once it is found. */
  readonly counts: 'strips' | 'crumbs';
}
