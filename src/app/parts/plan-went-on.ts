import { useState } from 'react';
import { usePlan } from '../state/hooks.ts';

/** Does something as soon as the plan has gone on, by undo or in another field: before it is drawn. Not for a preview: what hangs on it is not drawn
 *  anew with every move of a hand. */
export function usePlanWentOn(act: () => void): void {
  const revision = usePlan((state) => state.history);
  const [seen, setSeen] = useState(revision);
  if (seen === revision) return;
  setSeen(revision);
  act();
}
