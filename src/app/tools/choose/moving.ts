import { type Point, pointDistance } from '../../../geometry/point.ts';
import { boxMiddle, boxOf } from '../../../geometry/ring.ts';
import { objectsMoved } from '../../../plan/edits/move.ts';
import { objectFind, objectPoints } from '../../../plan/edits/objects.ts';
import { freeHold, handCatch } from '../catch.ts';
import { type Catches, catchesOf, fileWithout } from '../catch-lines.ts';
import { countNoun, objectNoun } from '../nouns.ts';
import { type SketchMark, sketchLine } from '../sketch.ts';
import type { Hand, Scene, Stance, Turn } from '../stance.ts';
import { dragging } from './dragging.ts';

interface Moved {
  readonly ids: readonly string[];
  /** Where the drag began, mm. */
  readonly from: Point;
  /** The corner of it that the hand is nearest to: it is caught. */
  readonly corner: Point;
  /** The rest of the plan. */
  readonly catches: Catches;
}

/** What is chosen is dragged. */
export function moving(ids: readonly string[], hand: Hand, { file, wishes }: Scene): Stance {
  const points = ids.flatMap((id) => {
    const found = objectFind(file, id);
    return found === null ? [] : objectPoints(found);
  });
  const corners = [...points, boxMiddle(boxOf(points))];
  const [corner] = corners.sort((p, q) => pointDistance(p, hand.at) - pointDistance(q, hand.at));
  const catches = catchesOf(fileWithout(file, ids), wishes.wallMm);
  return movingAt({ ids, from: hand.at, corner: corner ?? hand.at, catches }, [0, 0], []);
}

function movingAt(moved: Moved, by: Point, marks: readonly SketchMark[]): Stance {
  return dragging({
    hint: 'Let go where it belongs.',
    keys: 'Escape puts it back.',
    marks: [sketchLine([moved.corner, plus(moved.corner, by)], 'guide'), ...marks],
    led: (hand, scene, over) => movedTo(moved, hand, scene, over),
  });
}

function movedTo(moved: Moved, hand: Hand, { file }: Scene, over: boolean): Turn {
  const { ids, from, corner, catches } = moved;
  const raw = plus(corner, [hand.at[0] - from[0], hand.at[1] - from[1]]);
  const caught = handCatch(catches, { ...hand, at: raw }, { ...freeHold, base: corner });
  const by: Point = [caught.at[0] - corner[0], caught.at[1] - corner[1]];
  const after = objectsMoved(file, ids, by);
  if (!over) return { next: movingAt(moved, by, caught.marks), preview: after };
  const name = `Move ${ids.length === 1 ? objectNoun(file, ids[0] ?? '') : countNoun(ids.length)}`;
  return { next: 'rest', step: { name, file: after } };
}

function plus([x, y]: Point, [dx, dy]: Point): Point {
  return [x + dx, y + dy];
}
