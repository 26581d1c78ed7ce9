import type { Point } from '../../geometry/point.ts';
import { type Box, boxMiddle } from '../../geometry/ring.ts';

/** Where the board looks: the only place where screen pixels and millimetres meet.
 *  A point of the plan (mm) stands on the screen at `point * pxPerMm + offset`. */
export interface Viewport {
  readonly pxPerMm: number;
  readonly offsetPx: Point;
  /** The farthest that it can be zoomed out to: a wide plan needs more than most. */
  readonly leastPxPerMm: number;
}

/** Symbols, pens and letters of the drawing are given in mm on paper; on the board they keep that size at 96 px to the inch. */
const pxPerPaperMm = 96 / 25.4;

export function viewportPaperPx(paperMm: number): number {
  return paperMm * pxPerPaperMm;
}

/** Scale of the drawing as it stands on the board: mm on paper for 1 mm on the plan. */
export function viewportPaperPerPlan({ pxPerMm }: Pick<Viewport, 'pxPerMm'>): number {
  return pxPerMm / pxPerPaperMm;
}

export interface SizePx {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Bounds of the zoom: a hall of 1 km can be seen from afar, and 0.1 mm can be told apart. */
const usualLeastPxPerMm = 0.0005;
const mostPxPerMm = 8;

export function viewportToScreen(view: Viewport, point: Point): Point {
  return [point[0] * view.pxPerMm + view.offsetPx[0], point[1] * view.pxPerMm + view.offsetPx[1]];
}

export function viewportToPlan(view: Viewport, pointPx: Point): Point {
  return [(pointPx[0] - view.offsetPx[0]) / view.pxPerMm, (pointPx[1] - view.offsetPx[1]) / view.pxPerMm];
}

export function viewportLengthMm(view: Viewport, lengthPx: number): number {
  return lengthPx / view.pxPerMm;
}

export function viewportPan(view: Viewport, byPx: Point): Viewport {
  return { ...view, offsetPx: [view.offsetPx[0] + byPx[0], view.offsetPx[1] + byPx[1]] };
}

/** Zoom by a factor about a place on the screen that stays where it is. */
export function viewportZoom(view: Viewport, factor: number, aboutPx: Point): Viewport {
  const pxPerMm = Math.min(mostPxPerMm, Math.max(view.leastPxPerMm, view.pxPerMm * factor));
  const [x, y] = viewportToPlan(view, aboutPx);
  return { ...view, pxPerMm, offsetPx: [aboutPx[0] - x * pxPerMm, aboutPx[1] - y * pxPerMm] };
}

/** Whether zooming by the factor would change anything. */
export function viewportZooms({ pxPerMm, leastPxPerMm }: Viewport, factor: number): boolean {
  return factor > 1 ? pxPerMm < mostPxPerMm : pxPerMm > leastPxPerMm;
}

export interface BoxPx {
  readonly leftPx: number;
  readonly topPx: number;
  readonly rightPx: number;
  readonly bottomPx: number;
}

/** The view in which the box (mm) fills that part of the board, in its middle. */
export function viewportFit(box: Box, into: BoxPx): Viewport {
  const widthMm = Math.max(1, box.maxX - box.minX);
  const heightMm = Math.max(1, box.maxY - box.minY);
  const roomX = Math.max(1, into.rightPx - into.leftPx);
  const roomY = Math.max(1, into.bottomPx - into.topPx);
  const fit = Math.min(roomX / widthMm, roomY / heightMm);
  const pxPerMm = Math.min(mostPxPerMm, fit);
  const [middleX, middleY] = boxMiddle(box);
  const x = (into.leftPx + into.rightPx) / 2 - middleX * pxPerMm;
  const y = (into.topPx + into.bottomPx) / 2 - middleY * pxPerMm;
  return { pxPerMm, offsetPx: [x, y], leastPxPerMm: Math.min(usualLeastPxPerMm, fit) };
}

/** The view after the board took another size: what was in its middle is there still. */
export function viewportResized(view: Viewport, from: SizePx, to: SizePx): Viewport {
  return viewportPan(view, [(to.widthPx - from.widthPx) / 2, (to.heightPx - from.heightPx) / 2]);
}

export function viewportBoxToScreen(view: Viewport, box: Box): BoxPx {
  const [leftPx, topPx] = viewportToScreen(view, [box.minX, box.minY]);
  const [rightPx, bottomPx] = viewportToScreen(view, [box.maxX, box.maxY]);
  return { leftPx, topPx, rightPx, bottomPx };
}

/** What the board shows, mm, and so many times its own sides beyond. */
export function viewportBox(view: Viewport, { widthPx, heightPx }: SizePx, beyond: number): Box {
  const [minX, minY] = viewportToPlan(view, [-beyond * widthPx, -beyond * heightPx]);
  const [maxX, maxY] = viewportToPlan(view, [(1 + beyond) * widthPx, (1 + beyond) * heightPx]);
  return { minX, minY, maxX, maxY };
}

/** The view moved so that the box can be seen; the same view where some of it can be seen already. */
export function viewportReveal(view: Viewport, box: Box, size: SizePx, marginPx: number): Viewport {
  const seen = viewportBoxToScreen(view, box);
  const inX = seen.rightPx > marginPx && seen.leftPx < size.widthPx - marginPx;
  const inY = seen.bottomPx > marginPx && seen.topPx < size.heightPx - marginPx;
  if (inX && inY) return view;
  const byX = size.widthPx / 2 - (seen.leftPx + seen.rightPx) / 2;
  const byY = size.heightPx / 2 - (seen.topPx + seen.bottomPx) / 2;
  return viewportPan(view, [byX, byY]);
}

/** A round length (mm) whose bar is at most `mostPx` long, and the bar's length (px). */
export function viewportScaleBar(
  view: Viewport,
  mostPx: number,
): { readonly lengthMm: number; readonly lengthPx: number } {
  const mostMm = mostPx / view.pxPerMm;
  const decade = 10 ** Math.floor(Math.log10(mostMm));
  const lengthMm = ([5, 2, 1].find((step) => step * decade <= mostMm) ?? 1) * decade;
  return { lengthMm, lengthPx: lengthMm * view.pxPerMm };
}

/** The widest that a symbol reaches beyond the place that carries it, mm on paper. */
const symbolReachMm = 12;

/** Whether anything drawn for geometry in the box (mm) can be seen. */
export function viewportSees(view: Viewport, size: SizePx, box: Box): boolean {
  const reachPx = viewportPaperPx(symbolReachMm);
  const seen = viewportBoxToScreen(view, box);
  return (
    seen.leftPx <= size.widthPx + reachPx &&
    seen.rightPx >= -reachPx &&
    seen.topPx <= size.heightPx + reachPx &&
    seen.bottomPx >= -reachPx
  );
}

/** Points of the grid stand at least this far apart, px. */
const gridLeastPx = 36;

/** The grid at this zoom: a step of 1, 2 or 5 times a power of ten, mm, how long that is, and where the first point at or
 *  before the corner of the board stands, px. */
export function viewportGrid({ pxPerMm, offsetPx }: Viewport): {
  readonly stepMm: number;
  readonly stepPx: number;
  readonly firstPx: Point;
} {
  const leastMm = gridLeastPx / pxPerMm;
  const decade = 10 ** Math.floor(Math.log10(leastMm));
  const stepMm = ([1, 2, 5].find((step) => step * decade >= leastMm) ?? 10) * decade;
  const stepPx = stepMm * pxPerMm;
  const before = (offset: number) => offset - Math.ceil(offset / stepPx) * stepPx;
  return { stepMm, stepPx, firstPx: [before(offsetPx[0]), before(offsetPx[1])] };
}
