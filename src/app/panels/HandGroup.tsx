import { focusHeir } from '../parts/focus.ts';
import { Sample } from '../parts/Sample.tsx';
import { ThingList, type ThingRow } from '../parts/ThingList.tsx';
import { useShown } from '../state/hooks.ts';
import { jointsFindAllAgain } from '../tools/actions.ts';
import type { PanelProps } from './panel.ts';

const againHeir = focusHeir('#tray [role="listbox"][aria-label="Joints"]');

/** Joints on which the user has the last word, and the way back to those that the tool finds. */
export function HandGroup({ onChoose }: Pick<PanelProps, 'onChoose'>) {
  const { drawnJoints = [], noJoint = [] } = useShown();
  const row = (key: string, name: string, style: 'joint-drawn' | 'no-joint', more: string): ThingRow => ({
    thing: { kind: 'object', key },
    lead: <Sample of={{ shape: 'line', style }} />,
    name,
    value: '',
    more,
  });
  const rows = [
    ...drawnJoints.map(({ id }) => row(id, `Drawn joint ${id}`, 'joint-drawn', 'Kept')),
    ...noJoint.map(({ id }) => row(id, `Joint taken away ${id}`, 'no-joint', 'Taken away')),
  ];
  if (rows.length === 0) return null;
  return (
    <section className="group">
      <h3>
        Kept and taken away <span className="quiet">{rows.length}</span>
      </h3>
      <ThingList label="Kept and taken away" rows={rows} onChoose={onChoose} />
      <button ref={againHeir} type="button" className="button framed" onClick={jointsFindAllAgain}>
        Find all joints again
      </button>
    </section>
  );
}
