import type { KeyboardEvent } from 'react';
import type { Point } from '../../geometry/point.ts';
import { boxOf } from '../../geometry/ring.ts';
import { objectsBox } from '../../plan/edits/objects.ts';
import { boardStore } from '../state/boardStore.ts';
import { cardEnter } from '../state/cardEnter.ts';
import { planStore } from '../state/planStore.ts';
import { pointerStore } from '../state/pointerStore.ts';
import { unitStore } from '../state/unit.ts';
import { chosenMoves } from '../tools/choose/resting.ts';
import { handAct, sceneOf } from '../tools/hand.ts';
import type { TypedMeaning } from '../tools/stance.ts';
import { toolStore } from '../tools/toolStore.ts';
import { boardFit, boardPan, boardReveal, boardZoom, zoomStep } from './boardView.ts';
import type { BoardDrawing } from './drawing.ts';
import { typedPut } from './typedPut.ts';
import { viewportLengthMm, viewportToPlan } from './viewport.ts';

/** An arrow key moves the board by so much, px. */
const arrowPx = 64;
/** By how much a hand that keys lead may miss, px. */
const keysReachPx = 6;
/** An arrow key moves what is chosen, or the hand of a tool, by so much, mm: alone, with Shift, with Ctrl. */
const stepMm = { alone: 10, shift: 100, ctrl: 1 } as const;

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** What a key does on the drawing: it moves the board, or what is chosen, or leads the tool in hand. */
export function boardKey(event: KeyboardEvent, drawing: BoardDrawing): void {
  if (event.altKey) return;
  const arrow = arrows[event.key];
  if (arrow !== undefined) {
    event.preventDefault();
    arrowKey(event, arrow);
    return;
  }
  if (event.ctrlKey || event.metaKey) return;
  const act = plainKey(event.key, drawing);
  if (act === null) return;
  event.preventDefault();
  act();
}

function arrowKey(event: KeyboardEvent, [x, y]: Point): void {
  const { stance } = toolStore.getState();
  const moves = stance.tool !== 'choose' || chosenMoves(sceneOf());
  if (!moves) {
    boardPan([-x * arrowPx, -y * arrowPx]);
    return;
  }
  const step = event.shiftKey ? stepMm.shift : event.ctrlKey || event.metaKey ? stepMm.ctrl : stepMm.alone;
  if (stance.tool === 'choose') {
    handAct({ kind: 'steer', by: [x * step, y * step] });
    chosenFollow();
    return;
  }
  // The first press only brings the hand onto the board.
  if (handBegins()) return;
  handAct({ kind: 'steer', by: [x * step, y * step] });
  handShow();
}

/** A hand that no pointer has led yet begins in the middle of what the board shows, at a round place. An empty sheet is
 *  begun at its origin.  @returns whether it was brought there now */
function handBegins(): boolean {
  const { stance } = toolStore.getState();
  const { view, size } = boardStore.getState();
  const isEmpty = planStore.getState().history.present.file.rooms.length === 0;
  if (stance.hand !== null || view === null || size === null || isEmpty) return false;
  const middle = viewportToPlan(view, [size.widthPx / 2, size.heightPx / 2]);
  const [x, y] = middle.map((mm) => Math.round(mm / stepMm.shift) * stepMm.shift);
  const at: Point = [x ?? 0, y ?? 0];
  handAct({ kind: 'hover', hand: { at, reachMm: viewportLengthMm(view, keysReachPx), loose: true, things: [] } });
  handShow();
  return true;
}

/** What keys lead is seen, read out and kept in view. */
function handShow(): void {
  const at = toolStore.getState().stance.hand ?? null;
  pointerStore.setState({ at, led: at !== null });
  if (at !== null) boardReveal(boxOf([at]));
}

function chosenFollow(): void {
  const ids = boardStore.getState().chosen.map(({ key }) => key);
  const box = objectsBox(planStore.getState().history.present.file, ids);
  if (box === null) return;
  pointerStore.setState({ at: [box.minX, box.minY], led: true });
  boardReveal(box);
}

function enterKey(): void {
  const { stance } = toolStore.getState();
  // With the open hand Enter goes into the figures of what is chosen.
  if (stance.tool === 'choose') {
    if (boardStore.getState().chosen.length > 0) cardEnter();
    return;
  }
  if (handBegins()) return;
  handAct({ kind: 'enter' });
  handShow();
}

/** A digit begins to type the run under the hand; the field beside the hand takes the keys from there. What comes before it
 *  has the focus is typed as well. */
function typeKey(key: string, typed: string | null, meaning: TypedMeaning): (() => void) | null {
  if (typed === null) return /^[0-9.,]$/.test(key) ? () => toolStore.setState({ typed: key }) : null;
  if (key === 'Enter') return () => typedPut(typed, null, meaning, unitStore.getState().unit);
  if (key === 'Backspace') return () => toolStore.setState({ typed: typed.slice(0, -1) });
  return key.length === 1 ? () => toolStore.setState({ typed: typed + key }) : null;
}

function plainKey(key: string, drawing: BoardDrawing): (() => void) | null {
  const { stance, typed } = toolStore.getState();
  const type = stance.typed === null ? null : typeKey(key, typed, stance.typed);
  if (type !== null) return type;
  switch (key) {
    case '+':
      return () => boardZoom(zoomStep);
    case '-':
      return () => boardZoom(1 / zoomStep);
    case 'Home':
      return () => boardFit(drawing);
    case 'Enter':
      return enterKey;
    case 'Backspace':
      return stance.underway ? () => handAct({ kind: 'back' }) : null;
    default:
      return null;
  }
}
