import { type TilesOf, tileOriginMoved } from '../../../plan/edits/tiles.ts';
import { cutsBalanced } from '../../../tiling/balance.ts';
import { boardTell } from '../../state/boardStore.ts';
import { commit, planStore } from '../../state/planStore.ts';
import { fieldFind } from '../../tools/tiles/fields.ts';
import { tilesOfWords } from './names.ts';

/** Moves the set-out point of some tiles to where the cuts at both ends of a room are equal. */
export function BalanceCuts({ of }: { readonly of: TilesOf }) {
  return (
    <button
      type="button"
      className="button framed"
      title="Moves the set-out point to where the cuts at opposite walls are equal"
      onClick={() => balance(of)}
    >
      Balance the cuts
    </button>
  );
}

function balance(of: TilesOf): void {
  const { file } = planStore.getState().history.present;
  const field = fieldFind(file, of);
  if (field === null) return;
  const to = cutsBalanced(field);
  if (to === null) {
    const isHerringbone = field.grid.bond === 'herringbone';
    const why = isHerringbone ? 'a herringbone has no courses' : 'no room has opposite walls square to these tiles';
    boardTell(`The set-out point stays: ${why}.`);
    return;
  }
  const after = tileOriginMoved(file, of, to);
  if (after === file) boardTell('The cuts are balanced as the tiles lie.');
  else commit(`Balance the cuts${tilesOfWords(of)}`, () => after);
}
