import { useMemo } from 'react';
import type { Drawing } from '../../documents/drawing.ts';
import { labelsPlace } from '../../documents/label-place.ts';
import { useLater } from '../later.tsx';
import type { Result } from '../state/analysisStore.ts';
import { useBoard, usePlan } from '../state/hooks.ts';
import { planShown } from '../state/planStore.ts';
import type { BoardDrawing } from './drawing.ts';
import { itemsPlace } from './hit.ts';
import { viewportPaperPerPlan } from './viewport.ts';

const nothing: BoardDrawing = { items: [], boxAt: () => null, drawing: null, place: () => [] };

/** The drawing list of the last good result, ready for the board. */
export function useBoardDrawing(result: Result | null): BoardDrawing {
  const tilesShown = useBoard((state) => state.tilesShown);
  const inPapers = useBoard(({ step }) => step === 'papers');
  const later = useLater();
  // only there, so that a gesture in another step draws nothing anew
  const file = usePlan((state) => (inPapers ? planShown(state) : null));
  const board = useMemo((): BoardDrawing => {
    if (result === null) return nothing;
    const drawing = tilesShown ? result.drawing : withoutTiles(result.drawing);
    return {
      items: itemsPlace(drawing.items),
      boxAt: () => drawing.box,
      drawing,
      place: (pxPerMm, within) => labelsPlace(drawing, { paperPerPlan: viewportPaperPerPlan({ pxPerMm }), within }),
    };
  }, [result, tilesShown]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what papers mark is in these parts of the file
  return useMemo(
    () => (file && result && later ? later.paperItemsOn(board, { file, plan: result.plan }) : board),
    [board, later, inPapers, file?.papers, file?.records, file?.pour],
  );
}

function withoutTiles({ items, ...drawing }: Drawing): Drawing {
  return { ...drawing, items: items.filter(({ layer }) => layer !== 'tiles') };
}
