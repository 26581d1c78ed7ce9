import type { Point } from '../geometry/point.ts';
import type { Drawing, DrawingItem, MarkItem } from './drawing.ts';
import { marks } from './symbols.ts';

/** Foot and body of a pin as it stands, mm on the plan. */
interface StandingPin {
  readonly at: Point;
  readonly style: MarkItem['style'];
}

const pinStyles: readonly MarkItem['style'][] = ['pin-fault', 'pin-caution', 'pin-note'];
/** Body of a pin above its place, and free space between two, mm on paper. */
const bodyFootMm = 2;
const besideMm = 0.3;
/** A pin stands so far into the one below it, that both are seen to share a pole, mm on paper. */
const onTopMm = 0.4;
/** So many stand on one pole. */
const mostStacked = 4;

export function isPin(item: DrawingItem): item is MarkItem {
  return item.shape === 'mark' && pinStyles.includes(item.style);
}

/** Pins that would hide each other's numbers at a scale stand on top of each other, as signs on a pole, the worst lowest; one for which there is no room
 *  either is left out, and the strip says so. */
export function pinsStacked(drawing: Drawing, scale: number): Drawing {
  const standing: StandingPin[] = [];
  const seats = new Map<DrawingItem, Point | null>();
  const pins = drawing.items.filter(isPin);
  const rank = ({ style }: MarkItem) => pinStyles.indexOf(style);
  const number = ({ text }: MarkItem) => Number(text);
  const top = drawing.box?.minY ?? -Infinity;
  for (const pin of [...pins].sort((a, b) => rank(a) - rank(b) || number(a) - number(b))) {
    const at = pinSeat(pin, standing, scale, top);
    seats.set(pin, at);
    if (at !== null) standing.push({ at, style: pin.style });
  }
  const items = drawing.items.flatMap((item): readonly DrawingItem[] => {
    const at = seats.get(item);
    if (at === undefined || !isPin(item) || at === item.at) return [item];
    return at === null ? [] : [{ ...item, at }];
  });
  return { ...drawing, items };
}

function pinSeat(pin: MarkItem, standing: readonly StandingPin[], scale: number, top: number): Point | null {
  let at = pin.at;
  for (let i = 0; i < mostStacked; i++) {
    const under = standing.find((other) => bodiesMeet({ at, style: pin.style }, other, scale));
    if (under === undefined) return at;
    at = [under.at[0], under.at[1] - (marks[under.style].reachMm.up - onTopMm) * scale];
    // above the drawing there is room for one pin and no more
    if (at[1] < top) return null;
  }
  return null;
}

function bodiesMeet(a: StandingPin, b: StandingPin, scale: number): boolean {
  const [one, other] = [marks[a.style].reachMm, marks[b.style].reachMm];
  const [dx, dy] = [(b.at[0] - a.at[0]) / scale, (b.at[1] - a.at[1]) / scale];
  const apartX = dx > 0 ? one.right + other.left : one.left + other.right;
  // the body of a lies between -up and -foot, that of b so far below it as b lies below a
  const overlapsDown = dy - other.up < -bodyFootMm + besideMm && -one.up < dy - bodyFootMm + besideMm;
  return Math.abs(dx) < apartX + besideMm && overlapsDown;
}
