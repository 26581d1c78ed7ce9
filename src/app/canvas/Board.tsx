import { type KeyboardEvent, useEffect, useMemo, useRef } from 'react';
import { Card } from '../card/Card.tsx';
import { Begin } from '../panels/Begin.tsx';
import { Notice } from '../panels/Notice.tsx';
import { Working } from '../panels/Working.tsx';
import { boardHover, boardStore } from '../state/boardStore.ts';
import { useAnalysis, useBoard, usePlan } from '../state/hooks.ts';
import { findingRefs, type Thing, thingOf } from '../state/thing.ts';
import { BoardCorner } from './BoardCorner.tsx';
import { BoardKey } from './BoardKey.tsx';
import { boardChoose, boardFit, boardPan, boardZoom, zoomStep } from './boardView.ts';
import { type BoardDrawing, useLabels } from './drawing.ts';
import { type BoardHand, useGestures } from './gestures.ts';
import { itemsHit, itemsOf, type PlacedItem } from './hit.ts';
import { pinsCluster } from './pins.ts';
import { type Lit, Sheet } from './Sheet.tsx';
import { thingItems } from './thingItems.ts';

interface BoardProps {
  readonly drawing: BoardDrawing;
  readonly changed: readonly Thing[];
  readonly cautions: readonly string[];
}

/** An arrow key moves the board by so much, px. */
const arrowPx = 64;

/** The drawing board: the sheet, and what lies on it beside the drawing. */
export function Board({ drawing, changed, cautions }: BoardProps) {
  const board = useRef<HTMLDivElement>(null);
  const surface = useRef<HTMLDivElement>(null);
  const view = useBoard((state) => state.view);
  const size = useBoard((state) => state.size);
  const theme = useBoard((state) => state.theme);
  const onThing = useBoard((state) => state.hovered !== null);
  const empty = usePlan((state) => state.history.present.file.rooms.length === 0);
  const pxPerMm = view?.pxPerMm ?? null;
  const items = useMemo(() => (pxPerMm === null ? [] : pinsCluster(drawing.items, { pxPerMm })), [drawing, pxPerMm]);
  const labels = useLabels(drawing, pxPerMm);
  const accent = useMemo(() => accentOf(theme), [theme]);
  const lit = useLit(drawing, changed);

  useBoardSize(board);
  useFirstFit(drawing);
  useGestures(surface, useHand(items));

  return (
    <main className="board" ref={board}>
      <div
        ref={surface}
        className={onThing ? 'surface on-thing' : 'surface'}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is moved and zoomed by keys
        tabIndex={0}
        role="application"
        aria-label="Drawing. Arrow keys move it, plus and minus zoom, Home fits it, Escape lets go of what is chosen."
        onKeyDown={(event) => boardKey(event, drawing)}
      >
        {view !== null && size !== null && <Sheet {...{ items, labels, view, size, theme, accent, lit }} />}
      </div>
      {empty ? <Begin /> : <BoardKey legend={drawing.legend} />}
      <BoardCorner onFit={() => boardFit(drawing.box)} />
      <p className="caution-line">{cautions[0]}</p>
      {view !== null && size !== null && <Card drawing={drawing} view={view} size={size} />}
      <Working />
      <Notice />
    </main>
  );
}

/** Theme in, so that it is read again when the theme turns. */
function accentOf(_theme: string): string {
  return getComputedStyle(document.documentElement).getPropertyValue('--accent').trim();
}

function useBoardSize(board: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const element = board.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      boardStore.setState({ size: { widthPx: element.clientWidth, heightPx: element.clientHeight } });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [board]);
}

/** A sheet that was laid on the board is fitted once its drawing is there. */
function useFirstFit(drawing: BoardDrawing): void {
  const sheet = useAnalysis((state) => state.result?.sheet ?? null);
  const sized = useBoard((state) => state.size !== null);
  const fitted = useRef<number | null>(null);
  useEffect(() => {
    if (!sized || sheet === null || fitted.current === sheet) return;
    // An empty sheet is fitted again by its first room.
    fitted.current = drawing.box === null ? null : sheet;
    boardFit(drawing.box);
  }, [sized, sheet, drawing]);
}

function useHand(items: readonly PlacedItem[]): BoardHand {
  const analysis = useAnalysis((state) => state.result?.analysis ?? null);
  return useMemo(() => {
    const thingAt = (atPx: readonly [number, number], reachPx: number): Thing | null => {
      const { view } = boardStore.getState();
      const ref = view === null ? null : itemsHit(items, view, atPx, reachPx);
      return ref === null || analysis === null ? null : thingOf(ref, analysis);
    };
    return {
      view: () => boardStore.getState().view,
      look: (view) => boardStore.setState({ view }),
      press: (atPx, reachPx) => boardChoose(thingAt(atPx, reachPx), null),
      hover: (atPx, reachPx) => boardHover(atPx === null ? null : thingAt(atPx, reachPx)),
    };
  }, [items, analysis]);
}

function useLit(drawing: BoardDrawing, changed: readonly Thing[]): readonly Lit[] {
  const chosen = useBoard((state) => state.chosen);
  const hovered = useBoard((state) => state.hovered);
  const result = useAnalysis((state) => state.result);
  return useMemo(() => {
    if (result === null) return [];
    const itemsFor = (thing: Thing | null) => (thing === null ? [] : thingItems(thing, result, drawing.items));
    const aboutFor = (thing: Thing | null) =>
      thing === null ? [] : findingRefs(thing, result.analysis).flatMap((ref) => itemsOf(drawing.items, ref));
    return [
      { strength: 'changed', items: changed.flatMap(itemsFor) },
      { strength: 'hovered', items: [...itemsFor(hovered), ...aboutFor(hovered), ...aboutFor(chosen)] },
      { strength: 'chosen', items: itemsFor(chosen) },
    ];
  }, [drawing, result, changed, hovered, chosen]);
}

function boardKey(event: KeyboardEvent, drawing: BoardDrawing): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const act: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => boardPan([arrowPx, 0]),
    ArrowRight: () => boardPan([-arrowPx, 0]),
    ArrowUp: () => boardPan([0, arrowPx]),
    ArrowDown: () => boardPan([0, -arrowPx]),
    '+': () => boardZoom(zoomStep),
    '-': () => boardZoom(1 / zoomStep),
    Home: () => boardFit(drawing.box),
  };
  const does = act[event.key];
  if (does === undefined) return;
  event.preventDefault();
  does();
}
