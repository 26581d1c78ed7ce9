import type { Point } from '../../../geometry/point.ts';
import { boxOf } from '../../../geometry/ring.ts';
import { objectFind, objectLists, objectPoints } from '../../../plan/edits/objects.ts';
import type { Thing } from '../../state/thing.ts';
import { rectangleOf } from '../draw/end.ts';
import { sketchRing } from '../sketch.ts';
import type { Scene, Stance } from '../stance.ts';
import { dragging } from './dragging.ts';

/** A box is drawn: what lies wholly in it is chosen with what is chosen already. */
export function boxing(from: Point, to: Point): Stance {
  return dragging({
    hint: 'Draw the box round all that is to be chosen.',
    marks: [sketchRing(rectangleOf(from, to))],
    led: ({ at }, scene, over) =>
      over ? { next: 'rest', choose: boxed(from, at, scene) } : { next: boxing(from, at) },
  });
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
