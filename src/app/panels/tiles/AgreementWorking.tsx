import { useId } from 'react';
import { useStore } from 'zustand';
import { agreementCancel, agreementStore } from '../../state/agreementRun.ts';

/** How far a comparison is, beside the control that asked for it, and a way out of one that takes long. */
export function AgreementWorking({ by }: { readonly by: string }) {
  const id = useId();
  const run = useStore(agreementStore, (state) => state.run);
  const halted = useStore(agreementStore, (state) => state.halted);
  if (run === null && halted?.by === by) {
    return (
      <p className="small" role="status">
        {halted.why}
      </p>
    );
  }
  if (run === null || run.by !== by || run.pace === 'quick') return null;
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
