import { boxOf } from '../../geometry/ring.ts';
import { boardStore } from '../state/boardStore.ts';
import { planStore } from '../state/planStore.ts';
import { pointerStore } from '../state/pointerStore.ts';
import { resting } from '../tools/choose/resting.ts';
import { placesResting } from '../tools/papers/place-hand.ts';
import { placeChosen } from '../tools/papers/places.ts';
import { toolStore } from '../tools/toolStore.ts';
import { paperMmNow } from '../tools/tools.ts';
import { boardReveal } from './boardView.ts';

const open = placesResting(paperMmNow);

/** While papers are worked on, the open hand takes hold of what they mark on the floor.  @returns what ends it */
export function placesFollow(): () => void {
  const take = () => {
    const { stance } = toolStore.getState();
    const inPapers = boardStore.getState().step === 'papers';
    const isOpen = stance.tool === 'choose' && !stance.underway;
    if (isOpen && inPapers !== (stance === open)) toolStore.setState({ stance: inPapers ? open : resting() });
  };
  take();
  const ends = [
    toolStore.subscribe(take),
    boardStore.subscribe(({ step, chosen }, before) => {
      if (step === before.step) return;
      take();
      // Elsewhere it is not seen.
      if (placeChosen(planStore.getState().history.present.file, chosen)) boardStore.setState({ chosen: [] });
    }),
    planStore.subscribe(({ history: { present, past } }, before) => {
      const isLed = present !== before.history.present && past.at(-1)?.gesture?.startsWith('steer') === true;
      const place = isLed ? placeChosen(present.file, boardStore.getState().chosen) : null;
      if (place === null) return;
      pointerStore.setState({ at: place.points[0] ?? null, led: true });
      boardReveal(boxOf(place.points));
    }),
  ];
  return () => {
    for (const end of ends) end();
  };
}
