import { useId } from 'react';
import { FieldNote, type Note } from './FieldNote.tsx';
import { FigureWrong } from './FigureInput.tsx';
import { useTypedWords } from './typed-words.ts';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly placeholder: string;
  readonly onChange: (value: string) => void;
  /** Why words cannot be put in; null where they can. */
  readonly refusal?: (words: string) => string | null;
  readonly note?: Note;
  /** What may be meant: shown while it is typed in. */
  readonly suggestions?: readonly string[];
}

/** Words of the plan, changed in place: Enter or leaving the field puts them in. */
export function TextField({ label, value, placeholder, onChange, refusal, note, suggestions = [] }: TextFieldProps) {
  const noteId = useId();
  const entry = useTypedWords({
    value,
    put: (words) => {
      if (words.trim() !== value) onChange(words.trim());
    },
    refusal: (words) => refusal?.(words.trim()) ?? null,
    beside: note === undefined ? undefined : noteId,
  });
  const { id, wrong, input } = entry;
  return (
    <div className="field words">
      <label htmlFor={id}>{label}</label>
      <span className={wrong === null ? 'entry' : 'entry wrong'}>
        <input list={suggestions.length === 0 ? undefined : `${id}-list`} placeholder={placeholder} {...input} />
      </span>
      <FigureWrong entry={entry} />
      {note !== undefined && <FieldNote id={noteId} note={note} />}
      {suggestions.length > 0 && (
        <datalist id={`${id}-list`}>
          {suggestions.map((words) => (
            <option key={words} value={words} />
          ))}
        </datalist>
      )}
    </div>
  );
}
