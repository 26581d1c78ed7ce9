import { type Point, pointBetween, pointDirection, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { type Box, boxOf } from '../geometry/ring.ts';
import type { Drawing, DrawingItem, LabelForm, LabelItem, LabelSeat, PlacedLabel } from './drawing.ts';
import { type Blocks, blocksOf, type TurnedBox } from './label-blocks.ts';
import { type Grounds, groundsOf } from './label-grounds.ts';
import { haloMm, lineStyles } from './styles.ts';
import { markShown, marks } from './symbols.ts';
import { formSize } from './text-width.ts';

/** Distance of a joint's text from its line, mm on paper: right beside it or past a pin on it, since further off it
 *  would be read as that of another line. Only in an opening it steps past the reveals into the room. */
const besideGapsMm = [1.5, 3, 4.5];
const openingGapsMm = [1.5, 3.5, 6, 9];
/** Where along the line, from its middle: 0 at the middle, 1 as far as the text still stands beside the line. */
const alongShares = [0, -0.5, 0.5, -1, 1];
/** A text wider than so many times its joint is not read as the joint's own. Doors are narrow and their text long. */
const widestOverLine = 0.95;
const widestOverOpening = 5;
/** A joint shorter than this on paper, mm, is lettered at a larger scale: the bays beside it are small, and their names
 *  are looked for first. */
const shortestLettered = 14;
/** A text in a region steps aside by half its own size and this, so that it comes to stand beside what was in its way; then
 *  by twice as far. */
const asideGapMm = 2.4;
const asideSteps: readonly Point[] = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
];

export interface PlaceOptions {
  /** mm on paper for one mm on the plan: 0.02 at 1:50. */
  readonly paperPerPlan: number;
  /** Only what lies here is lettered, mm on the plan: the board does not letter what is far out of view. */
  readonly within?: Box;
}

/** Seats the labels of a drawing at one scale so that no text stands over a joint, a floor edge, a pin or other text.
 *  Labels are taken by priority; each steps aside, then takes its next shorter form, and in a region turns to run up the
 *  sheet; where none of that helps it is left out until the scale is larger.
 *
 *  The canvas calls it for each zoom, the sheet for its scale: what is read on both stands in the same place. */
export function labelsPlace(
  drawing: Pick<Drawing, 'items'>,
  { paperPerPlan, within }: PlaceOptions,
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
    blocks.addBox(boxAt(seated, paperPerPlan));
    const { at, angleDeg, widthMm, heightMm, form } = seated;
    placed.push({ label, form, at, angleDeg, widthMm, heightMm, ground: grounds.at(at) });
  }
  return placed;
}

function boxScaled({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX * by, minY: minY * by, maxX: maxX * by, maxY: maxY * by };
}

function boxHolds({ minX, minY, maxX, maxY }: Box, [x, y]: Point): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

function seatPoint(seat: LabelSeat): Point {
  return seat.kind === 'inside' ? seat.at : lineAt(seat.line, lineLength(seat.line) / 2).point;
}

