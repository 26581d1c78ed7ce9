import { type RefObject, useEffect, useRef } from 'react';
import { type Point, vectorLength } from '../../geometry/point.ts';
import { type Viewport, viewportPan, viewportZoom } from './viewport.ts';

/** A pointer on the board, in px of the board. */
export interface Pointing {
  readonly atPx: Point;
  /** By how much it may miss. */
  readonly reachPx: number;
  /** The key is held that adds to what is chosen and lets go of holds. */
  readonly loose: boolean;
}

/** What a hand does on the board. */
export interface BoardHand {
  readonly view: () => Viewport | null;
  readonly look: (view: Viewport) => void;
  /** Whether a drag that begins here is the tool's; else it moves the board. */
  readonly grabs: (pointing: Pointing) => boolean;
  /** A press without a drag, a long one, a drag of the tool from its beginning to its end, a pointer that hovers. */
  readonly act: (kind: 'press' | 'hold' | 'down' | 'drag' | 'drop' | 'hover', pointing: Pointing) => void;
  /** The pointer left the board. */
  readonly leave: () => void;
  /** The drag under way is taken back: a second finger came down, or the system took the pointer away. */
  readonly takeBack: () => void;
}

/** A pointer that moved less than this was pressed, not dragged. */
const dragPx = 4;
const mouseReachPx = 6;
const touchReachPx = 22;
const penReachPx = 12;
/** A finger that rests for so long holds, ms. */
const holdMs = 500;
/** A turn of a mouse wheel comes in notches of at least this much; a touchpad starts with less. */
const notchPx = 80;
/** A pause that ends a turn of the wheel, ms. */
const wheelPauseMs = 200;
const wheelZoomPerPx = 0.0016;
const pinchZoomPerPx = 0.01;

/** A drag is the tool's where the tool takes it, else it pans, as do the middle button and a drag with the space bar held;
 *  two fingers pan and zoom; a finger that rests holds; a wheel with notches zooms about the pointer, two fingers on a
 *  touchpad pan, a pinch there (or ctrl with the wheel) zooms. */
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
      grabs: (pointing) => latest.current.grabs(pointing),
      act: (kind, pointing) => latest.current.act(kind, pointing),
      leave: () => latest.current.leave(),
      takeBack: () => latest.current.takeBack(),
    };
    const end = new AbortController();
    const listen = { signal: end.signal };
    const drag = dragOf(element, steady, end.signal);
    element.addEventListener('pointerdown', drag.down, listen);
    element.addEventListener('pointermove', drag.move, listen);
    element.addEventListener('pointerup', drag.up, listen);
    element.addEventListener('pointercancel', drag.cancel, listen);
    element.addEventListener('pointerleave', () => steady.leave(), listen);
    // The browser makes no gesture of its own of a finger here: its click would meet what has just come up under it, and
    // the swing of a drag that has ended would swallow the next tap on a button.
    element.addEventListener('touchstart', (event) => event.preventDefault(), { ...listen, passive: false });
    element.addEventListener('contextmenu', (event) => event.preventDefault(), listen);
    element.addEventListener('wheel', wheelOf(element, steady), { ...listen, passive: false });
    return () => end.abort();
  }, [surface]);
}

function reachOf({ pointerType }: PointerEvent): number {
  if (pointerType === 'touch') return touchReachPx;
  return pointerType === 'pen' ? penReachPx : mouseReachPx;
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

/** What a pointer that is down is doing: nothing yet, moving the board, or a drag of the tool. */
type Doing = 'pressing' | 'panning' | 'tool' | 'held';

function dragOf(element: HTMLElement, hand: BoardHand, end: AbortSignal): Drag {
  const held = new Map<number, Point>();
  const space = spaceHeld(end);
  let from: Point = [0, 0];
  let doing: Doing = 'pressing';
  let hold: ReturnType<typeof setTimeout> | undefined;
  end.addEventListener('abort', () => clearTimeout(hold));

  const middle = (): { readonly at: Point; readonly spreadPx: number } => {
    const [a, b] = [...held.values()];
    if (a === undefined) return { at: [0, 0], spreadPx: 0 };
    if (b === undefined) return { at: a, spreadPx: 0 };
    return { at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], spreadPx: vectorLength(a[0] - b[0], a[1] - b[1]) };
  };
  const pointing = (event: PointerEvent, atPx: Point = placePx(element, event)): Pointing => ({
    atPx,
    reachPx: reachOf(event),
    loose: event.shiftKey,
  });
  const pan = (before: ReturnType<typeof middle>) => {
    const after = middle();
    const view = hand.view();
    if (view === null) return;
    const panned = viewportPan(view, [after.at[0] - before.at[0], after.at[1] - before.at[1]]);
    const zoomed = before.spreadPx > 0 && after.spreadPx > 0;
    hand.look(zoomed ? viewportZoom(panned, after.spreadPx / before.spreadPx, after.at) : panned);
  };
  /** The pointer has moved: whose drag is it? */
  const begin = (event: PointerEvent) => {
    const start = pointing(event, from);
    const tools = event.buttons !== middleButton && !space.held && hand.grabs(start);
    doing = tools ? 'tool' : 'panning';
    if (tools) hand.act('down', start);
  };

  return {
    down(event) {
      if (event.pointerType === 'mouse' && event.button > 1) return;
      const at = placePx(element, event);
      clearTimeout(hold);
      if (held.size === 0) {
        [from, doing] = [at, 'pressing'];
        if (event.pointerType === 'touch') {
          hold = setTimeout(() => {
            doing = 'held';
            hand.act('hold', pointing(event, from));
          }, holdMs);
        }
      } else {
        if (doing === 'tool' || doing === 'held') hand.takeBack();
        doing = 'panning';
      }
      held.set(event.pointerId, at);
      element.setPointerCapture(event.pointerId);
      if (event.pointerType === 'touch') element.focus({ preventScroll: true });
    },
    move(event) {
      const at = placePx(element, event);
      if (!held.has(event.pointerId)) return hand.act('hover', pointing(event, at));
      const before = middle();
      if (doing === 'pressing' || doing === 'held') {
        if (vectorLength(at[0] - from[0], at[1] - from[1]) < dragPx) return;
        clearTimeout(hold);
        begin(event);
      }
      held.set(event.pointerId, at);
      if (doing === 'tool') hand.act('drag', pointing(event, at));
      else pan(before);
    },
    up(event) {
      clearTimeout(hold);
      if (!held.delete(event.pointerId) || held.size > 0) return;
      if (doing === 'tool') hand.act('drop', pointing(event));
      else if (doing === 'pressing' && event.button !== 1) hand.act('press', pointing(event));
      else if (doing === 'held') hand.takeBack();
    },
    cancel(event) {
      clearTimeout(hold);
      if (held.delete(event.pointerId) && (doing === 'tool' || doing === 'held')) hand.takeBack();
    },
  };
}

/** `PointerEvent.buttons` of the middle button alone. */
const middleButton = 4;

/** Whether the space bar is held over the drawing. */
function spaceHeld(end: AbortSignal): { readonly held: boolean } {
  const state = { held: false };
  window.addEventListener(
    'keydown',
    (event) => {
      if (event.key === ' ' && event.target instanceof HTMLElement && event.target.closest('.surface')) {
        state.held = true;
        event.preventDefault();
      }
    },
    { signal: end },
  );
  const letGo = () => {
    state.held = false;
  };
  window.addEventListener('keyup', (event) => event.key === ' ' && letGo(), { signal: end });
  window.addEventListener('blur', letGo, { signal: end });
  return state;
}
