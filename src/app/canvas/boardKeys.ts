import type { KeyboardEvent } from 'react';
import type { Point } from '../../geometry/point.ts';
import { boardStore } from '../state/boardStore.ts';
import { handAct } from '../tools/hand.ts';
import { toolStore } from '../tools/toolStore.ts';
import { boardFit, boardPan, boardZoom, zoomStep } from './boardView.ts';
import type { BoardDrawing } from './drawing.ts';

/** An arrow key moves the board by so much, px. */
const arrowPx = 64;
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
  const { chosen } = boardStore.getState();
  const moves = stance.tool !== 'choose' || chosen.some(({ kind }) => kind === 'room' || kind === 'object');
  if (!moves) {
    boardPan([-x * arrowPx, -y * arrowPx]);
    return;
  }
  const step = event.shiftKey ? stepMm.shift : event.ctrlKey || event.metaKey ? stepMm.ctrl : stepMm.alone;
  handAct({ kind: 'steer', by: [x * step, y * step] });
}

function plainKey(key: string, drawing: BoardDrawing): (() => void) | null {
  const { stance } = toolStore.getState();
  // A digit begins to type the run under the hand.
  if (/^[0-9.,]$/.test(key) && stance.typed !== null) return () => toolStore.setState({ typed: key });
  switch (key) {
    case '+':
      return () => boardZoom(zoomStep);
    case '-':
      return () => boardZoom(1 / zoomStep);
    case 'Home':
      return () => boardFit(drawing.box);
    case 'Enter':
      return () => handAct({ kind: 'enter' });
    case 'Backspace':
      return stance.underway ? () => handAct({ kind: 'back' }) : null;
    default:
      return null;
  }
}
