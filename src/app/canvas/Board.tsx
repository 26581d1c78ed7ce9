import { type CSSProperties, memo, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import { Begin, BoardKey, Card, Dimensions, LiveLimits, TypedEntry } from '../later.tsx';
import { Notice } from '../panels/Notice.tsx';
import { ToolBar } from '../panels/ToolBar.tsx';
import { Working } from '../panels/Working.tsx';
import { boardFree, boardStore } from '../state/boardStore.ts';
import { useAnalysis, useBoard, usePlan } from '../state/hooks.ts';
import type { Thing } from '../state/thing.ts';
import type { ToolName } from '../tools/stance.ts';
import { toolStore } from '../tools/toolStore.ts';
import { BoardFoot } from './BoardFoot.tsx';
import { boardKey } from './boardKeys.ts';
import { boardFit, boardResized } from './boardView.ts';
import { type BoardDrawing, useLabels } from './drawing.ts';
import { useGestures } from './gestures.ts';
import { HandPlace } from './HandPlace.tsx';
import { Objects } from './Objects.tsx';
import { pinsCluster } from './pins.ts';
import { type Lit, Sheet } from './Sheet.tsx';
import { StepTold } from './StepTold.tsx';
import { surfaceClass } from './surface.ts';
import { aboutItems, thingItems } from './thingItems.ts';
import { useHand } from './useHand.ts';
import { type SizePx, type Viewport, viewportGrid } from './viewport.ts';

interface BoardProps {
  readonly drawing: BoardDrawing;
  readonly changed: readonly Thing[];
  readonly cautions: readonly string[];
  readonly onChoose: (thing: Thing) => void;
}

/** The drawing board: the sheet with what is said about it, its key beside it and its foot below. Nothing that stays
 *  lies over the drawing. */
export function Board({ drawing, changed, cautions, onChoose }: BoardProps) {
  const desk = useRef<HTMLDivElement>(null);
  const surface = useRef<HTMLDivElement>(null);
  const view = useBoard((state) => state.view);
  const size = useBoard((state) => state.size);
  const theme = useBoard((state) => state.theme);
  const tool = useStore(toolStore, ({ stance }) => stance.tool);
  const typing = useStore(toolStore, ({ stance }) => stance.typed !== null);
  const joining = useStore(toolStore, ({ stance }) => stance.live !== undefined);
  const onThing = useBoard((state) => state.hovered !== null);
  const empty = usePlan((state) => state.history.present.file.rooms.length === 0);
  // A card would lie where the next thing is drawn.
  const picked = useBoard(({ chosen, opened }) => chosen.length + opened.length > 0) && tool === 'choose';
  const keyOpen = useBoard((state) => state.keyOpen);
  const pxPerMm = view?.pxPerMm ?? null;
  const items = useMemo(() => (pxPerMm === null ? [] : pinsCluster(drawing.items, { pxPerMm })), [drawing, pxPerMm]);
  const labels = useLabels(drawing, view, size);
  const accent = useMemo(() => accentOf(theme), [theme]);
  const lit = useLit(drawing, changed);

  useBoardSize(desk);
  useFit(drawing);
  useGestures(surface, useHand(items, drawing));

  return (
    <main className="board">
      <SteadyToolBar />
      <div className="desk" ref={desk}>
        <div
          ref={surface}
          className={surfaceClasses(onThing, tool)}
          style={view === null ? undefined : gridStyle(view)}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is moved and zoomed by keys
          tabIndex={0}
          role="application"
          aria-label="Drawing"
          aria-describedby="drawing-keys"
          onKeyDown={(event) => boardKey(event, drawing)}
        >
          {view !== null && size !== null && <Sheet {...{ items, labels, view, size, theme, accent, lit }} />}
        </div>
        {picked && view !== null && size !== null && <Dimensions view={view} size={size} />}
        <p id="drawing-keys" className="unseen">
          Arrow keys move it or what is chosen, plus and minus zoom, Home fits it, Escape lets go. Tab goes on to its
          things.
        </p>
        <Objects drawing={drawing} />
        <HandPlace />
        <StepTold />
        {typing && view !== null && size !== null && <TypedEntry view={view} size={size} />}
        {empty && tool === 'choose' && <Begin />}
        {picked && view !== null && size !== null && <Card {...{ drawing, view, size, onChoose }} />}
        {joining && <LiveLimits />}
        <Working />
        <Notice />
      </div>
      {keyOpen && !empty && drawing.drawing !== null && <BoardKey drawing={drawing.drawing} />}
      <BoardFoot keyed={!empty} caution={cautions[0] ?? ''} onFit={() => boardFit(drawing)} />
    </main>
  );
}

/** Not drawn anew with each result. */
const SteadyToolBar = memo(ToolBar);

/** Points at round distances that follow the zoom: the styles draw one, laid as a tile. */
function gridStyle(view: Viewport): CSSProperties {
  const { stepPx, firstPx } = viewportGrid(view);
  const place = `${firstPx[0] - stepPx / 2}px ${firstPx[1] - stepPx / 2}px`;
  return { backgroundSize: `${stepPx}px ${stepPx}px`, backgroundPosition: place };
}

function surfaceClasses(onThing: boolean, tool: ToolName): string {
  if (tool !== 'choose') return `${surfaceClass} drawing`;
  return onThing ? `${surfaceClass} on-thing` : surfaceClass;
}

/** Theme in, so that it is read again when the theme turns. */
function accentOf(_theme: string): string {
  return getComputedStyle(document.documentElement).getPropertyValue('--accent').trim();
}

function useBoardSize(desk: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const element = desk.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      boardStore.setState({ size: { widthPx: element.clientWidth, heightPx: element.clientHeight } });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [desk]);
}

/** A sheet that was laid on the board is fitted once its drawing is there; the view follows the size of the board, and what
 *  papers mark beside the floor. */
function useFit(drawing: BoardDrawing): void {
  const sheet = useAnalysis((state) => state.result?.sheet ?? null);
  const size = useBoard((state) => state.size);
  const trayOpen = useBoard((state) => state.trayOpen);
  const free = useMemo(() => boardFree({ size, trayOpen }), [size, trayOpen]);
  const fitted = useRef<number | null>(null);
  const last = useRef<{ readonly free: SizePx | null; readonly marked: true | undefined }>(null);
  // Before the paint: no frame shows the board of one size with the view of another.
  useLayoutEffect(() => {
    const { marked } = drawing;
    const before = last.current;
    last.current = { free, marked };
    if (free === null || sheet === null) return;
    if (fitted.current !== sheet) {
      fitted.current = sheet;
      boardFit(drawing);
    } else if (before?.free && (before.free !== free || before.marked !== marked))
      boardResized(drawing, before.free, free);
  }, [free, sheet, drawing]);
}

function useLit(drawing: BoardDrawing, changed: readonly Thing[]): readonly Lit[] {
  const chosen = useBoard((state) => state.chosen);
  const hovered = useBoard((state) => state.hovered);
  const result = useAnalysis((state) => state.result);
  return useMemo(() => {
    if (result === null) return [];
    const itemsFor = (thing: Thing | null) => (thing === null ? [] : thingItems(thing, result, drawing.items));
    const aboutFor = (thing: Thing | null) => (thing === null ? [] : aboutItems(thing, result, drawing.items));
    return [
      { strength: 'changed', items: changed.flatMap(itemsFor) },
      { strength: 'hovered', items: [...itemsFor(hovered), ...aboutFor(hovered), ...chosen.flatMap(aboutFor)] },
      { strength: 'chosen', items: chosen.flatMap(itemsFor) },
    ];
  }, [drawing, result, changed, hovered, chosen]);
}
