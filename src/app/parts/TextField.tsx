import { useId } from 'react';
import { useTypedWords } from './typed-words.ts';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly placeholder: string;
  readonly onChange: (value: string) => void;
  /** What may be meant: shown while it is typed in. */
  readonly suggestions?: readonly string[];
}

/** Words of the plan, changed in place: Enter or leaving the field puts them in. */
export function TextField({ label, value, placeholder, onChange, suggestions = [] }: TextFieldProps) {
  const id = useId();
  const { typed, input } = useTypedWords(value, (words) => {
    if (words.trim() !== value) onChange(words.trim());
  });
  return (
    <div className="field words">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input
          id={id}
          autoComplete="off"
          list={suggestions.length === 0 ? undefined : `${id}-list`}
          data-typing={typed !== null}
          placeholder={placeholder}
          {...input}
        />
      </span>
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
