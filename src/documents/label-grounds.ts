import type { Point } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { type Box, boxOf } from '../geometry/ring.ts';
import type { DrawingItem, DrawingRef, FillItem, LabelGround } from './drawing.ts';
import { type FillStyle, fillStyles } from './styles.ts';

/** What the floor looks like under a text. */
export interface Grounds {
  at(point: Point): LabelGround;
  /** Whether an object other than `own` lies there: its text would be taken for the object's. */
  onObject(point: Point, own: DrawingRef): boolean;
}

export function groundsOf(items: readonly DrawingItem[]): Grounds {
  const fills = items
    .filter((item): item is FillItem => item.shape === 'fill')
    .map((item) => ({ item, box: boxOf(item.outline), style: fillStyles[item.style] as FillStyle }))
    .reverse();
  const objects = fills.filter(({ item }) => item.layer === 'objects');
  return {
    at(point) {
      const over = fills.filter(({ item, box }) => covers(item, box, point));
      const painted = over.findIndex(({ style }) => style.fill !== null);
      const seen = painted < 0 ? over : over.slice(0, painted + 1);
      return {
        colour: over[painted]?.style.fill ?? 'paper',
        hatched: seen.some(({ style }) => style.hatches.length > 0),
      };
    },
    onObject: (point, own) => objects.some(({ item, box }) => item.ref.id !== own.id && covers(item, box, point)),
  };
}

function covers(item: FillItem, { minX, minY, maxX, maxY }: Box, point: Point): boolean {
  const x = point[0];
  const y = point[1];
  return x >= minX && x <= maxX && y >= minY && y <= maxY && regionContains(item, point);
}
