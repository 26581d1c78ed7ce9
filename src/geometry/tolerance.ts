/** Every tolerance of the geometry. A tolerance absorbs what rounding has moved; a design limit is a rule and lives in `shared/`. */

/** Plans are held as whole numbers of this many steps to the millimetre: 0.1 mm is finer than any tape reads. */
export const GRID_PER_MM = 10;

/** A length in mm brought to the grid. */
export function onGrid(mm: number): number {
  return Math.round(mm * GRID_PER_MM) / GRID_PER_MM;
}

/** Corners of the plan closer than this are one corner, and a corner closer than this to an edge lies on it (1 mm, in grid
 *  steps): no wall is thinner, and traced plans miss each other by less. */
export const WELD_GRID = 10;

/** The same in mm, for what is not on the grid: what the hand leads, faces of walls, ends of joints. */
export const WELD_MM = WELD_GRID / GRID_PER_MM;

/** A wall that leaves its main direction by no more than this over its whole length (mm) is laid out as if it were square: builders' walls do. */
export const STRAIGHTEN_MM = 60;

/** ... and by no more than this angle, so that a short skew wall stays skew (degrees). */
export const STRAIGHTEN_DEG = 1.5;

/** Wall directions closer than this are one direction (degrees). */
export const DIRECTION_DEG = 2;

/** Two lines across a part closer than this are one line (mm): rounding of turned plans, well under any bay limit's 0.1 %. */
export const SAME_LINE_MM = 0.5;

/** Joints that bend by less than this where they meet run on as one line (degrees). */
export const RUN_BEND_DEG = 3;

/** A stretch of floor under this area (mm2) is what welding left of an overlap of walls, not a piece of floor. */
export const CRUMB_MM2 = 100;

/** Lengths that differ by less than this are equal when layouts are compared (mm). */
export const EQUAL_LENGTH_MM = 1;

/** Part and remainder of a clipping add up to the original within this width along their outlines (mm): what the library's rounding of
 *  crossing points can move. Measured losses are under 1e-10 mm or whole slivers. */
export const CLIP_SLACK_MM = 0.001;

/** A movement breaks what is provided for it when it exceeds it by more than this (mm): rounding of sums, a millionth of any figure on paper. */
export const FIGURE_SLACK_MM = 1e-6;

/** Areas of one floor that are summed in two ways differ by no more than this (m2): the library of clipping rounds crossing points. */
export const AREA_SLACK_M2 = 1e-6;

/** A count of packs, bars or loads that is over a whole number by no more than this is that number: rounding of sums and shares. */
export const COUNT_SLACK = 1e-6;

/** Walls that line up within this lie on one line when a layout is sought (mm): two jambs, two piers, drawn or built a little off. */
export const ALIGN_MM = 12;

/** A point this near to the line of its neighbours is left out of lines drawn for people (mm): half of what rounding moves a corner by. */
export const STRAIGHT_MM = 0.15;

/** Points of a curve that stand off a chord by less than this are left out while a layout is sought (mm): thinner than an edge strip gives. */
export const FLATTEN_MM = 15;

/** Walls within this of the sheet's axes follow them (radians): 0.4 mm in 20 m. */
export const AXIS_RAD = 2e-5;

/** Products of unit vectors that differ by less than this are equal: rounding of sines and cosines. */
export const UNIT_SLACK = 1e-9;

/** Where lines of a grid begin is told apart to so many steps to the millimetre: finer than the plan, coarser than rounding. */
export const PHASES_PER_MM = 10_000;

/** Of lines that catch the hand from as near, that one is meant whose corner is nearer: its distance counts by this share, 0.1 mm in 100 m. */
export const TIE_SHARE = 1e-6;

/** A line that the hand leads grazes a bay and does not run through it where it covers less of it than this (mm). */
export const GRAZE_MM = 50;

/** While a layout is sought, figures within this share over a limit are within it: the limit itself is checked on the real outline afterwards. */
export const NEAR_LIMIT = 0.0005;
