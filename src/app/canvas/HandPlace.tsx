import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { lengthFigure } from '../parts/lengths.ts';
import { pointerStore } from '../state/pointerStore.ts';
import { unitStore } from '../state/unit.ts';

/** Keys that have rested for so long have led somewhere, ms: the way there is not read out. */
const restMs = 600;

/** Where the hand is that keys lead, or what they move: read out once they rest. */
export function HandPlace() {
  const { at, led } = useStore(pointerStore);
  const unit = useStore(unitStore, (state) => state.unit);
  const [said, setSaid] = useState('');
  const words = at === null || !led ? '' : `x ${lengthFigure(at[0], unit)}, y ${lengthFigure(at[1], unit)} ${unit}`;
  useEffect(() => {
    if (words === '') return;
    const timer = setTimeout(() => setSaid(words), restMs);
    return () => clearTimeout(timer);
  }, [words]);
  return (
    <p className="unseen" role="status" aria-label="Place of the hand">
      {said}
    </p>
  );
}
