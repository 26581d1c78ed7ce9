import { figure } from '../../parts/format.ts';
import { groutLengths } from '../../parts/grout.ts';
import type { Result } from '../../state/analysisStore.ts';

/** How much of the joints lies in grout. */
export function GroutGroup({ result }: { readonly result: Result }) {
  const { onM, allM } = groutLengths(result.analysis);
  return (
    <section className="group">
      <h3>Joints and grout lines</h3>
      {allM === 0 ? (
        <p>No joint within a room lies under tiles.</p>
      ) : (
        <p>
          <strong>{figure((100 * onM) / allM, 0)} %</strong> of the joints within rooms lie in grout: {figure(onM, 1)}{' '}
          of {figure(allM, 1)} m.
        </p>
      )}
    </section>
  );
}
