import { useEffect, useRef } from 'react';
import { dateIsEnterable } from '../../plan/calendar.ts';
import { FigureWrong } from './FigureInput.tsx';
import { useTypedWords } from './typed-words.ts';

interface DateFieldProps {
  readonly label: string;
  /** Such as 2027-03-01; null: not entered. */
  readonly value: string | null;
  readonly onChange: (value: string | undefined) => void;
}

/** A day, put in when the field is left or with Enter. One that is half typed or not in the calendar stays as it was typed, with the reason. */
export function DateField({ label, value, onChange }: DateFieldProps) {
  const entry = useTypedWords({
    value: value ?? '',
    put: (day) => onChange(day === '' ? undefined : day),
    refusal: dayRefusal,
  });
  const { id, wrong, input } = entry;
  const field = useRef<HTMLInputElement>(null);
  const wasWrong = useRef(false);
  useEffect(() => {
    // What the browser shows of a day that is none is no value of the field: it goes with the reason.
    if (wasWrong.current && wrong === null && field.current?.validity.badInput) field.current.value = input.value;
    wasWrong.current = wrong !== null;
  }, [wrong, input.value]);
  return (
    <div className="field choice">
      <label htmlFor={id}>{label}</label>
      <span className={wrong === null ? 'entry' : 'entry wrong'}>
        <input ref={field} type="date" min="1900-01-01" max="9000-12-31" {...input} />
      </span>
      <FigureWrong entry={entry} />
    </div>
  );
}

function dayRefusal(day: string, { validity }: HTMLInputElement): string | null {
  if (validity.badInput) return 'There is no such day, or a part of it is missing: enter day, month and year.';
  return day === '' || dateIsEnterable(day) ? null : 'Enter a day of the years 1900 to 9000.';
}
