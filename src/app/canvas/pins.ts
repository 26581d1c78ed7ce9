import type { MarkItem } from '../../documents/drawing.ts';
import type { PlacedItem } from './hit.ts';
import { type Viewport, viewportPaperPx } from './viewport.ts';

/** Pins nearer than this to each other would hide each other's numbers, mm on paper. */
const crowdedMm = 6;

interface Cluster {
  readonly head: PlacedItem;
  readonly mark: MarkItem;
  count: number;
}

/** The items with crowded pins drawn as one: the worst of them, with how many stand there in place of its number.
 *  Zooming in takes them apart. Pins come with the worst last, as the drawing list has them. */
export function pinsCluster(
  items: readonly PlacedItem[],
  { pxPerMm }: Pick<Viewport, 'pxPerMm'>,
): readonly PlacedItem[] {
  const reachMm = viewportPaperPx(crowdedMm) / pxPerMm;
  const clusters: Cluster[] = [];
  const rest: PlacedItem[] = [];
  for (const placed of [...items].reverse()) {
    const { item } = placed;
    if (item.shape !== 'mark' || item.layer !== 'findings') {
      rest.push(placed);
      continue;
    }
    const near = clusters.find(
      ({ mark }) => Math.abs(mark.at[0] - item.at[0]) < reachMm && Math.abs(mark.at[1] - item.at[1]) < reachMm,
    );
    if (near === undefined) clusters.push({ head: placed, mark: item, count: 1 });
    else near.count += 1;
  }
  const pins = clusters.map(({ head, mark, count }) =>
    count === 1 ? head : { ...head, item: { ...mark, text: `×${count}` } },
  );
  return [...rest.reverse(), ...pins.reverse()];
}
