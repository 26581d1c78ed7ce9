import { useStore } from 'zustand';
import type { Comparison } from '../../../documents/compare.ts';
import { becameWords, changesText } from '../../../documents/compare-tables.ts';
import { earlierAsk } from '../../files/paper-work.ts';
import { focusHeir } from '../../parts/focus.ts';
import { figure } from '../../parts/format.ts';
import { Stretches } from '../../parts/Stretches.tsx';
import { type Laid, papersCompare, papersStore } from '../../state/papersRun.ts';

const heir = focusHeir('#compare .button');

/** What changed since an earlier version of the plan. */
export function CompareGroup({ laid: { comparison } }: { readonly laid: Laid }) {
  const earlier = useStore(papersStore, (state) => state.earlier);
  return (
    <section className="group" id="compare">
      <h3>Compare with an earlier version</h3>
      {comparison !== null && earlier !== null && (
        <>
          <p>Since {earlier.name}:</p>
          <p className="small">
            {changesText(comparison.joints, 'joint')}; {changesText(comparison.bays, 'bay')}.
          </p>
          <JointChanges comparison={comparison} />
        </>
      )}
      <div className="deeds">
        {earlier !== null && (
          <button ref={heir} type="button" className="button framed" onClick={() => void papersCompare(null)}>
            Stop comparing
          </button>
        )}
        <button type="button" className="button framed" onClick={earlierAsk}>
          {earlier === null ? 'Open an earlier version' : 'Open another'}
        </button>
      </div>
      {comparison !== null && (
        <p className="small quiet">The papers of the revision stand with the other papers above.</p>
      )}
    </section>
  );
}

/** About the height of a row, px. */
const rowPx = 24;

function JointChanges({ comparison: { joints } }: { readonly comparison: Comparison }) {
  const changed = joints.filter(({ what }) => what !== 'same');
  if (changed.length === 0) return null;
  return (
    <ul className="small changes" aria-label="Joints that changed">
      <Stretches count={changed.length} rowPx={rowPx}>
        {(i) => {
          const change = changed[i];
          if (change === undefined) return null;
          const { what, before, now, movedMm } = change;
          const by = movedMm > 0 ? ` by ${figure(movedMm, 0)} mm` : '';
          return (
            <li key={`${before?.id} ${now?.id}`}>
              <strong>{now?.id ?? before?.id}</strong> {(now ?? before)?.name}: {becameWords[what]}
              {by}
            </li>
          );
        }}
      </Stretches>
    </ul>
  );
}
