import type { PlanFile } from '../../../plan/schema.ts';
import { boardLetGo, boardStore } from '../../state/boardStore.ts';
import { useBoard, usePlan } from '../../state/hooks.ts';
import { commit, planStore } from '../../state/planStore.ts';
import { type PaperPlace, placeChosen, placeThing } from '../../tools/papers/places.ts';

/** Which item of a list is chosen on the board; null where none is. */
export function usePlaceChosen(kind: PaperPlace['kind']): number | null {
  const file = usePlan((state) => state.history.present.file);
  const chosen = useBoard((state) => state.chosen);
  const place = placeChosen(file, chosen);
  return place?.kind === kind ? place.index : null;
}

/** Chooses an item of a list on the board: whoever works by keys goes on there with it. */
export function placeChoose(kind: PaperPlace['kind'], index: number): void {
  boardStore.setState({ chosen: [placeThing({ kind, index })] });
}

/** Takes a place away. Another one of its list stays chosen, though its number changes. */
export function placeTake(
  name: string,
  { kind, index }: Pick<PaperPlace, 'kind' | 'index'>,
  edit: (file: PlanFile) => PlanFile,
): void {
  const chosen = placeChosen(planStore.getState().history.present.file, boardStore.getState().chosen);
  if (chosen?.kind === kind && chosen.index === index) boardLetGo();
  commit(name, edit);
  if (chosen?.kind === kind && chosen.index > index) placeChoose(kind, chosen.index - 1);
}
