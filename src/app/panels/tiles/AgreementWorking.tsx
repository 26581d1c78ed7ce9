import { useId } from 'react';
import { useStore } from 'zustand';
import { focusHeir } from '../../parts/focus.ts';
import { agreementCancel, agreementStore } from '../../state/agreementRun.ts';

const cancelHeir = focusHeir('#agree .button');

/** How far the comparison of ways is, and a way out of one that takes long: at the foot of the list whatever part of it is in view. */
export function AgreementWorking() {
  const id = useId();
  const run = useStore(agreementStore, (state) => state.run);
  if (run === null || run.pace === 'quick') return null;
  return (
    <div className="comparing" role="status">
      <span id={id} className="small">
        Trying set-out points
      </span>
      <progress aria-labelledby={id} max={1} {...(run.share > 0 ? { value: run.share } : {})} />
      {run.pace === 'long' && (
        <button ref={cancelHeir} type="button" className="button framed" onClick={agreementCancel}>
          Cancel
        </button>
      )}
    </div>
  );
}
