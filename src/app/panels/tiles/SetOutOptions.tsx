import { useStore } from 'zustand';
import { BarChoice } from '../../parts/BarChoice.tsx';
import { usePlan } from '../../state/hooks.ts';
import { handTake } from '../../tools/hand.ts';
import { fieldHandle, fieldsOf } from '../../tools/tiles/fields.ts';
import { setOutHeld } from '../../tools/tiles/set-out.ts';
import { toolStore } from '../../tools/toolStore.ts';
import { tilesName } from './names.ts';

/** Key of the tiles of the whole floor in the choice: no id is empty. */
const floor = '';

/** Whose set-out point the tool holds, where there are several. */
export function SetOutOptions() {
  const file = usePlan((state) => state.history.present.file);
  const held = useStore(toolStore, ({ stance }) => stance.tilesOf ?? null);
  const fields = fieldsOf(file);
  if (fields.length < 2) return null;
  return (
    <BarChoice
      label="Of"
      value={held ?? floor}
      choices={fields.map(({ id }) => ({ value: id ?? floor, words: tilesName(id) }))}
      onChange={(value) => {
        const field = fields.find(({ id }) => (id ?? floor) === value);
        if (field !== undefined) handTake({ next: setOutHeld(field.id, fieldHandle(field)) });
      }}
    />
  );
}
