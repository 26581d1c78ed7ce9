import type { DrawingRef, MarkItem } from '../../documents/drawing.ts';
import type { PlacedItem } from './hit.ts';
import { type Viewport, viewportPaperPx } from './viewport.ts';

/** Pins nearer than this to each other would hide each other's numbers, mm on paper. */
const crowdedMm = 7;

interface Cluster {
  readonly head: PlacedItem;
  readonly mark: MarkItem;
  /** What the pins of the cluster stand for, that of its head first. */
  readonly members: DrawingRef[];
}

/** The items with crowded pins drawn as one: the worst of them, with how many stand there in place of its number.
 *  Zooming in takes them apart; a press on one lists what it stands for. */
export function pinsCluster(
  items: readonly PlacedItem[],
  { pxPerMm }: Pick<Viewport, 'pxPerMm'>,
): readonly PlacedItem[] {
  const rest = items.filter(({ item }) => item.layer !== 'findings');
  const pins = clustersOf(items, pxPerMm).map(({ head, mark, members }) =>
    members.length === 1 ? head : { ...head, item: { ...mark, text: `×${members.length}` } },
  );
  return [...rest, ...pins.reverse()];
}

/** What the pin of a finding stands for on the board: itself, and all that its cluster has taken in. */
export function pinMembers(
  items: readonly PlacedItem[],
  { pxPerMm }: Pick<Viewport, 'pxPerMm'>,
  head: DrawingRef,
): readonly DrawingRef[] {
  return clustersOf(items, pxPerMm).find(({ mark }) => mark.ref.id === head.id)?.members ?? [head];
}

/** Pins come with the worst last, so that the worst of a crowd is met first and becomes its head. */
function clustersOf(items: readonly PlacedItem[], pxPerMm: number): readonly Cluster[] {
  const reachMm = viewportPaperPx(crowdedMm) / pxPerMm;
  const clusters: Cluster[] = [];
  for (const placed of [...items].reverse()) {
    const { item } = placed;
    if (item.shape !== 'mark' || item.layer !== 'findings') continue;
    const near = clusters.find(
      ({ mark }) => Math.abs(mark.at[0] - item.at[0]) < reachMm && Math.abs(mark.at[1] - item.at[1]) < reachMm,
    );
    if (near === undefined) clusters.push({ head: placed, mark: item, members: [item.ref] });
    else near.members.push(item.ref);
  }
  return clusters;
}
