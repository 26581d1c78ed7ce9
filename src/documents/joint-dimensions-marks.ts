import type { Point } from '../geometry/point.ts';
import type { DrawingItem, DrawingRef, LabelPlace } from './drawing.ts';
import { namedMark, namePriority } from './point-items.ts';
import { framePoint, type SetOutFrame } from './setting-out-frame.ts';

/** Where the x and y of a room or of the floor begin, by name. */

/** The origin of a room's x and y, with a 0. @param scale 50 for 1 : 50 */
export function frameOrigin({ room, origin }: SetOutFrame, scale: number): readonly DrawingItem[] {
  return namedMark(zeroAt(origin, { kind: 'object', id: `origin-${room}` }), scale);
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
  return [...axes, ...(frame.by === 'base-points' ? [] : namedMark(zeroAt(frame.origin, ref), scale))];
}

function zeroAt(at: Point, ref: DrawingRef) {
  return { style: 'running-origin', name: '0', at, ref } as const;
}
