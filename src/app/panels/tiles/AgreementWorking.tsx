import { useId } from 'react';
import { useStore } from 'zustand';
import { agreementCancel, agreementStore } from '../../state/agreementRun.ts';

/** How far the comparison of ways is, and a way out of one that takes long. */
export function AgreementWorking() {
  const id = useId();
  const run = useStore(agreementStore, (state) => state.run);
  const halted = useStore(agreementStore, (state) => state.halted);
  if (run === null && halted !== null) {
    return (
      <p className="small" role="status">
        {halted}
      </p>
    );
  }
  if (run === null || run.pace === 'quick') return null;
  return (
    <div className="comparing" role="status">
      <span id={id} className="small">
        Trying set-out points
      </span>
      <progress aria-labelledby={id} max={1} {...(run.share > 0 ? { value: run.share } : {})} />
      {run.pace === 'long' && (
        <button type="button" className="button framed" onClick={agreementCancel}>
          Cancel
        </button>
      )}
    </div>
  );
}
