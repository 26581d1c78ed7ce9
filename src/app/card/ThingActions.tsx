import { useState } from 'react';
import { useStore } from 'zustand';
import { EntryField } from '../parts/EntryField.tsx';
import { Fold } from '../parts/Fold.tsx';
import { commandKey } from '../parts/keys.ts';
import { chosenCopy, chosenDuplicate, chosenMirror, chosenRemove, chosenTurn, clipPaste } from '../tools/actions.ts';
import { toolStore } from '../tools/toolStore.ts';
import { FieldPair } from './LengthField.tsx';

/** What is done with what is chosen, one thing or several. */
export function ThingActions() {
  const copied = useStore(toolStore, ({ clip }) => clip !== null);
  return (
    <div className="deeds">
      <button type="button" className="button framed" title="A copy beside it" onClick={chosenDuplicate}>
        Duplicate
      </button>
      <button type="button" className="button framed" title={`Copy (${commandKey} C)`} onClick={chosenCopy}>
        Copy
      </button>
      {copied && (
        <button
          type="button"
          className="button framed"
          title={`Paste what was copied (${commandKey} V)`}
          onClick={clipPaste}
        >
          Paste
        </button>
      )}
      <button type="button" className="button framed" title="Remove (Delete)" onClick={chosenRemove}>
        Remove
      </button>
    </div>
  );
}

/** A quarter turn, clockwise. */
const startDeg = 90;

export function TurnFold({ summary = 'Turn and mirror' }: { readonly summary?: string }) {
  return (
    <Fold summary={summary}>
      <TurnAndMirror />
    </Fold>
  );
}

/** About the middle of what is chosen. */
export function TurnAndMirror() {
  const [angleDeg, setAngleDeg] = useState(startDeg);
  return (
    <>
      <FieldPair>
        <EntryField
          label="Turn clockwise by"
          unit="°"
          value={angleDeg}
          least={-360}
          most={360}
          step={15}
          decimals={2}
          onChange={setAngleDeg}
        />
        <button type="button" className="button framed" title="About the middle" onClick={() => chosenTurn(angleDeg)}>
          Turn
        </button>
      </FieldPair>
      <div className="deeds">
        <button type="button" className="button framed" onClick={() => chosenMirror('left-right')}>
          Mirror left-right
        </button>
        <button type="button" className="button framed" onClick={() => chosenMirror('top-bottom')}>
          Mirror top-bottom
        </button>
      </div>
    </>
  );
}
