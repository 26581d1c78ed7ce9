import { useEffect, useRef, useState } from 'react';
import { boardStore } from '../state/boardStore.ts';
import { usePlan } from '../state/hooks.ts';

/** Reads out the name of each step as it is done, where nothing on the board says it already. */
export function StepTold() {
  const history = usePlan((state) => state.history);
  const steps = useRef(history.past.length);
  const [said, setSaid] = useState('');
  useEffect(() => {
    const isNew = history.past.length > steps.current && history.future.length === 0;
    steps.current = history.past.length;
    const isTold = boardStore.getState().notice?.tone === 'told';
    if (isNew && !isTold) setSaid(`${history.past.at(-1)?.name ?? ''}.`);
  }, [history]);
  return (
    <p className="unseen" role="status" aria-label="Last step">
      {said}
    </p>
  );
}
