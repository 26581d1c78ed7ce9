import { type RefObject, useEffect, useRef } from 'react';
import type { Point } from '../../geometry/point.ts';
import { type Viewport, viewportPan, viewportZoom } from './viewport.ts';

/** What a hand does on the board, in px of the board. */
export interface BoardHand {
  readonly view: () => Viewport | null;
  readonly look: (view: Viewport) => void;
  /** A press without a drag. `reachPx`: by how much it may miss. */
  readonly press: (atPx: Point, reachPx: number) => void;
  /** A pointer that hovers; null where it left. */
  readonly hover: (atPx: Point | null, reachPx: number) => void;
}

/** A pointer that moved less than this was pressed, not dragged. */
const dragPx = 4;
const mouseReachPx = 6;
const touchReachPx = 20;
/** A turn of a mouse wheel comes in notches of at least this much; a touchpad starts with less. */
const notchPx = 80;
/** A pause that ends a turn of the wheel, ms. */
const wheelPauseMs = 200;
const wheelZoomPerPx = 0.0016;
const pinchZoomPerPx = 0.01;

/** Drag pans; two fingers pan and zoom; a wheel with notches zooms about the pointer, two fingers on a touchpad pan,
 *  a pinch there (or ctrl with the wheel) zooms. */
export function useGestures(surface: RefObject<HTMLElement | null>, hand: BoardHand): void {
  // A gesture outlives the hand that began it: each zoom step makes a new one.
  const latest = useRef(hand);
  useEffect(() => {
    latest.current = hand;
  }, [hand]);
  useEffect(() => {
    const element = surface.current;
    if (element === null) return;
    const steady: BoardHand = {
      view: () => latest.current.view(),
      look: (view) => latest.current.look(view),
      press: (atPx, reachPx) => latest.current.press(atPx, reachPx),
      hover: (atPx, reachPx) => latest.current.hover(atPx, reachPx),
    };
    const end = new AbortController();
    const listen = { signal: end.signal };
    const drag = dragOf(element, steady);
    element.addEventListener('pointerdown', drag.down, listen);
    element.addEventListener('pointermove', drag.move, listen);
    element.addEventListener('pointerup', drag.up, listen);
    element.addEventListener('pointercancel', drag.cancel, listen);
    element.addEventListener('pointerleave', () => steady.hover(null, mouseReachPx), listen);
    element.addEventListener('wheel', wheelOf(element, steady), { ...listen, passive: false });
    return () => end.abort();
  }, [surface]);
}

function placePx(element: HTMLElement, event: MouseEvent): Point {
  const box = element.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
}

function wheelOf(element: HTMLElement, hand: BoardHand): (event: WheelEvent) => void {
  let lastMs = Number.NEGATIVE_INFINITY;
  let notched = false;
  return (event) => {
    event.preventDefault();
    const view = hand.view();
    if (view === null) return;
    if (event.timeStamp - lastMs > wheelPauseMs) {
      notched = event.deltaMode !== 0 || (event.deltaX === 0 && Math.abs(event.deltaY) >= notchPx);
    }
    lastMs = event.timeStamp;
    const unitPx = event.deltaMode === 0 ? 1 : 40;
    const [dx, dy] = [event.deltaX * unitPx, event.deltaY * unitPx];
    const at = placePx(element, event);
    if (event.ctrlKey && !notched) hand.look(viewportZoom(view, Math.exp(-dy * pinchZoomPerPx), at));
    else if (event.ctrlKey || (notched && !event.shiftKey)) {
      hand.look(viewportZoom(view, Math.exp(-dy * wheelZoomPerPx), at));
    } else hand.look(viewportPan(view, event.shiftKey && dx === 0 ? [-dy, 0] : [-dx, -dy]));
  };
}

interface Drag {
  readonly down: (event: PointerEvent) => void;
  readonly move: (event: PointerEvent) => void;
  readonly up: (event: PointerEvent) => void;
  readonly cancel: (event: PointerEvent) => void;
}

function dragOf(element: HTMLElement, hand: BoardHand): Drag {
  const held = new Map<number, Point>();
  let from: Point = [0, 0];
  let dragged = false;

  const middle = (): { readonly at: Point; readonly spreadPx: number } => {
    const [a, b] = [...held.values()];
    if (a === undefined) return { at: [0, 0], spreadPx: 0 };
    if (b === undefined) return { at: a, spreadPx: 0 };
    return { at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], spreadPx: Math.hypot(a[0] - b[0], a[1] - b[1]) };
  };
  const reachPx = (event: PointerEvent) => (event.pointerType === 'mouse' ? mouseReachPx : touchReachPx);
  const letGo = (event: PointerEvent) => held.delete(event.pointerId);

  return {
    down(event) {
      if (event.pointerType === 'mouse' && event.button > 1) return;
      const at = placePx(element, event);
      if (held.size === 0) [from, dragged] = [at, false];
      else dragged = true;
      held.set(event.pointerId, at);
      element.setPointerCapture(event.pointerId);
    },
    move(event) {
      const at = placePx(element, event);
      if (!held.has(event.pointerId)) return hand.hover(at, reachPx(event));
      const before = middle();
      if (!dragged && Math.hypot(at[0] - from[0], at[1] - from[1]) < dragPx) return;
      dragged = true;
      held.set(event.pointerId, at);
      const after = middle();
      const view = hand.view();
      if (view === null) return;
      const panned = viewportPan(view, [after.at[0] - before.at[0], after.at[1] - before.at[1]]);
      const zoomed = before.spreadPx > 0 && after.spreadPx > 0;
      hand.look(zoomed ? viewportZoom(panned, after.spreadPx / before.spreadPx, after.at) : panned);
    },
    up(event) {
      if (!letGo(event) || dragged) return;
      hand.press(placePx(element, event), reachPx(event));
    },
    cancel: letGo,
  };
}
