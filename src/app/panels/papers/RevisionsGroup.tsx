import { useState } from 'react';
import type { PlanFile } from '../../../plan/schema.ts';
import { DateField } from '../../parts/DateField.tsx';
import { nameText } from '../../parts/format.ts';
import { TextField } from '../../parts/TextField.tsx';
import { usePlan } from '../../state/hooks.ts';
import { type Added, ItemFolds } from './ItemFolds.tsx';
import { listWith, paperPut } from './put.ts';
import { markNext } from './revision-marks.ts';

type Revision = NonNullable<NonNullable<PlanFile['papers']>['revisions']>[number];

/** The revisions of the sheets, each with its mark. */
export function RevisionsGroup() {
  const revisions = usePlan((state) => state.history.present.file.papers?.revisions) ?? [];
  const put = (words: string, next: readonly Revision[] | undefined) => paperPut('papers', words, { revisions: next });
  const [added, setAdded] = useState<Added | null>(null);
  const add = () => {
    const mark = markNext(revisions.map((revision) => revision.mark));
    put(`Add revision ${mark}`, [...revisions, { mark }]);
    setAdded({ index: revisions.length });
  };
  return (
    <section className="group" id="revisions">
      <h3>Revisions {revisions.length > 0 && <span className="quiet">{revisions.length}</span>}</h3>
      <ItemFolds
        items={revisions}
        summary={(i) => (revisions[i] === undefined ? '' : revisionText(revisions[i]))}
        cautions={() => []}
        added={added}
      >
        {(i) => {
          const revision = revisions[i];
          if (revision === undefined) return null;
          return (
            <>
              <RevisionFields
                revision={revision}
                onChange={(change) => put(titleOf(revision), listWith(revisions, i, { ...revision, ...change }))}
              />
              <div className="deeds">
                <button
                  type="button"
                  className="button framed"
                  aria-label={`Take it out: ${titleOf(revision)}`}
                  onClick={() => put(`${titleOf(revision)} taken out`, listWith(revisions, i, undefined))}
                >
                  Take it out
                </button>
              </div>
            </>
          );
        }}
      </ItemFolds>
      <div className="deeds">
        <button type="button" className="button framed" onClick={add}>
          Add a revision
        </button>
      </div>
    </section>
  );
}

function titleOf({ mark }: Revision): string {
  return mark.trim() === '' ? 'Revision without a mark' : `Revision ${nameText(mark)}`;
}

function revisionText(revision: Revision): string {
  const text = nameText(revision.text ?? '');
  return text === '' ? titleOf(revision) : `${titleOf(revision)}: ${text}`;
}

interface RevisionProps {
  readonly revision: Revision;
  readonly onChange: (change: Partial<Revision>) => void;
}

function RevisionFields({ revision: { mark, date, text = '', by = '' }, onChange }: RevisionProps) {
  return (
    <>
      <TextField
        label="Mark"
        value={mark}
        placeholder="Such as A"
        refusal={(next) => (next === '' ? 'A revision has a mark: enter one, such as A.' : null)}
        onChange={(next) => onChange({ mark: next })}
      />
      <DateField label="Day" value={date ?? null} onChange={(next) => onChange({ date: next })} />
      <TextField
        label="Change"
        value={text}
        placeholder="What was changed"
        onChange={(next) => onChange({ text: next })}
      />
      <TextField label="By" value={by} placeholder="Initials" onChange={(next) => onChange({ by: next })} />
    </>
  );
}
