import type { Point } from '../../geometry/point.ts';
import { type Box, boxOf } from '../../geometry/ring.ts';
import { boardFree, boardStore } from '../state/boardStore.ts';
import type { Thing } from '../state/thing.ts';
import { viewportFit, viewportPan, viewportReveal, viewportZoom } from './viewport.ts';

/** Room round a fitted drawing, px: the pins of findings stand in it. */
const fitMarginPx = 56;
/** A thing less than this far inside the board counts as out of view, px. */
const revealMarginPx = 24;
export const zoomStep = 1.4;

export function boardFit(box: Box | null): void {
  const size = boardFree(boardStore.getState());
  if (size === null) return;
  const shown =
    box ??
    boxOf([
      [0, 0],
      [12_000, 8_000],
    ] satisfies Point[]);
  boardStore.setState({ view: viewportFit(shown, size, Math.min(fitMarginPx, size.widthPx / 8)) });
}

/** Zooms about the middle of the board. */
export function boardZoom(factor: number): void {
  const { view, size } = boardStore.getState();
  if (view === null || size === null) return;
  boardStore.setState({ view: viewportZoom(view, factor, [size.widthPx / 2, size.heightPx / 2]) });
}

export function boardPan(byPx: Point): void {
  const { view } = boardStore.getState();
  if (view !== null) boardStore.setState({ view: viewportPan(view, byPx) });
}

/** Chooses a thing, or nothing. The drawing moves only where the thing cannot be seen. */
export function boardChoose(thing: Thing | null, box: Box | null): void {
  const { view } = boardStore.getState();
  const size = boardFree(boardStore.getState());
  const revealed =
    view === null || size === null || box === null ? view : viewportReveal(view, box, size, revealMarginPx);
  boardStore.setState({ chosen: thing, opened: [], view: revealed });
}
