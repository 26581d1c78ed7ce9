import { type Point, pointBetween, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import type { Box } from '../geometry/ring.ts';
import type { Drawing, DrawingItem, LabelItem, LabelSeat, PlacedLabel } from './drawing.ts';
import { itemInks } from './ink.ts';
import { type Blocks, blockRanks, blocksOf, type TurnedBox } from './label-blocks.ts';
import { type Grounds, groundsOf } from './label-grounds.ts';
import { lineAt, lineLength, type Seat, triesOf } from './label-seats.ts';
import { penShare } from './pen.ts';
import { haloMm, lineStyles } from './styles.ts';
import { markShown, marks } from './symbols.ts';

export interface PlaceOptions {
  /** mm on paper for one mm on the plan: 0.02 at 1:50. */
  readonly paperPerPlan: number;
  /** Only what lies here is lettered, mm on the plan: the board does not letter what is far out of view. */
  readonly within?: Box;
  /** Seats some of those that have found no room, once all others stand. */
  readonly last?: (placed: readonly PlacedLabel[], standing: Standing) => readonly PlacedLabel[];
}

/** What stands on a sheet when its labels have their seats. */
export interface Standing {
  readonly blocks: Blocks;
  readonly grounds: Grounds;
}

/** Seats the labels of a drawing at one scale so that no text stands over a joint, a floor edge, a pin or other text.
 *  Labels are taken by priority; each steps aside, then takes its next shorter form, and in a region turns to run up the
 *  sheet; where none of that helps it is left out until the scale is larger.
 *
 *  The canvas calls it for each zoom, the sheet for its scale: what is read on both stands in the same place. */
export function labelsPlace(
  drawing: Pick<Drawing, 'items'>,
  { paperPerPlan, within, last }: PlaceOptions,
): readonly PlacedLabel[] {
  const blocks = blocksOf(within && boxScaled(within, paperPerPlan));
  for (const item of drawing.items) itemBlock(blocks, item, paperPerPlan);
  const grounds = groundsOf(drawing.items);
  const labels = drawing.items
    .filter((item): item is LabelItem => item.shape === 'label')
    .filter(({ seat }) => within === undefined || boxHolds(within, seatPoint(seat)))
    .map((label, at) => ({ label, at }))
    .sort((a, b) => b.label.priority - a.label.priority || a.at - b.at);
  const placed: PlacedLabel[] = [];
  for (const { label } of labels) {
    const seated = labelSeat(label, blocks, grounds, paperPerPlan);
    if (seated === null) continue;
    blocks.addBox(boxAt(seated, paperPerPlan), blockRanks.text);
    const { at, angleDeg, widthMm, heightMm, form } = seated;
    placed.push({ label, form, at, angleDeg, widthMm, heightMm, ground: grounds.at(at) });
  }
  return last === undefined ? placed : [...placed, ...last(placed, { blocks, grounds })];
}

function boxScaled({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX * by, minY: minY * by, maxX: maxX * by, maxY: maxY * by };
}

function boxHolds({ minX, minY, maxX, maxY }: Box, [x, y]: Point): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

function seatPoint(seat: LabelSeat): Point {
  if (seat.kind === 'inside') return seat.at;
  return seat.places?.[0]?.at ?? lineAt(seat.line, lineLength(seat.line) / 2).point;
}

/** What text keeps clear of. */
function itemBlock(blocks: Blocks, item: DrawingItem, paperPerPlan: number): void {
  const onPaper = ([x, y]: Point): Point => [x * paperPerPlan, y * paperPerPlan];
  if (item.shape === 'line') {
    const widestMm = Math.max(...lineStyles[item.style].strokes.map(({ widthMm }) => widthMm));
    const rank = item.layer === 'joints' ? blockRanks.joint : blockRanks.line;
    blocks.addLine(item.points.map(onPaper), (widestMm * penShare(paperPerPlan)) / 2, rank);
  } else if (item.shape === 'ruled' && item.grout === undefined) {
    for (const ink of itemInks(item, { paperPerPlan, offsetMm: [0, 0] })) {
      if (ink.ink === 'path')
        for (const line of ink.lines) blocks.addLine(line, (ink.stroke?.widthMm ?? 0) / 2, blockRanks.line);
    }
  } else if (item.shape === 'fill' && item.layer !== 'bays') {
    blocks.addLine([...item.outline, ...item.outline.slice(0, 1)].map(onPaper), 0, blockRanks.line);
  } else if (item.shape === 'mark' && markShown(item, paperPerPlan)) {
    const { left, right, up, down } = marks[item.style].reachMm;
    const [x, y] = onPaper(item.at);
    const { angleDeg = 0 } = item;
    const radians = (angleDeg * Math.PI) / 180;
    const [along, across] = [(right - left) / 2, (down - up) / 2];
    const [cos, sin] = [Math.cos(radians), Math.sin(radians)];
    blocks.addBox(
      {
        centre: [x + along * cos - across * sin, y + along * sin + across * cos],
        halfWidth: (left + right) / 2,
        halfHeight: (up + down) / 2,
        angleDeg,
      },
      blockRanks.mark,
    );
  }
}

export function boxAt({ at, widthMm, heightMm, angleDeg }: Seat, paperPerPlan: number): TurnedBox {
  return {
    centre: [at[0] * paperPerPlan, at[1] * paperPerPlan] as const,
    halfWidth: widthMm / 2 + haloMm,
    halfHeight: heightMm / 2,
    angleDeg,
  };
}

function labelSeat(
  label: LabelItem,
  blocks: Blocks,
  grounds: Grounds,
  paperPerPlan: number,
): (Seat & Pick<PlacedLabel, 'form'>) | null {
  for (const [form, seats] of triesOf(label, paperPerPlan)) {
    for (const seat of seats) {
      const box = boxAt(seat, paperPerPlan);
      if (seatFree(label.seat, box, seat, blocks, paperPerPlan) && !grounds.onObject(seat.at, label.ref))
        return { form, ...seat };
    }
  }
  return null;
}

function seatFree(seat: LabelSeat, box: TurnedBox, place: Seat, blocks: Blocks, paperPerPlan: number): boolean {
  if (blocks.meets(box)) return false;
  if (seat.kind === 'beside') return sees(place, blocks, paperPerPlan, seat.ownMm);
  const { region } = seat;
  return (
    regionContains(region, place.at) &&
    [region.outline, ...region.holes].every((ring) => blocks.clearOf(box, ring, paperPerPlan))
  );
}

/** Nearer to a joint than this, mm on paper, there is the joint itself with the leaf above it. */
const ownLineMm = 1.3;

/** Whether nothing runs between a text and the line that it belongs to: beyond another line it would be read as that one's. */
function sees(
  { from, at, angleDeg, heightMm }: Seat,
  blocks: Blocks,
  paperPerPlan: number,
  ownMm = ownLineMm,
): boolean {
  if (from === undefined) return true;
  const awayMm = pointDistance(from, at) * paperPerPlan;
  const betweenMm = awayMm - heightMm / 2 - ownMm;
  if (betweenMm <= 0) return true;
  const [x, y] = pointBetween(from, at, (ownMm + betweenMm / 2) / awayMm);
  const centre: Point = [x * paperPerPlan, y * paperPerPlan];
  return !blocks.meets({ centre, halfWidth: haloMm / 2, halfHeight: betweenMm / 2, angleDeg });
}
