import type { Point } from '../geometry/point.ts';
import { boxOf } from '../geometry/ring.ts';
import { onGrid } from '../geometry/tolerance.ts';
import type { SettingChange } from './compare-changes.ts';
import type { Pair } from './compare-match.ts';

/** Where something is drawn: a place, a line or an outline. */
export interface Drawn {
  readonly centre?: Point;
  readonly line?: readonly Point[];
  readonly outline?: readonly Point[];
}

export interface Placed {
  /** What it is called. */
  readonly of: string;
  /** What it is. Example: "Column" */
  readonly words: string;
}

/** What came, went or is drawn elsewhere or otherwise: by the upright box round it, and by its corners where the box does not tell it all. */
export function placeChanges({ of, words }: Placed, { before, now }: Pair<Drawn>): readonly SettingChange[] {
  if (placeKey(before) === placeKey(now)) return [];
  const isPoint = (now ?? before)?.centre !== undefined;
  const change = (what: string, was: string | null, is: string | null): readonly SettingChange[] =>
    was === is ? [] : [{ of, words: `${words}, ${what}`, unit: 'mm', before: was, now: is, unset: 'none' }];
  const boxes = change(isPoint ? 'at' : 'from and to', boxText(before), boxText(now));
  if (before === null || now === null || boxTellsAll(before, now)) return boxes;
  const [was, is] = cornersApart(before, now);
  return [...boxes, ...change(now.line === undefined ? 'corners that changed' : 'points that changed', was, is)];
}

/** The same for what is drawn alike, from whichever corner and in whichever direction; empty: nothing is drawn. */
export function placeKey(drawn: Drawn | null): string {
  return drawn === null ? '' : inOneOrder(drawn).join(' ');
}

/** Example: [1200, 300.5] -> "1200, 300.5" */
export function pointText([x, y]: Point): string {
  return `${onGrid(x) + 0}, ${onGrid(y) + 0}`;
}

/** Holes that came, went or are another. */
export function holeChanges(
  placed: Placed,
  before: readonly (readonly Point[])[],
  now: readonly (readonly Point[])[],
): readonly SettingChange[] {
  const apart = (holes: typeof now, others: typeof now) => {
    const keys = new Set(others.map((outline) => placeKey({ outline })));
    return holes.map((outline) => ({ outline })).filter((hole) => !keys.has(placeKey(hole)));
  };
  const [gone, come] = [apart(before, now), apart(now, before)];
  return (gone.length > come.length ? gone : come).flatMap((_, i) =>
    placeChanges(placed, { before: gone[i] ?? null, now: come[i] ?? null }),
  );
}

/** Example: "1200, 300 to 1800, 900"; null: it is not there */
function boxText(drawn: Drawn | null): string | null {
  if (drawn === null) return null;
  if (drawn.centre !== undefined) return pointText(drawn.centre);
  const { minX, minY, maxX, maxY } = boxOf(cornersOf(drawn));
  return `${pointText([minX, minY])} to ${pointText([maxX, maxY])}`;
}

/** Whether the one became the other by being moved, or by sides of its box that were moved with all that lies on them. */
function boxTellsAll(before: Drawn, now: Drawn): boolean {
  const [from, to] = [boxOf(cornersOf(before)), boxOf(cornersOf(now))];
  const moved = placeMapped(before, ([x, y]) => [x + to.minX - from.minX, y + to.minY - from.minY]);
  const side = (at: number, [least, most]: readonly [number, number], [first, last]: readonly [number, number]) =>
    at === least ? first : at === most ? last : at;
  const stretched = placeMapped(before, ([x, y]) => [
    side(x, [from.minX, from.maxX], [to.minX, to.maxX]),
    side(y, [from.minY, from.maxY], [to.minY, to.maxY]),
  ]);
  return [moved, stretched].includes(placeKey(now));
}

function placeMapped(drawn: Drawn, at: (point: Point) => Point): string {
  const corners = cornersOf(drawn).map(at);
  return placeKey(drawn.outline === undefined ? { line: corners } : { outline: corners });
}

/** Corners that one of two has alone; where both have the same ones, how they follow each other from where they part. */
function cornersApart(before: Drawn, now: Drawn): readonly [string | null, string | null] {
  const [earlier, later] = [inOneOrder(before), inOneOrder(now)];
  const own = (corners: readonly string[], others: readonly string[]) => {
    const known = new Set(others);
    return corners.filter((corner) => !known.has(corner));
  };
  const [gone, come] = [own(earlier, later), own(later, earlier)];
  if (gone.length + come.length > 0) return [listText(gone), listText(come)];
  const apart = earlier.findIndex((corner, i) => corner !== later[i]);
  const from = apart < 0 ? earlier.length : apart;
  return [listText(earlier.slice(from)), listText(later.slice(from))];
}

/** So many corners are listed; the rest are counted. */
const mostCorners = 8;

/** Example: "0, 0; 4000, 0 and 3 more" */
function listText(corners: readonly string[]): string | null {
  if (corners.length === 0) return null;
  const more = corners.length - mostCorners;
  return `${corners.slice(0, mostCorners).join('; ')}${more > 0 ? ` and ${more} more` : ''}`;
}

function cornersOf({ centre, line, outline }: Drawn): readonly Point[] {
  return centre === undefined ? (outline ?? line ?? []) : [centre];
}

/** Corners as text from the least one on, or a line from its lesser end, the lesser way round. */
function inOneOrder(drawn: Drawn): readonly string[] {
  const corners = cornersOf(drawn).map(pointText);
  const ways = [corners, [...corners].reverse()].map((way) => (drawn.outline === undefined ? way : fromLeast(way)));
  const [one = [], other = []] = ways;
  return one.join(' ') <= other.join(' ') ? one : other;
}

/** A ring that touches itself passes its least corner more than once: of the ways round the least is taken. */
function fromLeast(ring: readonly string[]): readonly string[] {
  const [least] = [...ring].sort();
  const turned = ring.flatMap((corner, i) => (corner === least ? [[...ring.slice(i), ...ring.slice(0, i)]] : []));
  return turned.reduce((first, way) => (way.join(' ') < first.join(' ') ? way : first), turned[0] ?? ring);
}
