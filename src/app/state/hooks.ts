import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Plan } from '../../plan/plan.ts';
import { planResolve } from '../../plan/resolve.ts';
import { type AnalysisState, analysisStore } from './analysisStore.ts';
import { type BoardState, boardStore } from './boardStore.ts';
import { type Keeping, keepingStore, planStanding, type Standing } from './keeping.ts';
import { type PlanState, planShown, planStore } from './planStore.ts';

export const usePlan = <Part>(pick: (state: PlanState) => Part): Part => useStore(planStore, pick);
/** The plan file that the board shows: with what a gesture under way makes of it. */
export const useShown = () => usePlan(planShown);
export const useBoard = <Part>(pick: (state: BoardState) => Part): Part => useStore(boardStore, pick);
export const useKeeping = <Part>(pick: (state: Keeping) => Part): Part => useStore(keepingStore, pick);
export const useAnalysis = <Part>(pick: (state: AnalysisState) => Part): Part => useStore(analysisStore, pick);

/** Where the newest state of the plan on the board is. */
export function useStanding(): Standing {
  const history = usePlan((state) => state.history);
  const saved = usePlan((state) => state.saved);
  return useKeeping((keeping) => planStanding({ history, saved }, keeping));
}

/** The plan on the board with every default filled in: what settings show, ahead of the analysis. */
export function usePlanResolved(): Plan {
  const file = usePlan((state) => state.history.present.file);
  return useMemo(() => planResolve(file), [file]);
}
