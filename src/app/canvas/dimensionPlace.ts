import { type Point, vectorLength } from '../../geometry/point.ts';
import { type LengthUnit, lengthFigure } from '../parts/lengths.ts';
import type { Dimension } from '../tools/dimensions/dimension.ts';
import { type BoxPx, type SizePx, type Viewport, viewportToScreen } from './viewport.ts';

/** A dimension with its place on the board, px. */
export interface PlacedDimension {
  readonly dimension: Dimension;
  /** Such as "4500 mm". */
  readonly text: string;
  /** From the stretch to its line. */
  readonly asidePx: Point;
  /** Round the figure: what can be pressed. */
  readonly box: BoxPx;
}

/** How figures are set. */
export interface DimensionSetting {
  readonly unit: LengthUnit;
  /** Height of what can be pressed, and its least width. */
  readonly targetPx: number;
}

/** More figures than this are a table, not a drawing. */
const mostShown = 12;
/** A figure of the board's letters is so wide for each of its signs, the widest being m, and has so much on either side. */
const signPx = 8;
const marginPx = 4;
/** Height of the figure itself, px: what can be pressed may be higher. */
const figurePx = 20;
/** From the side to the figure beside it: the handle in the middle of the side stays free. */
const gapPx = 8;
/** Room for the end marks beside the figure. */
const endsPx = 8;
/** Figures stand so far within the board, px. */
const edgePx = 4;

/** Places the dimensions that can be read at this zoom: the longest first, none over another, none longer than its line, in the order in which they came.
 *  Of a stretch that goes beyond the board the figure stands in the middle of what is in view. */
export function dimensionsPlace(
  dimensions: readonly Dimension[],
  view: Viewport,
  size: SizePx,
  setting: DimensionSetting,
): readonly PlacedDimension[] {
  const longest = [...dimensions].sort((p, q) => q.lengthMm - p.lengthMm);
  const placed: PlacedDimension[] = [];
  for (const dimension of longest) {
    if (placed.length === mostShown) break;
    const each = dimensionPlace(dimension, view, size, setting);
    if (each !== null && !placed.some(({ box }) => boxesMeetPx(box, each.box))) placed.push(each);
  }
  const order = new Map(dimensions.map((dimension, i) => [dimension, i]));
  return placed.sort((p, q) => (order.get(p.dimension) ?? 0) - (order.get(q.dimension) ?? 0));
}

function dimensionPlace(
  dimension: Dimension,
  view: Viewport,
  size: SizePx,
  { unit, targetPx }: DimensionSetting,
): PlacedDimension | null {
  const { from, to, lengthMm, aside, depthMm } = dimension;
  const text = `${lengthFigure(lengthMm, unit)} ${unit}`;
  const widthPx = Math.max(targetPx, text.length * signPx + 2 * marginPx);
  const acrossPx = ([x, y]: Point, heightPx: number) => Math.abs(x) * widthPx + Math.abs(y) * heightPx;
  const depthPx = depthMm * view.pxPerMm;
  if (aside !== null && depthPx < acrossPx(aside, figurePx)) return null;
  const offPx = aside === null ? 0 : Math.min(acrossPx(aside, targetPx) / 2 + gapPx, depthPx / 2);
  const asidePx: Point = aside === null ? [0, 0] : [aside[0] * offPx, aside[1] * offPx];
  const [a, b] = [from, to].map((at) => plus(viewportToScreen(view, at), asidePx)) as [Point, Point];
  const seen = stretchSeen(a, b, size);
  const linePx = vectorLength(b[0] - a[0], b[1] - a[1]);
  if (seen === null || linePx === 0) return null;
  const way: Point = [(b[0] - a[0]) / linePx, (b[1] - a[1]) / linePx];
  if ((seen[1] - seen[0]) * linePx < acrossPx(way, figurePx) + endsPx) return null;
  const share = (seen[0] + seen[1]) / 2;
  const [x, y]: Point = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
  const box = {
    leftPx: x - widthPx / 2,
    rightPx: x + widthPx / 2,
    topPx: y - targetPx / 2,
    bottomPx: y + targetPx / 2,
  };
  return boxWithin(box, size) ? { dimension, text, asidePx, box } : null;
}

function plus([x, y]: Point, [dx, dy]: Point): Point {
  return [x + dx, y + dy];
}

/** From which to which share of the way from a to b lies on the board; null where none does. */
function stretchSeen(a: Point, b: Point, { widthPx, heightPx }: SizePx): readonly [number, number] | null {
  let [low, high] = [0, 1];
  for (const [axis, mostPx] of [widthPx, heightPx].entries()) {
    const [from, to] = [a[axis] ?? 0, b[axis] ?? 0];
    if (from === to) {
      if (from < 0 || from > mostPx) return null;
      continue;
    }
    const [p, q] = [-from / (to - from), (mostPx - from) / (to - from)];
    low = Math.max(low, Math.min(p, q));
    high = Math.min(high, Math.max(p, q));
  }
  return low < high ? [low, high] : null;
}

function boxWithin({ leftPx, topPx, rightPx, bottomPx }: BoxPx, { widthPx, heightPx }: SizePx): boolean {
  return leftPx >= edgePx && topPx >= edgePx && rightPx <= widthPx - edgePx && bottomPx <= heightPx - edgePx;
}

/** The box round several; null where there are none. */
export function boxesRoundPx(boxes: readonly BoxPx[]): BoxPx | null {
  if (boxes.length === 0) return null;
  return {
    leftPx: Math.min(...boxes.map(({ leftPx }) => leftPx)),
    topPx: Math.min(...boxes.map(({ topPx }) => topPx)),
    rightPx: Math.max(...boxes.map(({ rightPx }) => rightPx)),
    bottomPx: Math.max(...boxes.map(({ bottomPx }) => bottomPx)),
  };
}

export function boxesMeetPx(a: BoxPx, b: BoxPx): boolean {
  return a.leftPx < b.rightPx && b.leftPx < a.rightPx && a.topPx < b.bottomPx && b.topPx < a.bottomPx;
}
