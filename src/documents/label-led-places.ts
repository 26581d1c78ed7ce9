import type { Point } from '../geometry/point.ts';
import type { PlacedLabel } from './drawing.ts';
import type { TurnedBox } from './label-blocks.ts';
import type { FormSize } from './text-width.ts';

/** Where a text may stand at the end of a leader. In mm on paper, unless said. */

export interface LedPlace {
  /** Middle of the text, which is level. */
  readonly at: Point;
  readonly begin: Point;
  readonly tip: Point;
  readonly lengthMm: number;
}

/** A leader keeps so far off the line that it begins at before it must be clear. */
const ownMm = 1.4;
/** Free space between a leader and its text: beyond its halo. */
const leaderGapMm = 0.8;
/** Half the width of a leader with the space beside it. */
const halfMm = 0.3;
/** A leader as steep as this, as the sine of its angle, may also end under or over the middle of its text. */
const steep = 0.8;

/** Lengths grow by steps, by wider ones where they are long. */
const stepsMm = { shortest: 3, short: 3, shortUpTo: 20, long: 6 } as const;

/** @returns lengths of leaders, more than the first and up to the second */
export function leaderLengths([moreThan, upTo]: readonly [number, number]): readonly number[] {
  const { shortest, short, shortUpTo, long } = stepsMm;
  const found: number[] = [];
  for (let mm: number = shortest; mm <= upTo; mm += mm < shortUpTo ? short : long) if (mm > moreThan) found.push(mm);
  return found;
}

/** Unit vectors all round, none of them level or upright. */
export function waysRound(count: number): readonly Point[] {
  return Array.from({ length: count }, (_, i) => {
    const turn = ((i + 0.5) * 2 * Math.PI) / count;
    return [Math.cos(turn), Math.sin(turn)];
  });
}

/** The first place whose text is free and which is taken, the nearest first. Of thousands nearly all are told by the middle of their text alone.
 *  @param isFree at x, y   @param isTaken once all of the place is known */
export function ledPlaceFirst(
  begins: readonly Point[],
  { widthMm, heightMm }: FormSize,
  { lengths, ways }: { readonly lengths: readonly number[]; readonly ways: readonly Point[] },
  isFree: (x: number, y: number) => boolean,
  isTaken: (place: LedPlace) => boolean,
): LedPlace | null {
  const [asideMm, offMm] = [widthMm / 2 + leaderGapMm, heightMm / 2];
  for (const lengthMm of lengths) {
    for (const begin of begins) {
      for (const way of ways) {
        const x = begin[0] + way[0] * lengthMm;
        const y = begin[1] + way[1] * lengthMm;
        const besideX = x + Math.sign(way[0]) * asideMm;
        const beyondY = y + Math.sign(way[1]) * offMm;
        if (isFree(besideX, y)) {
          const place: LedPlace = { at: [besideX, y], begin, tip: [x, y], lengthMm };
          if (isTaken(place)) return place;
        }
        if (Math.abs(way[1]) > steep && isFree(x, beyondY)) {
          const place: LedPlace = { at: [x, beyondY], begin, tip: [x, y], lengthMm };
          if (isTaken(place)) return place;
        }
      }
    }
  }
  return null;
}

/** The room of a leader, from where it is off its own line. */
export function leaderBox({ begin, tip, lengthMm }: LedPlace): TurnedBox {
  const share = (ownMm + lengthMm) / 2 / lengthMm;
  const [dx, dy] = [tip[0] - begin[0], tip[1] - begin[1]];
  return {
    centre: [begin[0] + dx * share, begin[1] + dy * share],
    halfWidth: (lengthMm - ownMm) / 2,
    halfHeight: halfMm,
    angleDeg: (Math.atan2(dy, dx) * 180) / Math.PI,
  };
}

/** Places on all sides of a text, mm on the plan, where a leader from it may begin: the text itself may stand in the way of those from its thing. */
export function besideText(text: PlacedLabel | undefined, paperPerPlan: number): readonly Point[] {
  if (text === undefined) return [];
  const { at, angleDeg, widthMm, heightMm } = text;
  const turn = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn) / paperPerPlan, Math.sin(turn) / paperPerPlan];
  const [w, h] = [widthMm / 2 + leaderGapMm, heightMm / 2];
  return [
    [w, 0],
    [-w, 0],
    [0, h],
    [0, -h],
  ].map(([x = 0, y = 0]): Point => [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos]);
}
