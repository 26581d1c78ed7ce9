import type { Joint } from '../../plan/analysis.ts';
import { objectFind } from '../../plan/edits/objects.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { nameText } from '../parts/format.ts';
import type { Thing } from '../state/thing.ts';
import { jointsFindAgain, jointsKeep, jointsTakeAway, thingsOf } from '../tools/actions.ts';
import { objectNoun } from '../tools/nouns.ts';

interface JointWordProps {
  readonly joint: Joint;
  /** Names of the rooms on either side. */
  readonly between: string;
  readonly file: PlanFile;
  readonly onChoose: (thing: Thing) => void;
}

/** The user's word on a joint: keep it, take it away, let the tool find it again. What something else dictates has no
 *  such word: it says what that is. */
export function JointWord({ joint, between, file, onChoose }: JointWordProps) {
  switch (joint.kind) {
    case 'field':
    case 'neck':
      return (
        <div className="deeds">
          <button type="button" className="button framed" onClick={() => jointsKeep([joint])}>
            Keep this joint
          </button>
          <button type="button" className="button framed" onClick={() => jointsTakeAway([joint])}>
            Take it away
          </button>
        </div>
      );
    case 'drawn':
      return (
        <div className="deeds">
          <button type="button" className="button framed" onClick={() => jointsFindAgain(joint.sources)}>
            Let the tool find it again
          </button>
          <button type="button" className="button framed" onClick={() => jointsTakeAway([joint])}>
            Take it away
          </button>
        </div>
      );
    case 'zone':
      return (
        <p className="small">
          It stays as long as {nameText(between)} are heated apart. Their heating zones are set in their cards.
        </p>
      );
    case 'doorway':
    case 'structural':
      return <Dictated {...{ joint, file, onChoose }} />;
  }
}

/** The thing of the plan that a joint follows, one step away. */
function Dictated({ joint, file, onChoose }: Omit<JointWordProps, 'between'>) {
  const [id] = joint.sources.filter((source) => objectFind(file, source) !== null);
  const [thing] = id === undefined ? [] : thingsOf(file, [id]);
  if (id === undefined || thing === undefined) return null;
  const noun = objectNoun(file, id);
  return (
    <div className="dictated">
      <p className="small">
        {joint.kind === 'doorway'
          ? 'A doorway dictates this joint: it moves and goes with it.'
          : 'A joint of the building dictates this one: it moves and goes with it.'}
      </p>
      <button type="button" className="button framed" onClick={() => onChoose(thing)}>
        Go to {noun}
      </button>
    </div>
  );
}
