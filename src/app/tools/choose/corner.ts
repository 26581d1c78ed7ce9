import type { Point } from '../../../geometry/point.ts';
import { cornerMoved, type Edited, type RingCorner } from '../../../plan/edits/corners.ts';
import { objectFind, objectRings } from '../../../plan/edits/objects.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { type Caught, freeHold, handCatch } from '../catch.ts';
import { catchesOf, fileWithout } from '../catch-lines.ts';
import { objectNoun } from '../nouns.ts';
import type { SketchMark } from '../sketch.ts';
import type { Hand, Scene, Stance, Turn } from '../stance.ts';
import { dragging } from './dragging.ts';
import { refusalWords } from './refusals.ts';

/** A corner of the chosen thing is dragged. */
export function corner(ref: RingCorner, { file, wishes }: Scene): Stance {
  const found = objectFind(file, ref.id);
  const points: readonly Point[] =
    found === null ? [] : 'line' in found.object ? found.object.line : (objectRings(found)[ref.ring] ?? []);
  const own = points.filter((_, i) => i !== ref.corner);
  const catches = catchesOf(fileWithout(file, [ref.id]), wishes.wallMm);
  return cornerAt(ref, (hand) => handCatch(catches, hand, { ...freeHold, own }), []);
}

function cornerAt(ref: RingCorner, catching: (hand: Hand) => Caught, marks: readonly SketchMark[]): Stance {
  return dragging({
    hint: 'Let go where the corner belongs.',
    keys: 'Escape puts it back.',
    marks,
    led(hand, scene, over) {
      const caught = catching(hand);
      return gestureTurn(cornerMoved(scene.file, ref, caught.at), scene, {
        over,
        name: `Move a corner of ${objectNoun(scene.file, ref.id)}`,
        on: (shown) => cornerAt(ref, catching, shown),
        caught,
      });
    },
  });
}

interface Gesture {
  readonly over: boolean;
  readonly name: string;
  readonly on: (marks: readonly SketchMark[]) => Stance;
  readonly caught: Caught;
}

/** What an edit under the hand comes to: a preview as long as the hand holds it, a step when it lets go; where it cannot
 *  be, the reason at the hand, and nothing is done. */
export function gestureTurn(edited: Edited, { file }: { readonly file: PlanFile }, gesture: Gesture): Turn {
  const { over, name, on, caught } = gesture;
  if (edited.kind === 'refused') {
    const refused = refusalWords(edited.why);
    if (over) return { next: 'rest', refused };
    const words: SketchMark = { mark: 'words', at: caught.at, text: refused, tone: 'wrong' };
    return { next: on([{ mark: 'dot', at: caught.at, tone: 'wrong' }, words]), preview: file };
  }
  if (!over) return { next: on(caught.marks), preview: edited.file };
  return { next: 'rest', step: { name, file: edited.file } };
}
