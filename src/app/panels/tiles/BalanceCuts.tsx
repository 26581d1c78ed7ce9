import { useStore } from 'zustand';
import { agreementUsed, type TilesOf } from '../../../plan/edits/tiles.ts';
import { agreementAsk, agreementStore } from '../../state/agreementRun.ts';
import { boardRefuse, boardTell } from '../../state/boardStore.ts';
import { commit, planStore } from '../../state/planStore.ts';
import { AgreementWorking } from './AgreementWorking.tsx';
import { tilesOfWords } from './names.ts';

/** Moves the set-out point of some tiles to where their cuts cost least, joints as they lie. */
export function BalanceCuts({ of }: { readonly of: TilesOf }) {
  const by = `balance${tilesOfWords(of)}`;
  const isBusy = useStore(agreementStore, ({ run }) => run !== null);
  return (
    <>
      <button
        type="button"
        className="button framed"
        title="Moves the set-out point to where cuts and joints off the grout lines cost least"
        aria-disabled={isBusy}
        onClick={() => !isBusy && void balance(of, by)}
      >
        Balance the cuts
      </button>
      <AgreementWorking by={by} />
    </>
  );
}

async function balance(of: TilesOf, by: string): Promise<void> {
  const { file } = planStore.getState().history.present;
  const ways = await agreementAsk(by);
  if (ways === null) return;
  if (planStore.getState().history.present.file !== file) {
    boardRefuse('The plan has changed meanwhile: the cuts were not balanced.', []);
    return;
  }
  const setOuts = ways.find(({ way }) => way === 'set-out')?.setOuts.filter(({ field }) => field === of) ?? [];
  if (setOuts.length === 0) {
    boardTell('The set-out point stays: none was found that costs less.');
    return;
  }
  commit(`Balance the cuts${tilesOfWords(of)}`, (plan) => agreementUsed(plan, { setOuts, aim: null }));
}
