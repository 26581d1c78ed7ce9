import { useId, useState } from 'react';
import { dateIsEnterable } from '../../plan/calendar.ts';

interface DateFieldProps {
  readonly label: string;
  /** Such as 2027-03-01; null: not entered. */
  readonly value: string | null;
  readonly onChange: (value: string | undefined) => void;
}

/** A day, put in when the field is left or with Enter: a day that is half typed is none. */
export function DateField({ label, value, onChange }: DateFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const put = () => {
    if (typed !== null && typed !== (value ?? '') && (typed === '' || dateIsEnterable(typed)))
      onChange(typed === '' ? undefined : typed);
    setTyped(null);
  };
  return (
    <div className="field choice">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input
          id={id}
          type="date"
          min="1900-01-01"
          max="9999-12-31"
          value={typed ?? value ?? ''}
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
    </div>
  );
}
