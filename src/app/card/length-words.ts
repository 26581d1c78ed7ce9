import { useStore } from 'zustand';
import { lengthFigure } from '../parts/lengths.ts';
import { unitStore } from '../state/unit.ts';

/** Writes a length, or two sides, in the unit of the board: "4500 × 3000 mm". */
export function useLengthWords(): (...lengthsMm: readonly number[]) => string {
  const unit = useStore(unitStore, (state) => state.unit);
  return (...lengthsMm) => `${lengthsMm.map((mm) => lengthFigure(mm, unit)).join(' × ')} ${unit}`;
}
