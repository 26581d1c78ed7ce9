import { analysisAgain, analysisCancel } from '../state/analysisRun.ts';
import { useAnalysis } from '../state/hooks.ts';

/** Progress of a run that takes its time, and a way out of one that takes long. What stands on the board meanwhile is
 *  the last good result. */
export function Working() {
  const run = useAnalysis((state) => state.run);
  const halted = useAnalysis((state) => state.halted);
  const resulted = useAnalysis((state) => state.result !== null);
  if (run !== null && run.pace !== 'quick') {
    return (
      <div className="working" role="status">
        <span id="working-word">Working out the bays</span>
        <progress aria-labelledby="working-word" max={1} {...(run.share > 0 ? { value: run.share } : {})} />
        {run.pace === 'long' && (
          <button type="button" className="button framed" onClick={analysisCancel}>
            Cancel
          </button>
        )}
      </div>
    );
  }
  if (run !== null || halted === null) return null;
  return (
    <div className="working" role="status">
      <span>
        <strong>{resulted ? 'Old result.' : 'No result.'}</strong> {halted.why}
      </span>
      <button type="button" className="button framed" onClick={analysisAgain}>
        Work it out again
      </button>
    </div>
  );
}
