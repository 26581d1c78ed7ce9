import { useId, useState } from 'react';

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
  const [typed, setTyped] = useState<string | null>(null);
  const put = () => {
    if (typed !== null && typed.trim() !== value) onChange(typed.trim());
    setTyped(null);
  };
  return (
    <div className="field words">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input
          id={id}
          autoComplete="off"
          list={suggestions.length === 0 ? undefined : `${id}-list`}
          data-typing={typed !== null}
          value={typed ?? value}
          placeholder={placeholder}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={put}
          onKeyDown={(event) => {
            if (event.key === 'Enter') put();
            if (event.key !== 'Escape' || typed === null) return;
            event.stopPropagation();
            setTyped(null);
          }}
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
