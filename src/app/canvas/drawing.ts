import { useEffect, useMemo, useState } from 'react';
import type { Drawing, PlacedLabel } from '../../documents/drawing.ts';
import { labelsPlace } from '../../documents/label-place.ts';
import type { Box } from '../../geometry/ring.ts';
import type { Result } from '../state/analysisStore.ts';
import { useBoard } from '../state/hooks.ts';
import { itemsPlace, type PlacedItem } from './hit.ts';
import { type SizePx, type Viewport, viewportBox, viewportPaperPerPlan } from './viewport.ts';

export interface BoardDrawing {
  readonly items: readonly PlacedItem[];
  readonly box: Box | null;
  /** What is shown of the result; null before there is one. */
  readonly drawing: Drawing | null;
  /** Seats the labels of what lies in the box. */
  readonly place: (pxPerMm: number, within: Box) => readonly PlacedLabel[];
}

const nothing: BoardDrawing = { items: [], box: null, drawing: null, place: () => [] };

/** The drawing list of the last good result, ready for the board. */
export function useBoardDrawing(result: Result | null): BoardDrawing {
  const tilesShown = useBoard((state) => state.tilesShown);
  return useMemo(() => {
    if (result === null) return nothing;
    const drawing = tilesShown ? result.drawing : withoutTiles(result.drawing);
    return {
      items: itemsPlace(drawing.items),
      box: drawing.box,
      drawing,
      place: (pxPerMm: number, within: Box) =>
        labelsPlace(drawing, { paperPerPlan: viewportPaperPerPlan({ pxPerMm }), within }),
    };
  }, [result, tilesShown]);
}

function withoutTiles({ items, ...drawing }: Drawing): Drawing {
  return { ...drawing, items: items.filter(({ layer }) => layer !== 'tiles') };
}

/** A view that has not changed for so long is at rest, ms: labels are seated again then, not at each step of a gesture. */
const restMs = 80;
/** Beyond the view by so many of its own sides things are lettered too, so that a pan finds its labels in place. */
const marginViews = 1;

interface Lettered {
  readonly pxPerMm: number;
  readonly within: Box;
}

export function useLabels(drawing: BoardDrawing, view: Viewport | null, size: SizePx | null): readonly PlacedLabel[] {
  const [lettered, setLettered] = useState<Lettered | null>(null);
  useEffect(() => {
    if (view === null || size === null) return;
    const letter = () => setLettered((last) => (last !== null && serves(last, view, size) ? last : anew(view, size)));
    const timer = setTimeout(letter, restMs);
    return () => clearTimeout(timer);
  }, [view, size]);
  const shown = lettered ?? (view === null || size === null ? null : anew(view, size));
  const [pxPerMm, within] = [shown?.pxPerMm, shown?.within];
  return useMemo(
    () => (pxPerMm === undefined || within === undefined ? [] : drawing.place(pxPerMm, within)),
    [drawing, pxPerMm, within],
  );
}

function anew(view: Viewport, size: SizePx): Lettered {
  return { pxPerMm: view.pxPerMm, within: viewportBox(view, size, marginViews) };
}

function serves({ pxPerMm, within }: Lettered, view: Viewport, size: SizePx): boolean {
  const seen = viewportBox(view, size, 0);
  return (
    pxPerMm === view.pxPerMm &&
    seen.minX >= within.minX &&
    seen.maxX <= within.maxX &&
    seen.minY >= within.minY &&
    seen.maxY <= within.maxY
  );
}
