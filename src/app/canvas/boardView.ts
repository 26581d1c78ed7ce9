import type { Point } from '../../geometry/point.ts';
import { type Box, boxOf } from '../../geometry/ring.ts';
import { boardFree, boardStore } from '../state/boardStore.ts';
import type { Thing } from '../state/thing.ts';
import type { BoardDrawing } from './drawing.ts';
import {
  type SizePx,
  type Viewport,
  viewportFit,
  viewportPan,
  viewportResized,
  viewportReveal,
  viewportZoom,
} from './viewport.ts';

/** Room round a fitted drawing, px; above it pins stand up from the floor. */
const fitMarginPx = 28;
const fitAbovePx = 48;
/** On a small board the margins take at most this share of a side. */
const fitMarginShare = 1 / 8;
/** A thing less than this far inside the board counts as out of view, px. */
const revealMarginPx = 24;
export const zoomStep = 1.4;

/** What an empty sheet shows, mm. */
const emptyBox: Box = boxOf([
  [0, 0],
  [12_000, 8_000],
] satisfies Point[]);

type Fitted = Pick<BoardDrawing, 'boxAt'>;

export function boardFit({ boxAt }: Fitted): void {
  const size = boardFree(boardStore.getState());
  if (size === null) return;
  const { widthPx, heightPx } = size;
  const side = Math.min(fitMarginPx, widthPx * fitMarginShare);
  const below = Math.min(fitMarginPx, heightPx * fitMarginShare);
  const above = Math.min(fitAbovePx, heightPx * fitMarginShare);
  const into = { leftPx: side, topPx: above, rightPx: widthPx - side, bottomPx: heightPx - below };
  const viewAt = (pxPerMm?: number) => viewportFit(boxAt(pxPerMm) ?? emptyBox, into);
  // names keep their size: the more the view holds, the more of the floor they take
  boardStore.setState({ view: viewAt(viewAt(viewAt().pxPerMm).pxPerMm), moved: false });
}

/** The board took another size: a fitted drawing is fitted anew, a view of the user's own keeps its middle. */
export function boardResized(drawing: Fitted, from: SizePx, to: SizePx): void {
  const { view, moved } = boardStore.getState();
  if (view === null || !moved) boardFit(drawing);
  else boardStore.setState({ view: viewportResized(view, from, to) });
}

/** The user's own view of the drawing. */
export function boardLook(view: Viewport): void {
  boardStore.setState({ view, moved: true });
}

/** Zooms about the middle of the board. */
export function boardZoom(factor: number): void {
  const { view } = boardStore.getState();
  const size = boardFree(boardStore.getState());
  if (view === null || size === null) return;
  boardLook(viewportZoom(view, factor, [size.widthPx / 2, size.heightPx / 2]));
}

export function boardPan(byPx: Point): void {
  const { view } = boardStore.getState();
  if (view !== null) boardLook(viewportPan(view, byPx));
}

/** Chooses a thing, or nothing. The drawing moves only where the thing cannot be seen. */
export function boardChoose(thing: Thing | null, box: Box | null): void {
  boardStore.setState({ chosen: thing === null ? [] : [thing], opened: [] });
  if (box !== null) boardReveal(box);
}

/** Moves the drawing where the box cannot be seen, mm. */
export function boardReveal(box: Box): void {
  const { view } = boardStore.getState();
  const size = boardFree(boardStore.getState());
  if (view === null || size === null) return;
  const revealed = viewportReveal(view, box, size, revealMarginPx);
  if (revealed !== view) boardLook(revealed);
}
