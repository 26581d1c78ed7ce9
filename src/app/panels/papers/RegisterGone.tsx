import { registerEntries } from '../../../documents/register-entries.ts';
import { planJointNotesTakenOut } from '../../../plan/edits/joint-notes.ts';
import { namesText } from '../../../plan/figure-words.ts';
import { focusHeir } from '../../parts/focus.ts';
import { countOf } from '../../parts/format.ts';
import { commit } from '../../state/planStore.ts';
import { useFloorNow } from './floor-now.ts';

const takeHeir = focusHeir('#papers .button');

/** Told at once; the register lists the rest. */
const mostTold = 8;

/** What the joint register has of joints that are not there any more, or that have moved since it was entered; nothing where there is none. */
export function RegisterGone() {
  const floor = useFloorNow();
  if (floor === null) return null;
  const { gone, followed } = registerEntries(floor);
  if (gone.length + followed.size === 0) return null;
  const moved = floor.analysis.joints.flatMap(({ id, key }) => (followed.has(key) ? [id] : []));
  return (
    <section className="group" aria-labelledby="register-gone">
      <h3 id="register-gone">Joint register</h3>
      {moved.length > 0 && <p className="small quiet">{movedWords(moved)}</p>}
      {gone.slice(0, mostTold).map(({ key, words }) => (
        <div key={key} className="item">
          <p className="small tone-caution">What was entered for {words} has no joint any more.</p>
          <TakeOut keys={[key]} words="Take it out" of={words} />
        </div>
      ))}
      <MoreTold count={gone.length - mostTold} />
      {gone.length > 1 && (
        <TakeOut
          keys={gone.map(({ key }) => key)}
          words={`Take all ${gone.length} out`}
          of={countOf(gone.length, 'entry', 'entries')}
        />
      )}
    </section>
  );
}

function MoreTold({ count }: { readonly count: number }) {
  return count > 0 ? <p className="small quiet">And {count} more: the register on paper lists them.</p> : null;
}

/** Example: "What is entered for J15 was entered before it moved or was made another; the card of the joint says how far." */
function movedWords(ids: readonly string[]): string {
  const told = ids.length > mostTold ? [...ids.slice(0, mostTold), `${ids.length - mostTold} more`] : ids;
  return ids.length === 1
    ? `What is entered for ${ids[0]} was entered before it moved or was made another; the card of the joint says how far.`
    : `What is entered for ${namesText(told)} was entered before they moved or were made others; the card of each joint says how far.`;
}

interface TakeOutProps {
  /** As they are entered. */
  readonly keys: readonly string[];
  readonly words: string;
  /** What goes, within a sentence. */
  readonly of: string;
}

function TakeOut({ keys, words, of }: TakeOutProps) {
  return (
    <div className="deeds">
      <button
        ref={takeHeir}
        type="button"
        className="button framed"
        aria-label={`${words}: ${of}`}
        onClick={() => commit(`Take ${of} out of the joint register`, (file) => planJointNotesTakenOut(file, keys))}
      >
        {words}
      </button>
    </div>
  );
}
