import type { Point } from '../geometry/point.ts';
import { type NamedPoint, papersOf, recordsOf } from '../plan/papers.ts';
import type { DrawingItem, DrawingRef, LabelItem, LabelPlace } from './drawing.ts';
import type { PaperSource } from './paper-source.ts';
import { framePoint, type SetOutFrame } from './setting-out-frame.ts';
import { placeIsDrawn } from './setting-out-sheet.ts';
import { marks } from './symbols.ts';
import { formSize, textCut } from './text-width.ts';
import { oneLine } from './words.ts';

/** What papers mark on the floor by name: base points, test points. */

/** Names of places are lettered before all else: figures are read from them. */
const namePriority = 7e6;
/** Widest name beside a mark, mm on paper. */
const widestMm = 30;
/** Free space between a mark and its name, mm on paper. */
const nameGapMm = 1;

/** Those that lie near enough to the floor; the others are told in words. @param scale 50 for 1 : 50 */
export function basePointItems({ file, plan }: PaperSource, scale: number): readonly DrawingItem[] {
  return papersOf(file).basePoints.flatMap((point, i) =>
    placeIsDrawn(plan, point.at)
      ? namedMark('base-point', point, { kind: 'object', id: `base-point-${i + 1}` }, scale)
      : [],
  );
}

/** Places where dryness is tested, for the sheet of the records. @param scale 50 for 1 : 50 */
export function testPointItems({ file, plan }: PaperSource, scale: number): readonly DrawingItem[] {
  return recordsOf(file).testPoints.flatMap((point, i) =>
    placeIsDrawn(plan, point.at)
      ? namedMark('test-point', point, { kind: 'object', id: `test-point-${i + 1}` }, scale)
      : [],
  );
}

/** The origin of a room's x and y, with a 0. @param scale 50 for 1 : 50 */
export function frameOrigin({ room, origin }: SetOutFrame, scale: number): readonly DrawingItem[] {
  return namedMark('running-origin', { name: '0', at: origin }, { kind: 'object', id: `origin-${room}` }, scale);
}

/** So long the ways of x and y are drawn from the origin, mm on paper. */
const axisMm = 7;
/** From the end of such a way to the middle of its letter, mm on paper. */
const letterOffMm = 2.2;
/** The same where another line runs on from it, mm on paper. */
const besideOffMm = 3.2;

/** The origin of the whole floor's x and y: a 0 where no base point stands there, and which way each runs. @param scale 50 for 1 : 50 */
export function floorOrigin(frame: SetOutFrame, scale: number): readonly DrawingItem[] {
  const ref: DrawingRef = { kind: 'object', id: 'origin' };
  const axes = (['x', 'y'] as const).flatMap((axis): DrawingItem[] => {
    const at = (mm: number, besideMm = 0) =>
      framePoint(frame, axis === 'x' ? [mm * scale, besideMm * scale] : [besideMm * scale, mm * scale]);
    const points = [at(0), at(axisMm)];
    // behind its end, or beside it where something stands there
    const places = [
      at(axisMm + letterOffMm),
      ...[letterOffMm, -letterOffMm, besideOffMm, -besideOffMm].map((beside) => at(axisMm - 1, beside)),
    ].map((place): LabelPlace => ({ at: place, direction: [1, 0] }));
    return [
      { shape: 'line', layer: 'marks', style: 'running', points, ref },
      {
        shape: 'label',
        layer: 'labels',
        ref,
        seat: { kind: 'beside', line: points, inOpening: true, places },
        forms: [[{ text: axis, style: 'sheet-head' }]],
        priority: namePriority,
        // the words beside the drawing tell the ways too
        saidAgain: true,
      },
    ];
  });
  const zero = { name: '0', at: frame.origin };
  return [...axes, ...(frame.by === 'base-points' ? [] : namedMark('running-origin', zero, ref, scale))];
}

function namedMark(
  style: 'base-point' | 'test-point' | 'running-origin',
  { name, at }: NamedPoint,
  ref: DrawingRef,
  scale: number,
): readonly DrawingItem[] {
  const form = [{ text: textCut(oneLine(name), 'sheet-head', widestMm), style: 'sheet-head' }] as const;
  const { widthMm, heightMm } = formSize(form);
  const { left, right, up, down } = marks[style].reachMm;
  const aside = widthMm / 2 + nameGapMm;
  const middle = (down - up) / 2;
  const offsets: readonly Point[] = [
    [right + aside, middle],
    [-left - aside, middle],
    [0, -up - heightMm / 2],
    [0, down + heightMm / 2],
    ...[-1, 1].flatMap((dy) => [right + aside, -left - aside].map((dx): Point => [dx, middle + dy * heightMm])),
  ];
  const places = offsets.map(
    ([dx, dy]): LabelPlace => ({ at: [at[0] + dx * scale, at[1] + dy * scale], direction: [1, 0] }),
  );
  const label: LabelItem = {
    shape: 'label',
    layer: 'labels',
    ref,
    seat: { kind: 'beside', line: [at, at], inOpening: true, places },
    forms: [form],
    priority: namePriority,
  };
  return [{ shape: 'mark', layer: 'marks', style, at, text: null, ref }, label];
}
