import type { Point } from '../../../geometry/point.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import type { Result } from '../../state/analysisStore.ts';
import type { Thing } from '../../state/thing.ts';
import type { Step } from '../stance.ts';

/** A clear length shown on the drawing. Places in mm of the plan. */
export interface Dimension {
  /** Which of the thing's dimensions it is: the same before and after an edit. */
  readonly key: string;
  /** Such as "Side 2 of Hall". */
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
  readonly lengthMm: number;
  /** Unit vector from the stretch to where its line is drawn; null: on the stretch itself. */
  readonly aside: Point | null;
  /** At which ends a line leads from the stretch to that line; none where a wall runs there. */
  readonly stems: readonly [boolean, boolean];
  /** How far there is floor on that side, mm. */
  readonly depthMm: number;
  /** Makes it so long. */
  readonly edit: (lengthMm: number) => Dimensioned;
}

/** What a typed length comes to. */
export type Dimensioned =
  | {
      readonly kind: 'done';
      readonly step: Step;
      /** What is chosen from now on, where it is another thing. */
      readonly choose?: readonly Thing[];
    }
  | { readonly kind: 'refused'; readonly words: string; readonly mostMm?: number };

/** What dimensions are reckoned from. */
export interface DimensionScene {
  /** The plan that is shown. */
  readonly file: PlanFile;
  readonly result: Result | null;
  readonly chosen: readonly Thing[];
  /** The drawn joint under the hand; null where none is. */
  readonly joint: string | null;
}

export function tooLong(words: string, mostMm: number): Dimensioned {
  return { kind: 'refused', words, mostMm };
}

/** Where a unit vector leads, in words. */
export function wayWords([x, y]: Point): string {
  if (Math.abs(x) >= Math.abs(y)) return x < 0 ? 'to the left' : 'to the right';
  return y < 0 ? 'upwards' : 'downwards';
}
