import { FigureInput, FigureWrong } from './FigureInput.tsx';
import { type FigureEntry, useFigureEntry } from './figure-entry.ts';

interface BarNumberProps extends FigureEntry {
  readonly label: string;
}

/** A figure in a bar: its label, the field and its unit on one line. */
export function BarNumber({ label, ...figure }: BarNumberProps) {
  const entry = useFigureEntry(figure);
  return (
    <span className="bar-field">
      <label htmlFor={entry.id}>{label}</label>
      <FigureInput entry={entry} unit={figure.unit} className={figure.unit === '' ? 'count' : undefined} />
      <FigureWrong entry={entry} />
    </span>
  );
}
