import { namesOf } from '../../documents/words.ts';
import { pointDistance } from '../../geometry/point.ts';
import type { Joint } from '../../plan/analysis.ts';
import { panelHeir } from '../parts/focus.ts';
import { figure, movement } from '../parts/format.ts';
import { Sample } from '../parts/Sample.tsx';
import { ThingList } from '../parts/ThingList.tsx';
import type { PanelProps } from './panel.ts';

/** The doorways, each with what moves in it. */
export function OpeningsPanel({ result, onChoose }: PanelProps) {
  if (result === null || result.plan.doorways.length === 0) return <p className="group quiet">No doorways.</p>;
  const { plan, analysis } = result;
  const names = namesOf(plan, analysis);
  const byDoorway = new Map<string, Joint>();
  for (const joint of analysis.joints) for (const id of joint.sources) byDoorway.set(id, joint);
  const rows = plan.doorways.map(({ id, line, leaf }) => {
    const joint = byDoorway.get(id);
    return {
      thing: { kind: 'object', key: id } as const,
      lead: joint === undefined ? '' : <Sample of={{ shape: 'line', style: `joint-${joint.kind}` }} />,
      name: joint === undefined ? 'No joint' : names.joint(joint),
      value: `${figure(pointDistance(line[0], line[1]), 0)} mm`,
      more: `${leaf ? 'Door leaf' : 'No leaf'}${joint === undefined ? '' : `, joint ${joint.id} closes ${movement(joint.closingMm)}`}`,
    };
  });
  return (
    <section ref={panelHeir} className="group">
      <h3>
        Doorways <span className="quiet">{rows.length}</span>
      </h3>
      <ThingList label="Doorways" rows={rows} onChoose={onChoose} />
    </section>
  );
}
