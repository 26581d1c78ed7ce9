import { type Point, pointBetween } from '../geometry/point.ts';
import type { PlacedLabel } from './drawing.ts';
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

/** Lengths grow by so much, mm on paper. */
const stepMm = 3;

/** @returns lengths of leaders, more than the first and up to the second */
export function leaderLengths([moreThan, upTo]: readonly [number, number]): readonly number[] {
  const found: number[] = [];
  for (let mm = stepMm; mm <= upTo; mm += stepMm) if (mm > moreThan) found.push(mm);
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
  /** Rising. */
  readonly lengths: readonly number[];
  /** As seen along the text. */
  readonly ways: readonly Point[];
}

/** A way that leaders from one place run, with what they have met on it so far. */
interface Course {
  readonly begin: LeaderBegin;
  readonly ux: number;
  readonly uy: number;
  /** From the tip to the middle of a text beside it, and of one over or under it where it is steep. */
  readonly beside: Point;
  readonly over: Point | null;
  readonly longestMm: number;
  /** It is clear so far. */
  clearMm: number;
}

/** The first place whose text is free at the end of a leader that is clear, the nearest first. A leader grows along its course: where a shorter one is not
 *  clear no longer one is tried.
 *  @param isClear whether a line of a width, from one place to the other, is clear   @param isFree at x, y */
export function ledPlaceFirst(
  begins: readonly LeaderBegin[],
  search: LedSearch,
  isClear: (from: Point, to: Point, halfMm: number) => boolean,
  isFree: (x: number, y: number) => boolean,
): LedPlace | null {
  let courses = coursesOf(begins, search);
  for (const lengthMm of search.lengths) {
    const open: Course[] = [];
    for (const course of courses) {
      const { begin, ux, uy, beside, over, longestMm, clearMm } = course;
      if (lengthMm > longestMm) continue;
      const [x, y] = begin.at;
      const tip: Point = [x + ux * lengthMm, y + uy * lengthMm];
      if (!isClear([x + ux * clearMm, y + uy * clearMm], tip, halfMm)) continue;
      course.clearMm = lengthMm;
      open.push(course);
      for (const off of [beside, over]) {
        if (off === null || !isFree(tip[0] + off[0], tip[1] + off[1])) continue;
        return { at: [tip[0] + off[0], tip[1] + off[1]], angleDeg: search.angleDeg, begin, tip, lengthMm };
      }
    }
    courses = open;
  }
  return null;
}

function coursesOf(begins: readonly LeaderBegin[], { widthMm, heightMm, angleDeg, ways }: LedSearch): Course[] {
  const turn = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [asideMm, offMm] = [widthMm / 2 + leaderGapMm, heightMm / 2 + offTextMm];
  return begins.flatMap((begin) => {
    const { out, along } = begin;
    return ways.flatMap(([ahead, down]): Course[] => {
      const [ux, uy] = [ahead * cos - down * sin, ahead * sin + down * cos];
      if (out !== null && ux * out[0] + uy * out[1] < leastOut) return [];
      if (along.some(([ax, ay]) => ux * ax + uy * ay > mostAlong)) return [];
      const [besideMm, overMm] = [Math.sign(ahead) * asideMm, Math.sign(down) * offMm];
      return [
        {
          begin,
          ux,
          uy,
          beside: [besideMm * cos, besideMm * sin],
          over: Math.abs(down) > steep ? [-overMm * sin, overMm * cos] : null,
          longestMm: out === null ? Number.POSITIVE_INFINITY : fromNameMm,
          clearMm: ownMm,
        },
      ];
    });
  });
}

/** The run of a leader from where it is off its own line, and half its width. */
export function leaderRun({ begin, tip, lengthMm }: LedPlace): { readonly points: readonly Point[]; halfMm: number } {
  return { points: [pointBetween(begin.at, tip, ownMm / lengthMm), tip], halfMm };
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
