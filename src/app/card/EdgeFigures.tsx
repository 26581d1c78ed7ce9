import { stripTakes } from '../../movement/strip.ts';
import type { Edge } from '../../plan/analysis.ts';
import { length, movement } from '../parts/format.ts';
import type { Result } from '../state/analysisStore.ts';
import { CardFindings } from './CardFindings.tsx';
import { EdgeWorking } from './EdgeWorking.tsx';
import { FiguresTable } from './FiguresTable.tsx';

/** What the edge strip must give here, beside what it gives. */
export function EdgeFigures({ edge, result }: { readonly edge: Edge; readonly result: Result }) {
  const { edgeStrip } = result.plan;
  const takes = movement(stripTakes(edgeStrip.thicknessMm, edgeStrip.usableTravel));
  return (
    <>
      <p>Edge strip along the {edge.along}</p>
      <FiguresTable
        rows={[
          { name: 'Moves out', value: movement(edge.movementMm), limit: `strip takes ${takes}`, strong: true },
          { name: 'Length', value: length(edge.lengthM) },
          { name: 'Bay', value: edge.bay },
        ]}
      />
      <CardFindings id={edge.id} result={result} />
      <details className="explain">
        <summary>How the movement is found</summary>
        <EdgeWorking edge={edge} result={result} />
      </details>
    </>
  );
}
