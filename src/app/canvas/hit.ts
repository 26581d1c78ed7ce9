import type { DrawingItem, DrawingRef, MarkItem } from '../../documents/drawing.ts';
import { marks } from '../../documents/symbols.ts';
import type { Point } from '../../geometry/point.ts';
import { regionContains } from '../../geometry/region.ts';
import { type Box, boxOf } from '../../geometry/ring.ts';
import { segmentDistance } from '../../geometry/segment.ts';
import { type Viewport, viewportLengthMm, viewportPaperPx, viewportToPlan } from './viewport.ts';

/** An item with the upright box round its geometry, mm: what is drawn only where it is in view, and asked only near it. */
export interface PlacedItem {
  readonly item: DrawingItem;
  readonly box: Box;
}

export function itemsPlace(items: readonly DrawingItem[]): readonly PlacedItem[] {
  return items.filter((item) => item.shape !== 'label').map((item) => ({ item, box: boxOf(itemPoints(item)) }));
}

export function itemPoints(item: DrawingItem): readonly Point[] {
  switch (item.shape) {
    case 'fill':
      return item.outline;
    case 'line':
      return item.points;
    case 'ruled':
      return [
        [item.box.minX, item.box.minY],
        [item.box.maxX, item.box.maxY],
      ];
    case 'mark':
      return [item.at];
    case 'label':
      return item.seat.kind === 'inside' ? item.seat.region.outline : item.seat.line;
  }
}

/** Everything on the drawing that stands for the thing. */
export function itemsOf(items: readonly PlacedItem[], ref: DrawingRef): readonly PlacedItem[] {
  return items.filter(({ item }) => item.ref.kind === ref.kind && item.ref.id === ref.id);
}

/** What lies under the pointer: the uppermost item that it meets, where lines and symbols may be missed by `reachPx`.
 *  Lines win over what is filled, since they are the harder to meet. */
export function itemsHit(
  items: readonly PlacedItem[],
  view: Viewport,
  atPx: Point,
  reachPx: number,
): DrawingRef | null {
  const at = viewportToPlan(view, atPx);
  const reachMm = viewportLengthMm(view, reachPx);
  let filled: DrawingRef | null = null;
  for (const { item, box } of [...items].reverse()) {
    if (item.shape === 'mark') {
      if (item.layer === 'findings' && markHit(item, view, at, reachPx)) return item.ref;
      continue;
    }
    if (at[0] < box.minX - reachMm || at[0] > box.maxX + reachMm) continue;
    if (at[1] < box.minY - reachMm || at[1] > box.maxY + reachMm) continue;
    if (item.shape === 'line' && lineDistance(item.points, at) <= reachMm) return item.ref;
    if (item.shape === 'fill' && filled === null && regionContains(item, at)) filled = item.ref;
  }
  return filled;
}

function markHit(item: MarkItem, view: Viewport, at: Point, reachPx: number): boolean {
  const { left, right, up, down } = marks[item.style].reachMm;
  const spare = Math.max(0, reachPx - viewportPaperPx(left));
  const [dx, dy] = [at[0] - item.at[0], at[1] - item.at[1]].map((mm) => mm * view.pxPerMm) as [number, number];
  return (
    dx >= -viewportPaperPx(left) - spare &&
    dx <= viewportPaperPx(right) + spare &&
    dy >= -viewportPaperPx(up) &&
    dy <= viewportPaperPx(down) + spare
  );
}

function lineDistance(points: readonly Point[], at: Point): number {
  let least = Infinity;
  points.forEach((point, i) => {
    const before = points[i - 1];
    if (before !== undefined) least = Math.min(least, segmentDistance(before, point, at));
  });
  return least;
}
