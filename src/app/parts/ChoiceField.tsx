import { type ReactNode, useId } from 'react';
import { hintOf } from './format.ts';
import { SourceButton, useSource } from './SourceNote.tsx';

export interface Choice<Value extends string> {
  readonly value: Value;
  readonly words: string;
  /** Choices of one heading stand together. */
  readonly heading?: string;
}

interface ChoiceFieldProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly choices: readonly Choice<Value>[];
  readonly onChange: (value: Value) => void;
  /** What the source button opens; left out where the choice rests on no figure. */
  readonly source?: ReactNode;
  /** What stands beside the choice, under an id that it is read out with. */
  readonly note?: (id: string) => ReactNode;
  /** The label above the choice instead of before it. */
  readonly wide?: boolean;
}

/** One of a few, changed in place. */
export function ChoiceField<Value extends string>(props: ChoiceFieldProps<Value>) {
  const { label, value, choices, source, note, wide = false } = props;
  const id = useId();
  const toggle = useSource();
  const headings = [...new Set(choices.map((choice) => choice.heading))];
  return (
    <div className={wide ? 'field wide' : 'field choice'}>
      <label htmlFor={id} title={hintOf(label)}>
        {label}
      </label>
      <select
        id={id}
        aria-describedby={note && `${id}-note`}
        value={value}
        onChange={(event) => {
          const chosen = choices.find((choice) => choice.value === event.target.value);
          if (chosen !== undefined) props.onChange(chosen.value);
        }}
      >
        {headings.map((heading) => {
          const options = choices
            .filter((choice) => choice.heading === heading)
            .map((choice) => (
              <option key={choice.value} value={choice.value}>
                {choice.words}
              </option>
            ));
          return heading === undefined ? (
            options
          ) : (
            <optgroup key={heading} label={heading}>
              {options}
            </optgroup>
          );
        })}
      </select>
      {source !== undefined && <SourceButton of={label} toggle={toggle} />}
      {note?.(`${id}-note`)}
      {source !== undefined && (
        <div className="source-place" id={toggle.id} hidden={!toggle.open}>
          {toggle.open && source}
        </div>
      )}
    </div>
  );
}
