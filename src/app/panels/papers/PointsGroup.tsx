import { pointCautions } from '../../../documents/point-cautions.ts';
import {
  type PaperPoint,
  type PaperPointKind,
  paperPointChanged,
  paperPointNameNext,
  paperPointRemoved,
  paperPoints,
} from '../../../plan/edits/paper-points.ts';
import { offSheet, triedUnless } from '../../card/put.ts';
import { nameText } from '../../parts/format.ts';
import { TextField } from '../../parts/TextField.tsx';
import { usePlan, usePlanResolved } from '../../state/hooks.ts';
import { commit } from '../../state/planStore.ts';
import { paperPointName, paperPointWords } from '../../tools/papers/names.ts';
import { ItemFolds, TakeAway } from './ItemFolds.tsx';
import { PlaceFields } from './PlaceFields.tsx';
import { placeChoose, placeTake, usePlaceChosen } from './place-chosen.ts';
import { pointPlace } from './point-place.ts';

interface PointsProps {
  readonly kind: PaperPointKind;
  /** What they are for. */
  readonly words: string;
}

/** Points of one kind: placed on the board, named, and moved by typing. */
export function PointList({ kind, words }: PointsProps) {
  const file = usePlan((state) => state.history.present.file);
  const plan = usePlanResolved();
  const points = paperPoints(file, kind);
  const cautions = pointCautions({ file, plan }).filter((caution) => caution.kind === kind);
  const isOne = kind === 'access' && points.length === 1;
  const next = `${paperPointWords[kind].toLowerCase()} ${paperPointNameNext(file, kind)}`;
  return (
    <div className="point-list">
      <p className="small quiet">{words}</p>
      <ItemFolds
        items={points.map(({ at }) => at)}
        summary={(i) => titleOf(points[i])}
        cautions={(i) => cautions.filter(({ index }) => index === i).map((caution) => caution.words)}
        chosen={usePlaceChosen(kind)}
        onUnfold={(i) => placeChoose(kind, i)}
      >
        {(i) => <PointFields point={points[i]} />}
      </ItemFolds>
      <div className="deeds">
        <button type="button" className="button framed" onClick={(event) => pointPlace(kind, event.currentTarget)}>
          {isOne ? 'Move' : 'Place'} {kind === 'access' ? 'the access' : next} on the board
        </button>
      </div>
    </div>
  );
}

function titleOf(point: PaperPoint | undefined): string {
  return point === undefined ? '' : paperPointName({ ...point, name: nameText(point.name) });
}

function PointFields({ point }: { readonly point: PaperPoint | undefined }) {
  if (point === undefined) return null;
  const { kind, name, at } = point;
  const title = titleOf(point);
  const of = title.charAt(0).toLowerCase() + title.slice(1);
  return (
    <>
      {kind !== 'access' && (
        <TextField
          label="Name"
          value={name}
          placeholder="Such as 1"
          onChange={(next) =>
            commit(`Name ${of}`, (file) => paperPointChanged(file, point, { name: next === '' ? undefined : next }))
          }
        />
      )}
      <PlaceFields
        of={of}
        at={at}
        edit={(file, next) => triedUnless(offSheet, file, paperPointChanged(file, point, { at: next }))}
      />
      <div className="deeds">
        <TakeAway
          of={of}
          onTake={() => placeTake(`Take ${of} away`, point, (file) => paperPointRemoved(file, point))}
        />
      </div>
    </>
  );
}
