import type { Point } from '../geometry/point.ts';
import type { PlacedLabel } from './drawing.ts';
import type { TurnedBox } from './label-blocks.ts';
import type { FormSize } from './text-width.ts';

/** Where a text may stand at the end of a leader. All in mm on paper. */

export interface LeaderBegin {
  readonly at: Point;
  /** Unit vector off the text that it begins at; null where it begins at a line and may run any way. */
  readonly out: Point | null;
  /** Unit vectors that it keeps off. */
  readonly along: readonly Point[];
}

export interface LedPlace {
  /** Middle of the text. */
  readonly at: Point;
  /** Of the text, clockwise on the sheet. */
  readonly angleDeg: number;
  readonly begin: LeaderBegin;
  readonly tip: Point;
  readonly lengthMm: number;
}

/** A leader keeps so far off the line that it begins at before it must be clear. */
const ownMm = 1.4;
/** Free space between a leader and its text: beyond its halo. */
const leaderGapMm = 0.8;
/** The same above and below, where there is its leading already. */
const offTextMm = 0.2;
/** Half the width of a leader with the space beside it. */
const halfMm = 0.3;
/** A leader as steep as this, as the sine of its angle, may also end under or over the middle of its text. */
const steep = 0.8;

/** A leader leaves a text no flatter along it than this, as the sine of its angle. */
const leastOut = 0.25;

/** A leader keeps so far off the course of what it begins at, as the cosine of the angle between both. */
const mostAlong = 0.9;

/** No longer is a leader from a name, mm on paper: a long one is followed to the joint itself. */
const fromNameMm = 20;

/** Lengths grow by steps, by wider ones where they are long. */
const stepsMm = { shortest: 3, short: 3, shortUpTo: 20, long: 6 } as const;

/** @returns lengths of leaders, more than the first and up to the second */
export function leaderLengths([moreThan, upTo]: readonly [number, number]): readonly number[] {
  const { shortest, short, shortUpTo, long } = stepsMm;
  const found: number[] = [];
  for (let mm: number = shortest; mm <= upTo; mm += mm < shortUpTo ? short : long) if (mm > moreThan) found.push(mm);
  return found;
}

/** Unit vectors all round, none of them along a text or square to it. */
export function waysRound(count: number): readonly Point[] {
  return Array.from({ length: count }, (_, i) => {
    const turn = ((i + 0.5) * 2 * Math.PI) / count;
    return [Math.cos(turn), Math.sin(turn)];
  });
}

/** How a text is looked for. */
export interface LedSearch extends FormSize {
  readonly angleDeg: number;
  readonly lengths: readonly number[];
  /** As seen along the text. */
  readonly ways: readonly Point[];
}

/** The first place whose text is free and which is taken, the nearest first. Of thousands nearly all are told by the middle of their text alone.
 *  @param isFree at x, y   @param isTaken once all of the place is known */
export function ledPlaceFirst(
  begins: readonly LeaderBegin[],
  { widthMm, heightMm, angleDeg, lengths, ways }: LedSearch,
  isFree: (x: number, y: number) => boolean,
  isTaken: (place: LedPlace) => boolean,
): LedPlace | null {
  const turn = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [asideMm, offMm] = [widthMm / 2 + leaderGapMm, heightMm / 2 + offTextMm];
  const courses = ways.map(([along, down]) => ({
    ux: along * cos - down * sin,
    uy: along * sin + down * cos,
    besideMm: Math.sign(along) * asideMm,
    beyondMm: Math.abs(down) > steep ? Math.sign(down) * offMm : null,
  }));
  for (const lengthMm of lengths) {
    for (const begin of begins) {
      const { out, along } = begin;
      if (out !== null && lengthMm > fromNameMm) continue;
      for (const { ux, uy, besideMm, beyondMm } of courses) {
        if (out !== null && ux * out[0] + uy * out[1] < leastOut) continue;
        if (along.some(([ax, ay]) => ux * ax + uy * ay > mostAlong)) continue;
        const tipX = begin.at[0] + ux * lengthMm;
        const tipY = begin.at[1] + uy * lengthMm;
        const besideX = tipX + besideMm * cos;
        const besideY = tipY + besideMm * sin;
        if (isFree(besideX, besideY)) {
          const place: LedPlace = { at: [besideX, besideY], angleDeg, begin, tip: [tipX, tipY], lengthMm };
          if (isTaken(place)) return place;
        }
        if (beyondMm === null) continue;
        const overX = tipX - beyondMm * sin;
        const overY = tipY + beyondMm * cos;
        if (isFree(overX, overY)) {
          const place: LedPlace = { at: [overX, overY], angleDeg, begin, tip: [tipX, tipY], lengthMm };
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
  const [x, y] = begin.at;
  const [dx, dy] = [tip[0] - x, tip[1] - y];
  return {
    centre: [x + dx * share, y + dy * share],
    halfWidth: (lengthMm - ownMm) / 2,
    halfHeight: halfMm,
    angleDeg: (Math.atan2(dy, dx) * 180) / Math.PI,
  };
}

/** On all sides of a text, where a leader from it may begin: the text itself may stand in the way of those from its thing.
 *  @param at its middle */
export function besideText(
  [x, y]: Point,
  { angleDeg, widthMm, heightMm }: Omit<PlacedLabel, 'at'>,
): readonly LeaderBegin[] {
  const turn = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [w, h] = [widthMm / 2 + leaderGapMm, heightMm / 2 + offTextMm];
  const sides: readonly (readonly [ux: number, uy: number, mm: number])[] = [
    [cos, sin, w],
    [-cos, -sin, w],
    [-sin, cos, h],
    [sin, -cos, h],
  ];
  return sides.map(([ux, uy, mm]) => ({ at: [x + ux * mm, y + uy * mm], out: [ux, uy], along: [] }));
}
