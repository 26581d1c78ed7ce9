import { useMemo } from 'react';
import { useLater } from '../later.tsx';
import { boardStore } from '../state/boardStore.ts';
import { useAnalysis } from '../state/hooks.ts';
import { planShown, planStore } from '../state/planStore.ts';
import { pointerStore } from '../state/pointerStore.ts';
import { type Thing, thingOf } from '../state/thing.ts';
import { handAct, sceneOf } from '../tools/hand.ts';
import type { Hand } from '../tools/stance.ts';
import { toolStore } from '../tools/toolStore.ts';
import { boardLook } from './boardView.ts';
import type { BoardDrawing } from './drawing.ts';
import type { BoardHand, Pointing } from './gestures.ts';
import { itemsHit, type PlacedItem } from './hit.ts';
import { pinMembers } from './pins.ts';
import { viewportLengthMm, viewportToPlan } from './viewport.ts';

/** The hand over the board: pixels become places of the plan, and what lies there. */
export function useHand(items: readonly PlacedItem[], drawing: BoardDrawing): BoardHand {
  const analysis = useAnalysis((state) => state.result?.analysis ?? null);
  // as the panels of the steps in which the plan's own things are meant
  const planHit = useLater()?.planHit;
  return useMemo(() => {
    /** What lies there: one thing, or the findings that one pin stands for. While rooms and what stands in them are drawn,
     *  they are meant; bays and joints else. */
    const thingsAt = ({ atPx, reachPx }: Pointing): readonly Thing[] => {
      const { view, step } = boardStore.getState();
      if (view === null || analysis === null) return [];
      const ref = itemsHit(items, view, atPx, reachPx);
      if (ref?.kind === 'finding') {
        return pinMembers(drawing.items, view, ref).flatMap((each) => thingOf(each, analysis) ?? []);
      }
      if (step === 'floor' || step === 'openings' || step === 'obstacles') {
        const thing = planHit?.(planShown(planStore.getState()), view, atPx, reachPx);
        return thing ? [thing] : [];
      }
      const thing = ref === null ? null : thingOf(ref, analysis);
      return thing === null ? [] : [thing];
    };
    const handOf = (pointing: Pointing): Hand | null => {
      const { view } = boardStore.getState();
      if (view === null) return null;
      return {
        at: viewportToPlan(view, pointing.atPx),
        reachMm: viewportLengthMm(view, pointing.reachPx),
        loose: pointing.loose,
        // A tool that draws asks nothing of what lies there.
        things: toolStore.getState().stance.tool === 'choose' ? thingsAt(pointing) : [],
      };
    };
    return {
      view: () => boardStore.getState().view,
      look: boardLook,
      grabs(pointing) {
        const hand = handOf(pointing);
        return hand !== null && toolStore.getState().stance.grabs(hand, sceneOf());
      },
      act(kind, pointing) {
        const hand = handOf(pointing);
        if (hand === null) return;
        pointerStore.setState({ at: hand.at, led: false });
        handAct({ kind, hand });
      },
      leave() {
        pointerStore.setState({ at: null, led: false });
        handAct({ kind: 'leave' });
      },
      takeBack: () => handAct({ kind: 'leave' }),
    };
  }, [items, drawing, analysis, planHit]);
}
