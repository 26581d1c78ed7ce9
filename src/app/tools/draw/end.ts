import { ringCrossing } from '../../../geometry/crossing.ts';
import { type Point, pointDistance } from '../../../geometry/point.ts';
import { boxOf } from '../../../geometry/ring.ts';
import { WELD_MM } from '../../../geometry/tolerance.ts';
import { FARTHEST_MM, pointSnapped } from '../../../plan/snap.ts';
import type { Thing } from '../../state/thing.ts';
import type { Scene, Stance, Turn } from '../stance.ts';
import type { DrawKind } from './kinds.ts';

export function rectangleOf(a: Point, b: Point): readonly Point[] {
  const { minX, maxX, minY, maxY } = boxOf([a, b]);
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}

/** What was drawn becomes part of the plan; where it cannot, the hand goes on where it was.
 *  @param again the state in which the next is drawn  @param stay the state to go on from where it is refused */
export function drawEnd(
  kind: DrawKind,
  drawn: readonly Point[],
  scene: Scene,
  again: Stance,
  stay: Stance = again,
): Turn {
  const points = cornersKept(drawn.map(pointSnapped), kind.closed);
  if (points.length < (kind.closed ? 3 : 2)) {
    return { next: stay, refused: kind.closed ? 'An outline needs three corners.' : 'A line needs two ends.' };
  }
  if (points.some(isOffSheet)) return { next: stay, refused: offSheetWords };
  if (kind.closed && ringCrossing(points) !== null) {
    return { next: stay, refused: 'The last run would cross the outline: an outline may not cross itself.' };
  }
  const added = kind.add(scene.file, points, scene);
  if ('refused' in added) return { next: stay, refused: added.refused };
  const chosen: Thing = { kind: kind.tool === 'room' || kind.tool === 'hole' ? 'room' : 'object', key: added.id };
  return { next: again, step: { name: kind.step, file: added.file }, choose: [chosen] };
}

const offSheetWords = 'This lies beyond the sheet, which reaches 10 km each way.';

function isOffSheet([x, y]: Point): boolean {
  return Math.max(Math.abs(x), Math.abs(y)) > FARTHEST_MM;
}

/** Without corners that lie on the one before, and without those in the middle of a straight run. */
function cornersKept(points: readonly Point[], closed: boolean): readonly Point[] {
  const apart = points.filter((point, i) => {
    const before = points[i - 1];
    return before === undefined || !isNear(before, point);
  });
  const last = apart.at(-1);
  if (closed && apart.length > 1 && last !== undefined && isNear(apart[0] as Point, last)) apart.pop();
  return apart.filter((point, i) => {
    const isEnd = !closed && (i === 0 || i === apart.length - 1);
    const before = apart[(i + apart.length - 1) % apart.length] as Point;
    const after = apart[(i + 1) % apart.length] as Point;
    return isEnd || !isBetween(before, point, after);
  });
}

function isNear(a: Point, b: Point): boolean {
  return pointDistance(a, b) < WELD_MM;
}

/** Whether the run goes straight on through the point. */
function isBetween(before: Point, [x, y]: Point, after: Point): boolean {
  const [ax, ay] = [x - before[0], y - before[1]];
  const [bx, by] = [after[0] - x, after[1] - y];
  return ax * by - ay * bx === 0 && ax * bx + ay * by > 0;
}
