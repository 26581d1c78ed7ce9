import type { Joint } from '../../plan/analysis.ts';
import { focusHeir } from '../parts/focus.ts';
import { groutIsNear } from '../parts/grout.ts';
import { cardId } from '../state/thing.ts';
import { jointToGrout } from '../tools/tiles/grout-actions.ts';

const deedHeir = focusHeir(`#${cardId}`);

/** A joint that may be moved on to a grout line is moved at one press. */
export function GroutDeed({ joint }: { readonly joint: Joint }) {
  if (!groutIsNear(joint)) return null;
  return (
    <div className="deeds">
      <button ref={deedHeir} type="button" className="button framed" onClick={() => jointToGrout(joint)}>
        Move to the grout line
      </button>
    </div>
  );
}
