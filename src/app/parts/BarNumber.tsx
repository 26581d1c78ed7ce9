import { type FigureEntry, useFigureEntry } from './figure-entry.ts';

interface BarNumberProps extends FigureEntry {
  readonly label: string;
}

/** A figure in a bar: its label, the field and its unit on one line. */
export function BarNumber({ label, ...figure }: BarNumberProps) {
  const { id, text, typing, wrong, onChangeText, ...handlers } = useFigureEntry(figure);
  return (
    <span className="bar-field">
      <label htmlFor={id}>{label}</label>
      <span className={wrong === null ? 'entry' : 'entry wrong'} title={wrong ?? undefined}>
        <input
          className={figure.unit === '' ? 'count' : undefined}
          id={id}
          inputMode="decimal"
          autoComplete="off"
          data-typing={typing}
          value={text}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : `${id}-wrong`}
          onChange={(event) => onChangeText(event.target.value)}
          {...handlers}
        />
        {figure.unit !== '' && <span className="unit">{figure.unit}</span>}
      </span>
      {wrong !== null && (
        <span className="wrong-word" id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
    </span>
  );
}