/** What text keeps clear of. */
function itemBlock(blocks: Blocks, item: DrawingItem, paperPerPlan: number): void {
  const onPaper = ([x, y]: Point): Point => [x * paperPerPlan, y * paperPerPlan];
  if (item.shape === 'line') {
    const halfMm = Math.max(...lineStyles[item.style].strokes.map(({ widthMm }) => widthMm)) / 2;
    blocks.addLine(item.points.map(onPaper), halfMm);
  } else if (item.shape === 'fill' && item.layer !== 'bays') {
    blocks.addLine([...item.outline, ...item.outline.slice(0, 1)].map(onPaper), 0);
  } else if (item.shape === 'mark' && markShown(item, paperPerPlan)) {
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

function boxAt({ at, widthMm, heightMm, angleDeg }: Seat, paperPerPlan: number): TurnedBox {
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

type Tries = Iterable<readonly [form: LabelForm, seats: Iterable<Seat>]>;

/** Forms with their places, the best first. In a region: level, then running up the sheet as a corridor needs it, and only
 *  then what is left of the text when it is cut down to a single line. */
function* triesOf({ seat, forms }: LabelItem, paperPerPlan: number): Tries {
  if (seat.kind === 'beside') {
    const lengthMm = lineLength(seat.line) * paperPerPlan;
    if (!seat.inOpening && lengthMm < shortestLettered) return;
    const widestMm = lengthMm * (seat.inOpening ? widestOverOpening : widestOverLine);
    for (const form of forms) {
      if (formSize(form).widthMm <= widestMm) yield [form, seatsBeside(seat, form, paperPerPlan)];
    }
    return;
  }
  const { minX, minY, maxX, maxY } = boxOf(seat.region.outline);
  const [roomMm, roomDownMm] = [(maxX - minX) * paperPerPlan, (maxY - minY) * paperPerPlan];
  const fits = (form: LabelForm, angleDeg: number) => {
    const { widthMm, heightMm } = formSize(form);
    return angleDeg === 0 ? widthMm <= roomMm && heightMm <= roomDownMm : heightMm <= roomMm && widthMm <= roomDownMm;
  };
  const blocks = forms.filter((form) => form.length > 1);
  const lines = forms.filter((form) => form.length === 1);
  for (const group of [blocks, lines]) {
    for (const angleDeg of [0, -90]) {
      for (const form of group.filter((each) => fits(each, angleDeg)))
        yield [form, seatsInside(seat.at, form, angleDeg, paperPerPlan)];
    }
  }
}

function seatFree(seat: LabelSeat, box: TurnedBox, place: Seat, blocks: Blocks, paperPerPlan: number): boolean {
  if (blocks.meets(box)) return false;
  if (seat.kind === 'beside') return sees(place, blocks, paperPerPlan);
  const { region } = seat;
  return (
    regionContains(region, place.at) &&
    [region.outline, ...region.holes].every((ring) => blocks.clearOf(box, ring, paperPerPlan))
  );
}

interface Seat extends Omit<PlacedLabel, 'label' | 'form' | 'ground'> {
  /** The place on the line that the text stands beside; none in a region. */
  readonly from?: Point;
}

/** Nearer to a joint than this, mm on paper, there is the joint itself with the leaf above it. */
const ownLineMm = 1.3;

/** Whether nothing runs between a text and the line that it belongs to: beyond another line it would be read as that one's. */
function sees({ from, at, angleDeg, heightMm }: Seat, blocks: Blocks, paperPerPlan: number): boolean {
  if (from === undefined) return true;
  const awayMm = pointDistance(from, at) * paperPerPlan;
  const betweenMm = awayMm - heightMm / 2 - ownLineMm;
  if (betweenMm <= 0) return true;
  const [x, y] = pointBetween(from, at, (ownLineMm + betweenMm / 2) / awayMm);
  const centre: Point = [x * paperPerPlan, y * paperPerPlan];
  return !blocks.meets({ centre, halfWidth: haloMm / 2, halfHeight: betweenMm / 2, angleDeg });
}

function* seatsInside(at: Point, form: LabelForm, angleDeg: number, paperPerPlan: number): Generator<Seat> {
  const size = formSize(form);
  yield { at, angleDeg, ...size };
  const [across, down] = angleDeg === 0 ? [size.widthMm, size.heightMm] : [size.heightMm, size.widthMm];
  for (const times of [1, 2]) {
    for (const [dx, dy] of asideSteps) {
      const x = at[0] + (dx * times * (across / 2 + asideGapMm)) / paperPerPlan;
      const y = at[1] + (dy * times * (down / 2 + asideGapMm)) / paperPerPlan;
      yield { at: [x, y], angleDeg, ...size };
    }
  }
}

function* seatsBeside(
  { line, inOpening }: Extract<LabelSeat, { kind: 'beside' }>,
  form: LabelForm,
  paperPerPlan: number,
): Generator<Seat> {
  const size = formSize(form);
  const slackMm = Math.max(0, lineLength(line) * paperPerPlan - size.widthMm) / 2;
  for (const gap of inOpening ? openingGapsMm : besideGapsMm) {
    for (const share of slackMm > 0 ? alongShares : [0]) {
      const { point, direction } = lineAt(line, lineLength(line) / 2 + (share * slackMm) / paperPerPlan);
      const angleDeg = readingAngle(direction);
      const away = (gap + size.heightMm / 2) / paperPerPlan;
      const radians = (angleDeg * Math.PI) / 180;
      // above the line as it is read, then below it
      for (const side of [1, -1]) {
        yield {
          from: point,
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
