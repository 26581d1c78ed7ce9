import { pointCautions } from '../../../documents/point-cautions.ts';
import {
  type PaperPoint,
  type PaperPointKind,
  paperPointChanged,
  paperPointRemoved,
  paperPoints,
} from '../../../plan/edits/paper-points.ts';
import { FARTHEST_MM } from '../../../plan/snap.ts';
import { FieldPair, LengthField } from '../../card/LengthField.tsx';
import { offSheet, triedUnless } from '../../card/put.ts';
import { Fold } from '../../parts/Fold.tsx';
import { focusHeir } from '../../parts/focus.ts';
import { nameText } from '../../parts/format.ts';
import { TextField } from '../../parts/TextField.tsx';
import { usePlan, usePlanResolved } from '../../state/hooks.ts';
import { commit } from '../../state/planStore.ts';
import { paperPointName, paperPointWords } from '../../tools/papers/paper-point.ts';
import { pointPlace } from './point-place.ts';

const heir = focusHeir('.point-list :is(summary, .deeds > .button)', '.point-list');

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
  return (
    <div className="point-list">
      <p className="small quiet">{words}</p>
      {points.map((point) => (
        <div key={point.index}>
          <Fold summary={paperPointName(shownOf(point))}>
            <PointFields point={point} />
          </Fold>
          {cautions
            .filter(({ index }) => index === point.index)
            .map((caution) => (
              <p key={caution.words} className="small tone-caution">
                {caution.words}
              </p>
            ))}
        </div>
      ))}
      <div className="deeds">
        <button type="button" className="button framed" onClick={(event) => pointPlace(kind, event.currentTarget)}>
          {isOne ? 'Move' : 'Place'} {kind === 'access' ? 'the access' : nextWords(kind, points.length)} on the board
        </button>
      </div>
    </div>
  );
}

function shownOf(point: PaperPoint): PaperPoint {
  return { ...point, name: nameText(point.name) };
}

function nextWords(kind: PaperPointKind, count: number): string {
  return `${paperPointWords[kind].toLowerCase()} ${count + 1}`;
}

function PointFields({ point }: { readonly point: PaperPoint }) {
  const { kind, name, at } = point;
  const title = paperPointName(shownOf(point));
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
      <FieldPair>
        {(['across', 'down'] as const).map((way, axis) => (
          <LengthField
            key={way}
            label={way === 'across' ? 'Across' : 'Down'}
            of={of}
            valueMm={at[axis as 0 | 1]}
            leastMm={-FARTHEST_MM}
            edit={(file, mm) =>
              mm === at[axis as 0 | 1]
                ? file
                : triedUnless(
                    offSheet,
                    file,
                    paperPointChanged(file, point, { at: axis === 0 ? [mm, at[1]] : [at[0], mm] }),
                  )
            }
          />
        ))}
      </FieldPair>
      <div className="deeds">
        <button
          ref={heir}
          type="button"
          className="button framed"
          aria-label={`Take it away: ${of}`}
          onClick={() => commit(`Take ${of} away`, (file) => paperPointRemoved(file, point))}
        >
          Take it away
        </button>
      </div>
    </>
  );
}
