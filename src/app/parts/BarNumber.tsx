import { FigureInput, FigureWrong } from './FigureInput.tsx';
import { type FigureEntry, useFigureEntry } from './figure-entry.ts';
import { lengthsRead } from './lengths.ts';

interface BarNumberProps extends FigureEntry {
  readonly label: string;
}

/** A length in mm may carry a unit of its own. */
function mmRead(text: string): number | null {
  const read = lengthsRead(text, 'mm');
  return read?.kind === 'one' ? read.mm : null;
}

/** A figure in a bar: its label, the field and its unit on one line. */
export function BarNumber({ label, ...figure }: BarNumberProps) {
  const entry = useFigureEntry(figure.unit === 'mm' ? { ...figure, read: mmRead } : figure);
  return (
    <span className="bar-field">
      <label htmlFor={entry.id}>{label}</label>
      <FigureInput entry={entry} unit={figure.unit} className={figure.unit === '' ? 'count' : undefined} />
      <FigureWrong entry={entry} />
    </span>
  );
}
