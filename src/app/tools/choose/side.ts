import type { Point } from '../../../geometry/point.ts';
import { ringOutward } from '../../../geometry/ring-edges.ts';
import { cornerAdded, edgeMoved } from '../../../plan/edits/corners.ts';
import { objectFind, objectRings } from '../../../plan/edits/objects.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { freeHold, handCatch, handCatchAlong } from '../catch.ts';
import { type Catches, catchesOf, fileWithout } from '../catch-lines.ts';
import { objectNoun } from '../nouns.ts';
import type { SketchMark } from '../sketch.ts';
import type { Hand, Scene, Stance, Turn } from '../stance.ts';
import { gestureTurn } from './corner.ts';
import { dragging } from './dragging.ts';
import type { Handle } from './handles.ts';

/** A side of the chosen thing is dragged square to itself; with the key that lets go of holds, a new corner is drawn out
 *  of it. */
export function side(handle: Handle, from: Hand, { file, wishes }: Scene): Stance {
  const catches = catchesOf(fileWithout(file, [handle.id]), wishes.wallMm);
  return sideAt({ handle, corners: from.loose, catches, outwards: outwardsOf(handle, file) }, []);
}

interface SideDrag {
  readonly handle: Handle;
  /** A new corner is drawn out; the side moves else. */
  readonly corners: boolean;
  readonly catches: Catches;
  /** Unit vector square to the side, out of the outline. */
  readonly outwards: Point;
}

function outwardsOf({ id, ring, corner }: Handle, file: PlanFile): Point {
  const found = objectFind(file, id);
  const corners = found === null ? [] : (objectRings(found)[ring] ?? []);
  return ringOutward(corners)[corner] ?? [0, 0];
}

function sideAt(drag: SideDrag, marks: readonly SketchMark[]): Stance {
  return dragging({
    hint: `Let go where the ${drag.corners ? 'new corner' : 'side'} belongs.`,
    keys: 'Escape puts it back.',
    marks,
    led: (hand, scene, over) => (drag.corners ? cornered : moved)(drag, hand, scene, over),
  });
}

function moved(drag: SideDrag, hand: Hand, scene: Scene, over: boolean): Turn {
  const { handle, catches, outwards } = drag;
  const caught = handCatchAlong(catches, hand, handle.at, outwards);
  const byMm = (caught.at[0] - handle.at[0]) * outwards[0] + (caught.at[1] - handle.at[1]) * outwards[1];
  return gestureTurn(edgeMoved(scene.file, handle, byMm, { wholeWall: scene.wishes.wholeWall }), scene, {
    over,
    name: `Move a side of ${objectNoun(scene.file, handle.id)}`,
    on: (marks) => sideAt(drag, marks),
    caught,
  });
}

function cornered(drag: SideDrag, hand: Hand, scene: Scene, over: boolean): Turn {
  const { handle, catches } = drag;
  const caught = handCatch(catches, { ...hand, loose: false }, { ...freeHold, own: [...handle.side] });
  return gestureTurn(cornerAdded(scene.file, handle, caught.at), scene, {
    over,
    name: `Add a corner to ${objectNoun(scene.file, handle.id)}`,
    on: (marks) => sideAt(drag, marks),
    caught,
  });
}
