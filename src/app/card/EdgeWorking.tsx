import type { Edge } from '../../plan/analysis.ts';
import { figure } from '../parts/format.ts';
import { SourceText } from '../parts/SourceNote.tsx';
import type { Result } from '../state/analysisStore.ts';
import { FiguresTable } from './FiguresTable.tsx';
import { MovementInputs } from './MovementInputs.tsx';
import { bayShare, shareFormula } from './working.ts';

/** Formula, inputs and source of the movement at an edge. */
export function EdgeWorking({ edge, result }: { readonly edge: Edge; readonly result: Result }) {
  const bay = result.analysis.bays.find((each) => each.id === edge.bay);
  if (bay === undefined) return null;
  const share = bayShare(bay, edge.line, result);
  return (
    <>
      <p className="small">
        The bay grows about its still point: expansion × warming × distance, with swelling added. The largest outward
        movement along the edge counts.
      </p>
      <MovementInputs plan={result.plan} shares={[share]} />
      <FiguresTable
        rows={[
          {
            name: share.bay,
            value: `${figure(share.reachM * share.growingMmPerM, 2)} mm`,
            limit: shareFormula(share, result),
          },
        ]}
      />
      <SourceText source="linear-expansion" />
    </>
  );
}
