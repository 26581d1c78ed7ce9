import { useState } from 'react';
import { namesOf } from '../../../documents/words.ts';
import type { Joint } from '../../../plan/analysis.ts';
import { focusHeir } from '../../parts/focus.ts';
import { groutFurthest, groutMisses, groutWords } from '../../parts/grout.ts';
import { Sample } from '../../parts/Sample.tsx';
import { ThingList, type ThingRow } from '../../parts/ThingList.tsx';
import type { Result } from '../../state/analysisStore.ts';
import { useBoard } from '../../state/hooks.ts';
import { jointThing, thingEquals } from '../../state/thing.ts';
import type { PanelProps } from '../panel.ts';

interface MissesProps extends Pick<PanelProps, 'onChoose'> {
  readonly result: Result;
}

/** The joints that miss the grout lines, those furthest off first. */
export function GroutMisses({ result, onChoose }: MissesProps) {
  const misses = groutFurthest(groutMisses(result.analysis));
  const others = misses.filter(({ kind }) => kind !== 'doorway');
  const inDoorways = misses.filter(({ kind }) => kind === 'doorway');
  if (misses.length === 0) return null;
  return (
    <section className="group">
      <h3>
        Joints off the grout lines <span className="quiet">{misses.length}</span>
      </h3>
      {others.length > 0 && (
        <Misses label="Joints off the grout lines" rows={missRows(others, result)} onChoose={onChoose} />
      )}
      {inDoorways.length > 0 && (
        <>
          <p className="small quiet">
            Joints in doorways stay under the leaf. Where no new tile field begins at the joint, tiles are cut:
          </p>
          <Misses label="Doorways off the grout lines" rows={missRows(inDoorways, result)} onChoose={onChoose} />
        </>
      )}
    </section>
  );
}

/** So many rows are shown at first. */
const rowsAtFirst = 12;

interface MissesListProps extends Pick<PanelProps, 'onChoose'> {
  readonly label: string;
  readonly rows: readonly ThingRow[];
}

const allHeir = focusHeir('[role="listbox"]', '.misses');

/** The first of a long list; the chosen one too, wherever it stands. */
function Misses({ label, rows, onChoose }: MissesListProps) {
  const [all, setAll] = useState(false);
  const chosen = useBoard((state) => state.chosen);
  const isShown = ({ thing }: ThingRow, i: number) => i < rowsAtFirst || chosen.some((one) => thingEquals(one, thing));
  const isLong = rows.length > rowsAtFirst;
  return (
    <div className="misses">
      <ThingList label={label} rows={all ? rows : rows.filter(isShown)} onChoose={onChoose} />
      {isLong && !all && (
        <div className="deeds">
          <button ref={allHeir} type="button" className="button framed" onClick={() => setAll(true)}>
            All {rows.length}
          </button>
        </div>
      )}
    </div>
  );
}

function missRows(joints: readonly Joint[], { plan, analysis }: Result): readonly ThingRow[] {
  const names = namesOf(plan, analysis);
  return joints.map((joint) => {
    const words = groutWords(joint);
    return {
      thing: jointThing(joint),
      lead: <Sample of={{ shape: 'line', style: `joint-${joint.kind}` }} />,
      name: `${joint.id} ${names.joint(joint)}`,
      value: words?.place ?? '',
      more: words?.more || null,
    };
  });
}
