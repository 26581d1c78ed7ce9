import { useId } from 'react';
import { useStore } from 'zustand';
import { focusHeir } from '../../parts/focus.ts';
import { paperCancel, papersStore } from '../../state/papersRun.ts';

const cancelHeir = focusHeir('#papers .button');

/** How far the paper under way is, and a way out of one that takes long: at the foot of the list whatever part of it is in view. */
export function PapersWorking() {
  const id = useId();
  const run = useStore(papersStore, (state) => state.run);
  if (run === null || run.pace === 'quick') return null;
  return (
    <div className="comparing" role="status">
      <span id={id} className="small">
        Making the papers
      </span>
      <progress aria-labelledby={id} max={1} {...(run.share > 0 ? { value: run.share } : {})} />
      {run.pace === 'long' && (
        <button ref={cancelHeir} type="button" className="button framed" onClick={paperCancel}>
          Cancel
        </button>
      )}
    </div>
  );
}
