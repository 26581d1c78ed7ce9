import { FigureInput, FigureWrong } from './FigureInput.tsx';
import { type FigureEntry, useFigureEntry } from './figure-entry.ts';

interface EntryFieldProps extends FigureEntry {
  readonly label: string;
  /** The label with what it leaves out, for where it is heard alone. */
  readonly name?: string;
  /** The label is heard and not seen: in a row of a table. */
  readonly unlabelled?: boolean;
  /** For finding it again in its row. */
  readonly part?: string;
}

/** A figure that is typed, with its unit, under its label. */
export function EntryField({ label, name = label, unlabelled = false, part, ...figure }: EntryFieldProps) {
  const entry = useFigureEntry(figure);
  return (
    <div className={unlabelled ? 'field cell' : 'field length'}>
      {!unlabelled && <label htmlFor={entry.id}>{label}</label>}
      <FigureInput
        entry={entry}
        unit={unlabelled ? '' : figure.unit}
        // The keys of a telephone for figures have no minus, which a place may need.
        inputMode={figure.least < 0 ? 'text' : 'decimal'}
        data-part={part}
        aria-label={unlabelled || name !== label ? name : undefined}
      />
      <FigureWrong entry={entry} />
    </div>
  );
}
