import { useId } from 'react';
import { dateIsEnterable } from '../../plan/calendar.ts';
import { useTypedWords } from './typed-words.ts';

interface DateFieldProps {
  readonly label: string;
  /** Such as 2027-03-01; null: not entered. */
  readonly value: string | null;
  readonly onChange: (value: string | undefined) => void;
}

/** A day, put in when the field is left or with Enter: a day that is half typed is none. */
export function DateField({ label, value, onChange }: DateFieldProps) {
  const id = useId();
  const { input } = useTypedWords(value ?? '', (day) => {
    if (day === '' || dateIsEnterable(day)) onChange(day === '' ? undefined : day);
  });
  return (
    <div className="field choice">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input id={id} type="date" min="1900-01-01" max="9000-12-31" {...input} />
      </span>
    </div>
  );
}
