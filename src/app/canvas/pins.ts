import type { DrawingRef, MarkItem } from '../../documents/drawing.ts';
import type { PlacedItem } from './hit.ts';
import { type Viewport, viewportPaperPx } from './viewport.ts';

/** Pins nearer than the first to each other would hide each other's numbers, mm on paper. The others are for drawings on
 *  which pins at that distance would hide the floor. */
const crowdedMm = [7, 10, 14, 20, 28] as const;
/** What a pin covers, mm2 on paper, and the share of the drawing that pins may cover together; a dozen always may. */
const pinMm2 = 60;
const coveredShare = 0.15;
const fewPins = 12;

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
  const reachMm = crowdReach(items, pxPerMm);
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

/** Distance below which pins are drawn as one, mm: the least at which they leave the floor in view. */
function crowdReach(items: readonly PlacedItem[], pxPerMm: number): number {
  const pins = items.flatMap(({ item }) => (item.shape === 'mark' && item.layer === 'findings' ? [item.at] : []));
  const paperMm = viewportPaperPx(1) / pxPerMm;
  const [xs, ys] = [0, 1].map((axis) => pins.map((at) => at[axis as 0 | 1] / paperMm)) as [number[], number[]];
  const spread = (values: readonly number[]) => Math.max(...values) - Math.min(...values) + crowdedMm[0];
  const mostPins =
    pins.length <= fewPins ? fewPins : Math.max(fewPins, (coveredShare * spread(xs) * spread(ys)) / pinMm2);
  const leaves = (reach: number) =>
    new Set(xs.map((x, i) => `${Math.floor(x / reach)} ${Math.floor((ys[i] ?? 0) / reach)}`)).size <= mostPins;
  const reach =
    pins.length <= mostPins ? crowdedMm[0] : (crowdedMm.find(leaves) ?? crowdedMm[crowdedMm.length - 1] ?? 0);
  return reach * paperMm;
}
