import { type Point, pointBetween, pointDirection, pointDistance } from '../geometry/point.ts';
import { boxOf } from '../geometry/ring.ts';
import type { LabelForm, LabelItem, LabelPlace, LabelSeat, PlacedLabel } from './drawing.ts';
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
/** A text in a region steps aside by half its own size and this, so that it comes to stand beside what was in its way. */
const asideGapMm = 2.4;
const axes: readonly Point[] = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
];
const diagonals: readonly Point[] = [
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
];
/** First beside what is in the way, above and below it also a little off its axis, where something else stands there; then
 *  further off. */
const asideNear: readonly Point[] = [...axes, ...diagonals.map(([dx, dy]): Point => [0.4 * dx, dy]), ...diagonals];
const asideFar: readonly Point[] = [
  ...axes.map(([dx, dy]): Point => [1.5 * dx, 1.5 * dy]),
  ...[...axes, ...diagonals].map(([dx, dy]): Point => [2 * dx, 2 * dy]),
];
const aside = [...asideNear, ...asideFar];

/** A place where the text of a label may stand. */
export interface Seat extends Omit<PlacedLabel, 'label' | 'form' | 'ground'> {
  /** The place on the line that the text stands beside; none in a region. */
  readonly from?: Point;
}

type Try = readonly [form: LabelForm, seats: Iterable<Seat>];
type Tries = Iterable<Try>;
type SeatInside = Extract<LabelSeat, { kind: 'inside' }>;
type SeatBeside = Extract<LabelSeat, { kind: 'beside' }>;

/** A region this much taller than wide is lettered upwards before its text is cut down, as a corridor is. */
const corridorShare = 1.5;

/** Forms of a label with the places where each may stand, the best first. */
export function triesOf(label: LabelItem, paperPerPlan: number): Tries {
  return label.seat.kind === 'beside'
    ? triesBeside(label.forms, label.seat, paperPerPlan)
    : triesInside(label.forms, label.seat, paperPerPlan);
}

function* triesBeside(forms: readonly LabelForm[], seat: SeatBeside, paperPerPlan: number): Generator<Try> {
  const { places } = seat;
  if (places !== undefined) {
    for (const form of forms) yield [form, places.map((place) => seatAt(place, form))];
    return;
  }
  const lengthMm = lineLength(seat.line) * paperPerPlan;
  if (!seat.inOpening && lengthMm < shortestLettered) return;
  const widestMm = lengthMm * (seat.inOpening ? widestOverOpening : widestOverLine);
  for (const form of forms) {
    if (formSize(form).widthMm <= widestMm) yield [form, seatsBeside(seat, form, paperPerPlan)];
  }
}

function seatAt({ at, direction }: LabelPlace, form: LabelForm): Seat {
  return { at, angleDeg: readingAngle(direction), ...formSize(form) };
}

/** Level, then running up the sheet where the region is a corridor, and only then what is left of the text when it is cut
 *  down to a single line. */
function* triesInside(forms: readonly LabelForm[], seat: SeatInside, paperPerPlan: number): Generator<Try> {
  const { minX, minY, maxX, maxY } = boxOf(seat.region.outline);
  const [roomMm, roomDownMm] = [(maxX - minX) * paperPerPlan, (maxY - minY) * paperPerPlan];
  const fits = (form: LabelForm, angleDeg: number) => {
    const { widthMm, heightMm } = formSize(form);
    return angleDeg === 0 ? widthMm <= roomMm && heightMm <= roomDownMm : heightMm <= roomMm && widthMm <= roomDownMm;
  };
  const blocks = forms.filter((form) => form.length > 1);
  const lines = forms.filter((form) => form.length === 1);
  const tries =
    roomDownMm > corridorShare * roomMm
      ? ([
          [blocks, 0, aside],
          [blocks, -90, aside],
          [lines.slice(0, 1), 0, asideNear],
          [lines, -90, aside],
        ] as const)
      : ([[blocks, 0, aside]] as const);
  for (const [group, angleDeg, steps] of [...tries, [lines, 0, aside], [lines, -90, aside]] as const) {
    for (const form of group.filter((each) => fits(each, angleDeg)))
      yield [form, seatsInside(seat.at, form, angleDeg, { paperPerPlan, steps })];
  }
}

/** @param steps aside, in halves of its own size */
function* seatsInside(
  at: Point,
  form: LabelForm,
  angleDeg: number,
  { paperPerPlan, steps }: { readonly paperPerPlan: number; readonly steps: readonly Point[] },
): Generator<Seat> {
  const size = formSize(form);
  yield { at, angleDeg, ...size };
  const [across, down] = angleDeg === 0 ? [size.widthMm, size.heightMm] : [size.heightMm, size.widthMm];
  for (const [dx, dy] of steps) {
    const x = at[0] + (dx * (across / 2 + asideGapMm)) / paperPerPlan;
    const y = at[1] + (dy * (down / 2 + asideGapMm)) / paperPerPlan;
    yield { at: [x, y], angleDeg, ...size };
  }
}

function* seatsBeside(
  { line, inOpening, onRight = false }: SeatBeside,
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
      const right = Math.cos(radians) * direction[0] + Math.sin(radians) * direction[1] > 0 ? -1 : 1;
      for (const side of onRight ? [right] : [1, -1]) {
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

export function lineLength(line: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < line.length; i++) sum += pointDistance(line[i - 1] as Point, line[i] as Point);
  return sum;
}

/** The place at a distance along a line and the direction of the line there. */
export function lineAt(line: readonly Point[], distance: number): { readonly point: Point; readonly direction: Point } {
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
