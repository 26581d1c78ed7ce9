import { useEffect, useMemo, useState } from 'react';
import type { PlacedLabel } from '../../documents/drawing.ts';
import { drawingOf } from '../../documents/drawing-list.ts';
import { labelsPlace } from '../../documents/label-place.ts';
import { type LegendRow, legendOf } from '../../documents/legend.ts';
import type { Box } from '../../geometry/ring.ts';
import { decimalMark } from '../parts/format.ts';
import type { Result } from '../state/analysisStore.ts';
import { itemsPlace, type PlacedItem } from './hit.ts';
import { viewportPaperPerPlan } from './viewport.ts';

export interface BoardDrawing {
  readonly items: readonly PlacedItem[];
  readonly box: Box | null;
  readonly legend: readonly LegendRow[];
  readonly place: (pxPerMm: number) => readonly PlacedLabel[];
}

const nothing: BoardDrawing = { items: [], box: null, legend: [], place: () => [] };

/** The drawing list of the last good result, ready for the board. */
export function useBoardDrawing(result: Result | null): BoardDrawing {
  return useMemo(() => {
    if (result === null) return nothing;
    const drawing = drawingOf(result.plan, result.analysis, { decimalMark });
    return {
      items: itemsPlace(drawing.items),
      box: drawing.box,
      legend: legendOf(drawing),
      place: (pxPerMm: number) => labelsPlace(drawing, { paperPerPlan: viewportPaperPerPlan({ pxPerMm }) }),
    };
  }, [result]);
}

/** A zoom that has not changed for so long is done, ms: labels are seated again then, not at each step of it. */
const zoomRestMs = 80;

export function useLabels(drawing: BoardDrawing, pxPerMm: number | null): readonly PlacedLabel[] {
  const [rested, setRested] = useState(pxPerMm);
  useEffect(() => {
    const timer = setTimeout(() => setRested(pxPerMm), zoomRestMs);
    return () => clearTimeout(timer);
  }, [pxPerMm]);
  const scale = rested ?? pxPerMm;
  return useMemo(() => (scale === null ? [] : drawing.place(scale)), [drawing, scale]);
}
