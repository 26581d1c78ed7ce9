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
import { TextField } from '../../parts/TextField.tsx';
import { usePlan } from '../../state/hooks.ts';
import { commit } from '../../state/planStore.ts';
import { paperPointWords } from '../../tools/papers/paper-point.ts';
import { wish } from '../../tools/toolStore.ts';
import { toolTake } from '../../tools/tools.ts';

const heir = focusHeir('.point-list :is(summary, .deeds > .button)', '.point-list');

interface PointsProps {
  readonly kind: PaperPointKind;
  /** What they are for. */
  readonly words: string;
}

/** Points of one kind: placed on the board, named, and moved by typing. */
export function PointList({ kind, words }: PointsProps) {
  const file = usePlan((state) => state.history.present.file);
  const points = paperPoints(file, kind);
  const isOne = kind === 'access' && points.length === 1;
  return (
    <div className="point-list">
      <p className="small quiet">{words}</p>
      {points.map((point) => (
        <Fold key={point.index} summary={pointWords(point)}>
          <PointFields point={point} />
        </Fold>
      ))}
      <div className="deeds">
        <button
          type="button"
          className="button framed"
          onClick={() => {
            wish({ paperPoint: kind });
            toolTake('paperPoint');
          }}
        >
          {isOne ? 'Move it on the board' : 'Place on the board'}
        </button>
      </div>
    </div>
  );
}

function pointWords({ kind, name }: PaperPoint): string {
  return kind === 'access' ? paperPointWords.access : `${paperPointWords[kind]} ${name}`;
}

function PointFields({ point }: { readonly point: PaperPoint }) {
  const { kind, name, at } = point;
  const of = pointWords(point).toLowerCase();
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
          onClick={() => commit(`Take ${of} away`, (file) => paperPointRemoved(file, point))}
        >
          Take it away
        </button>
      </div>
    </>
  );
}
