import type { PlanFile } from '../../../plan/schema.ts';
import { DateField } from '../../parts/DateField.tsx';
import { Fold } from '../../parts/Fold.tsx';
import { focusHeir } from '../../parts/focus.ts';
import { TextField } from '../../parts/TextField.tsx';
import { usePlan } from '../../state/hooks.ts';
import { listWith, paperPut } from './put.ts';

type Revision = NonNullable<NonNullable<PlanFile['papers']>['revisions']>[number];

const heir = focusHeir('#revisions :is(summary, .deeds > .button)');

/** The revisions of the sheets, each with its mark. */
export function RevisionsGroup() {
  const revisions = usePlan((state) => state.history.present.file.papers?.revisions) ?? [];
  const put = (words: string, next: readonly Revision[] | undefined) => paperPut('papers', words, { revisions: next });
  return (
    <section className="group" id="revisions">
      <h3>Revisions {revisions.length > 0 && <span className="quiet">{revisions.length}</span>}</h3>
      {revisions.map((revision, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a revision is known by its place in the list
        <Fold key={i} summary={[revision.mark, revision.text].filter((part) => part).join(': ')}>
          <RevisionFields
            revision={revision}
            onChange={(change) => put(`Revision ${revision.mark}`, listWith(revisions, i, { ...revision, ...change }))}
          />
          <div className="deeds">
            <button
              ref={heir}
              type="button"
              className="button framed"
              onClick={() => put(`Revision ${revision.mark} taken out`, listWith(revisions, i, undefined))}
            >
              Take it out
            </button>
          </div>
        </Fold>
      ))}
      <div className="deeds">
        <button
          type="button"
          className="button framed"
          onClick={() => put('Add a revision', [...revisions, { mark: markNext(revisions) }])}
        >
          Add a revision
        </button>
      </div>
    </section>
  );
}

/** A, B, ... Z, 27, 28, ... */
function markNext({ length }: readonly Revision[]): string {
  return length < 26 ? String.fromCharCode(65 + length) : String(length + 1);
}

interface RevisionProps {
  readonly revision: Revision;
  readonly onChange: (change: Partial<Revision>) => void;
}

function RevisionFields({ revision: { mark, date, text = '', by = '' }, onChange }: RevisionProps) {
  return (
    <>
      <TextField label="Mark" value={mark} placeholder="Such as A" onChange={(next) => onChange({ mark: next })} />
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
