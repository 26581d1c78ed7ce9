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
  const { id, text, typing, wrong, onChangeText, ...handlers } = useFigureEntry(figure);
  return (
    <div className={unlabelled ? 'field cell' : 'field length'}>
      {!unlabelled && <label htmlFor={id}>{label}</label>}
      <span className={wrong === null ? 'entry' : 'entry wrong'}>
        <input
          id={id}
          // The keys of a telephone for figures have no minus, which a place may need.
          inputMode={figure.least < 0 ? 'text' : 'decimal'}
          autoComplete="off"
          data-typing={typing}
          data-part={part}
          value={text}
          aria-label={unlabelled || name !== label ? name : undefined}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : `${id}-wrong`}
          onChange={(event) => onChangeText(event.target.value)}
          {...handlers}
        />
        {figure.unit !== '' && !unlabelled && <span className="unit">{figure.unit}</span>}
      </span>
      {wrong !== null && (
        <span className="wrong-word" id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
    </div>
  );
}
