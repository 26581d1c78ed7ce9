import { namesOf } from '../../../documents/words.ts';
import { figure } from '../../parts/format.ts';
import { groutLengths, groutMisses, groutWords } from '../../parts/grout.ts';
import { Sample } from '../../parts/Sample.tsx';
import { ThingList, type ThingRow } from '../../parts/ThingList.tsx';
import type { Result } from '../../state/analysisStore.ts';
import { jointThing } from '../../state/thing.ts';
import type { PanelProps } from '../panel.ts';
import { AgreementGroup } from './AgreementGroup.tsx';

/** Where joints and grout lines agree and where not, and the ways to bring them together. */
export function GroutGroup({ result, onChoose }: PanelProps) {
  if (result === null || result.analysis.tiles === null) return null;
  const rows = missRows(result);
  return (
    <>
      <section className="group">
        <h3>Joints and grout lines</h3>
        <GroutShare result={result} />
        {rows.length > 0 && (
          <>
            <p className="small quiet">
              {rows.length === 1 ? 'This joint misses' : `These ${rows.length} joints miss`} the grout lines:
            </p>
            <ThingList label="Joints off the grout lines" rows={rows} onChoose={onChoose} />
          </>
        )}
      </section>
      <AgreementGroup />
    </>
  );
}

function GroutShare({ result: { analysis } }: { readonly result: Result }) {
  const { onM, allM } = groutLengths(analysis);
  if (allM === 0) return <p>No intermediate joint lies under tiles.</p>;
  return (
    <p>
      <strong>{figure((100 * onM) / allM, 0)} %</strong> of the intermediate joints lie in grout: {figure(onM, 1)} of{' '}
      {figure(allM, 1)} m.
    </p>
  );
}

function missRows(result: Result): readonly ThingRow[] {
  const { plan, analysis } = result;
  const names = namesOf(plan, analysis);
  return groutMisses(analysis).map((joint) => {
    const words = groutWords(joint, result);
    return {
      thing: jointThing(joint),
      lead: <Sample of={{ shape: 'line', style: `joint-${joint.kind}` }} />,
      name: `${joint.id} ${names.joint(joint)}`,
      value: words?.place ?? '',
      more: words?.tiles ?? null,
    };
  });
}
