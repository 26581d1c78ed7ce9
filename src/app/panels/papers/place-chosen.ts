import { useBoard, usePlan } from '../../state/hooks.ts';
import { type PaperPlace, placeChosen } from '../../tools/papers/places.ts';

/** Which item of a list is chosen on the board; null where none is. */
export function usePlaceChosen(kind: PaperPlace['kind']): number | null {
  const file = usePlan((state) => state.history.present.file);
  const chosen = useBoard((state) => state.chosen);
  const place = placeChosen(file, chosen);
  return place?.kind === kind ? place.index : null;
}
