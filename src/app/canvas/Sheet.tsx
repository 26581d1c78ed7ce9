import type { Context } from 'konva/lib/Context';
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { PlacedLabel } from '../../documents/drawing.ts';
import type { Theme } from '../../documents/styles.ts';
import { useLater } from '../later.tsx';
import type { PlacedItem } from './hit.ts';
import { type BoardLayers, boardLayers, type Light, type Painter } from './layers.ts';
import { inkPaint, itemInksAt, type LitStrength, labelInksAt, litPaint, type Pen } from './paint.ts';
import { type SizePx, type Viewport, viewportPaperPerPlan, viewportPaperPx, viewportSees } from './viewport.ts';

interface SheetProps {
  readonly items: readonly PlacedItem[];
  readonly labels: readonly PlacedLabel[];
  readonly view: Viewport;
  readonly size: SizePx;
  readonly theme: Theme;
  readonly accent: string;
  readonly lit: readonly Lit[];
}

/** Items that are lit, and how strongly: chosen, hovered, or changed a moment ago. */
export interface Lit {
  readonly items: readonly PlacedItem[];
  readonly strength: LitStrength;
}

/** Draws what it is given: one still layer with the drawing, one with what is lit. */
export function Sheet({ items, labels, view, size, theme, accent, lit }: SheetProps) {
  const place = useRef<HTMLDivElement>(null);
  const board = useLayers(place, size);
  const paperPerPlan = viewportPaperPerPlan(view);
  const [light, setLight] = useState<Light | null>(null);
  // The inks of a scale are made once: moving the board draws the same inks elsewhere.
  const inked = useMemo(
    () => items.map(({ item, box }) => ({ item, inks: itemInksAt(item, paperPerPlan), box })),
    [items, paperPerPlan],
  );
  const lettered = useMemo(() => labels.flatMap((label) => labelInksAt(label, paperPerPlan)), [labels, paperPerPlan]);
  const paintInked = useCallback(
    (pen: Pen, pins: boolean) => {
      for (const { item, inks, box } of inked)
        if ((item.layer === 'findings') === pins && viewportSees(view, size, box))
          for (const ink of inks) inkPaint(pen, ink);
    },
    [inked, view, size],
  );

  const paintDrawing = useMemo(
    (): Painter => (context) => {
      const pen = penSet(context, view, theme);
      paintInked(pen, false);
      light?.paint(context._context, view);
      paintInked(pen, true);
      for (const ink of lettered) inkPaint(pen, ink);
    },
    [paintInked, lettered, light, view, theme],
  );
  const paintLight = useMemo(
    (): Painter => (context) => {
      const pen = penSet(context, view, theme);
      for (const each of lit) {
        for (const { item } of each.items) litPaint(pen, item, paperPerPlan, accent, each.strength);
      }
      // What is lit may run through a pin: the numbers stay on top.
      if (lit.some((each) => each.items.length > 0)) paintInked(pen, true);
    },
    [lit, paintInked, view, paperPerPlan, theme, accent],
  );
  usePainter(board, 0, paintDrawing);
  usePainter(board, 1, paintLight);
  const top = board?.layers[layerCount - 1];
  const later = useLater();
  return (
    <div ref={place}>
      {later !== null && top !== undefined && (
        <later.SketchLayer layer={top} view={view} theme={theme} onLight={setLight} />
      )}
    </div>
  );
}

/** The drawing, what is lit, and what the hand does. */
const layerCount = 3;

function useLayers(place: React.RefObject<HTMLDivElement | null>, size: SizePx): BoardLayers | null {
  const [board, setBoard] = useState<BoardLayers | null>(null);
  useLayoutEffect(() => {
    if (place.current === null) return;
    const made = boardLayers(place.current, layerCount);
    setBoard(made);
    return () => {
      setBoard(null);
      made.end();
    };
  }, [place]);
  useLayoutEffect(() => board?.resize(size), [board, size]);
  return board;
}

function usePainter(board: BoardLayers | null, at: number, painter: Painter): void {
  useEffect(() => board?.layers[at]?.paint(painter), [board, at, painter]);
}

function penSet(context: Context, view: Viewport, theme: Theme): Pen {
  context.translate(view.offsetPx[0], view.offsetPx[1]);
  context.scale(viewportPaperPx(1), viewportPaperPx(1));
  return { context: context._context, theme };
}
