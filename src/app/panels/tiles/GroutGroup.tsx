import { namesOf } from '../../../documents/words.ts';
import type { Joint } from '../../../plan/analysis.ts';
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
  const misses = groutMisses(result.analysis);
  const [inDoorways, others] = [true, false].map((isDoorway) =>
    missRows(
      misses.filter(({ kind }) => (kind === 'doorway') === isDoorway),
      result,
    ),
  ) as [readonly ThingRow[], readonly ThingRow[]];
  return (
    <>
      <section className="group">
        <h3>Joints and grout lines</h3>
        <GroutShare result={result} />
        {others.length > 0 && (
          <>
            <p className="small quiet">
              {others.length === 1 ? 'This joint misses' : `These ${others.length} joints miss`} the grout lines:
            </p>
            <ThingList label="Joints off the grout lines" rows={others} onChoose={onChoose} />
          </>
        )}
        {inDoorways.length > 0 && (
          <>
            <p className="small quiet">
              Joints in doorways stay under the leaf. Where no field restarts there, tiles are cut:
            </p>
            <ThingList label="Doorways off the grout lines" rows={inDoorways} onChoose={onChoose} />
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

function missRows(joints: readonly Joint[], result: Result): readonly ThingRow[] {
  const { plan, analysis } = result;
  const names = namesOf(plan, analysis);
  return joints.map((joint) => {
    const words = groutWords(joint);
    return {
      thing: jointThing(joint),
      lead: <Sample of={{ shape: 'line', style: `joint-${joint.kind}` }} />,
      name: `${joint.id} ${names.joint(joint)}`,
      value: words?.place ?? '',
      more: words?.more ?? null,
    };
  });
}
