import type { Point } from '../../../geometry/point.ts';
import { boxOf } from '../../../geometry/ring.ts';
import { objectFind, objectLists, objectPoints } from '../../../plan/edits/objects.ts';
import type { Thing } from '../../state/thing.ts';
import { rectangleOf } from '../draw/end.ts';
import { sketchRing } from '../sketch.ts';
import type { Scene, Stance } from '../stance.ts';

/** A box is drawn: what lies wholly in it is chosen with what is chosen already. */
export function boxing(from: Point, to: Point): Stance {
  return {
    tool: 'choose',
    hint: 'Draw the box round all that is to be chosen.',
    underway: true,
    typed: null,
    sketch: () => ({ marks: [sketchRing(rectangleOf(from, to))] }),
    grabs: () => true,
    on(act, scene) {
      if (act.kind === 'drag' || act.kind === 'down') return { next: boxing(from, act.hand.at) };
      if (act.kind === 'drop') return { next: 'rest', choose: boxed(from, act.hand.at, scene) };
      return { next: act.kind === 'hover' ? boxing(from, to) : 'rest' };
    },
  };
}

function boxed(from: Point, to: Point, { file, chosen }: Scene): readonly Thing[] {
  const box = boxOf([from, to]);
  const inside = ([x, y]: Point) => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
  const things = objectLists.flatMap((list) =>
    (file[list] ?? []).flatMap(({ id }): Thing[] => {
      const found = objectFind(file, id);
      if (found === null || !objectPoints(found).every(inside)) return [];
      return [{ kind: list === 'rooms' ? 'room' : 'object', key: id }];
    }),
  );
  return [...chosen, ...things.filter(({ key }) => !chosen.some((each) => each.key === key))];
}
