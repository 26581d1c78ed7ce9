import { type Point, pointBetween, pointDirection, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import type { Drawing, DrawingItem, LabelForm, LabelItem, LabelSeat, PlacedLabel } from './drawing.ts';
import { type Blocks, blocksOf, type TurnedBox } from './label-blocks.ts';
import { haloMm, lineStyles } from './styles.ts';
import { marks } from './symbols.ts';
import { formSize } from './text-width.ts';

/** Distance of a joint's text from its line, mm on paper: first right beside it, then further off, past the reveals of a
 *  doorway into the room. */
const besideGapsMm = [1.1, 3.5, 6, 9];
/** Where along the line, from its middle: 0 at the middle, 1 as far as the text still stands beside the line. */
const alongShares = [0, -0.5, 0.5, -1, 1];
/** How far a text in a region may step aside, mm on paper. */
const asideMm = [3, 6, 10, 15];
const asideDirections: readonly Point[] = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [0.7, 0.7],
  [-0.7, 0.7],
  [0.7, -0.7],
  [-0.7, -0.7],
];

export interface PlaceOptions {
  /** mm on paper for one mm on the plan: 0.02 at 1:50. */
  readonly paperPerPlan: number;
}

/** Seats the labels of a drawing at one scale so that no text stands over a joint, a floor edge, a pin or other text.
 *  Labels are taken by priority; each steps aside, then turns to run up the sheet (in a region), then takes its next
 *  shorter form; where none of that helps it is left out until the scale is larger.
 *
 *  The canvas calls it for each zoom, the sheet for its scale: what is read on both stands in the same place. */
export function labelsPlace(drawing: Pick<Drawing, 'items'>, { paperPerPlan }: PlaceOptions): readonly PlacedLabel[] {
  const blocks = blocksOf();
  for (const item of drawing.items) itemBlock(blocks, item, paperPerPlan);
  const labels = drawing.items
    .filter((item): item is LabelItem => item.shape === 'label')
    .map((label, at) => ({ label, at }))
    .sort((a, b) => b.label.priority - a.label.priority || a.at - b.at);
  const placed: PlacedLabel[] = [];
  for (const { label } of labels) {
    const seated = labelSeat(label, blocks, paperPerPlan);
    if (seated === null) continue;
    blocks.addBox(boxAt(seated, paperPerPlan));
    placed.push(seated);
  }
  return placed;
}

/** What text keeps clear of. */
function itemBlock(blocks: Blocks, item: DrawingItem, paperPerPlan: number): void {
  const onPaper = ([x, y]: Point): Point => [x * paperPerPlan, y * paperPerPlan];
  if (item.shape === 'line' && (item.layer === 'joints' || item.layer === 'edges')) {
    const halfMm = Math.max(...lineStyles[item.style].strokes.map(({ widthMm }) => widthMm)) / 2;
    blocks.addLine(item.points.map(onPaper), halfMm);
  } else if (item.shape === 'fill' && item.layer === 'objects') {
    blocks.addLine([...item.outline, ...item.outline.slice(0, 1)].map(onPaper), 0);
  } else if (item.shape === 'mark') {
    const { left, right, up, down } = marks[item.style].reachMm;
    const [x, y] = onPaper(item.at);
    blocks.addBox({
      centre: [x + (right - left) / 2, y + (down - up) / 2],
      halfWidth: (left + right) / 2,
      halfHeight: (up + down) / 2,
      angleDeg: 0,
    });
  }
}

function boxAt(
  { at, widthMm, heightMm, angleDeg }: Omit<PlacedLabel, 'label' | 'form'>,
  paperPerPlan: number,
): TurnedBox {
  return {
    centre: [at[0] * paperPerPlan, at[1] * paperPerPlan] as const,
    halfWidth: widthMm / 2 + haloMm,
    halfHeight: heightMm / 2,
    angleDeg,
  };
}

function labelSeat(label: LabelItem, blocks: Blocks, paperPerPlan: number): PlacedLabel | null {
  for (const form of label.forms) {
    for (const seat of seatsOf(label.seat, form, paperPerPlan)) {
      if (seatFree(label.seat, boxAt(seat, paperPerPlan), seat.at, blocks, paperPerPlan))
        return { label, form, ...seat };
    }
  }
  return null;
}

function seatFree(seat: LabelSeat, box: TurnedBox, at: Point, blocks: Blocks, paperPerPlan: number): boolean {
  if (blocks.meets(box)) return false;
  if (seat.kind === 'beside') return true;
  const { region } = seat;
  return (
    regionContains(region, at) &&
    [region.outline, ...region.holes].every((ring) => blocks.clearOf(box, ring, paperPerPlan))
  );
}

type Seat = Omit<PlacedLabel, 'label' | 'form'>;

/** The places that a form may take, the best first. */
function seatsOf(seat: LabelSeat, form: LabelForm, paperPerPlan: number): Iterable<Seat> {
  return seat.kind === 'inside' ? seatsInside(seat.at, form, paperPerPlan) : seatsBeside(seat.line, form, paperPerPlan);
}

function* seatsInside(at: Point, form: LabelForm, paperPerPlan: number): Generator<Seat> {
  const size = formSize(form);
  for (const angleDeg of [0, -90]) {
    yield { at, angleDeg, ...size };
    for (const distance of asideMm) {
      for (const [dx, dy] of asideDirections) {
        const step = distance / paperPerPlan;
        yield { at: [at[0] + dx * step, at[1] + dy * step], angleDeg, ...size };
      }
    }
  }
}

function* seatsBeside(line: readonly Point[], form: LabelForm, paperPerPlan: number): Generator<Seat> {
  const size = formSize(form);
  const slackMm = Math.max(0, lineLength(line) * paperPerPlan - size.widthMm) / 2;
  for (const gap of besideGapsMm) {
    for (const share of slackMm > 0 ? alongShares : [0]) {
      const { point, direction } = lineAt(line, lineLength(line) / 2 + (share * slackMm) / paperPerPlan);
      const angleDeg = readingAngle(direction);
      const away = (gap + size.heightMm / 2) / paperPerPlan;
      const radians = (angleDeg * Math.PI) / 180;
      // above the line as it is read, then below it
      for (const side of [1, -1]) {
        yield {
          at: [point[0] + side * Math.sin(radians) * away, point[1] - side * Math.cos(radians) * away],
          angleDeg,
          ...size,
        };
      }
    }
  }
}

/** A line this close to upright is read from the right of the sheet, so that rounding does not turn every other text on a
 *  wall round. */
const uprightWithinDeg = 2;

/** Along the direction and never upside down: in [-92, 88), clockwise on the sheet. */
export function readingAngle([dx, dy]: Point): number {
  const degrees = (Math.atan2(dy, dx) * 180) / Math.PI;
  if (degrees >= 90 - uprightWithinDeg) return degrees - 180;
  return degrees < -90 - uprightWithinDeg ? degrees + 180 : degrees;
}

function lineLength(line: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < line.length; i++) sum += pointDistance(line[i - 1] as Point, line[i] as Point);
  return sum;
}

/** The place at a distance along a line and the direction of the line there. */
function lineAt(line: readonly Point[], distance: number): { readonly point: Point; readonly direction: Point } {
  let left = distance;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as Point, line[i] as Point];
    const length = pointDistance(a, b);
    if (left <= length || i === line.length - 1) {
      return { point: pointBetween(a, b, length === 0 ? 0 : left / length), direction: pointDirection(a, b) };
    }
    left -= length;
  }
  return { point: line[0] ?? [0, 0], direction: [1, 0] };
}
