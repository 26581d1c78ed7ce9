import type { Joint } from '../../plan/analysis.ts';
import { figure } from '../parts/format.ts';
import { SourceText } from '../parts/SourceNote.tsx';
import type { Result } from '../state/analysisStore.ts';
import { FiguresTable } from './FiguresTable.tsx';
import { MovementInputs } from './MovementInputs.tsx';
import { bayShare, shareFormula } from './working.ts';

/** Formula, inputs and source of a joint's movement. */
export function JointWorking({ joint, result }: { readonly joint: Joint; readonly result: Result }) {
  const shares = joint.bays.flatMap((id) => {
    const bay = result.analysis.bays.find((each) => each.id === id);
    return bay === undefined ? [] : [bayShare(bay, joint.line, result)];
  });
  return (
    <>
      <p className="small">
        Each bay grows about its still point: expansion × warming × distance, with swelling added. What both bring
        across the joint is the closing.
      </p>
      <MovementInputs plan={result.plan} shares={shares} />
      <FiguresTable
        rows={shares.map((share) => ({
          name: share.bay,
          value: `${figure(share.reachM * share.growingMmPerM, 2)} mm`,
          limit: shareFormula(share, result),
        }))}
      />
      <SourceText source="linear-expansion" />
    </>
  );
}
