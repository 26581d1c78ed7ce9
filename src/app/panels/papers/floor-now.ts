import { useMemo } from 'react';
import type { PaperSource } from '../../../documents/paper-source.ts';
import { useAnalysis, usePlan, usePlanResolved } from '../../state/hooks.ts';

/** The plan as it stands with the newest analysis of its sheet, so that what is said beside its fields is ahead of the next one; null before the first. */
export function useFloorNow(): PaperSource | null {
  const { file, number } = usePlan((state) => state.history.present);
  const plan = usePlanResolved();
  const result = useAnalysis((state) => state.result);
  // What depends on a day is not asked of it.
  return useMemo(
    () => (result?.sheet === number ? { file, plan, analysis: result.analysis, date: '' } : null),
    [file, number, plan, result],
  );
}
