import { useId } from 'react';

interface BarChoiceProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly choices: readonly { readonly value: Value; readonly words: string }[];
  readonly onChange: (value: Value) => void;
}

/** One of a few in a bar. */
export function BarChoice<Value extends string>({ label, value, choices, onChange }: BarChoiceProps<Value>) {
  const id = useId();
  return (
    <span className="bar-field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const chosen = choices.find((choice) => choice.value === event.target.value);
          if (chosen !== undefined) onChange(chosen.value);
        }}
      >
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.words}
          </option>
        ))}
      </select>
    </span>
  );
}

interface BarTickProps {
  readonly label: string;
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
}

/** Yes or no in a bar. */
export function BarTick({ label, value, onChange }: BarTickProps) {
  return (
    <label className="bar-field bar-tick">
      <input type="checkbox" checked={value} onChange={(event) => onChange(event.target.checked)} />
      {label}
    </label>
  );
}
