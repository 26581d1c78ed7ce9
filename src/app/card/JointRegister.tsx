import { useMemo } from 'react';
import { registerEntries } from '../../documents/register-entries.ts';
import type { Joint } from '../../plan/analysis.ts';
import { planJointNoted } from '../../plan/edits/joint-notes.ts';
import { planJointNotesRenamed } from '../../plan/edits/joints.ts';
import { type JointLock, noJointEntry, orderingOf } from '../../plan/papers.ts';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { Fold } from '../parts/Fold.tsx';
import { countOf } from '../parts/format.ts';
import { NumberField } from '../parts/NumberField.tsx';
import { TextField } from '../parts/TextField.tsx';
import type { Result } from '../state/analysisStore.ts';
import { usePlan } from '../state/hooks.ts';
import { commit } from '../state/planStore.ts';

type Words = 'profile' | 'sealant' | 'colour' | 'fixing' | 'decidedBy' | 'suppliedBy' | 'photo';
const wordFields: readonly (readonly [Words, string, string])[] = [
  ['profile', 'Profile', 'Kind and height'],
  ['sealant', 'Sealant', 'Kind and class'],
  ['colour', 'Colour', 'As chosen'],
  ['fixing', 'Fixing', 'How it is held'],
  ['decidedBy', 'Who decides', 'Name or trade'],
  ['suppliedBy', 'Who supplies', 'Name or trade'],
  ['photo', 'Photo number', 'Such as 12'],
];
const undecided = 'undecided';
const locks: readonly { readonly value: JointLock | typeof undecided; readonly words: string }[] = [
  { value: undecided, words: 'Not decided' },
  { value: 'none', words: 'None' },
  { value: 'dowels', words: 'Dowels' },
  { value: 'key', words: 'Key' },
];

interface JointRegisterProps {
  readonly joint: Joint;
  readonly result: Result;
  /** Of the fold, where the card tells of several joints. */
  readonly summary?: string;
}

/** What the joint register says of this joint beyond what is worked out. */
export function JointRegister({ joint: { id, key }, result, summary = 'In the joint register' }: JointRegisterProps) {
  const file = usePlan((state) => state.history.present.file);
  const floor = useMemo(() => ({ file, plan: result.plan, analysis: result.analysis }), [file, result]);
  const { joints, followed } = registerEntries(floor);
  const entry = joints.get(key) ?? noJointEntry;
  const moved = followed.get(key);
  const put = (words: string, change: Parameters<typeof planJointNoted>[2], gesture: string | null = null) =>
    commit(
      `${words} of ${id}`,
      (present) => planJointNoted(planJointNotesRenamed(present, new Map([[moved?.key ?? key, key]])), key, change),
      gesture,
    );
  return (
    <Fold summary={summary}>
      {moved !== undefined && <p className="small quiet">What stands here was {moved.words}.</p>}
      {wordFields.map(([field, label, placeholder]) => (
        <TextField
          key={field}
          label={label}
          value={entry[field]}
          placeholder={placeholder}
          onChange={(words) => put(label, { [field]: words === '' ? undefined : words })}
        />
      ))}
      <ChoiceField
        label="Against lipping"
        value={entry.lock ?? undecided}
        choices={locks}
        onChange={(lock) => put('Lock', { lock: lock === undecided ? undefined : lock })}
      />
      <NumberField
        label="Pipes through it"
        name={`Pipes through ${id}`}
        unit=""
        source="sleeve-pipes"
        range={`${orderingOf(file).sleevesPerJoint} taken where none are entered`}
        value={entry.pipes}
        least={0}
        most={1000}
        step={1}
        decimals={0}
        refusal={(value) => (Number.isInteger(value) ? null : 'Enter a whole number.')}
        onChange={(pipes, gesture) => put(`${countOf(pipes, 'pipe', 'pipes')} in the register`, { pipes }, gesture)}
        onClear={(gesture) => put('Pipes not counted in the register', { pipes: undefined }, gesture)}
      />
    </Fold>
  );
}
