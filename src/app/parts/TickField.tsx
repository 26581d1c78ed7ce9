interface TickFieldProps {
  readonly label: string;
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
}

/** Yes or no, changed in place. */
export function TickField({ label, value, onChange }: TickFieldProps) {
  return (
    <label className="field tick">
      <input type="checkbox" checked={value} onChange={(event) => onChange(event.target.checked)} />
      {label}
    </label>
  );
}
