import { useEffect, useMemo, useState } from 'react';
import type { Drawing, PlacedLabel } from '../../documents/drawing.ts';
import type { Box } from '../../geometry/ring.ts';
import type { PlacedItem } from './hit.ts';
import { type SizePx, type Viewport, viewportBox } from './viewport.ts';

export interface BoardDrawing {
  readonly items: readonly PlacedItem[];
  /** What a view of all of it shows, mm; with room for the names beside it where it is known how large they stand. */
  readonly boxAt: (pxPerMm?: number) => Box | null;
  /** What is shown of the result; null before there is one. */
  readonly drawing: Drawing | null;
  /** Seats the labels of what lies in the box. */
  readonly place: (pxPerMm: number, within: Box) => readonly PlacedLabel[];
  /** Whether what papers mark is on it. */
  readonly marked?: true;
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
